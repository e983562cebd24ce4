"""A rule of known length: printed at true size it measures what it says."""

from chartgen.layout.layout_file import Layout
from chartgen.layout.legibility import POINT
from chartgen.layout.piece import LEADING, Piece, Setting
from chartgen.layout.placed import Face, Item, Rule, Text
from chartgen.layout.typesetting import wrapped
from chartgen.quantities import Millimetres
from chartgen.wording.card import AnyCard

_LENGTHS = ((100.0, 10.0, "100 mm"), (50.0, 10.0, "50 mm"))
_INCHES = 4


def ticked(
    *, length: Millimetres[float], step: Millimetres[float], inches: int, y: Millimetres[float]
) -> tuple[Rule, ...]:
    """Return a rule from x = 0 at `y`, ticked in steps above and in inches below."""
    return (
        Rule(x1=0.0, y1=y, x2=length, y2=y, weight=0.6),
        *(
            Rule(x1=tick * step, y1=y - 2.2, x2=tick * step, y2=y, weight=0.6)
            for tick in range(round(length / step) + 1)
        ),
        *(
            Rule(x1=inch * 25.4, y1=y, x2=inch * 25.4, y2=y + 1.6, weight=0.6)
            for inch in range(inches + 1)
        ),
    )


def check_rule(_card: AnyCard, _layout: Layout, setting: Setting) -> list[Piece]:
    """Return the longest rule that fits, ticked in centimetres, and inches below it."""
    length, step, label = next(entry for entry in _LENGTHS if entry[0] <= setting.width)
    size = setting.foot
    y = 3.0
    inches = min(_INCHES, int(setting.width / 25.4))
    items: list[Item] = list(ticked(length=length, step=step, inches=inches, y=y))
    words = f"{label} above, {inches} in below: if this rule is not true, print again at 100 %"
    x = max(length, inches * 25.4) + 3.0
    if x + setting.measure(words, Face.REGULAR, size) <= setting.width:
        items.append(Text(x=x, y=y + size * POINT * 0.3, text=words, size=size))
        return [Piece(height=y + 2.4, items=tuple(items))]
    line = size * POINT * LEADING
    lines = wrapped(
        words, width=setting.width, face=Face.REGULAR, size=size, measure=setting.measure
    )
    items += [
        Text(x=0.0, y=y + 2.0 + line * (number + 0.9), text=text, size=size)
        for number, text in enumerate(lines)
    ]
    return [Piece(height=y + 2.4 + line * len(lines), items=tuple(items))]
