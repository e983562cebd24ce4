"""What looks implausible in a shop file though nothing forbids it."""

from chartgen.limits.allowances import allowances_for
from chartgen.limits.spindle import input_efficiency
from chartgen.model.lathe import DialReads
from chartgen.model.motor import MotorKind, PowerIs, SelfCooling
from chartgen.model.shop import Shop

# Dials of small lathes run from 0.005 to 0.1 mm a division: common practice, no source.
_FINEST_DIVISION = 0.004
_COARSEST_DIVISION = 0.13


def doubts(shop: Shop) -> tuple[str, ...]:
    """Return warnings, each a sentence; empty where all looks plausible."""
    return tuple(
        doubt for doubt in (_power(shop), _travel(shop), _chuck(shop), _over_speed(shop)) if doubt
    )


def plate_lines(shop: Shop) -> tuple[str, ...]:
    """Return what the plates and dials were read as, for the owner to compare."""
    motor = shop.lathe.motor
    ratios = {
        "overload": motor.overload,
        "breakdown": motor.breakdown,
        "current limit": motor.current_limit,
    }
    stated = "".join(f", {name} {100 * r:.0f} %" for name, r in ratios.items() if r is not None)
    if motor.forced_cooling:
        stated += ", forced cooling"
    elif motor.self_cooling is not SelfCooling.CAUTIOUS:
        stated += f", self-cooling {motor.self_cooling.value}"
    fastest = f", fastest {motor.fastest:g} rev/min" if motor.fastest is not None else ""
    if motor.kind is MotorKind.MEASURED:
        return "Motor: as measured at the spindle.", _dial_line(shop), _blade_line(shop)
    plate = (
        f"Motor: {motor.kind.value}, plate {motor.plate_power:.4g} W {motor.power_is.value}, base "
        f"{motor.base_speed:g} rev/min{fastest}{stated}."
    )
    return plate, _dial_line(shop), _blade_line(shop)


def _dial_line(shop: Shop) -> str:
    slide = shop.lathe.cross_slide
    return (
        f"Cross-slide: {slide.travel_per_turn:.4g} mm of tool travel a turn, {slide.divisions} "
        f"divisions. Spindle at most {shop.lathe.drive.fastest_spindle:g} rev/min."
    )


def _blade_line(shop: Shop) -> str:
    blades = "; ".join(f"{blade.name} cuts {blade.insert_width:.4g} mm" for blade in shop.blades)
    return f"Blades: {blades}."


def _power(shop: Shop) -> str:
    motor = shop.lathe.motor
    if motor.kind in {MotorKind.MEASURED, MotorKind.THREE_PHASE}:
        return ""
    allowances = allowances_for(shop)
    drawn = motor.plate_power
    if motor.power_is is PowerIs.SHAFT:
        drawn /= input_efficiency(motor.kind, allowances)
    if drawn <= allowances.socket_power:
        return ""
    return (
        f"Doubtful: at full load this motor would draw about {drawn:.0f} W, more than a domestic "
        f"socket gives ({allowances.socket_power:.0f} W). Is the plate power that of the shaft?"
    )


def _travel(shop: Shop) -> str:
    slide = shop.lathe.cross_slide
    per_division = slide.travel_per_turn / slide.divisions
    on_dial = per_division * (2.0 if slide.dial_reads is DialReads.DIAMETER else 1.0)
    if _FINEST_DIVISION <= on_dial <= _COARSEST_DIVISION:
        return ""
    return (
        f"Doubtful: one division of the cross-slide dial would be {on_dial:.3f} mm; "
        "check travel_per_turn and divisions."
    )


def _over_speed(shop: Shop) -> str:
    """Return a warning where the drive can turn the spindle faster than the lathe may."""
    limit = shop.lathe.drive.fastest_spindle
    over = [p for p in shop.lathe.drive.positions if p.fastest > limit]
    if not over:
        return ""
    names = ", ".join(f"{p.name} ({p.fastest:g} rev/min)" for p in over)
    return (
        f"Mind: the drive can turn the spindle faster than this lathe may ({limit:g} rev/min): "
        f"{names}. Set the drive's highest frequency or the knob's end so that it cannot. No card "
        "goes above the limit."
    )


def _chuck(shop: Shop) -> str:
    marked, fastest = shop.lathe.chuck.marked_speed, shop.lathe.drive.fastest_spindle
    if marked is None or marked >= fastest:
        return ""
    return (
        f"Mind: the spindle can turn {fastest:.0f} rev/min, the chuck is marked {marked:.0f}; "
        "the cards keep to the chuck."
    )
