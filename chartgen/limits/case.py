"""One run of the limits: the cells, the machine, what is assumed, the speeds to try."""

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from chartgen.limits.allowances import Allowances
from chartgen.limits.blade_strength import BladeStrength
from chartgen.limits.grid import Grid
from chartgen.limits.holding import Holding
from chartgen.limits.spindle import Spindle
from chartgen.model.lathe import DrivePosition, Lathe
from chartgen.model.shop import Feeding
from chartgen.quantities import FloatArray, IntArray


@dataclass(frozen=True, slots=True, kw_only=True, eq=False, repr=False)
class Trials:
    """Speeds worth trying for each cell; the last axis K runs over all of them.

    `speed` [rev/min] and the torques [N·m] broadcast to (M, B, D, K); `position` (K) is an
    index into `positions`.
    """

    positions: tuple[DrivePosition, ...]
    position: IntArray
    speed: FloatArray
    torque_continuous: FloatArray
    torque_one_cut: FloatArray
    torque_stall: FloatArray


@dataclass(frozen=True, slots=True, kw_only=True, eq=False, repr=False)
class Case:
    """Everything a limit may look at."""

    grid: Grid
    lathe: Lathe
    blades: BladeStrength
    holding: Holding
    feeding: Feeding
    allowances: Allowances
    spindle: Spindle
    speed_cap: FloatArray
    speed_cap_code: NDArray[np.int8]
    trials: Trials
