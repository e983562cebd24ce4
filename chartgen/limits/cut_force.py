"""The force of one cut by both models, with its band."""

from dataclasses import dataclass

import numpy as np

from chartgen.limits.case import Case
from chartgen.limits.force import high_force, low_force, nominal_force
from chartgen.model.blade import Blade
from chartgen.model.material import Material
from chartgen.physics.cutting import cutting_force, force_from_unit_energy
from chartgen.quantities import MillimetresPerRev, Newtons
from chartgen.reference.tables import load_size_effect


@dataclass(frozen=True, slots=True, kw_only=True)
class Force:
    """The cutting force with its band, and by the second model where it has data.

    `by_unit_energy` is for a sharp edge without any reserve; compare it with `sharp`.
    """

    low: Newtons[float]
    nominal: Newtons[float]
    high: Newtons[float]
    sharp: Newtons[float]
    by_unit_energy: Newtons[float] | None
    size_factor: float


def cut_force(
    case: Case, material: Material, blade: Blade, feed: MillimetresPerRev[float]
) -> Force | None:
    """Return the force of a cut, or None where no published constants exist."""
    if material.force is None:
        return None
    at = np.full((1, 1, 1, 1), feed)
    thickness, factor = load_size_effect()
    size_factor = float(np.exp(np.interp(np.log(feed), np.log(thickness), np.log(factor))))
    by_unit_energy = None
    if material.unit_energy is not None:
        by_unit_energy = float(
            force_from_unit_energy(
                width=blade.insert_width,
                feed=feed,
                unit_energy=material.unit_energy.value,
                size_factor=size_factor,
            )
        )
    return Force(
        low=low_force(case.grid, at, case.allowances).item(),
        nominal=nominal_force(case.grid, at).item(),
        high=high_force(case.grid, at, case.allowances).item(),
        sharp=float(
            cutting_force(
                width=blade.insert_width,
                feed=feed,
                specific_force=material.force.specific_force.value,
                thickness_exponent=material.force.thickness_exponent.value,
            )
        ),
        by_unit_energy=by_unit_energy,
        size_factor=size_factor,
    )
