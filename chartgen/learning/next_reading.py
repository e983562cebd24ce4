"""Which further reading would narrow an assumption most: each kind is tried in the system.

What a reading would show is not known beforehand, but how far it would narrow each unknown
is: that follows from what it depends on and how well it can be read.
"""

import math
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from enum import Enum

from chartgen.learning.equations import Equation, equation_of, expected_force
from chartgen.learning.estimate import estimate
from chartgen.learning.refusals import UnusableReadingError
from chartgen.learning.unknowns import DRIVE, MARGINAL, Unknown, material_name, of_material
from chartgen.limits.allowances import allowances_for
from chartgen.limits.spindle import make_spindle
from chartgen.model.material import Material
from chartgen.model.readings import (
    CutReading,
    DroopReading,
    KnownCut,
    StallReading,
    WattsReading,
)
from chartgen.model.shop import Shop
from chartgen.physics.cutting import cutting_power
from chartgen.physics.kinematics import cutting_speed
from chartgen.reference.tables import load_material

TRIED = 3
"""How many of one reading are tried together: what a person would take in one go."""
_WORTH_WHILE = 0.97
# A droop and an idle draw that are usual of small lathes; only their errors depend on it.
_USUAL_DROOP = 0.02
_USUAL_IDLE = 0.25


class Further(Enum):
    """A kind of further reading."""

    WATTS = "watts"
    WATTS_IN_ANOTHER_MATERIAL = "watts in another material"
    DROOP = "droop"
    STALL = "stall"


@dataclass(frozen=True, slots=True, kw_only=True)
class Help:
    """The further readings that narrow an assumption most, and to what share of its doubt.

    `further` is None where no kind of reading narrows it: the readings hold it only together
    with others. `material` is the one to cut.
    """

    further: Further | None
    material: str
    narrowing: float


def helps(
    shop: Shop,
    name: str,
    unknowns: Mapping[str, Unknown],
    equations: Sequence[Equation],
    readings: Sequence[CutReading],
) -> Help:
    """Return the kind of further reading that would narrow an unknown most."""
    now = estimate(unknowns, equations)
    before = float(now.narrowing[now.at(name)])
    best = Help(further=None, material="", narrowing=before * _WORTH_WHILE)
    for further, reading, material in _candidates(shop, readings, unknowns):
        known = dict(unknowns)
        known.setdefault(material_name(material.key), of_material(material, allowances_for(shop)))
        try:
            equation = equation_of(reading, shop, known)
        except UnusableReadingError:
            continue
        then = estimate(known, [*equations, *[equation] * TRIED])
        narrowing = float(then.narrowing[then.at(name)])
        if narrowing < best.narrowing:
            best = Help(further=further, material=material.key, narrowing=narrowing)
    return replace(best, narrowing=before) if best.further is None else best


def _candidates(
    shop: Shop, readings: Sequence[CutReading], unknowns: Mapping[str, Unknown]
) -> Iterator[tuple[Further, CutReading, Material]]:
    """Yield readings like those taken, one of each kind, in the cut of the last."""
    last = readings[-1]
    cut, date = last.cut, last.date
    material = load_material(cut.material)
    yield Further.WATTS, _watts(shop, cut, date, unknowns), material
    used = {reading.cut.material for reading in readings}
    others = (load_material(key) for key in shop.request.materials if key not in used)
    other = next((one for one in others if one.force is not None), None)
    if other is not None:
        there = replace(cut, material=other.key)
        yield Further.WATTS_IN_ANOTHER_MATERIAL, _watts(shop, there, date, unknowns), other
    for position in shop.lathe.drive.positions[:1]:
        idle = position.fastest
        drooping = replace(cut, speed=idle * (1.0 - _USUAL_DROOP))
        droop = DroopReading(date=date, cut=drooping, idle_speed=idle, position=position.name)
        yield Further.DROOP, droop, material
        slow = replace(cut, speed=position.slowest)
        yield Further.STALL, StallReading(date=date, cut=slow, position=position.name), material


def _watts(shop: Shop, cut: KnownCut, date: str, unknowns: Mapping[str, Unknown]) -> WattsReading:
    allowances = allowances_for(shop)
    force = expected_force(cut, load_material(cut.material), shop, allowances)
    speed = cutting_speed(diameter=cut.diameter, spindle_speed=cut.speed)
    more = float(cutting_power(force=force, cutting_speed=speed))
    more /= unknowns[MARGINAL].assumed * unknowns[DRIVE].assumed
    idle = _USUAL_IDLE * make_spindle(shop.lathe, allowances).shaft_power
    power = idle + max(more, math.ulp(idle))
    return WattsReading(date=date, cut=cut, idle_power=idle, cut_power=power)
