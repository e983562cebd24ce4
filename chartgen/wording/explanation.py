"""One cell step by step: what is asked, the formula, the values, the result, the source."""

from dataclasses import dataclass

from chartgen.limits.cut import Cut, Side
from chartgen.limits.tightness import Tight
from chartgen.limits.window import Windows
from chartgen.model.shop import Shop
from chartgen.wording.allowances import allowance_lines
from chartgen.wording.numbers import (
    write_feed,
    write_feed_ceiling,
    write_feed_floor,
    write_length,
    write_speed,
)
from chartgen.wording.steps.blade import blade_steps
from chartgen.wording.steps.ceilings import feed_from_force_steps
from chartgen.wording.steps.centre import centre_steps
from chartgen.wording.steps.dig_in import dig_in_steps
from chartgen.wording.steps.feed import feed_steps, pace_steps
from chartgen.wording.steps.force import force_steps, torque_steps
from chartgen.wording.steps.grip import grip_steps
from chartgen.wording.steps.speed import speed_steps
from chartgen.wording.steps.step import Step
from chartgen.wording.steps.work import work_steps
from chartgen.wording.what_if import cell_sensitivity, cell_ways


@dataclass(frozen=True, slots=True, kw_only=True)
class Explanation:
    """A cell explained: heading, outcome, steps, and the allowances in force.

    `ways` are what would make its window roomier, the best first; `sensitivity` the
    assumptions that move it most, and so are worth measuring.
    """

    heading: str
    outcome: str
    steps: tuple[Step, ...]
    ways: tuple[str, ...]
    sensitivity: tuple[str, ...]
    allowances: tuple[str, ...]


def explain(shop: Shop, windows: Windows, cut: Cut) -> Explanation:
    """Return the explanation of one cell's recommended cut, or of its nearest miss."""
    units = shop.request.units
    bore = f", bore {write_length(cut.bore, units)}" if cut.bore else ""
    heading = (
        f"{cut.material.name}, {cut.blade.name}, Ø {write_length(cut.diameter, units)}{bore}, "
        f"on {shop.lathe.name}"
    )
    steps = (
        *speed_steps(shop, cut),
        *feed_steps(shop, cut),
        *force_steps(cut),
        *torque_steps(shop, cut),
        *feed_from_force_steps(cut),
        *blade_steps(shop, cut),
        *work_steps(shop, cut),
        *grip_steps(shop, cut),
        *dig_in_steps(shop, cut),
        *centre_steps(shop, windows, cut),
        *pace_steps(shop, cut),
    )
    return Explanation(
        heading=heading,
        outcome=outcome(shop, windows, cut),
        steps=steps,
        ways=tuple(cell_ways(shop, cut)),
        sensitivity=tuple(cell_sensitivity(shop, cut)),
        allowances=tuple(allowance_lines(shop, cut)),
    )


def outcome(shop: Shop, windows: Windows, cut: Cut) -> str:
    """Return the cell's answer in one or two sentences."""
    units = shop.request.units
    index = (0, shop.blades.index(cut.blade), 0)
    ends = (
        f"floor {write_feed_floor(float(windows.floor[index]), units)} "
        f"({windows.floor_reason(index).legend}), "
        f"ceiling {write_feed_ceiling(float(windows.ceiling[index]), units)} "
        f"({windows.ceiling_reason(index).legend})"
    )
    if cut.side is Side.NO_WINDOW:
        return f"No window. Nearest miss at {write_speed(cut.spindle_speed)} rev/min: {ends}."
    verdict = windows.verdict(index).value
    if windows.is_tight[index]:
        verdict += f" ({Tight(int(windows.tight_flags[index])).words})"
    margin = float(windows.ceiling[index]) / cut.feed
    return (
        f"{write_speed(cut.spindle_speed)} rev/min {cut.position.mark}".rstrip()
        + f", {write_feed(cut.feed, units)} a turn: {verdict}. Window at this speed: {ends}; "
        f"the ceiling is {margin:.2f} times the feed."
    )
