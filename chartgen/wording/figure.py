"""A figure as words and plain numbers: axes, curves, bands and dots, all labels made.

Numbers are in the units of the card. A layout decides where labels stand, a renderer only
draws; nothing is said by colour, so each curve has a dash of its own and its name beside it.
"""

import math
from dataclasses import dataclass
from enum import Enum

from chartgen.wording.language import decimal
from chartgen.wording.signs import LegendEntry

Point = tuple[float, float]


class Dash(Enum):
    """How a curve is told from its neighbours: lengths of line and gap in points."""

    SOLID = ()
    SOLID_NOTCHED = (12.0, 1.4)
    SOLID_BARRED = (8.0, 1.4, 8.0, 1.4, 1.4, 1.4)
    LONG = (6.0, 2.4)
    LONG_DOT = (6.0, 2.0, 1.2, 2.0)
    LONG_DOT_DOT = (6.0, 1.8, 1.2, 1.8, 1.2, 1.8)
    SHORT = (2.4, 2.4)
    SHORT_WIDE = (2.4, 4.8)
    SHORT_PAIRS = (2.4, 1.6, 2.4, 5.0)


class DotShape(Enum):
    """A mark at one point, told apart by shape."""

    DISC = "disc"
    RING = "ring"
    SQUARE = "square"
    CROSS = "cross"
    BAR = "bar"


@dataclass(frozen=True, slots=True, kw_only=True)
class PrintedAxis:
    """An axis from `least` to `most`, logarithmic or even; `name` with its unit.

    `ticks` are (value, text, rank): labels of rank 0 are wanted first, further ones where
    there is room. `minor` are short strokes without a label.
    """

    name: str
    least: float
    most: float
    logarithmic: bool
    ticks: tuple[tuple[float, str, int], ...]
    minor: tuple[float, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class PrintedCurve:
    """A curve: points in order, broken into unbroken parts; `label` stands beside it."""

    parts: tuple[tuple[Point, ...], ...]
    dash: Dash = Dash.SOLID
    weight: float = 1.4
    label: str = ""
    bold: bool = False
    fine: bool = False


@dataclass(frozen=True, slots=True)
class PrintedBand:
    """A closed outline, filled with a pattern of lines."""

    outline: tuple[Point, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class PrintedDot:
    """A mark at a point, with or without a label beside it."""

    at: Point
    shape: DotShape
    label: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class PrintedPanel:
    """One pair of axes and what stands in it. Labels at a point are (point, text)."""

    title: str
    x: PrintedAxis
    y: PrintedAxis
    curves: tuple[PrintedCurve, ...] = ()
    bands: tuple[PrintedBand, ...] = ()
    dots: tuple[PrintedDot, ...] = ()
    letters: tuple[tuple[Point, str], ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class PrintedCurves:
    """The body of a card with curves: panels side by side, notes and legend below.

    `description` says in words what the figure shows, for a person who cannot see it.
    """

    title: str
    subtitle: str
    panels: tuple[PrintedPanel, ...]
    notes: tuple[str, ...]
    legend: tuple[LegendEntry, ...]
    description: str
    rows: tuple[tuple[str, ...], ...] = ()


# Ticks of a decade by rank: 1-2-5 first, then what fills the widest gaps.
_RANKS = ((1.0, 2.0, 5.0), (3.0,), (1.5, 4.0, 7.0), (6.0, 8.0))
_SLIP = 1e-9


def log_axis(name: str, least: float, most: float) -> PrintedAxis:
    """Return a logarithmic axis with 1-2-5 ticks in plain numbers, finer ones to spare."""
    ticks: list[tuple[float, str, int]] = []
    minor: list[float] = []
    for decade in range(math.floor(math.log10(least)), math.ceil(math.log10(most)) + 1):
        for rank, digits in enumerate(_RANKS):
            for digit in digits:
                value = float(f"{digit}e{decade}")
                if least * (1 - _SLIP) <= value <= most * (1 + _SLIP):
                    ticks.append((value, plain(value), rank))
        minor += [float(f"{digit}e{decade}") for digit in (3, 4, 6, 7, 8, 9)]
    inside = tuple(value for value in minor if least < value < most)
    return PrintedAxis(
        name=name,
        least=least,
        most=most,
        logarithmic=True,
        ticks=tuple(sorted(ticks)),
        minor=inside,
    )


def even_axis(name: str, least: float, most: float, wanted: int = 6) -> PrintedAxis:
    """Return an even axis with ticks at a round step, about as many as wanted."""
    rough = (most - least) / wanted
    power = 10.0 ** math.floor(math.log10(rough))
    step = next(s * power for s in (1.0, 2.0, 5.0, 10.0) if s * power >= rough * (1 - _SLIP))
    first = math.ceil(least / step - _SLIP)
    last = math.floor(most / step + _SLIP)
    ticks = tuple(
        (round(i * step, 9), plain(round(i * step, 9)), 0) for i in range(first, last + 1)
    )
    return PrintedAxis(name=name, least=least, most=most, logarithmic=False, ticks=ticks)


def plain(value: float) -> str:
    """Return a tick's number without exponents or needless zeros."""
    text = f"{value:.6f}".rstrip("0").rstrip(".")
    return decimal(text or "0")


def round_outward(least: float, most: float) -> tuple[float, float]:
    """Return a span widened to the next half-decade steps, so that no curve lies on the frame."""
    steps = (1.0, 1.5, 2.0, 3.0, 4.0, 5.0, 6.0, 8.0, 10.0)

    def down(value: float) -> float:
        power = 10.0 ** math.floor(math.log10(value))
        return max(s * power for s in steps if s * power <= value * (1 + _SLIP))

    def up(value: float) -> float:
        power = 10.0 ** math.floor(math.log10(value))
        return min(s * power for s in steps if s * power >= value * (1 - _SLIP))

    return down(least), up(most)
