"""What readings in a cut can tell of: each unknown with what is assumed of it and how firmly.

Readings in a cut are products, so each unknown is the logarithm of a factor: nought where the
assumption is just right. How firmly it is assumed is the spread of that logarithm.
"""

import math
from dataclasses import dataclass

from chartgen.limits.allowances import Allowances, allowances_for
from chartgen.limits.spindle import make_spindle
from chartgen.model.material import Material
from chartgen.model.measured import Assumption
from chartgen.model.motor import MotorKind, PowerIs
from chartgen.model.shop import Shop
from chartgen.reference.allowances import load_allowances
from chartgen.reference.reading_errors import ReadingError, load_reading_errors

# A span that 19 of 20 cases keep to is four times their standard deviation.
SPAN_OVER_SPREAD = 4.0

RESERVE = "reserve"
DRIVE = "drive"
MOTOR = "motor"
STALL = "stall"
MARGINAL = "marginal"
LINE = "line"


@dataclass(frozen=True, slots=True, kw_only=True)
class Unknown:
    """A factor: the value assumed, the spread of its logarithm, its bounds.

    `assumption` is None where no card rests on it: it only stands between reading and value.
    """

    name: str
    assumed: float
    spread: float
    least: float = 0.0
    most: float = math.inf
    assumption: Assumption | None = None


def span_spread(least: float, most: float) -> float:
    """Return the spread of the logarithm of something that 19 of 20 times lies in a span."""
    return math.log(most / least) / SPAN_OVER_SPREAD


def share_spread(share: float) -> float:
    """Return the spread of the logarithm of something known to a share either way."""
    return math.log1p(share) / (SPAN_OVER_SPREAD / 2.0)


def unknowns_of(shop: Shop, materials: tuple[Material, ...]) -> dict[str, Unknown]:
    """Return the unknowns of a shop that has no learned values, in a fixed order."""
    allowances = allowances_for(shop)
    found = [
        _reserve(allowances),
        _drive(shop, allowances),
        *_motor(shop, allowances),
        _marginal(shop.lathe.motor.kind),
        _line(shop),
        *(of_material(one, allowances) for one in materials),
    ]
    return {one.name: one for one in found}


def material_name(key: str) -> str:
    """Return the name of the unknown that one material's force data leave."""
    return f"material {key}"


def of_material(material: Material, allowances: Allowances) -> Unknown:
    """Return how far the published force of a material may be off: its printed band."""
    band = allowances.thin_chip_band
    if material.force is not None:
        band = max(band, material.force.band_high.value)
    return Unknown(name=material_name(material.key), assumed=1.0, spread=share_spread(band))


def _reserve(allowances: Allowances) -> Unknown:
    entry = load_allowances()["confined_chip"]
    return Unknown(
        name=RESERVE,
        assumed=allowances.confined_chip,
        spread=span_spread(entry.least, entry.most),
        least=entry.least,
        most=entry.most,
        assumption=Assumption.FORCE_RESERVE,
    )


def _drive(shop: Shop, allowances: Allowances) -> Unknown:
    lathe = shop.lathe
    entry = load_allowances()["transmission_efficiency"]
    is_known = bool(lathe.drive.elements) or lathe.drive.efficiency is not None
    spread = (
        share_spread(_error("drive_elements").most)
        if is_known
        else span_spread(entry.least, entry.most)
    )
    return Unknown(
        name=DRIVE,
        assumed=make_spindle(lathe, allowances).efficiency,
        spread=spread,
        least=entry.least,
        most=entry.most,
        # Readings at the spindle itself leave no drive to speak of.
        assumption=None if lathe.motor.kind is MotorKind.MEASURED else Assumption.DRIVE_EFFICIENCY,
    )


def _motor(shop: Shop, allowances: Allowances) -> list[Unknown]:
    motor, found = shop.lathe.motor, []
    if motor.power_is is PowerIs.INPUT:
        entry = load_allowances()[_EFFICIENCY[motor.kind]]
        found.append(
            Unknown(
                name=MOTOR,
                assumed=motor.efficiency or entry_value(allowances, entry.name),
                spread=span_spread(entry.least, entry.most),
                least=entry.least,
                most=entry.most,
                assumption=Assumption.MOTOR_EFFICIENCY,
            )
        )
    if motor.kind in _STALL:
        name, assumption, stated = _STALL[motor.kind]
        entry = load_allowances()[name]
        # An inverter's limit under its own overload would be none: the engine takes the larger.
        least = motor.overload or allowances.inverter_one_cut
        least = least if motor.kind is MotorKind.INVERTER else entry.least
        found.append(
            Unknown(
                name=STALL,
                assumed=getattr(motor, stated) or entry_value(allowances, name),
                spread=span_spread(entry.least, entry.most),
                least=max(least, entry.least),
                most=entry.most,
                assumption=assumption,
            )
        )
    return found


def entry_value(allowances: Allowances, name: str) -> float:
    """Return an allowance by its name."""
    value: float = getattr(allowances, name)
    return value


_EFFICIENCY = {
    MotorKind.THREE_PHASE: "three_phase_efficiency",
    MotorKind.SINGLE_PHASE: "single_phase_efficiency",
    MotorKind.INVERTER: "inverter_efficiency",
    MotorKind.BRUSHED_DC: "dc_efficiency",
    MotorKind.BRUSHLESS: "brushless_efficiency",
}
_STALL = {
    MotorKind.THREE_PHASE: ("three_phase_breakdown", Assumption.BREAKDOWN, "breakdown"),
    MotorKind.SINGLE_PHASE: ("single_phase_breakdown", Assumption.BREAKDOWN, "breakdown"),
    MotorKind.INVERTER: ("inverter_stall", Assumption.CURRENT_LIMIT, "current_limit"),
    MotorKind.BRUSHED_DC: ("dc_stall", Assumption.CURRENT_LIMIT, "current_limit"),
    MotorKind.BRUSHLESS: ("brushless_stall", Assumption.CURRENT_LIMIT, "current_limit"),
}


def _marginal(kind: MotorKind) -> Unknown:
    error = _error(f"marginal_{kind.value.replace('-', '_')}")
    assumed = math.sqrt(error.least * error.most)
    return Unknown(name=MARGINAL, assumed=assumed, spread=span_spread(error.least, error.most))


def _line(shop: Shop) -> Unknown:
    motor = shop.lathe.motor
    name = "rated_slip"
    if motor.kind is MotorKind.BRUSHED_DC:
        name = "direct_current_line" if motor.fastest else "direct_current_line_assumed"
    return Unknown(name=LINE, assumed=1.0, spread=share_spread(_error(name).most))


def _error(name: str) -> ReadingError:
    return load_reading_errors()[name]
