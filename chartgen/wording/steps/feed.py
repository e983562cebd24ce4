"""The steps about feed: floors, start, ceilings that speed cannot buy off, and the handle."""

from chartgen.limits.allowances import edge_radius
from chartgen.limits.cut import Cut
from chartgen.limits.grid import feeds_for_width
from chartgen.limits.reasons import Reason
from chartgen.model.lathe import DialReads
from chartgen.model.shop import Feeding, Shop
from chartgen.wording.numbers import write_feed_ceiling_whole, write_feed_floor_whole
from chartgen.wording.steps.step import Step, allowance_source


def feed_steps(shop: Shop, cut: Cut) -> list[Step]:
    """Return the steps of the floors, the start feed and the plain ceilings."""
    units = shop.request.units
    allowances = cut.case.allowances
    by_hand = shop.request.feeding is Feeding.HAND
    name = "edge_floor_by_hand" if by_hand else "edge_floor_by_power"
    ratio: float = getattr(allowances, name)
    radius = edge_radius(cut.blade, allowances)
    radius_source = (
        "shop file"
        if cut.blade.edge_radius is not None
        else allowance_source("edge_" + cut.blade.edge.value.replace("-", "_"))
    )
    floors = {limit.reason: limit.feed for limit in cut.floors}
    ceilings = {limit.reason: limit.feed for limit in cut.ceilings}
    start, largest = feeds_for_width(cut.material.feeds, cut.blade.insert_width)
    row = next(
        (r for r in reversed(cut.material.feeds.rows) if r.width <= cut.blade.insert_width),
        cut.material.feeds.rows[0],
    )
    width = f"b = {cut.blade.insert_width:.4g} mm, feed class {cut.material.feeds.key}"
    steps = [
        Step(
            "Floor: the edge must cut, not rub",
            "f = k r / 1000",
            f"k = {ratio:g} ({'by hand' if by_hand else 'power feed'}), r = {radius:g} µm",
            write_feed_floor_whole(floors[Reason.EDGE_FLOOR], units),
            f"{allowance_source(name)}; radius: {radius_source}",
        )
    ]
    if cut.material.work_hardens:
        steps.append(
            Step(
                "Floor: under the skin of a work-hardening metal",
                "least feed",
                f"ISO group {cut.material.iso_group.letter}",
                write_feed_floor_whole(floors[Reason.SKIN_FLOOR], units),
                allowance_source("work_hardening_feed"),
            )
        )
    steps += [
        Step("Start feed", "by width", width, f"{start:.3f} mm/rev", row.start.citation),
        Step(
            "Ceiling: largest feed of the width",
            "by width",
            width,
            write_feed_ceiling_whole(largest, units),
            row.largest.citation,
        ),
    ]
    if by_hand:
        slide = shop.lathe.cross_slide
        steps.append(
            Step(
                "Ceiling: a hand on the handle",
                "f = z p / n",
                f"z = {allowances.handle_turns_most:g} turns/min, p = {slide.travel_per_turn:.4g} "
                f"mm/turn, n = {cut.spindle_speed:g} rev/min",
                write_feed_ceiling_whole(ceilings[Reason.HAND_PACE], units),
                allowance_source("handle_turns_most"),
            )
        )
    depth = (cut.diameter - cut.bore) / 2.0
    reaches = ceilings[Reason.REACH] > 0.0
    steps.append(
        Step(
            "Reach of the blade",
            "projection ≥ depth + clearance",
            f"{cut.blade.projection:.4g} mm, {depth:.4g} mm + {allowances.reach_clearance:g} mm",
            "reaches" if reaches else "does not reach: no cut",
            f"shop file; {allowance_source('reach_clearance')}",
        )
    )
    return steps


def pace_steps(shop: Shop, cut: Cut) -> list[Step]:
    """Return the steps from feed to the handle and to the time of the cut."""
    slide = shop.lathe.cross_slide
    per_second = slide.divisions / cut.seconds_per_turn
    reads = slide.travel_per_turn * (2.0 if slide.dial_reads is DialReads.DIAMETER else 1.0)
    return [
        Step(
            "Pace of the slide",
            "vf = f n",
            f"{cut.feed:.4f} mm/rev x {cut.spindle_speed:g} rev/min",
            f"{cut.feed_rate:.1f} mm/min",
            "definition",
        ),
        Step(
            "Pace of the handle",
            "t = 60 p / vf",
            f"p = {slide.travel_per_turn:.4g} mm of tool travel a turn "
            f"(the dial counts {reads:.4g} mm on the {slide.dial_reads.value})",
            f"{cut.seconds_per_turn:.2f} s a turn, {per_second:.1f} divisions a second",
            "definition; shop file",
        ),
        Step(
            "Time of the cut at constant rev/min",
            "t = (D - d) / (2 f n)",
            f"D = {cut.diameter:g} mm, d = {cut.bore:g} mm",
            f"{cut.time:.2f} min",
            "[TG-6] 2021-22 p. 1069 (found)",
        ),
    ]
