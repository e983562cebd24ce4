"""A rule of known length: printed at true size it measures what it says."""

from chartgen.errors import TooSmallError
from chartgen.layout.layout_file import Layout
from chartgen.layout.legibility import POINT
from chartgen.layout.piece import LEADING, Piece, Setting
from chartgen.layout.placed import Face, Item, Rule, Text
from chartgen.layout.typesetting import wrapped
from chartgen.wording.card import AnyCard

_LENGTHS = (100.0, 50.0, 40.0, 30.0)
_STEP = 10.0
_INCHES = 4


def check_rule(_card: AnyCard, layout: Layout, setting: Setting) -> list[Piece]:
    """Return the longest rule that fits, ticked in centimetres, and inches below it.

    Raises
    ------
    TooSmallError
        If not even the shortest fits.
    """
    length = next((length for length in _LENGTHS if length <= setting.width), None)
    if length is None:
        raise TooSmallError(
            f"layout {layout.name}: the side is {setting.width:.0f} mm wide and the shortest rule "
            f"that tells the scale of a print {_LENGTHS[-1]:.0f} mm; "
        )
    size = setting.foot
    y = 3.0
    items: list[Item] = [Rule(x1=0.0, y1=y, x2=length, y2=y, weight=0.6)]
    for tick in range(round(length / _STEP) + 1):
        x = tick * _STEP
        items.append(Rule(x1=x, y1=y - 2.2, x2=x, y2=y, weight=0.6))
    inches = min(_INCHES, int(setting.width / 25.4))
    items += [
        Rule(x1=inch * 25.4, y1=y, x2=inch * 25.4, y2=y + 1.6, weight=0.6)
        for inch in range(inches + 1)
    ]
    words = (
        f"{length:.0f} mm above, {inches} in below: if this rule is not true, print again at 100 %"
    )
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
