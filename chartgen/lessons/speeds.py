"""Exercises of speed: spindle speed wanted, the nearest step of the lathe, what it truly gives."""

import math

import numpy as np

from chartgen.lessons.accepted import BY_CALCULATION
from chartgen.lessons.cells import Cells, spindle_steps
from chartgen.lessons.choices import Choices, choices
from chartgen.lessons.exercise import Exercise, Given, Working
from chartgen.lessons.kinds import Kind, Slip
from chartgen.lessons.place import Place
from chartgen.physics.kinematics import cutting_speed as surface_speed_of
from chartgen.physics.kinematics import spindle_speed as spindle_speed_of
from chartgen.quantities import RPM, BoolArray, FloatArray, RevsPerMinute

_ROUND = (1.0, 2.0, 5.0, 10.0, 20.0, 50.0)
_VALUES = 14
"""About so many surface speeds of a material are asked about, so that they come out round."""
# A step is asked for only where it is clear which is nearest: this share of the gap to spare.
_CLEAR = 0.1
_CLEAR_SPEED = 0.002
_MOST_STEPS = 40
_STEP_REACH = 0.45
_SLIP = 1e-9


def spindle_speed_choices(cells: Cells) -> Choices:
    """Return surface speeds and diameters whose spindle speed the lathe has."""
    return _of_surface_speed(cells, cells.steps[0], cells.steps[-1], clear=False)


def nearest_step_choices(cells: Cells) -> Choices:
    """Return surface speeds and diameters for which it is clear which step is nearest."""
    return _of_surface_speed(cells, cells.steps[0], cells.steps[-1], clear=True)


def _of_surface_speed(
    cells: Cells, slowest: RevsPerMinute[float], fastest: RevsPerMinute[float], *, clear: bool
) -> Choices:
    units, grid = cells.units, cells.windows.grid
    speeds = _surface_speeds(cells)
    wanted = np.asarray(
        spindle_speed_of(cutting_speed=speeds * units.metres, diameter=cells.diameter * units.mm)
    )
    cap = np.broadcast_to(cells.windows.speed_cap[..., np.newaxis], cells.speed.shape)
    fits = (wanted >= slowest) & (wanted <= np.minimum(cap, fastest))
    within = speeds * units.metres <= np.broadcast_to(grid.start_speed, cap.shape)
    where = cells.has_window & fits & within
    if clear:
        if cells.steps.size == 1:
            where = np.zeros_like(where)
        else:
            nearest, is_clear = _nearest(cells.steps, wanted)
            where &= is_clear & (nearest <= cap)
    return choices(
        {"surface_speed": speeds, "diameter": cells.diameter},
        material=cells.material,
        blade=cells.blade,
        where=where,
    )


def _surface_speeds(cells: Cells) -> FloatArray:
    """Return round surface speeds between the slow end and the start speed of each pair."""
    units, grid = cells.units, cells.windows.grid
    most = grid.start_speed / units.metres
    low = [
        [m.speeds[b.tool_material].low.value / units.metres for b in cells.shop.blades]
        for m in cells.materials
    ]
    least = np.minimum(np.array(low).reshape(most.shape), most)
    span = np.maximum(most - least, most / 3.0)
    step = np.array([next((r for r in _ROUND if s / r <= _VALUES), _ROUND[-1]) for s in span.flat])
    step = step.reshape(most.shape)
    first = np.ceil((most - span) / step - _SLIP)
    return np.asarray(np.maximum(first, 1.0) * step + step * np.arange(_VALUES))


def _nearest(steps: FloatArray, wanted: FloatArray) -> tuple[FloatArray, BoolArray]:
    """Return the nearest step to speeds between the first and the last, and whether it is clear.

    Clear is what is nearest by difference and by ratio alike, with something to spare.
    """
    below = np.clip(np.searchsorted(steps, wanted, side="right") - 1, 0, steps.size - 2)
    low, high = steps[below], steps[below + 1]
    spare = np.maximum(_CLEAR * (high - low), _CLEAR_SPEED * wanted)
    half = (low + high) / 2.0
    up = wanted >= half + spare
    down = (wanted <= half - spare) & (wanted <= np.sqrt(low * high))
    return np.where(wanted > half, high, low), up | down


def true_surface_speed_choices(cells: Cells) -> Choices:
    """Return steps of the lathe and diameters, not over what the edge bears."""
    steps = cells.steps
    for coarse in (20.0, 50.0, 100.0):
        if steps.size > _MOST_STEPS:
            steps = cells.steps[np.abs(cells.steps / coarse % 1.0) < _SLIP]
    start = cells.windows.start_speed[..., np.newaxis]
    cap = np.minimum(cells.windows.speed_cap[..., np.newaxis], start * 1.05)
    return choices(
        {"spindle_speed": steps, "diameter": cells.diameter},
        material=cells.material,
        blade=cells.blade,
        where=cells.has_window & (steps >= 0.4 * cap) & (steps <= cap),
    )


def _turning(place: Place, surface_speed: float, diameter: float) -> float:
    """Return the spindle speed for a surface speed and diameter of the class."""
    units = place.units
    return float(
        spindle_speed_of(cutting_speed=surface_speed * units.metres, diameter=diameter * units.mm)
    )


def _turning_slips(place: Place, speed: float) -> list[tuple[Slip, float]]:
    """Return the spindle speeds that slips lead to."""
    metric = place.units.mm == 1.0
    # Millimetres taken for inches; in an inch class, inches and feet put into the metric rule.
    other = 1.0 / 25.4 if metric else 1000.0 / place.units.speed_constant
    return [
        (Slip.RADIUS_FOR_DIAMETER, 2.0 * speed),
        (Slip.DIAMETER_FOR_RADIUS, speed / 2.0),
        (Slip.NO_PI, math.pi * speed),
        (Slip.FACTOR_TEN, speed / 10.0),
        (Slip.FACTOR_SIXTY, speed / 60.0),
        (Slip.INCH_FOR_MILLIMETRE, speed * other),
    ]


def spindle_speed(place: Place, *, surface_speed: float, diameter: float) -> Exercise:
    """Ask for the spindle speed that gives a surface speed at a diameter."""
    givens = (place.surface_speed(surface_speed), place.length("diameter", diameter))
    speed = _turning(place, surface_speed, diameter)
    return place.numeric(
        Kind.SPINDLE_SPEED,
        givens=givens,
        value=speed,
        unit=RPM,
        slips=_turning_slips(place, speed),
        working=(Working(key="spindle-speed", values=givens, result=speed, unit=RPM),),
    )


def nearest_step(place: Place, *, surface_speed: float, diameter: float) -> Exercise:
    """Ask for the step of this lathe nearest to the spindle speed wanted."""
    givens = (place.surface_speed(surface_speed), place.length("diameter", diameter))
    wanted = _turning(place, surface_speed, diameter)
    steps = spindle_steps(place.shop.lathe.drive)
    at = int(np.argmin(np.abs(steps - wanted)))
    step = float(steps[at])
    gaps = [abs(float(steps[k]) - step) for k in (at - 1, at + 1) if 0 <= k < steps.size]
    reach = min(BY_CALCULATION * step, _STEP_REACH * min(gaps, default=step))
    slips = [(Slip.STEP_ABOVE, at + 1), (Slip.STEP_BELOW, at - 1)]
    wrong = [(slip, float(steps[k])) for slip, k in slips if 0 <= k < steps.size]
    # The step nearest to a wrong speed; only where the lathe has such a speed at all.
    wrong += [
        (slip, float(steps[int(np.argmin(np.abs(steps - speed)))]))
        for slip, speed in _turning_slips(place, wanted)
        if steps[0] <= speed <= steps[-1]
    ]
    number = Given(key="spindle-speed", value=wanted, unit=RPM)
    return place.numeric(
        Kind.NEAREST_STEP,
        givens=givens,
        value=step,
        unit=RPM,
        slips=wrong,
        working=(
            Working(key="spindle-speed", values=givens, result=wanted, unit=RPM),
            Working(key="nearest-step", values=(number,), result=step, unit=RPM),
        ),
        span=(step - reach, step + reach),
    )


def true_surface_speed(place: Place, *, spindle_speed: float, diameter: float) -> Exercise:
    """Ask for the surface speed that a step of the lathe truly gives."""
    units = place.units
    givens = (
        Given(key="spindle-speed", value=spindle_speed, unit=RPM),
        place.length("diameter", diameter),
    )
    metres = surface_speed_of(spindle_speed=spindle_speed, diameter=diameter * units.mm)
    speed = float(metres) / units.metres
    other = 25.4 if units.mm == 1.0 else units.speed_constant / 1000.0
    return place.numeric(
        Kind.TRUE_SURFACE_SPEED,
        givens=givens,
        value=speed,
        unit=units.speed,
        slips=[
            (Slip.RADIUS_FOR_DIAMETER, speed / 2.0),
            (Slip.DIAMETER_FOR_RADIUS, 2.0 * speed),
            (Slip.NO_PI, speed / math.pi),
            (Slip.FACTOR_TEN, 10.0 * speed),
            (Slip.FACTOR_SIXTY, speed / 60.0),
            (Slip.INCH_FOR_MILLIMETRE, speed * other),
        ],
        working=(Working(key="surface-speed", values=givens, result=speed, unit=units.speed),),
    )
