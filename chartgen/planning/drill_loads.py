"""What a drill asks of motor, chuck and tailstock, and which of them it asks too much."""

from chartgen.model.tooling import DrillPoint
from chartgen.physics.cutting import specific_cutting_force
from chartgen.physics.drilling import drill_chip_thickness, drilling_thrust, drilling_torque
from chartgen.planning.loads import ForceBand, load_of, resultant, slip_resultant
from chartgen.planning.machine import Machine, Setting
from chartgen.planning.operations import Bound
from chartgen.planning.plan import Load
from chartgen.quantities import Millimetres, MillimetresPerRev
from chartgen.reference.drilling import PointData, load_drilling


def drill_point(machine: Machine) -> PointData:
    """Return how the drills of a shop are ground."""
    drills = machine.shop.tools.drills
    return load_drilling().points[DrillPoint.STANDARD if drills is None else drills.point]


def drill_over(
    machine: Machine,
    setting: Setting,
    *,
    diameter: Millimetres[float],
    pilot: Millimetres[float],
    feed: MillimetresPerRev[float],
) -> Bound | None:
    """Return the limit that a drill's cut is over, None where it is inside them all."""
    if machine.material.force is None:
        return None
    load = drill_load(machine, setting, diameter=diameter, pilot=pilot, feed=feed)
    around = 2000.0 * load.torque / machine.job.bar.diameter
    held = resultant(machine, setting, around=around, along=load.thrust_high)
    checks = (
        (load.torque > setting.torque, Bound.TORQUE),
        (load.torque > setting.stall_torque, Bound.STALL),
        (load.torque > machine.allowances.drill_chuck_torque, Bound.DRILL_CHUCK),
        (load.thrust_high > machine.allowances.tailstock_push, Bound.TAILSTOCK_PUSH),
        (held > slip_resultant(machine, setting), Bound.GRIP),
    )
    return next((bound for is_over, bound in checks if is_over), None)


def drill_load(
    machine: Machine,
    setting: Setting,
    *,
    diameter: Millimetres[float],
    pilot: Millimetres[float],
    feed: MillimetresPerRev[float],
) -> Load:
    """Return the load of a drill, its main force as that of both lips at their middle."""
    data = machine.material.force
    if data is None:
        raise ValueError(f"{machine.material.key} has no published force data")
    chip = float(drill_chip_thickness(feed=feed, point_angle=drill_point(machine).angle.value))
    specific = (
        float(
            specific_cutting_force(
                feed=chip,
                specific_force=data.specific_force.value,
                thickness_exponent=data.thickness_exponent.value,
            )
        )
        * machine.allowances.turning_force
    )
    torque = float(
        drilling_torque(specific_force=specific, feed=feed, diameter=diameter, pilot_diameter=pilot)
    )
    thrust = float(
        drilling_thrust(specific_force=specific, feed=feed, diameter=diameter, pilot_diameter=pilot)
    )
    data_of_drills = load_drilling()
    low, high = data_of_drills.band_low.value, data_of_drills.band_high.value
    middle = (diameter + pilot) / 2.0
    force = 2000.0 * torque / middle
    band = ForceBand(low=force * (1.0 - low), middle=force, high=force * (1.0 + high))
    return load_of(machine, setting, force=band, diameter=middle, along=thrust * (1.0 + high))
