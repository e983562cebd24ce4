"""The labels of one pair of axes: beside what they name, those that cannot move far first."""

from dataclasses import dataclass

from chartgen.errors import TooSmallError
from chartgen.layout.axes import Frame
from chartgen.layout.label_places import Places, anywhere, beside_line, beside_point, dense, leader
from chartgen.layout.legibility import CAP_HEIGHT, POINT
from chartgen.layout.piece import Setting
from chartgen.layout.placed import Face, Item, Panel, Rule, Text
from chartgen.quantities import FloatArray, Millimetres
from chartgen.wording.figure import PrintedCurve, PrintedPanel

_DOT: Millimetres[float] = 0.9
_HALO: Millimetres[float] = 0.45


@dataclass(slots=True)
class Labels:
    """Sets the labels of one panel, the ones that cannot move far first."""

    frame: Frame
    setting: Setting

    def items(self) -> list[Item]:
        """Return every label with the paper it stands on."""
        panel, places = self.frame.panel, Places(self.frame)
        lines = self._lines(panel)
        for number, parts in enumerate(lines):
            places.add_line(number, [dense(part) for part in parts])
        for dot in panel.dots:
            x, y = self.frame.at(*dot.at)
            places.add_box((x - _DOT, y - _DOT, x + _DOT, y + _DOT))
        items = self._letters(panel, places)
        items += self._dot_labels(panel, places)
        for number, (curve, parts) in enumerate(zip(panel.curves, lines, strict=True)):
            if curve.label and parts:
                line = dense(max(parts, key=len))
                items += self._curve_label(places, number, line, curve)
        return items

    def _letters(self, panel: PrintedPanel, places: Places) -> list[Item]:
        items: list[Item] = []
        for point, text in panel.letters:
            width, height = self._size(text, Face.BOLD, self.setting.numbers)
            spot = places.place(beside_point(*self.frame.at(*point), width, height), width, height)
            # A letter that finds no place has its like beside it: nothing new is lost.
            if spot is not None:
                items += self._set(text, spot, Face.BOLD, self.setting.numbers)
        return items

    def _dot_labels(self, panel: PrintedPanel, places: Places) -> list[Item]:
        items: list[Item] = []
        for dot in panel.dots:
            if dot.label:
                width, height = self._size(dot.label, Face.REGULAR, self.setting.words)
                around = beside_point(*self.frame.at(*dot.at), width, height)
                spot = places.place(around, width, height)
                items += self._set_or_refuse(dot.label, spot, Face.REGULAR)
        return items

    def _curve_label(
        self, places: Places, number: int, line: FloatArray, curve: PrintedCurve
    ) -> list[Item]:
        """Return a curve's label beside it, or where there is room, with a thin line to it."""
        face = Face.BOLD if curve.bold else Face.REGULAR
        width, height = self._size(curve.label, face, self.setting.words)
        spot = places.place(beside_line(line, width, height), width, height, number)
        items: list[Item] = []
        if spot is None:
            everywhere = anywhere(self.frame, line, width, height)
            spot = places.place(everywhere, width, height, number)
            if spot is not None:
                x1, y1, x2, y2 = leader(line, spot, width, height)
                items.append(Rule(x1=x1, y1=y1, x2=x2, y2=y2, weight=0.5))
        return [*items, *self._set_or_refuse(curve.label, spot, face)]

    def _lines(self, panel: PrintedPanel) -> list[list[list[tuple[float, float]]]]:
        """Return the curves on the page, cut off at the frame."""
        found = []
        for curve in panel.curves:
            parts = []
            for part in curve.parts:
                inside = [
                    self.frame.at(x, y)
                    for x, y in part
                    if panel.x.least <= x <= panel.x.most and panel.y.least <= y <= panel.y.most
                ]
                if len(inside) > 1:
                    parts.append(inside)
            found.append(parts)
        return found

    def _size(self, text: str, face: Face, size: float) -> tuple[float, float]:
        return self.setting.measure(text, face, size), size * POINT * CAP_HEIGHT

    def _set_or_refuse(self, text: str, spot: tuple[float, float] | None, face: Face) -> list[Item]:
        if spot is None:
            raise TooSmallError(
                f"the curves leave no place for the label {text!r} at the reading distance; "
            )
        return self._set(text, spot, face, self.setting.words)

    def _set(self, text: str, spot: tuple[float, float], face: Face, size: float) -> list[Item]:
        left, bottom = spot
        width, height = self._size(text, face, size)
        return [
            Panel(
                x=left - _HALO,
                y=bottom - height - _HALO,
                width=width + 2.0 * _HALO,
                height=height + 2.0 * _HALO,
                paper=True,
            ),
            Text(x=left, y=bottom, text=text, size=size, face=face),
        ]
