"""A force that a part bears, as the ceiling of feed that follows from it."""

import math

import numpy as np

from chartgen.limits.cut import Cut
from chartgen.limits.force_capacities import HOLDING
from chartgen.limits.reasons import Reason
from chartgen.model.shop import Shop
from chartgen.wording.numbers import write_feed_ceiling_whole
from chartgen.wording.steps.step import Step, allowance_source

_IN_KILONEWTONS = 1e5
# Published chips end at about 1 mm; a ceiling beyond is no number to print.
_NO_FEED_OF_A_CUT = 1.0


def force_borne(cut: Cut, reason: Reason) -> float:
    """Return the force on the edge [N] that a part bears at the cut's speed and position."""
    capacity = np.broadcast_to(dict(HOLDING)[reason](cut.case), cut.case.trials.speed.shape)
    return float(capacity[0, 0, 0, cut.case.trials.positions.index(cut.position)])


def borne(shop: Shop, cut: Cut, reason: Reason) -> str:
    """Return the force that a part bears and the ceiling of feed behind it, in words."""
    force, units = force_borne(cut, reason), shop.request.units
    (feed,) = (limit.feed for limit in cut.ceilings if limit.reason is reason)
    if math.isinf(force):
        return "no limit"
    size = f"{force:.0f} N" if force < _IN_KILONEWTONS else f"{force / 1000.0:.0f} kN"
    if feed > _NO_FEED_OF_A_CUT:
        return f"{size}, no ceiling under {_NO_FEED_OF_A_CUT:g} mm a turn"
    return f"{size}, feed at most {write_feed_ceiling_whole(feed, units)}"


def feed_from_force_steps(cut: Cut) -> list[Step]:
    """Return how a force becomes a ceiling of feed; empty where no force is known."""
    data = cut.material.force
    if data is None:
        return []
    grid, thin = cut.case.grid, cut.case.allowances.thin_chip
    constant = grid.force_constant.item()
    low, high = 1.0 + grid.thin_band_high.item(), 1.0 + grid.band_high.item()
    return [
        Step(
            "From a force to a ceiling of feed",
            "h = (F / A)^(1/(1-mc)), A = kc1.1 b x reserve x high side",
            f"kc1.1 b x reserve = {constant:.1f} N, mc = {data.thickness_exponent.value:g}, "
            f"high side x {low:.3g} under {thin:g} mm, x {high:.3g} from there",
            f"A = {low * constant:.0f} N; {high * constant:.0f} N where that gives {thin:g} mm "
            "or more",
            f"inverse of the power law; {allowance_source('thin_chip_band')}",
        )
    ]
