"""What is wrong with a cut, by how much, and what to change; as short sentences."""

from chartgen.limits.cut import Cut, FeedLimit, Side, SpeedLimit
from chartgen.limits.reasons import Reason
from chartgen.limits.tightness import Tight
from chartgen.limits.window import Windows
from chartgen.model.blade import ToolMaterial
from chartgen.model.shop import Feeding, Shop
from chartgen.wording.numbers import (
    feed_label,
    write_cutting_speed,
    write_feed,
    write_feed_ceiling,
    write_feed_floor,
    write_pace,
    write_speed,
    write_speed_ceiling,
)
from chartgen.wording.what_if import cell_ways

_SLIP = 1e-9
_MOST_WAYS = 2

_WHY = {
    Reason.EDGE_FLOOR: "the edge rubs instead of cutting; the work hardens and the blade can jam",
    Reason.SKIN_FLOOR: "the edge rides on the skin that the last turn hardened",
    Reason.TORQUE_ONE_CUT: "the motor can lack the torque",
    Reason.TORQUE_CONTINUOUS: "the motor can lack the torque for so long a cut",
    Reason.STALL: "the spindle can stall",
    Reason.GRIP: "the work can slip in the jaws",
    Reason.BLADE_BENDING: "the blade is bent too hard where it leaves its holder",
    Reason.TIP_DROP: "the tip sinks so far that it dives into the work",
    Reason.BLADE_BUCKLING: "the blade can tip over sideways",
    Reason.WORK_DEFLECTION: "the bar bends away from the blade",
    Reason.WORK_STRESS: "the bar can stay bent at the jaws",
    Reason.BAR_WHIP: "the bar behind the spindle can whip",
    Reason.INSERT_FEED: "it is more than an edge of this width takes",
    Reason.HAND_PACE: "no hand turns the handle that fast and even",
    Reason.REACH: "the blade sticks out too little: its holder meets the bar first",
    Reason.EDGE_SPEED: "the edge overheats",
    Reason.FASTEST_SPINDLE: "the lathe does not turn that fast",
    Reason.CHUCK_SPEED: "the chuck must not turn that fast",
}


def judge(shop: Shop, cut: Cut) -> list[str]:
    """Return what is wrong with a cut: the first limit broken and the next one behind it.

    Speed comes before feed, since a feed is only allowed or not at a speed.
    """
    too_fast = sorted(
        (limit for limit in cut.speed_limits if cut.spindle_speed > limit.speed * (1.0 + _SLIP)),
        key=lambda limit: limit.speed,
    )
    too_bold = sorted(
        (limit for limit in cut.ceilings if cut.feed > limit.feed * (1.0 + _SLIP)),
        key=lambda limit: limit.feed,
    )
    too_timid = sorted(
        (limit for limit in cut.floors if cut.feed < limit.feed * (1.0 - _SLIP)),
        key=lambda limit: -limit.feed,
    )
    broken = [
        *(_too_fast(cut, limit) for limit in too_fast),
        *(_too_bold(shop, cut, limit) for limit in too_bold),
        *(_too_timid(shop, cut, limit) for limit in too_timid),
    ]
    return [*broken[:1], *(f"Behind it: {next_one}" for next_one in broken[1:2])]


def _too_fast(cut: Cut, limit: SpeedLimit) -> str:
    return (
        f"Too fast: {write_speed(cut.spindle_speed)} rev/min is "
        f"{cut.spindle_speed / limit.speed:.1f} times the "
        f"{write_speed_ceiling(limit.speed)} rev/min allowed; {_WHY[limit.reason]}."
    )


def _too_bold(shop: Shop, cut: Cut, limit: FeedLimit) -> str:
    if limit.reason is Reason.REACH:
        return f"Too deep: {_WHY[limit.reason]}."
    units = shop.request.units
    # A limit of nothing has no multiple.
    times = f"{cut.feed / limit.feed:.1f} times" if limit.feed else "above"
    return (
        f"Too bold: the feed is {times} the {write_feed_ceiling(limit.feed, units)} "
        f"{feed_label(units)} allowed at this speed; {_WHY[limit.reason]}."
    )


def _too_timid(shop: Shop, cut: Cut, limit: FeedLimit) -> str:
    units = shop.request.units
    return (
        f"Too timid: the feed is {cut.feed / limit.feed:.2f} of the "
        f"{write_feed_floor(limit.feed, units)} {feed_label(units)} this edge needs; "
        f"{_WHY[limit.reason]}."
    )


def remarks(shop: Shop, cut: Cut) -> list[str]:
    """Return what is worth knowing about a cut though it forbids nothing."""
    units = shop.request.units
    said = []
    if cut.is_under_soft_floor:
        said.append(
            f"Slow for this edge: {write_cutting_speed(cut.cutting_speed, units)} is under the "
            f"{write_cutting_speed(cut.soft_floor_speed, units)} where steel stops welding to "
            "carbide; expect a rough, noisy cut and use oil."
        )
    if not cut.lathe_has_speed:
        said.append(
            f"This lathe has no {write_speed(cut.spindle_speed)} rev/min: {_nearest(shop, cut)}."
        )
    if cut.material.force is None:
        said.append("No published force data for this material: torque is not checked.")
    if _wants_another_edge(cut):
        said.append(
            f"{cut.material.name} wants a polished, sharp edge; this one is {cut.blade.edge.value}."
        )
    return said


def recommend(shop: Shop, windows: Windows, best: Cut) -> str:
    """Return the recommended cut of a cell as one sentence, or the way out."""
    units = shop.request.units
    index = (0, shop.blades.index(best.blade), 0)
    if not windows.has_window[index]:
        ways = "; or ".join(cell_ways(shop, best)[:_MOST_WAYS])
        return f"No window here with this blade as it is. Way out: {ways}."
    pace = write_pace(
        seconds=best.seconds_per_turn,
        feed=best.feed,
        floor=best.floor.feed,
        ceiling=best.ceiling.feed,
    )
    handle = f", one handle turn in {pace} s" if shop.request.feeding is Feeding.HAND else ""
    mark = f" in position {best.position.name}" if best.position.mark else ""
    return (
        f"Recommended here: {write_speed(best.spindle_speed)} rev/min{mark}, "
        f"{write_feed(best.feed, units)} {feed_label(units)}{handle}."
    )


def advise(shop: Shop, cut: Cut, windows: Windows, best: Cut) -> str:
    """Return reasons, remarks and the recommended cut as one paragraph."""
    first = {
        Side.INSIDE: _between(shop, cut),
        Side.TOO_TIMID: "",
        Side.TOO_BOLD: "",
        Side.NO_WINDOW: "There is no window here at any speed of this lathe.",
    }[cut.side]
    tight = [tightness_remark(shop, windows, best)] if cut.side is Side.INSIDE else []
    sentences = [
        first,
        *judge(shop, cut),
        *tight,
        *remarks(shop, cut),
        recommend(shop, windows, best),
    ]
    return " ".join(sentence for sentence in sentences if sentence)


def tightness_remark(shop: Shop, windows: Windows, best: Cut) -> str:
    """Return that a cell is tight at best, and why; empty where it has room."""
    index = (0, shop.blades.index(best.blade), 0)
    if not windows.is_tight[index]:
        return ""
    return f"Even the best cut here is tight ({Tight(int(windows.tight_flags[index])).words})."


def _between(shop: Shop, cut: Cut) -> str:
    units = shop.request.units
    return (
        f"Between the floor {write_feed_floor(cut.floor.feed, units)} "
        f"({cut.floor.reason.legend}) and the ceiling "
        f"{write_feed_ceiling(cut.ceiling.feed, units)} {feed_label(units)} "
        f"({cut.ceiling.reason.legend})."
    )


def _nearest(shop: Shop, cut: Cut) -> str:
    ends = sorted({s for p in shop.lathe.drive.positions for s in (p.slowest, p.fastest)})
    below = [s for s in ends if s < cut.spindle_speed]
    above = [s for s in ends if s > cut.spindle_speed]
    near = [*below[-1:], *above[:1]]
    return (
        "the nearest are " + " and ".join(f"{s:g}" for s in near)
        if len(near) > 1
        else (f"the nearest is {near[0]:g}")
    )


def _wants_another_edge(cut: Cut) -> bool:
    return (
        cut.material.wants_polished_edge
        and cut.blade.tool_material is ToolMaterial.CARBIDE
        and cut.blade.edge.value != "polished"
    )
