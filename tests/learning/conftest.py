"""A lathe whose truth is known, and what its owner would read off it with ordinary instruments.

The readings come from the engine's own forward model (grid, spindle), not from the equations
that are solved to learn from them.
"""

import math
from collections.abc import Callable
from dataclasses import dataclass, field, replace

import numpy as np
import pytest

from chartgen.limits.allowances import allowances_for
from chartgen.limits.force import nominal_force
from chartgen.limits.grid import Grid, make_grid
from chartgen.limits.spindle import Duration, make_spindle
from chartgen.model.lathe import DrivePosition
from chartgen.model.readings import (
    DeflectionReading,
    DroopReading,
    KeyTorqueReading,
    KnownCut,
    StallReading,
    WattsReading,
)
from chartgen.model.shop import Shop
from chartgen.reference.tables import load_material

DATE = "2026-11-25"
FEED_SPREAD = 0.15 / 2.0
METER_SPREAD, METER_DIGIT = 0.02 / 2.0, 1.0 / 2.0
STALL_SPREAD = 0.15 / 2.0


@dataclass
class TrueLathe:
    """A shop whose file says the truth, and the truths that no file has a key for."""

    shop: Shop
    chance: np.random.Generator
    marginal: float = 0.82
    slip: float = 1.0
    materials: dict[str, float] = field(default_factory=dict)
    grids: dict[tuple[str, str], Grid] = field(default_factory=dict)

    def force(self, cut: KnownCut) -> float:
        """Return the cutting force [N] of a feed that a hand kept only roughly."""
        feed = cut.feed * math.exp(self.chance.normal(0.0, FEED_SPREAD))
        force = nominal_force(self._grid(cut), np.full((1, 1, 1, 1), feed)).item()
        return force * self.materials.get(cut.material, 1.0)

    def _grid(self, cut: KnownCut) -> Grid:
        key = (cut.material, cut.blade)
        if key not in self.grids:
            self.grids[key] = make_grid(
                materials=[load_material(cut.material)],
                blades=[next(b for b in self.shop.blades if b.name == cut.blade)],
                diameters=[cut.diameter],
                work=self.shop.work,
                feeding=self.shop.request.feeding,
                allowances=allowances_for(self.shop),
            )
        return self.grids[key]

    def watts(self, cut: KnownCut, idle: float = 150.0) -> WattsReading:
        surface_speed = math.pi * cut.diameter * cut.speed / 1000.0
        at_edge = self.force(cut) * surface_speed / 60.0
        efficiency = make_spindle(self.shop.lathe, allowances_for(self.shop)).efficiency

        def shown(power: float) -> float:
            spread = math.hypot(METER_SPREAD * power, METER_DIGIT)
            return power + self.chance.normal(0.0, spread)

        cutting = idle + at_edge / (self.marginal * efficiency)
        return WattsReading(date=DATE, cut=cut, idle_power=shown(idle), cut_power=shown(cutting))

    def droop(self, cut: KnownCut, position: DrivePosition, no_load: float) -> DroopReading:
        spindle = make_spindle(self.shop.lathe, allowances_for(self.shop))
        torque = self.force(cut) * cut.diameter / 2000.0
        share = torque / (spindle.rated_torque * position.motor_ratio * spindle.efficiency)
        span = (no_load - self.shop.lathe.motor.base_speed) / position.motor_ratio
        idle = position.fastest * 1.03 + self.chance.normal(0.0, 0.5)
        cutting = position.fastest * 1.03 - share * span * self.slip
        cutting += self.chance.normal(0.0, 0.5)
        return DroopReading(
            date=DATE,
            cut=replace(cut, speed=cutting),
            idle_speed=idle,
            position=position.name,
        )

    def stall(self, cut: KnownCut, position: DrivePosition) -> StallReading:
        spindle = make_spindle(self.shop.lathe, allowances_for(self.shop))
        torque = float(spindle.torque(position, np.array(cut.speed), Duration.STALL))
        torque *= math.exp(self.chance.normal(0.0, STALL_SPREAD))
        one = self.force(replace(cut, feed=1.0))
        data = load_material(cut.material).force
        assert data is not None
        power = 1.0 / (1.0 - data.thickness_exponent.value)
        feed = (2000.0 * torque / cut.diameter / one) ** power
        return StallReading(date=DATE, cut=replace(cut, feed=feed), position=position.name)

    def pull(self, torque: float, spread: float, scale: float) -> KeyTorqueReading:
        return KeyTorqueReading(
            date=DATE, torque=torque * scale * (1.0 + self.chance.normal(0.0, spread))
        )

    def bend(self, pull: float, stiffness: float, spread: float, scale: float) -> DeflectionReading:
        movement = pull / stiffness * scale + self.chance.normal(0.0, spread)
        return DeflectionReading(date=DATE, pull=pull, movement=movement)


def a_cut(material: str = "mild-steel", **other: object) -> KnownCut:
    plain = KnownCut(material=material, blade="2 coated", diameter=25.0, speed=500.0, feed=0.05)
    return replace(plain, **other)  # type: ignore[arg-type]


@pytest.fixture(scope="session")
def cut_of() -> Callable[..., KnownCut]:
    return a_cut


@pytest.fixture(scope="session")
def true_lathe() -> type[TrueLathe]:
    return TrueLathe
