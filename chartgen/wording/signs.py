"""The signs beside a cell and what the legend says of them.

Nothing is said by colour: a letter names what is met first when the cut is pushed harder,
and small signs say how far the cell can be trusted.
"""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from itertools import chain

from chartgen.charts.speed_feed import ChartCell, SpeedFeedChart
from chartgen.model.blade_letters import letter_of
from chartgen.wording.language import tr

TIGHT = "!"
SLOW = "~"
POWER_FEED = "*"
DIG_IN = "^"


def legend_lead() -> str:
    """Return what stands before the letters on the front of a card."""
    return tr("First met if pushed harder:")


@dataclass(frozen=True, slots=True)
class LegendEntry:
    """A sign, its few words for the front of a card and its whole sentence.

    `on_back`: the few words are not enough, so the back repeats the sign with its sentence.
    """

    sign: str
    short: str
    sentence: str
    on_back: bool = False


_LETTERS = {
    "T": LegendEntry("T", "motor torque", "The motor runs out of torque first."),
    "S": LegendEntry("S", "stall", "The spindle stalls first."),
    "G": LegendEntry("G", "grip", "The work slips in the jaws first: tighten, or hold it closer."),
    "B": LegendEntry("B", "blade bends", "The blade is stressed too hard: let it stand out less."),
    "D": LegendEntry("D", "tip drops", "The tip sinks too far: let the blade stand out less."),
    "L": LegendEntry("L", "blade tips", "The blade tips over sideways: let it stand out less."),
    "W": LegendEntry("W", "bar bends", "The bar bends away: cut closer to the jaws."),
    "J": LegendEntry("J", "bar at jaws", "The bar bends at the jaws: cut closer to them."),
    "F": LegendEntry("F", "feed of this width", "The edge of this width takes no more feed."),
    "P": LegendEntry("P", "hand pace", "The hand cannot turn the handle faster and even."),
    "R": LegendEntry("R", "reach", "The blade sticks out too little for this depth."),
    "Z": LegendEntry("Z", "slowest speed", "The slowest spindle speed is too fast here."),
    "X": LegendEntry("X", "gearbox feed", "No gearbox feed lies inside the window."),
}
_SIGNS = (
    LegendEntry(
        TIGHT,
        "tight",
        "Tight: a narrow window, a deep slot or a weak grip. Keep to the numbers; better "
        "another blade, or the saw.",
        on_back=True,
    ),
    LegendEntry(
        SLOW,
        "slow for this edge",
        "Slower than this edge likes: metal may build up on it. Expect a rougher, noisier cut.",
        on_back=True,
    ),
    LegendEntry(
        POWER_FEED,
        "use power feed",
        "The handle turns slower than a hand can keep even: use power feed if you have it.",
        on_back=True,
    ),
    LegendEntry(
        DIG_IN,
        "slack",
        "Tight, and half of your backlash, let in at once, is more than this cut swallows: keep "
        "the slack taken up, snug the gibs.",
        on_back=True,
    ),
)
_SAW = LegendEntry(
    "saw",
    "no window at all",
    "No window for any blade of this shop: saw it off and face the end.",
    on_back=True,
)


def _other_blade(charts: Sequence[SpeedFeedChart], lost: Sequence[ChartCell]) -> LegendEntry:
    """Return what "use A" means; a card that does not show the blade says which it is."""
    shop = charts[0].shop
    shown = {column.blade.name for chart in charts for column in chart.columns}
    offered = {cell.way_out.name for cell in lost if cell.way_out is not None}
    letters = {b.name: letter_of(shop.blades, b.name) for b in shop.blades if b.name in offered}
    hidden = [
        tr("{letter} is {name}", letter=letter, name=name)
        for name, letter in letters.items()
        if name not in shown
    ]
    return LegendEntry(
        tr("use {blade}", blade="/".join(letters.values())),
        tr("no window; {which}", which=", ".join(hidden))
        if hidden
        else tr("no window, it has one"),
        tr("No window for this blade at this diameter; the blade with that letter has one."),
        on_back=True,
    )


def sign_of(cell: ChartCell) -> str:
    """Return the signs of a cell: the letter of what comes first, then how far to trust it."""
    if cell.cut is None:
        return cell.telling_reason.mark
    # A cut that its own slack can spoil is treated as tight: one sign says both.
    remarks = {
        DIG_IN: not cell.cut.swallows_backlash,
        TIGHT: cell.cut.is_tight and cell.cut.swallows_backlash,
        SLOW: cell.cut.is_slow,
        POWER_FEED: cell.cut.wants_power_feed,
    }
    return cell.ceiling_reason.mark + "".join(sign for sign, holds in remarks.items() if holds)


def sign_order() -> tuple[str, ...]:
    """Return every sign of a cell in the order of a legend."""
    return (*_LETTERS, *(entry.sign for entry in _SIGNS))


def legend_of(charts: Sequence[SpeedFeedChart]) -> tuple[LegendEntry, ...]:
    """Return the legend of the signs that some charts really use, in a fixed order."""
    used = {
        character
        for chart in charts
        for row in chart.rows
        for cell in row
        for character in sign_of(cell)
    }
    letters = [_said(entry) for mark, entry in _LETTERS.items() if mark in used]
    signs = [_said(entry) for entry in _SIGNS if entry.sign in used]
    lost = [cell for chart in charts for row in chart.rows for cell in row if cell.cut is None]
    ways = []
    if any(cell.way_out for cell in lost):
        ways.append(_other_blade(charts, lost))
    if any(cell.way_out is None for cell in lost):
        ways.append(replace(_said(_SAW), sign=tr(_SAW.sign)))
    return (*letters, *signs, *ways)


def legend_of_letters(marks: set[str]) -> tuple[LegendEntry, ...]:
    """Return the legend of some letters, in the order of every card."""
    return tuple(_said(entry) for mark, entry in _LETTERS.items() if mark in marks)


def legend_words() -> frozenset[str]:
    """Return everything that the legends of charts may say, in English."""
    entries = (*_LETTERS.values(), *_SIGNS, _SAW)
    return frozenset(chain.from_iterable((entry.short, entry.sentence) for entry in entries))


def _said(entry: LegendEntry) -> LegendEntry:
    """Return an entry in the language being spoken; its sign is the same in all of them."""
    return replace(entry, short=tr(entry.short), sentence=tr(entry.sentence))
