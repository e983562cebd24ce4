"""A row of axes that fills the rest of a side, with every text placed where it can be read."""

from dataclasses import dataclass

from chartgen.errors import TooSmallError
from chartgen.layout.axes import BETWEEN_PANELS, Frame, labelled
from chartgen.layout.label_places import Places, anywhere, beside_line, beside_point, dense, leader
from chartgen.layout.layout_file import Layout
from chartgen.layout.legibility import CAP_HEIGHT, POINT
from chartgen.layout.piece import Piece, Setting
from chartgen.layout.placed import Align, Face, Item, Panel, Plot, Rule, Text
from chartgen.layout.typesetting import one_line
from chartgen.quantities import FloatArray, Millimetres
from chartgen.wording.card import AnyCard
from chartgen.wording.figure import PrintedCurve, PrintedCurves, PrintedPanel

_GAP: Millimetres[float] = 1.2
_HALO: Millimetres[float] = 0.45
_LEAST_HEIGHT: Millimetres[float] = 40.0
_DOT: Millimetres[float] = 0.9


def figure(card: AnyCard, layout: Layout, setting: Setting) -> list[Piece]:
    """Return the panels of a card as one piece as high as the room that is left.

    Raises
    ------
    TooSmallError
        If the room is too low for a figure, or a label finds no place in it.
    """
    body = card.chart
    if not isinstance(body, PrintedCurves):
        raise TypeError("a figure block needs a card with curves")
    return [figure_piece(body, layout, setting)]


def figure_piece(body: PrintedCurves, layout: Layout, setting: Setting) -> Piece:
    """Return the panels of a figure as one piece as high as the setting.

    Raises
    ------
    TooSmallError
        If that is too low for a figure, or a label finds no place in it.
    """
    if setting.height < _LEAST_HEIGHT:
        raise TooSmallError(
            f"layout {layout.name}: {setting.height:.0f} mm are left for the curves of "
            f"'{body.title}' and they need {_LEAST_HEIGHT:.0f}; "
        )
    frames = _frames(body, setting)
    items: list[Item] = []
    for number, frame in enumerate(frames):
        items += _panel_items(frame, setting, body, shows_y=_shows_y(body, number))
    return Piece(height=setting.height, items=tuple(items))


def _cap(size: float) -> Millimetres[float]:
    return size * POINT * CAP_HEIGHT


def _shows_y(body: PrintedCurves, number: int) -> bool:
    """Whether a panel needs numbers of its own: not where its neighbour's axis is the same."""
    return number == 0 or body.panels[number].y != body.panels[number - 1].y


def _frames(body: PrintedCurves, setting: Setting) -> list[Frame]:
    """Return the boxes of the axes: equally wide, as high as texts above and below allow."""
    top = setting.line * 1.15
    bottom = setting.height - _cap(setting.numbers) - setting.line * 1.1 - 2.0 * _GAP
    labels = [
        max(setting.measure(text, Face.REGULAR, setting.numbers) for _, text, _ in panel.y.ticks)
        + _GAP
        if _shows_y(body, number)
        else 0.0
        for number, panel in enumerate(body.panels)
    ]
    # Half of the last number under a panel may hang over its right end.
    free = setting.width - sum(labels) - BETWEEN_PANELS * len(labels)
    width = free / len(labels)
    frames, x = [], 0.0
    for panel, label in zip(body.panels, labels, strict=True):
        x += label
        frames.append(Frame(x=x, y=top, width=width, height=bottom - top, panel=panel))
        x += width + BETWEEN_PANELS
    return frames


def _panel_items(
    frame: Frame, setting: Setting, body: PrintedCurves, *, shows_y: bool
) -> list[Item]:
    panel = frame.panel
    x_ticks = labelled(
        panel.x,
        frame.width,
        lambda text: setting.measure(text, Face.REGULAR, setting.numbers) + 2.0,
    )
    y_ticks = labelled(panel.y, frame.height, lambda _: 1.6 * _cap(setting.numbers))
    items: list[Item] = [
        Plot(
            x=frame.x,
            y=frame.y,
            width=frame.width,
            height=frame.height,
            panel=panel,
            x_grid=tuple(value for value, _ in x_ticks),
            y_grid=tuple(value for value, _ in y_ticks),
            meaning=body.description,
        )
    ]
    items += _axis_texts(frame, setting, x_ticks, y_ticks if shows_y else [])
    items += _titles(frame, setting, shows_y=shows_y)
    return [*items, *_Labels(frame, setting).items()]


def _axis_texts(
    frame: Frame,
    setting: Setting,
    x_ticks: list[tuple[float, str]],
    y_ticks: list[tuple[float, str]],
) -> list[Item]:
    size, cap = setting.numbers, _cap(setting.numbers)
    base = frame.y + frame.height + _GAP + cap
    items: list[Item] = [
        Text(
            x=_held(
                frame.at(value, frame.panel.y.least)[0],
                setting.measure(text, Face.REGULAR, size),
                setting.width,
            ),
            y=base,
            text=text,
            size=size,
            align=Align.CENTRE,
        )
        for value, text in x_ticks
    ]
    items += [
        Text(
            x=frame.x - _GAP,
            # Half of the first and the last number would hang over the ends of the axis.
            y=min(
                max(frame.at(frame.panel.x.least, value)[1] + cap / 2.0, frame.y + cap),
                frame.y + frame.height,
            ),
            text=text,
            size=size,
            align=Align.RIGHT,
        )
        for value, text in y_ticks
    ]
    items.append(
        Text(
            x=frame.x + frame.width,
            y=base + setting.line * 1.05,
            text=frame.panel.x.name,
            size=setting.words,
            align=Align.RIGHT,
        )
    )
    return items


def _held(middle: float, width: float, room: float) -> float:
    """Return the middle of a text moved no more than keeps it inside the side."""
    return min(middle, room - width / 2.0)


def _titles(frame: Frame, setting: Setting, *, shows_y: bool) -> list[Item]:
    """Return the name of the upright axis and the panel's title, on one line above it."""
    base = frame.y - _GAP
    items: list[Item] = []
    left = frame.x
    if shows_y:
        name = frame.panel.y.name
        labels = max(
            setting.measure(text, Face.REGULAR, setting.numbers)
            for _, text, _ in frame.panel.y.ticks
        )
        start = frame.x - labels - _GAP
        items.append(Text(x=start, y=base, text=name, size=setting.words))
        left = max(left, start + setting.measure(name, Face.REGULAR, setting.words) + 3.0)
    if frame.panel.title:
        one_line(
            frame.panel.title,
            width=frame.x + frame.width - left,
            face=Face.BOLD,
            size=setting.words,
            measure=setting.measure,
        )
        items.append(
            Text(x=left, y=base, text=frame.panel.title, size=setting.words, face=Face.BOLD)
        )
    return items


@dataclass(slots=True)
class _Labels:
    """Sets the labels of one panel, the ones that cannot move far first."""

    frame: Frame
    setting: Setting

    def items(self) -> list[Item]:
        panel, places = self.frame.panel, Places(self.frame)
        lines = self._lines(panel)
        for number, parts in enumerate(lines):
            places.add_line(number, [dense(part) for part in parts])
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
        for dot in panel.dots:
            x, y = self.frame.at(*dot.at)
            places.add_box((x - _DOT, y - _DOT, x + _DOT, y + _DOT))
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
        return self.setting.measure(text, face, size), _cap(size)

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
