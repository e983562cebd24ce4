"""Amounts of a job's card: needs rounded up, what there is rounded down, times as they are."""

import math
import re

from chartgen.model.shop import LengthUnits
from chartgen.physics.kinematics import feed_rate
from chartgen.planning.operations import FedBy
from chartgen.planning.plan import MachineCut, Parting
from chartgen.quantities import (
    CubicMm,
    Kilograms,
    Millimetres,
    Minutes,
    NewtonMetres,
    Newtons,
    TurnsPerMinute,
)
from chartgen.wording.language import decimal, tr, trn
from chartgen.wording.numbers import length_label, write_length, write_pace, write_speed

_TEN = 10.0
_HUNDRED = 100.0
_SLIP = 1e-9
_INCH = 25.4
_POUND = 0.45359237
# A pace may be a little slower than the feed asks, never faster.
_SLOWEST_PACE = 0.8
_BEATS = (40.0, 120.0)
_BEST_BEAT = 72.0
# Parts of a turn that the eye finds on a dial without counting lines.
_PARTS = (1, 2, 4, 8)


def length(value: Millimetres[float], units: LengthUnits) -> str:
    """Return a length with its unit, to a tenth of a millimetre where it is no plain number."""
    return f"{bare(value, units)} {length_label(units)}"


def bare(value: Millimetres[float], units: LengthUnits) -> str:
    """Return a length without its unit."""
    if units is LengthUnits.METRIC:
        return decimal(f"{round(value, 2):g}")
    return write_length(value, units)


def length_up(value: Millimetres[float], units: LengthUnits) -> str:
    """Return a length rounded up to a tenth of a millimetre or a hundredth of an inch."""
    if units is LengthUnits.METRIC:
        number = f"{math.ceil(value * 10.0 - 1e-6) / 10.0:g}"
    else:
        number = f"{math.ceil(value / _INCH * 100.0 - 1e-6) / 100.0:.2f}"
    return f"{decimal(number)} {length_label(units)}"


def deep(value: Millimetres[float], units: LengthUnits) -> str:
    """Return how deep a drill goes, up to half a millimetre or a fiftieth of an inch."""
    if units is LengthUnits.METRIC:
        return decimal(f"{math.ceil(value * 2.0 - 1e-6) / 2.0:g}")
    return decimal(f"{math.ceil(value / _INCH * 50.0 - 1e-6) / 50.0:.2f}")


def across(value: Millimetres[float], units: LengthUnits) -> str:
    """Return a diameter."""
    return f"Ø {bare(value, units)}"


def size(diameter: Millimetres[float], long: Millimetres[float], units: LengthUnits) -> str:
    """Return what is round and as long as it says."""
    return tr(
        "{diameter} by {length}", diameter=across(diameter, units), length=length(long, units)
    )


def speed(cut: MachineCut) -> str:
    """Return spindle speed and drive position."""
    return f"{write_speed(cut.spindle_speed)} {cut.position.mark}".strip()


def pace(cut: MachineCut, parting: Parting | None = None) -> str:
    """Return the seconds of one turn of the wheel that feeds, or what feeds instead.

    A blade's pace is rounded inside its window, as on the lathe chart; any other never faster.
    """
    if cut.fed_by is FedBy.POWER:
        return tr("power|feed")
    if cut.seconds_per_turn is None:
        return "–"
    return write_pace(
        seconds=cut.seconds_per_turn,
        feed=cut.feed,
        floor=parting.floor if parting else _SLOWEST_PACE * cut.feed,
        ceiling=parting.ceiling if parting else cut.feed,
    )


def beats(cut: MachineCut) -> str:
    """Return how fast a metronome ticks for a hand feed; empty where no hand feeds."""
    if cut.seconds_per_turn is None:
        return ""
    turns: TurnsPerMinute[float] = 60.0 / cut.seconds_per_turn
    low, high = _BEATS
    fits = [part for part in _PARTS if low <= turns * part <= high]
    if not fits:
        return ""
    part = min(fits, key=lambda one: abs(math.log(turns * one / _BEST_BEAT)))
    beat = math.floor(turns * part + _SLIP)
    return {
        1: tr("{number} beats a minute, a turn each", number=beat),
        2: tr("{number} beats a minute, half a turn each", number=beat),
        4: tr("{number} beats a minute, a quarter turn each", number=beat),
        8: tr("{number} beats a minute, an eighth of a turn each", number=beat),
    }[part]


def rate(cut: MachineCut, units: LengthUnits) -> str:
    """Return the pace of the slide, rounded down."""
    value = float(feed_rate(feed=cut.feed, spindle_speed=cut.spindle_speed))
    if units is LengthUnits.METRIC:
        return f"{math.floor(value + _SLIP):d} mm/min"
    return decimal(f"{math.floor(value / _INCH * 10.0 + _SLIP) / 10.0:.1f} in/min")


def newtons_up(force: Newtons[float]) -> str:
    """Return a force that is needed, rounded up to ten."""
    return f"{math.ceil(force / _TEN - _SLIP) * 10:d}"


def newtons_down(force: Newtons[float]) -> str:
    """Return the low side of a force, rounded down to ten, to one where it is small."""
    if force < _HUNDRED:
        return f"{math.floor(force):d}"
    return f"{math.floor(force / _TEN + _SLIP) * 10:d}"


def kilonewtons_up(force: Newtons[float], *, there: Newtons[float]) -> str:
    """Return a grip that is needed; all of it is written as what there is, and as no more."""
    if force <= there < math.ceil(force / 100.0 - _SLIP) * 100.0:
        return kilonewtons_down(there)
    return decimal(f"{math.ceil(force / 100.0 - _SLIP) / 10.0:.1f} kN")


def kilonewtons_down(force: Newtons[float]) -> str:
    """Return a grip that there is."""
    return decimal(f"{math.floor(force / 100.0 + _SLIP) / 10.0:.1f} kN")


def torque_up(torque: NewtonMetres[float], *, there: NewtonMetres[float]) -> str:
    """Return a torque that is needed, without its unit; small ones to a hundredth.

    All that there is is written as that, and as no more: else it would read as too much.
    """
    steps = 100.0 if torque < _TEN else 10.0
    if torque <= there * (1.0 + _SLIP) and math.ceil(torque * steps - _SLIP) > there * steps:
        return torque_down(there).split()[0]
    if torque < _TEN:
        return decimal(f"{math.ceil(torque * 100.0 - _SLIP) / 100.0:.2f}")
    return decimal(f"{math.ceil(torque * 10.0 - _SLIP) / 10.0:.1f}")


def torque_down(torque: NewtonMetres[float]) -> str:
    """Return a torque that there is, with its unit."""
    if torque < _TEN:
        number = f"{math.floor(torque * 100.0 + _SLIP) / 100.0:.2f}"
    else:
        number = f"{math.floor(torque * 10.0 + _SLIP) / 10.0:.1f}"
    return f"{decimal(number)} N·m"


def whole_up(value: float) -> str:
    """Return a number rounded up to the whole."""
    return f"{math.ceil(value - _SLIP):d}"


def whole_down(value: float) -> str:
    """Return a number rounded down to the whole."""
    return f"{math.floor(value + _SLIP):d}"


def minutes(time: Minutes[float]) -> str:
    """Return a time for a table: to a tenth of a minute, up."""
    return decimal(f"{math.ceil(time * 10.0 - 1e-6) / 10.0:.1f}")


def minutes_in_words(time: Minutes[float]) -> str:
    """Return a time with its unit: hours from two of them on."""
    whole = math.ceil(time - 1e-6)
    if whole < 120:  # noqa: PLR2004 - two hours
        return f"{whole} min"
    hours, rest = divmod(whole, 60)
    return f"{hours} h {rest:02d} min"


def _two_figures(value: float) -> str:
    """Return a number to two figures, and never with a power of ten."""
    rounded = float(f"{value:.2g}")
    return f"{rounded:.6f}".rstrip("0").rstrip(".")


def mass(value: Kilograms[float], units: LengthUnits) -> str:
    """Return a mass."""
    if units is LengthUnits.INCH:
        return decimal(f"{_two_figures(value / _POUND)} lb")
    if value >= 1.0:
        return decimal(f"{_two_figures(value)} kg")
    return decimal(f"{_two_figures(1000.0 * value)} g")


def volume(value: CubicMm[float], units: LengthUnits) -> str:
    """Return a volume."""
    if units is LengthUnits.INCH:
        return decimal(f"{_two_figures(value / _INCH**3)} in³")
    return decimal(f"{_two_figures(value / 1000.0)} cm³")


def pieces(number: int) -> str:
    """Return a number of pieces."""
    return trn("{number} piece", "{number} pieces", number)


def sentence(text: str) -> str:
    """Return text with a capital at its head and a full stop."""
    text = re.sub(r"\s+", " ", text).strip()
    return f"{text[0].upper()}{text[1:]}{'' if text[-1] in '.!?' else '.'}"
