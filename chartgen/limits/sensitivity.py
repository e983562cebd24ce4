"""Which assumption moves a cell's answer most, found by working it out again.

Each assumption is set to both ends of what it may well be; what is worth measuring is what
changes the recommended pace and the room of the window most.
"""

import math
from collections.abc import Callable, Iterator
from dataclasses import dataclass, replace

from chartgen.limits.allowances import Allowances, allowances_for, edge_radius
from chartgen.limits.holding import nearest_chuck
from chartgen.limits.run import windows
from chartgen.limits.spindle import transmission_efficiency
from chartgen.model.blade import Blade
from chartgen.model.lathe import BarSurface, ChuckKind
from chartgen.model.material import Material
from chartgen.model.motor import MotorKind, PowerIs
from chartgen.model.shop import Shop
from chartgen.quantities import Millimetres, MillimetresPerRev, RevsPerMinute
from chartgen.reference.chucks import load_holding

# A cell that loses its window has moved further than any number can say.
_LOST = 10.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Outcome:
    """The answer with an assumption at one end: feed is NaN where the window is gone."""

    assumed: str
    spindle_speed: RevsPerMinute[float]
    feed: MillimetresPerRev[float]
    room: float

    @property
    def has_window(self) -> bool:
        """Whether a window is left."""
        return not math.isnan(self.feed)


@dataclass(frozen=True, slots=True, kw_only=True)
class Sensitivity:
    """One assumption with the answers at its ends, and how far apart they are."""

    assumption: str
    measure_by: str
    low: Outcome
    high: Outcome
    spread: float


Change = tuple[str, Shop, Blade, Material]
WithAllowance = Callable[[str, float], Shop]


def sensitivities(
    shop: Shop,
    *,
    material: Material,
    blade: Blade,
    diameter: Millimetres[float],
    bore: Millimetres[float] = 0.0,
) -> tuple[Sensitivity, ...]:
    """Return the assumptions behind a cell, the one that moves it most first."""
    found = []
    for name, measure_by, low, high in _assumptions(shop, blade, material):
        ends = [_outcome(change, diameter, bore) for change in (low, high)]
        found.append(
            Sensitivity(
                assumption=name,
                measure_by=measure_by,
                low=ends[0],
                high=ends[1],
                spread=_spread(*ends),
            )
        )
    return tuple(sorted(found, key=lambda s: -s.spread))


def _outcome(change: Change, diameter: float, bore: float) -> Outcome:
    assumed, shop, blade, material = change
    cell = windows(shop, materials=[material], diameters=[diameter], blades=[blade], bore=bore)
    index = (0, 0, 0)
    return Outcome(
        assumed=assumed,
        spindle_speed=float(cell.spindle_speed[index]),
        feed=float(cell.feed[index]),
        room=float(cell.ceiling[index] / cell.floor[index]),
    )


def _spread(low: Outcome, high: Outcome) -> float:
    """Return how far two answers lie apart: pace and room, both as ratios."""
    if not (low.has_window and high.has_window):
        both_lost = low.has_window == high.has_window
        rooms = max(low.room, 1e-3) / max(high.room, 1e-3)
        return abs(math.log(rooms)) if both_lost else _LOST
    pace = abs(math.log(low.feed * low.spindle_speed / (high.feed * high.spindle_speed)))
    return pace + abs(math.log(low.room / high.room))


def _assumptions(
    shop: Shop, blade: Blade, material: Material
) -> Iterator[tuple[str, str, Change, Change]]:
    """Yield each assumption: its name, what would settle it, and both of its ends."""
    allowances = allowances_for(shop)

    def with_allowance(name: str, value: float) -> Shop:
        return replace(shop, allowances={**shop.allowances, name: value})

    if material.force is not None:
        yield _force(with_allowance, allowances, blade, material)
    radius = edge_radius(blade, allowances)
    yield (
        "edge radius",
        "a magnifier and a gauge wire, or a fresh edge",
        (f"{radius / 1.5:.0f} µm", shop, replace(blade, edge_radius=radius / 1.5), material),
        (f"{radius * 1.5:.0f} µm", shop, replace(blade, edge_radius=radius * 1.5), material),
    )
    if shop.lathe.motor.kind is not MotorKind.MEASURED:
        yield from _drive(shop, blade, material, allowances)
    if shop.lathe.chuck.kind is not ChuckKind.COLLET:
        yield from _grip(shop, allowances, blade, material)


def _force(
    with_allowance: WithAllowance, allowances: Allowances, blade: Blade, material: Material
) -> tuple[str, str, Change, Change]:
    band = allowances.thin_chip_band
    chip = allowances.confined_chip
    low, high = (with_allowance("confined_chip", chip * share) for share in (1 - band, 1 + band))
    return (
        "cutting force",
        "a watt meter in a cut and out of it",
        (f"-{100 * band:.0f} %", low, blade, material),
        (f"+{100 * band:.0f} %", high, blade, material),
    )


def _drive(
    shop: Shop, blade: Blade, material: Material, allowances: Allowances
) -> Iterator[tuple[str, str, Change, Change]]:
    efficiency = transmission_efficiency(shop.lathe, allowances)

    def geared(value: float) -> Shop:
        drive = replace(shop.lathe.drive, efficiency=value)
        return replace(shop, lathe=replace(shop.lathe, drive=drive))

    slack, best = max(0.5, efficiency - 0.1), min(1.0, efficiency + 0.05)
    yield (
        "drive efficiency",
        "a tachometer in a heavy cut",
        (f"{100 * slack:.0f} %", geared(slack), blade, material),
        (f"{100 * best:.0f} %", geared(best), blade, material),
    )
    motor = shop.lathe.motor
    if motor.power_is is PowerIs.SHAFT:
        drawn = replace(motor, power_is=PowerIs.INPUT)
        mistaken = replace(shop, lathe=replace(shop.lathe, motor=drawn))
        yield (
            "shaft or input power",
            "the motor's own plate",
            ("input", mistaken, blade, material),
            ("shaft", shop, blade, material),
        )


def _grip(
    shop: Shop, allowances: Allowances, blade: Blade, material: Material
) -> Iterator[tuple[str, str, Change, Change]]:
    chuck = shop.lathe.chuck
    if chuck.key_torque is None:
        # As a pull on the key, so that neither end is lifted by the light pull assumed.
        per_torque = load_holding().grip.grip_per_key_torque.value
        full = nearest_chuck(chuck.size)[0].static_grip.value / per_torque
        share = allowances.grip_share / 2.0
        torques = (share * full, full)
        words = f"{100 * share:.0f} % of the table", "the table's"
    else:
        torques = (0.7 * chuck.key_torque, 1.3 * chuck.key_torque)
        words = "-30 %", "+30 %"
    low, high = (
        replace(shop, lathe=replace(shop.lathe, chuck=replace(chuck, key_torque=torque)))
        for torque in torques
    )
    yield (
        "grip of the chuck",
        "a torque wrench on the key",
        (words[0], low, blade, material),
        (words[1], high, blade, material),
    )
    surfaces = (BarSurface.GROUND, BarSurface.BLACK)
    smooth, rough = (
        replace(shop, work=replace(shop.work, surface=surface)) for surface in surfaces
    )
    yield (
        "surface in the jaws",
        "looking at the bar",
        ("ground", smooth, blade, material),
        ("black", rough, blade, material),
    )
