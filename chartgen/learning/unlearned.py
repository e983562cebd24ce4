"""The shop as it would be assumed without what earlier readings gave."""

from dataclasses import replace

from chartgen.model.measured import Assumption
from chartgen.model.shop import Shop


def unlearned(shop: Shop) -> Shop:
    """Return the shop with every measured value left out, as if its file were silent there.

    Else a second run would count the first one's readings twice.
    """
    lathe, allowances = shop.lathe, dict(shop.allowances)
    for one in shop.measured:
        match one.assumption:
            case Assumption.FORCE_RESERVE:
                del allowances["confined_chip"]
            case Assumption.DRIVE_EFFICIENCY:
                lathe = replace(lathe, drive=replace(lathe.drive, efficiency=None))
            case Assumption.MOTOR_EFFICIENCY:
                lathe = replace(lathe, motor=replace(lathe.motor, efficiency=None))
            case Assumption.BREAKDOWN:
                lathe = replace(lathe, motor=replace(lathe.motor, breakdown=None))
            case Assumption.CURRENT_LIMIT:
                lathe = replace(lathe, motor=replace(lathe.motor, current_limit=None))
            case Assumption.KEY_TORQUE:
                lathe = replace(lathe, chuck=replace(lathe.chuck, key_torque=None))
            case Assumption.TOOL_STIFFNESS:
                lathe = replace(lathe, tool_stiffness=None)
    return replace(shop, lathe=lathe, allowances=allowances, measured=())
