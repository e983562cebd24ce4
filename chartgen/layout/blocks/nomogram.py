"""Three upright scales and the worked line across them, as high as the room that is left."""

from collections.abc import Sequence

from chartgen.errors import TooSmallError
from chartgen.layout.layout_file import Layout
from chartgen.layout.legibility import CAP_HEIGHT, POINT
from chartgen.layout.piece import Piece, Setting
from chartgen.layout.placed import Align, Face, Item, Panel, Rule, Text
from chartgen.layout.roles import figure_of, under
from chartgen.quantities import Millimetres
from chartgen.wording.card import AnyCard
from chartgen.wording.curves.nomogram import PrintedNomogram, PrintedScale

_LEAST_HEIGHT: Millimetres[float] = 60.0
_LEAST_PITCH: Millimetres[float] = 1.0
"""Strokes nearer than this run together in print."""
_LABEL_PITCH = 1.7
_LONG, _MIDDLE, _SHORT = 3.0, 2.2, 1.4
_HALO: Millimetres[float] = 0.4
_WORKED_END: Millimetres[float] = 1.2


def nomogram(card: AnyCard, layout: Layout, setting: Setting) -> list[Piece]:
    """Return the nomogram of a card as one piece.

    Raises
    ------
    TooSmallError
        If the room is too low for scales one can read.
    """
    body = card.chart
    if not isinstance(body, PrintedNomogram):
        raise TypeError("a nomogram block needs a card with a nomogram")
    notes = _notes_height(body, setting)
    height = setting.height - notes
    if height < _LEAST_HEIGHT:
        raise TooSmallError(
            f"layout {layout.name}: {height:.0f} mm are left for the scales of '{body.title}' and "
            f"they need {_LEAST_HEIGHT:.0f}; "
        )
    drawn = under(figure_of(body.title, body.description), _items(body, setting, height))
    return [Piece(height=height, items=tuple(drawn))]


def _notes_height(body: PrintedNomogram, setting: Setting) -> Millimetres[float]:
    """Return the room that the notes under the scales will take: whole lines, with some air."""
    words = sum(setting.measure(note, Face.REGULAR, setting.words) for note in body.notes)
    return setting.line * (int(words / setting.width) + 2 * len(body.notes)) + 2.0


def _items(body: PrintedNomogram, setting: Setting, height: Millimetres[float]) -> list[Item]:
    cap = setting.numbers * POINT * CAP_HEIGHT
    widest = [
        max(setting.measure(text, Face.REGULAR, setting.numbers) for _, text, _ in scale.ticks)
        for scale in body.scales
    ]
    top, bottom = setting.line * 1.4 + cap / 2.0, height - cap / 2.0 - 0.6
    left, right = widest[0] + _LONG + 1.0, setting.width - widest[2] - _LONG - 1.0

    def across(scale: PrintedScale) -> Millimetres[float]:
        return left + (right - left) * scale.x

    def down(share: float) -> Millimetres[float]:
        return bottom - (bottom - top) * share

    xs = [across(scale) for scale in body.scales]
    ys = [down(share) for share in body.worked]
    # The worked line comes first: a number it would strike through stands on paper of its own.
    items: list[Item] = [Rule(x1=xs[0], y1=ys[0], x2=xs[2], y2=ys[2], weight=0.7)]
    for number, scale in enumerate(body.scales):
        side = -1.0 if number == 0 else 1.0
        x = across(scale)
        items.append(Rule(x1=x, y1=top, x2=x, y2=bottom, weight=0.8))
        items += _ticks(scale, setting, x=x, side=side, cap=cap, length=bottom - top, foot=bottom)
        align = (Align.LEFT, Align.CENTRE, Align.RIGHT)[number]
        at = (0.0, x, setting.width)[number]
        items.append(
            Text(
                x=at,
                y=setting.line * 0.8,
                text=scale.name,
                size=setting.words,
                face=Face.BOLD,
                align=align,
            )
        )
    items += [
        Rule(x1=x - _WORKED_END, y1=y, x2=x + _WORKED_END, y2=y, weight=2.0)
        for x, y in zip(xs, ys, strict=True)
    ]
    return items


def _ticks(
    scale: PrintedScale,
    setting: Setting,
    *,
    x: Millimetres[float],
    side: float,
    cap: Millimetres[float],
    length: Millimetres[float],
    foot: Millimetres[float],
) -> list[Item]:
    """Return numbers and strokes: the wanted ones first, others where they stay apart."""
    items: list[Item] = []
    drawn: list[float] = []
    labels: list[float] = []
    for share, text, _ in sorted(scale.ticks, key=lambda tick: (tick[2], tick[0])):
        y = foot - length * share
        if _is_apart(y, labels, _LABEL_PITCH * cap):
            labels.append(y)
            width = setting.measure(text, Face.REGULAR, setting.numbers)
            left = x + side * (_LONG + 1.0) - (width if side < 0 else 0.0)
            if 0.0 < scale.x < 1.0:
                # Only the middle scale stands in the way of the worked line.
                items.append(
                    Panel(
                        x=left - _HALO,
                        y=y - cap / 2.0 - _HALO,
                        width=width + 2.0 * _HALO,
                        height=cap + 2.0 * _HALO,
                        paper=True,
                    )
                )
            items.append(Rule(x1=x, y1=y, x2=x + side * _LONG, y2=y, weight=0.6))
            items.append(
                Text(
                    x=x + side * (_LONG + 1.0),
                    y=y + cap / 2.0,
                    text=text,
                    size=setting.numbers,
                    align=Align.LEFT if side > 0 else Align.RIGHT,
                )
            )
            drawn.append(y)
    for share, rank in sorted(scale.strokes, key=lambda stroke: stroke[1]):
        y = foot - length * share
        if _is_apart(y, drawn, _LEAST_PITCH):
            drawn.append(y)
            reach = _SHORT if rank else _MIDDLE
            items.append(Rule(x1=x, y1=y, x2=x + side * reach, y2=y, weight=0.4))
    return items


def _is_apart(y: float, others: Sequence[float], least: float) -> bool:
    return all(abs(y - other) >= least - 1e-9 for other in others)
