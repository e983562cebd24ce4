"""The steps about speed: where the start speed lies, what caps it, what was chosen."""

import math

from chartgen.limits.cut import Cut, spindle_speed_at
from chartgen.limits.reasons import Reason
from chartgen.model.shop import Shop
from chartgen.wording.numbers import write_speed_ceiling
from chartgen.wording.steps.step import Step, allowance_source
from chartgen.wording.steps.work import whip_step


def speed_steps(shop: Shop, cut: Cut) -> list[Step]:
    """Return the steps from the start surface speed to the chosen spindle speed."""
    speeds = cut.material.speeds[cut.blade.tool_material]
    start = spindle_speed_at(cut.start_speed, cut)
    steps = [
        Step(
            "Start speed for this edge in this material",
            "n = 1000 v / (π D)",
            f"v = {cut.start_speed:g} m/min, D = {cut.diameter:g} mm",
            f"{start:.0f} rev/min",
            speeds.start.citation,
        ),
        *(
            _cap_step(shop, cut, limit.reason, limit.speed)
            for limit in cut.speed_limits
            if math.isfinite(limit.speed)
        ),
    ]
    if cut.soft_floor_speed:
        floor = spindle_speed_at(cut.soft_floor_speed, cut)
        citation = speeds.soft_floor.citation if speeds.soft_floor else ""
        below = cut.soft_floor_speed / cut.cutting_speed * cut.diameter
        share = (
            "this cut starts below it"
            if cut.is_under_soft_floor
            else f"this cut falls below it inside Ø {below:.0f} mm, on the way in"
        )
        steps.append(
            Step(
                "Speed under which metal builds up on the edge (a warning, no refusal)",
                "n = 1000 v / (π D)",
                f"v = {cut.soft_floor_speed:g} m/min",
                f"{floor:.0f} rev/min; {share}",
                citation,
            )
        )
    steps.append(
        Step(
            "Speed chosen: nearest to the start speed that still leaves a firm feed",
            "v = π D n / 1000",
            f"n = {cut.spindle_speed:g} rev/min in position {cut.position.name}",
            f"{cut.cutting_speed:.1f} m/min at the outside",
            "two-stage choice of this program",
        )
    )
    return steps


def _cap_step(shop: Shop, cut: Cut, reason: Reason, speed: float) -> Step:
    text = f"{write_speed_ceiling(speed)} rev/min"
    if reason is Reason.EDGE_SPEED:
        ceiling = cut.material.speeds[cut.blade.tool_material].ceiling
        return Step(
            "Cap: highest surface speed of the edge",
            "n = 1000 v / (π D)",
            f"v = {ceiling.value:g} m/min",
            text,
            ceiling.citation,
        )
    if reason is Reason.CHUCK_SPEED:
        chuck = shop.lathe.chuck
        if chuck.marked_speed is not None:
            return Step("Cap: chuck", "as marked", f"{chuck.size:g} mm chuck", text, "shop file")
        rim = cut.case.allowances.chuck_rim_speed
        return Step(
            "Cap: chuck without a marked speed",
            "n = 60 000 v / (π D)",
            f"rim v = {rim:g} m/s, D = {chuck.size:g} mm",
            text,
            allowance_source("chuck_rim_speed"),
        )
    if reason is Reason.BAR_WHIP:
        return whip_step(shop, cut, speed)
    slowest = min(p.slowest for p in shop.lathe.drive.positions)
    values = f"slowest {slowest:g}" if math.isfinite(slowest) else ""
    return Step("Cap: the lathe", "as described", f"{values} rev/min", text, "shop file")
