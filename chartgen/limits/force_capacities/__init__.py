"""What force on the edge each part bears: one file a limit, one line each in the catalogue.

HOLDING are the parts that speed cannot buy off; with FEED_CEILINGS and the start feed they
set the target. DRIVING depend on the speed chosen; of one-cut and continuous torque only that
one counts which fits the time of the cut (see `regimes`). A capacity broadcasts to (material,
blade, diameter, trial speed), in N; inf where it does not apply. The high side of the force
band is held against it.
"""

from collections.abc import Callable

from chartgen.limits.case import Case
from chartgen.limits.force_capacities.blade_bending import blade_bending
from chartgen.limits.force_capacities.blade_buckling import blade_buckling
from chartgen.limits.force_capacities.grip import grip
from chartgen.limits.force_capacities.stall import stall
from chartgen.limits.force_capacities.tip_drop import tip_drop
from chartgen.limits.force_capacities.torque import continuous_torque, one_cut_torque
from chartgen.limits.force_capacities.work_deflection import work_deflection
from chartgen.limits.force_capacities.work_stress import work_stress
from chartgen.limits.reasons import Reason
from chartgen.quantities import FloatArray, Newtons

ForceCapacity = Callable[[Case], Newtons[FloatArray]]

HOLDING: tuple[tuple[Reason, ForceCapacity], ...] = (
    (Reason.BLADE_BENDING, blade_bending),
    (Reason.TIP_DROP, tip_drop),
    (Reason.BLADE_BUCKLING, blade_buckling),
    (Reason.WORK_DEFLECTION, work_deflection),
    (Reason.WORK_STRESS, work_stress),
    (Reason.GRIP, grip),
)

DRIVING: tuple[tuple[Reason, ForceCapacity], ...] = (
    (Reason.TORQUE_ONE_CUT, one_cut_torque),
    (Reason.TORQUE_CONTINUOUS, continuous_torque),
    (Reason.STALL, stall),
)
