"""What was measured on this lathe, in words: on a card, in an explanation, in `check`."""

from chartgen.model.measured import Assumption
from chartgen.model.shop import Shop
from chartgen.quantities import FRACTION
from chartgen.wording.language import decimal, tr

NAMES = {
    Assumption.FORCE_RESERVE: "force reserve",
    Assumption.DRIVE_EFFICIENCY: "efficiency of the drive",
    Assumption.MOTOR_EFFICIENCY: "efficiency of the motor",
    Assumption.BREAKDOWN: "breakdown torque over rated torque",
    Assumption.CURRENT_LIMIT: "current limit over rated torque",
    Assumption.KEY_TORQUE: "pull on the chuck key",
    Assumption.TOOL_STIFFNESS: "stiffness of tool post and slides",
}
"""What assumptions are called, in English."""


def name_of(assumption: Assumption) -> str:
    """Return what an assumption is called."""
    return tr(NAMES[assumption])


def write_amount(value: float, assumption: Assumption) -> str:
    """Return a value of an assumption with its unit; the force reserve is a plain factor."""
    if assumption is Assumption.FORCE_RESERVE:
        return decimal(f"{value:.2f}")
    if assumption.unit is FRACTION:
        return f"{100.0 * value:.0f} %"
    return decimal(f"{value:g}") + f" {assumption.unit.label}"


def measured_words(shop: Shop, assumption: Assumption) -> str:
    """Return "measured 2026-11-25", or nothing where it was not."""
    one = shop.measured_of(assumption)
    return tr("measured {date}", date=one.date) if one else ""


def comma_measured(shop: Shop, assumption: Assumption) -> str:
    """Return ", measured 2026-11-25" to follow a value, or nothing."""
    words = measured_words(shop, assumption)
    return f", {words}" if words else ""


def stall_words(shop: Shop) -> str:
    """Return where the motor was measured to stall, to follow what it gives; or nothing."""
    for assumption in (Assumption.BREAKDOWN, Assumption.CURRENT_LIMIT):
        one = shop.measured_of(assumption)
        if one:
            return tr(
                ", {name} {amount} measured {date}",
                name=name_of(assumption),
                amount=write_amount(one.value, assumption),
                date=one.date,
            )
    return ""


def measured_lines(shop: Shop) -> tuple[str, ...]:
    """Return a line for each measured value: how well it is known, from how much, and when."""
    return tuple(
        tr(
            "Measured: {name} {amount} ± {plus_minus} ({level} % sure), from {readings} readings "
            "up to {date}.",
            name=name_of(one.assumption),
            amount=write_amount(one.value, one.assumption),
            plus_minus=write_amount(one.plus_minus, one.assumption),
            level=decimal(f"{100.0 * one.level:g}"),
            readings=one.readings,
            date=one.date,
        )
        for one in shop.measured
    )
