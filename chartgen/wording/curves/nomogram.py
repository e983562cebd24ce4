"""The two nomograms as words: speed of the spindle, and power of a cut."""

from collections.abc import Callable
from dataclasses import dataclass, replace

from chartgen.charts.nomogram import Nomogram, Scale, power_nomogram, speed_nomogram
from chartgen.charts.spindle_curves import Demand
from chartgen.model.shop import LengthUnits, Shop
from chartgen.physics.cutting import force_from_torque
from chartgen.physics.kinematics import cutting_speed
from chartgen.wording.curves.scales import in_units, speed_in_units
from chartgen.wording.figure import log_axis
from chartgen.wording.language import decimal, tr
from chartgen.wording.numbers import length_label
from chartgen.wording.signs import LegendEntry

# What small lathes turn and draw: outside it numbers would only crowd the scale.
_SPINDLES = (20.0, 6000.0)
_POWERS = (10.0, 10000.0)
_FINE = (1.1, 1.2, 1.3, 1.4, 1.6, 1.7, 1.8, 1.9, 2.2, 2.4, 2.5, 2.6, 2.8, 3.5, 4.5)


@dataclass(frozen=True, slots=True, kw_only=True)
class PrintedScale:
    """One scale: its place across, and ticks as (height, text, rank), both in shares.

    `strokes` are ticks without a number: (height, rank).
    """

    name: str
    x: float
    ticks: tuple[tuple[float, str, int], ...]
    strokes: tuple[tuple[float, int], ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class PrintedNomogram:
    """The body of a nomogram card: three scales, and the heights of the line drawn in.

    `description` says in words what is shown, for a person who cannot see it.
    """

    title: str
    subtitle: str
    scales: tuple[PrintedScale, ...]
    worked: tuple[float, ...]
    description: str
    notes: tuple[str, ...]
    assumptions: tuple[str, ...]
    legend: tuple[LegendEntry, ...] = ()
    rows: tuple[tuple[str, ...], ...] = ()


def print_speed_nomogram(shop: Shop, demand: Demand | None) -> PrintedNomogram:
    """Return the nomogram of spindle speed, with one of the shop's own cuts drawn in."""
    units = shop.request.units
    nomogram = speed_nomogram(units)
    speed_unit, length = _speed_unit(units), length_label(units)
    speed, diameter = _worked(demand, units)
    read = nomogram.read(speed, diameter)
    return PrintedNomogram(
        title=tr("Spindle speed"),
        subtitle=tr("with a ruler"),
        scales=_scales(
            nomogram,
            (tr("surface {unit}", unit=speed_unit), tr("spindle rev/min"), f"Ø {length}"),
            _SPINDLES,
        ),
        worked=_heights(nomogram, speed, diameter, read),
        description=tr(
            "Three upright scales: surface speed, spindle speed, diameter; a straight "
            "line across them reads the spindle speed for the other two."
        ),
        notes=(
            tr(
                "Lay a ruler from the surface speed on the left to the diameter on the right: it "
                "crosses the middle at the spindle speed. Take the next slower step there is."
            ),
            tr(
                "Drawn in: {speed} {speed_unit} at Ø {diameter} {length} is {read} rev/min.",
                speed=_drawn(speed),
                speed_unit=speed_unit,
                diameter=_drawn(diameter),
                length=length,
                read=_rounded(read),
            ),
        ),
        assumptions=(
            tr(
                "n = {factor} v / (π d): arithmetic. Motor, grip, blade and work are not asked: "
                "the lathe chart asks them, and machine and chuck have limits of their own.",
                factor="1000" if units is LengthUnits.METRIC else "12",
            ),
            tr("On the way to the centre the diameter shrinks and so does the surface speed."),
        ),
    )


def print_power_nomogram(shop: Shop, demand: Demand | None) -> PrintedNomogram:
    """Return the nomogram of cutting power, with one of the shop's own cuts drawn in."""
    units = shop.request.units
    nomogram = power_nomogram(units)
    speed_unit = _speed_unit(units)
    speed, _ = _worked(demand, units)
    force = 500.0
    if demand is not None:
        found = float(force_from_torque(torque=demand.torque_high, diameter=demand.diameter))
        force = float(f"{min(max(found, nomogram.left.least), nomogram.left.most):.2g}")
    read = nomogram.read(force, speed)
    return PrintedNomogram(
        title=tr("Cutting power"),
        subtitle=tr("with a ruler"),
        scales=_scales(
            nomogram,
            (tr("force N"), tr("power W"), tr("surface {unit}", unit=speed_unit)),
            _POWERS,
        ),
        worked=_heights(nomogram, force, speed, read),
        description=tr(
            "Three upright scales: cutting force, power, surface speed; a straight line "
            "across them reads the power of the other two."
        ),
        notes=(
            tr(
                "Lay a ruler from the cutting force on the left to the surface speed on the right: "
                "it crosses the middle at the power the edge takes."
            ),
            tr(
                "Drawn in: {force} N at {speed} {speed_unit} is {read} W.",
                force=_drawn(force),
                speed=_drawn(speed),
                speed_unit=speed_unit,
                read=_rounded(read),
            ),
            tr("The motor must give more: belts and gears keep some of it."),
        ),
        assumptions=(
            tr(
                "P = F v / {divisor}: arithmetic only. The force of a cut is an estimate with a "
                "wide band: the command explain prints both.",
                divisor="60" if units is LengthUnits.METRIC else "197",
            ),
        ),
    )


def _speed_unit(units: LengthUnits) -> str:
    return "m/min" if units is LengthUnits.METRIC else "ft/min"


def _worked(demand: Demand | None, units: LengthUnits) -> tuple[float, float]:
    """Return surface speed and diameter of the line drawn in, in two figures as one reads them."""
    if demand is None:
        return (100.0, 25.0) if units is LengthUnits.METRIC else (300.0, 1.0)
    speed = float(cutting_speed(spindle_speed=demand.speed, diameter=demand.diameter))
    return (
        float(f"{speed_in_units(speed, units):.2g}"),
        float(f"{in_units(demand.diameter, units):.2g}"),
    )


def _heights(nomogram: Nomogram, left: float, right: float, read: float) -> tuple[float, ...]:
    return nomogram.left.y(left), nomogram.middle.y(read), nomogram.right.y(right)


def _rounded(value: float) -> str:
    """Return a reading to the three figures a ruler gives at best."""
    return decimal(f"{float(f'{value:.3g}'):g}")


def _drawn(value: float) -> str:
    """Return where the line drawn in stands on a scale."""
    return decimal(f"{value:.3g}")


def _scales(
    nomogram: Nomogram, names: tuple[str, str, str], useful: tuple[float, float]
) -> tuple[PrintedScale, ...]:
    """Return the three scales, the middle one numbered as far as small lathes need it."""
    least, most = useful
    middle = replace(
        nomogram.middle,
        least=max(nomogram.middle.least, least),
        most=min(nomogram.middle.most, most),
    )
    scales = nomogram.left, middle, nomogram.right
    return tuple(_scale(name, scale) for name, scale in zip(names, scales, strict=True))


def _scale(name: str, scale: Scale) -> PrintedScale:
    axis = log_axis(name, scale.least, scale.most)
    fine = _within(scale, lambda decade: [digit * decade for digit in _FINE])
    return PrintedScale(
        name=name,
        x=scale.x,
        ticks=tuple((scale.y(value), text, rank) for value, text, rank in axis.ticks),
        strokes=tuple((scale.y(value), 0) for value in axis.minor)
        + tuple((scale.y(value), 1) for value in fine),
    )


def _within(scale: Scale, of_decade: Callable[[float], list[float]]) -> list[float]:
    decades = [10.0**power for power in range(-2, 6)]
    values = [value for decade in decades for value in of_decade(decade)]
    return [value for value in values if scale.least <= value <= scale.most]
