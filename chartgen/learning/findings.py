"""What was concluded from the owner's readings, and the rules of concluding."""

import math
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from enum import Enum
from typing import TypeVar

from chartgen.learning.equations import Equation, equation_of
from chartgen.learning.estimate import Estimate, estimate
from chartgen.learning.next_reading import Help, helps
from chartgen.learning.plausible import refuse_implausible
from chartgen.learning.refusals import RefusedReadingsError, UnusableReadingError
from chartgen.learning.scatter import Direct, mean_of, odd_one, stiffness_of
from chartgen.learning.unknowns import STALL, Unknown, unknowns_of
from chartgen.learning.unlearned import unlearned
from chartgen.model.measured import Assumption, Measured
from chartgen.model.readings import (
    CutReading,
    DeflectionReading,
    DroopReading,
    KeyTorqueReading,
    ShopReading,
    StallReading,
    WattsReading,
)
from chartgen.model.shop import Shop
from chartgen.reference.reading_errors import load_reading_errors
from chartgen.reference.tables import load_material

Read = TypeVar("Read", bound=ShopReading)

# The rules of concluding, all of them here.
LEVEL = 0.95
"""How sure a stated span is to hold the truth."""
SPREADS_OF_LEVEL = 1.96
"""Half the span of a normal distribution that holds `LEVEL`, in its spreads."""
NARROWED = 0.75
"""A value counts as measured if its spread is at most this share of what was assumed."""
WIDEST = 0.5
"""A value read directly counts as measured if half its span is at most this share of it."""
MISFIT = 3.5
"""A reading this many spreads off what the others lead to expect contradicts them."""
FALSE_ALARM = 0.002
"""How often a direct reading may be called a contradiction though all is well."""
LEAST = {
    Assumption.FORCE_RESERVE: 3,
    Assumption.DRIVE_EFFICIENCY: 3,
    Assumption.MOTOR_EFFICIENCY: 3,
    Assumption.BREAKDOWN: 2,
    Assumption.CURRENT_LIMIT: 2,
    Assumption.KEY_TORQUE: 3,
    Assumption.TOOL_STIFFNESS: 3,
}
"""Fewer readings that touch an assumption conclude nothing."""
# Step of the written value, and which way it is rounded: the cautious one.
_STEPS: dict[Assumption, tuple[float, Callable[[float], int]]] = {
    Assumption.FORCE_RESERVE: (0.01, math.ceil),
    Assumption.DRIVE_EFFICIENCY: (0.01, math.floor),
    Assumption.MOTOR_EFFICIENCY: (0.01, math.floor),
    Assumption.BREAKDOWN: (0.01, math.floor),
    Assumption.CURRENT_LIMIT: (0.01, math.floor),
    Assumption.KEY_TORQUE: (0.5, math.floor),
    Assumption.TOOL_STIFFNESS: (100.0, math.floor),
}
_SLIP = 1e-9


class Verdict(Enum):
    """What became of an assumption."""

    MEASURED = "measured"
    TOO_FEW = "too few readings"
    TOO_VAGUE = "still as doubtful as before"
    OUT_OF_BOUNDS = "past what may be assumed"
    CONTRADICTED = "a reading contradicts the others"


@dataclass(frozen=True, slots=True, kw_only=True)
class Finding:
    """What the readings say of one assumption; numbers in the assumption's unit.

    `assumed` is what holds without readings, None where nothing is assumed. `stated` is the
    owner's own value where the file has one that no readings gave. `odd` is the reading that
    speaks against the others. `at_bound` tells that the readings lie outside what an allowance
    may be. `measured` is what may be written, rounded to the cautious side.
    """

    assumption: Assumption
    verdict: Verdict
    readings: int
    date: str
    assumed: float | None
    stated: float | None
    value: float
    low: float
    high: float
    narrowing: float | None
    at_bound: bool = False
    odd: ShopReading | None = None
    help: Help | None = None

    @property
    def missing(self) -> int:
        """How many readings lack for any conclusion."""
        return max(0, LEAST[self.assumption] - self.readings)

    @property
    def measured(self) -> Measured | None:
        """What may be written into the shop file and on cards."""
        if self.verdict is not Verdict.MEASURED:
            return None
        step, whole = _STEPS[self.assumption]
        slip = _SLIP if whole is math.floor else -_SLIP
        value = round(whole(self.value / step + slip) * step, 6)
        half = max(self.high - value, value - self.low)
        return Measured(
            assumption=self.assumption,
            value=value,
            plus_minus=round(math.ceil(half / step - _SLIP) * step, 6),
            level=LEVEL,
            readings=self.readings,
            date=self.date,
        )


def learn(shop: Shop, readings: Sequence[ShopReading]) -> tuple[Finding, ...]:
    """Return what readings say of every assumption they touch.

    What earlier readings gave is left out of what is assumed; put them among `readings`.

    Raises
    ------
    RefusedReadingsError
        With every reading that can say nothing on this lathe.
    """
    bare = unlearned(shop)
    _refuse(readings, lambda reading: refuse_implausible(reading, bare))
    in_cuts = [r for r in readings if isinstance(r, WattsReading | DroopReading | StallReading)]
    findings = [*_of_cuts(bare, in_cuts)]
    pulls = [r for r in readings if isinstance(r, KeyTorqueReading)]
    if pulls:
        findings.append(_key_torque(bare, pulls))
    bends = [r for r in readings if isinstance(r, DeflectionReading)]
    if bends:
        findings.append(_stiffness(bare, bends))
    return tuple(findings)


def _of_cuts(shop: Shop, readings: Sequence[CutReading]) -> list[Finding]:
    if not readings:
        return []
    materials = tuple(load_material(key) for key in dict.fromkeys(r.cut.material for r in readings))
    unknowns = unknowns_of(shop, materials)
    equations: list[Equation] = []
    _refuse(readings, lambda reading: equations.append(equation_of(reading, shop, unknowns)))
    found = estimate(unknowns, equations)
    odd = _odd_cut(readings, found)
    date = max(reading.date for reading in readings)
    findings = []
    for name, one in unknowns.items():
        if one.assumption is None:
            continue
        count = _touching(name, one, readings, equations)
        if count:
            findings.append(
                _finding(shop, one, found, count, odd, date, equations, readings, unknowns)
            )
    return findings


def _refuse(readings: Sequence[Read], use: Callable[[Read], None]) -> None:
    """Use every reading, and refuse all that cannot be used at once."""
    refused: list[tuple[ShopReading, str]] = []
    for reading in readings:
        try:
            use(reading)
        except UnusableReadingError as error:
            refused.append((reading, str(error)))
    if refused:
        raise RefusedReadingsError(refused)


def _touching(
    name: str, one: Unknown, readings: Sequence[CutReading], equations: Sequence[Equation]
) -> int:
    if name == STALL:
        return sum(isinstance(reading, StallReading) for reading in readings)
    return sum(one.name in equation.weights for equation in equations)


def _odd_cut(readings: Sequence[CutReading], found: Estimate) -> CutReading | None:
    """Return the reading that is off most, if so far that it contradicts the rest."""
    off = [abs(float(misfit)) for misfit in found.misfit]
    worst = max(range(len(off)), key=off.__getitem__)
    return readings[worst] if off[worst] > MISFIT else None


def _finding(
    shop: Shop,
    one: Unknown,
    found: Estimate,
    count: int,
    odd: CutReading | None,
    date: str,
    equations: Sequence[Equation],
    readings: Sequence[CutReading],
    unknowns: dict[str, Unknown],
) -> Finding:
    place, assumption = found.at(one.name), one.assumption
    if assumption is None:
        raise ValueError(f"{one.name} is no assumption of a card")
    narrowing = float(found.narrowing[place])
    value = one.assumed * math.exp(float(found.off[place]))
    factor = math.exp(SPREADS_OF_LEVEL * float(found.spread[place]))
    if count < LEAST[assumption]:
        verdict = Verdict.TOO_FEW
    elif odd is not None:
        verdict = Verdict.CONTRADICTED
    elif narrowing > NARROWED:
        verdict = Verdict.TOO_VAGUE
    else:
        verdict = Verdict.OUT_OF_BOUNDS if found.at_bound[place] else Verdict.MEASURED
    helped = None
    if verdict in {Verdict.TOO_FEW, Verdict.TOO_VAGUE}:
        helped = helps(shop, one.name, unknowns, equations, readings)
    return Finding(
        assumption=assumption,
        verdict=verdict,
        readings=count,
        date=date,
        assumed=one.assumed,
        stated=assumption.stated(shop.lathe, shop.allowances),
        value=value,
        low=value / factor,
        high=value * factor,
        narrowing=narrowing,
        at_bound=bool(found.at_bound[place]),
        odd=odd if verdict is Verdict.CONTRADICTED else None,
        help=helped,
    )


def _key_torque(shop: Shop, readings: Sequence[KeyTorqueReading]) -> Finding:
    values = [reading.torque for reading in readings]
    scale = load_reading_errors()["wrench_share"].most
    direct = None
    if len(values) > 1:
        direct = mean_of(values, level=LEVEL, scale_error=scale)
    return _direct(Assumption.KEY_TORQUE, shop, readings, values, direct, scale)


def _stiffness(shop: Shop, readings: Sequence[DeflectionReading]) -> Finding:
    values = [reading.pull / reading.movement for reading in readings]
    scale = load_reading_errors()["gauge_share"].most
    direct = None
    if len(values) > 1:
        direct = stiffness_of(
            [reading.pull for reading in readings],
            [reading.movement for reading in readings],
            level=LEVEL,
            scale_error=scale,
        )
    return _direct(Assumption.TOOL_STIFFNESS, shop, readings, values, direct, scale)


def _direct(
    assumption: Assumption,
    shop: Shop,
    readings: Sequence[ShopReading],
    values: Sequence[float],
    direct: Direct | None,
    scale: float,
) -> Finding:
    """Return the finding of a value read directly; `direct` is None for a single reading."""
    value, half = direct or Direct(values[0], math.inf)
    odd = odd_one(values, scale_error=scale, false_alarm=FALSE_ALARM)
    if len(values) < LEAST[assumption]:
        verdict = Verdict.TOO_FEW
    elif odd is not None:
        verdict = Verdict.CONTRADICTED
    else:
        verdict = Verdict.MEASURED if half <= WIDEST * value else Verdict.TOO_VAGUE
    return Finding(
        assumption=assumption,
        verdict=verdict,
        readings=len(values),
        date=max(reading.date for reading in readings),
        assumed=None,
        stated=assumption.stated(shop.lathe, shop.allowances),
        value=value,
        low=max(0.0, value - half),
        high=value + half,
        narrowing=None,
        odd=readings[odd] if odd is not None and verdict is Verdict.CONTRADICTED else None,
    )
