"""What was measured on this lathe, in words: on a card, in an explanation, in `check`."""

from chartgen.model.measured import Assumption
from chartgen.model.shop import Shop
from chartgen.quantities import FRACTION

_NAMES = {
    Assumption.FORCE_RESERVE: "force reserve",
    Assumption.DRIVE_EFFICIENCY: "efficiency of the drive",
    Assumption.MOTOR_EFFICIENCY: "efficiency of the motor",
    Assumption.BREAKDOWN: "breakdown torque over rated torque",
    Assumption.CURRENT_LIMIT: "current limit over rated torque",
    Assumption.KEY_TORQUE: "pull on the chuck key",
    Assumption.TOOL_STIFFNESS: "stiffness of tool post and slides",
}


def name_of(assumption: Assumption) -> str:
    """Return what an assumption is called."""
    return _NAMES[assumption]


def write_amount(value: float, assumption: Assumption) -> str:
    """Return a value of an assumption with its unit; the force reserve is a plain factor."""
    if assumption is Assumption.FORCE_RESERVE:
        return f"{value:.2f}"
    if assumption.unit is FRACTION:
        return f"{100.0 * value:.0f} %"
    return f"{value:g} {assumption.unit.label}"


def measured_words(shop: Shop, assumption: Assumption) -> str:
    """Return "measured 2026-11-25", or nothing where it was not."""
    one = shop.measured_of(assumption)
    return f"measured {one.date}" if one else ""


def comma_measured(shop: Shop, assumption: Assumption) -> str:
    """Return ", measured 2026-11-25" to follow a value, or nothing."""
    words = measured_words(shop, assumption)
    return f", {words}" if words else ""


def stall_words(shop: Shop) -> str:
    """Return where the motor was measured to stall, to follow what it gives; or nothing."""
    for assumption in (Assumption.BREAKDOWN, Assumption.CURRENT_LIMIT):
        one = shop.measured_of(assumption)
        if one:
            return (
                f", {name_of(assumption)} {write_amount(one.value, assumption)} measured {one.date}"
            )
    return ""


def measured_lines(shop: Shop) -> tuple[str, ...]:
    """Return a line for each measured value: how well it is known, from how much, and when."""
    return tuple(
        f"Measured: {name_of(one.assumption)} {write_amount(one.value, one.assumption)} "
        f"± {write_amount(one.plus_minus, one.assumption)} "
        f"({100.0 * one.level:g} % sure), from {one.readings} readings up to {one.date}."
        for one in shop.measured
    )
