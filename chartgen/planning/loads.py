"""What a cut of a job asks of motor and chuck, and how deep a cut both of them bear.

Force bands are those of parting off: wider for chips thinner than the published constants
were taken at. Against every limit stands the high side.
"""

import math
from dataclasses import dataclass

from chartgen.physics.cutting import (
    cutting_force,
    cutting_torque,
    force_from_torque,
)
from chartgen.physics.grip import centrifugal_force
from chartgen.physics.motor import power_from_torque
from chartgen.planning.machine import Machine, Setting
from chartgen.planning.plan import Load
from chartgen.quantities import Fraction, Millimetres, MillimetresPerRev, Newtons
from chartgen.reference.boring import load_boring


def feed_force_share() -> Fraction[float]:
    """Return the feed force over the main force in outside turning, a rule of thumb."""
    return load_boring().turning.feed.value


def back_force_share() -> Fraction[float]:
    """Return the force square to feed and main force over the main one, in outside turning."""
    return load_boring().turning.radial.value


@dataclass(frozen=True, slots=True, kw_only=True)
class ForceBand:
    """A force with its band."""

    low: Newtons[float]
    middle: Newtons[float]
    high: Newtons[float]

    def times(self, factor: float) -> "ForceBand":
        """Return the band of a force so many times as large."""
        return ForceBand(
            low=self.low * factor, middle=self.middle * factor, high=self.high * factor
        )


def turning_force(
    machine: Machine, *, depth: Millimetres[float], feed: MillimetresPerRev[float]
) -> ForceBand | None:
    """Return the main force of a turned chip, None without published force data."""
    force = machine.material.force
    if force is None:
        return None
    middle = machine.allowances.turning_force * float(
        cutting_force(
            width=depth,
            feed=feed,
            specific_force=force.specific_force.value,
            thickness_exponent=force.thickness_exponent.value,
        )
    )
    low, high = band_at(machine, feed)
    return ForceBand(low=middle * (1.0 - low), middle=middle, high=middle * (1.0 + high))


def band_at(
    machine: Machine, chip: MillimetresPerRev[float]
) -> tuple[Fraction[float], Fraction[float]]:
    """Return by how much the force may lie under and over what is expected of a chip."""
    force = machine.material.force
    if force is None:
        raise ValueError(f"{machine.material.key} has no published force data")
    low, high = force.band_low.value, force.band_high.value
    if chip >= machine.allowances.thin_chip:
        return low, high
    return max(low, machine.allowances.thin_chip_band), max(high, machine.allowances.thin_chip_band)


def slip_resultant(machine: Machine, setting: Setting) -> Newtons[float]:
    """Return the friction that the jaws have to give at a speed, the grip's reserve taken off."""
    holding = machine.holding
    lost = float(centrifugal_force(jaw_moment=holding.jaw_moment, spindle_speed=setting.speed))
    spare = max(0.0, holding.static_grip / machine.allowances.grip_safety - lost)
    return float(holding.friction.item()) * spare


def resultant(
    machine: Machine,
    setting: Setting,
    *,
    around: Newtons[float],
    along: Newtons[float],
) -> Newtons[float]:
    """Return what the jaws must hold, the cut's reserve in: around and along the axis together.

    Around the axis a cut can pull no harder than the spindle turns before it stalls. All pushes
    along it are towards the chuck, so a stop behind the bar takes them.
    """
    safety, clamped = machine.allowances.cut_safety, machine.job.bar.diameter
    if machine.job.holding.stop:
        along = 0.0
    stall = float(force_from_torque(torque=setting.stall_torque, diameter=clamped))
    return math.hypot(min(safety * around, stall), safety * along)


def load_of(
    machine: Machine,
    setting: Setting,
    *,
    force: ForceBand,
    diameter: Millimetres[float],
    along: Newtons[float],
) -> Load:
    """Return the load of a cut whose main force acts at a diameter, pushing `along` the axis."""
    torque = float(cutting_torque(force=force.high, diameter=diameter))
    around = float(force_from_torque(torque=torque, diameter=machine.job.bar.diameter))
    held = resultant(machine, setting, around=around, along=along)
    lost = float(
        centrifugal_force(jaw_moment=machine.holding.jaw_moment, spindle_speed=setting.speed)
    )
    friction = float(machine.holding.friction.item())
    needed = machine.allowances.grip_safety * (held / friction + lost)
    return Load(
        force_low=force.low,
        force=force.middle,
        force_high=force.high,
        thrust_high=along,
        torque=torque,
        torque_available=setting.torque,
        power=float(power_from_torque(torque=torque, speed=setting.speed)),
        power_available=float(power_from_torque(torque=setting.torque, speed=setting.speed)),
        grip_needed=0.0 if math.isinf(machine.holding.static_grip) else needed,
        grip=machine.holding.static_grip,
    )
