"""A row of axes that fills the rest of a side, with every text placed where it can be read."""

import math

from chartgen.errors import TooSmallError
from chartgen.layout.axes import BETWEEN_PANELS, Frame, labelled, share
from chartgen.layout.figure_labels import Labels
from chartgen.layout.layout_file import Layout
from chartgen.layout.legibility import CAP_HEIGHT, POINT
from chartgen.layout.piece import Piece, Setting
from chartgen.layout.placed import Align, Face, Item, Plot, Text
from chartgen.layout.roles import figure_of, under
from chartgen.layout.typesetting import one_line
from chartgen.quantities import Millimetres
from chartgen.wording.card import AnyCard
from chartgen.wording.figure import PrintedAxis, PrintedCurves

_GAP: Millimetres[float] = 1.2
_OVERHANG: Millimetres[float] = 1.0
"""How far the last number under a panel may stand out to its neighbour."""
_LEAST_HEIGHT: Millimetres[float] = 40.0
_LEAST_AXIS: Millimetres[float] = 20.0


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
    narrowest = min(min(frame.width, frame.height) for frame in frames)
    if narrowest < _LEAST_AXIS:
        raise TooSmallError(
            f"layout {layout.name}: beside its numbers the curves of '{body.title}' have "
            f"{max(narrowest, 0.0):.0f} mm and they need {_LEAST_AXIS:.0f}; "
        )
    items: list[Item] = []
    for number, frame in enumerate(frames):
        items += _panel_items(frame, setting, body, shows_y=_shows_y(body, number))
    # To a person who cannot see it a figure is its words: its labels alone would be noise.
    drawn = under(figure_of(body.title, body.description), items)
    return Piece(height=setting.height, items=tuple(drawn))


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
    y_ticks = _within_frame(
        panel.y,
        labelled(panel.y, frame.height, lambda _: 1.6 * _cap(setting.numbers)),
        _cap(setting.numbers) / 2.0 / frame.height,
    )
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
    return [*items, *Labels(frame, setting).items()]


def _within_frame(
    axis: PrintedAxis, ticks: list[tuple[float, str]], margin: float
) -> list[tuple[float, str]]:
    """Return the ticks whose numbers do not hang over the ends of an upright axis, and zero."""
    return [
        (value, text)
        for value, text in ticks
        if margin <= share(axis, value) <= 1.0 - margin or value == 0.0
    ]


def _axis_texts(
    frame: Frame,
    setting: Setting,
    x_ticks: list[tuple[float, str]],
    y_ticks: list[tuple[float, str]],
) -> list[Item]:
    size, cap = setting.numbers, _cap(setting.numbers)
    base = frame.y + frame.height + _GAP + cap
    items: list[Item] = []
    free = -math.inf
    for value, text in x_ticks:
        width = setting.measure(text, Face.REGULAR, size)
        end = frame.x + frame.width + _OVERHANG
        middle = min(frame.at(value, frame.panel.y.least)[0], end - width / 2.0)
        # A number held back at the end of its axis may have come too near to its neighbour.
        if middle - width / 2.0 < free + _GAP:
            continue
        free = middle + width / 2.0
        items.append(Text(x=middle, y=base, text=text, size=size, align=Align.CENTRE))
    items += [
        Text(
            x=frame.x - _GAP,
            y=min(frame.at(frame.panel.x.least, value)[1] + cap / 2.0, frame.y + frame.height),
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
