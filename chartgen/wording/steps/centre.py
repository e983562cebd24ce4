"""The steps about the way in: easing the feed, changing up, the height of the edge."""

from chartgen.limits.cut import Cut, Side
from chartgen.limits.way_in import WayIn, way_in
from chartgen.limits.window import Windows
from chartgen.model.shop import Shop
from chartgen.physics.centre import CentreFeedRule, working_clearance, working_rake
from chartgen.wording.numbers import write_length, write_speed
from chartgen.wording.steps.step import Step, allowance_source

_RULE = CentreFeedRule.TO_HALF
# Radii at which the height of the edge is looked at: well out, and close to the centre.
_RADII = (2.0, 0.5)


def centre_steps(shop: Shop, windows: Windows, cut: Cut) -> list[Step]:
    """Return what happens between the outside and the centre; bored work has no centre."""
    if cut.bore > 0.0:
        return [
            Step(
                "The way in",
                "none",
                f"bore {cut.bore:g} mm",
                "bored work has no centre: only the surface speed falls",
                "definition",
            )
        ]
    steps = [_height_step(cut)]
    if cut.side is Side.NO_WINDOW:
        return steps
    way = way_in(shop, windows, (0, shop.blades.index(cut.blade), 0), _RULE)
    return [_ease_step(way), _change_step(shop, way), _time_step(way), *steps]


def _ease_step(way: WayIn) -> Step:
    held = " (held to the least feed of this edge)" if way.eased_to_least else ""
    return Step(
        "Feed near the centre",
        f"{_RULE.words} inside Ø {way.eased_from:g} mm",
        f"f = {way.feed:.4f} mm/rev",
        f"{way.eased_feed:.4f} mm/rev{held}; other sources: "
        f"{CentreFeedRule.BY_30_PERCENT.words}, {CentreFeedRule.TO_A_THIRD.words}",
        f"[{_RULE.source}] ({_RULE.mark}); where it begins is common practice, no source",
    )


def _change_step(shop: Shop, way: WayIn) -> Step:
    units = shop.request.units
    changes = ", ".join(
        f"{write_speed(change.spindle_speed)} rev/min inside "
        f"Ø {write_length(change.diameter, units)}"
        for change in way.changes
    )
    return Step(
        "Changing up on the way in, where the knob is within reach",
        "keep the surface speed, under every cap and within the torque",
        f"position {way.position.name}",
        changes or "not for this drive or this diameter",
        "step-up plan of this program; it need not be followed",
    )


def _time_step(way: WayIn) -> Step:
    return Step(
        "Time to the centre, the eased feed in",
        "t = Σ (D1 - D2) / (2 f n)",
        "with one speed; with the changes",
        f"{60.0 * way.time:.0f} s; {60.0 * way.time_with_changes:.0f} s",
        "[TG-6] 2021-22 p. 1069 (found)",
    )


def _height_step(cut: Cut) -> Step:
    error = cut.case.allowances.centre_height
    turned = "; ".join(
        f"at Ø {2.0 * radius:g} mm rake "
        f"{float(working_rake(rake=0.0, height_error=error, radius=radius)):+.1f}°, clearance "
        f"{float(working_clearance(clearance=0.0, height_error=error, radius=radius)):+.1f}°"
        for radius in _RADII
    )
    return Step(
        "Height of the edge",
        "± asin(e / r)",
        f"e = {error:g} mm above centre (below: the signs turn)",
        turned,
        f"geometry; {allowance_source('centre_height')}",
    )
