"""Exercises of reading: power off the nomogram, torque off the spindle's curve."""

import math
from itertools import pairwise

import numpy as np

from chartgen.lessons.accepted import BY_CURVE
from chartgen.lessons.cells import Cells
from chartgen.lessons.choices import Choices, choices
from chartgen.lessons.class_units import COUNT
from chartgen.lessons.exercise import Exercise, Given, Working
from chartgen.lessons.forces import power_parts
from chartgen.lessons.kinds import Kind, Slip
from chartgen.lessons.place import Place
from chartgen.limits.allowances import allowances_for
from chartgen.limits.spindle import Duration, make_spindle
from chartgen.physics.kinematics import cutting_speed as surface_speed_of
from chartgen.quantities import N_M, RPM, WATT, FloatArray

DURATIONS = tuple(Duration)
"""The given `duration` counts in this order, from 0."""
# Well inside the printed scales, in N and in m/min or ft/min: a test holds them to the figure.
FORCES = 60.0, 2500.0
SPEEDS = {True: (6.0, 400.0), False: (25.0, 1200.0)}
_LEAST_TORQUE = 0.1
_PLACING, _STEEPEST = 0.02, 0.5 * BY_CURVE
"""Where a curve falls steeply, as a motor's does at its fastest, the place on the scale of speed
that a pencil is off by (common practice, no source) may take up half of what passes for right.
"""
_LABELS = (1.0, 2.0, 5.0, 10.0)
_READ_SPEEDS = np.array([n * 10.0**k for k in (1, 2, 3) for n in np.arange(1.0, 10.0, 0.5)])


def _two_figures(values: FloatArray) -> FloatArray:
    """Return numbers as a ruler is laid on them: to two figures."""
    place = 10.0 ** (np.floor(np.log10(np.maximum(values, 1e-9))) - 1.0)
    return np.asarray(np.rint(values / place) * place)


def read_evenly(value: float) -> float:
    """Return what is read where a logarithmic scale's labels are taken for evenly divided.

    Labels are 1, 2, 5, 10; a value half of the way from 2 to 5 would be read as 3.5.
    """
    decade = 10.0 ** math.floor(math.log10(value))
    low, high = next((a * decade, b * decade) for a, b in pairwise(_LABELS) if value < b * decade)
    return low + (high - low) * math.log(value / low) / math.log(high / low)


def read_nomogram_choices(cells: Cells) -> Choices:
    """Return forces and surface speeds of cuts inside their windows, on the printed scales."""
    units, grid, feed = cells.units, cells.windows.grid, cells.feeds
    surface = surface_speed_of(spindle_speed=cells.speed, diameter=grid.diameter)
    speed = _two_figures(np.asarray(surface) / units.metres)
    force = _two_figures(cells.force(feed))
    slowest, fastest = SPEEDS[units.mm == 1.0]
    on_scale = (force >= FORCES[0]) & (force <= FORCES[1])
    on_scale = on_scale & (speed >= slowest) & (speed <= fastest)
    return choices(
        {"force": force, "surface_speed": speed},
        material=cells.material,
        blade=cells.blade,
        where=cells.is_inside(feed) & grid.has_force & on_scale,
    )


def read_nomogram(place: Place, *, force: float, surface_speed: float) -> Exercise:
    """Ask for the power at the edge, by a ruler across the power nomogram."""
    givens, power, line = power_parts(place, force, surface_speed)
    return place.numeric(
        Kind.READ_NOMOGRAM,
        givens=givens,
        value=power,
        unit=WATT,
        slips=[
            (Slip.FACTOR_TEN, 10.0 * power),
            (Slip.MISREAD_SCALE, read_evenly(power)),
            (Slip.FACTOR_SIXTY, 60.0 * power),
        ],
        working=(line,),
    )


def read_curve_choices(cells: Cells) -> Choices:
    """Return speeds, drive positions and durations at which the curves show a torque."""
    spindle = cells.case.spindle
    fastest = cells.shop.lathe.drive.fastest_spindle
    rows = []
    for place, position in enumerate(cells.shop.lathe.drive.positions):
        on_it = (position.slowest <= _READ_SPEEDS) & (
            min(position.fastest, fastest) >= _READ_SPEEDS
        )
        if position.is_single_speed:
            continue
        # Readings stand for any duration.
        for duration in (Duration.ONE_CUT,) if position.readings else DURATIONS:
            torque = spindle.torque(position, _READ_SPEEDS, duration)
            beside = [
                spindle.torque(position, _READ_SPEEDS * (1.0 + way * _PLACING), duration)
                for way in (-1.0, 1.0)
            ]
            is_flat = np.max(np.abs(np.array(beside) - torque), axis=0) <= _STEEPEST * torque
            is_shown = on_it & is_flat & (torque > _LEAST_TORQUE)
            rows += [
                (speed, float(place), float(DURATIONS.index(duration)))
                for speed in _READ_SPEEDS[is_shown]
            ]
    columns = np.array(rows, dtype=np.float64).reshape(1, 1, 1, -1, 3)
    return choices(
        {
            "spindle_speed": columns[..., 0],
            "position": columns[..., 1],
            "duration": columns[..., 2],
        },
        material=cells.material,
        blade=np.full((1, 1, 1, 1), -1),
        where=np.ones((len(cells.materials), 1, 1, len(rows)), dtype=np.bool_),
    )


def read_curve(place: Place, *, spindle_speed: float, position: float, duration: float) -> Exercise:
    """Ask for the torque that a drive position gives at a speed, off the spindle's curves."""
    shop = place.shop
    spindle = make_spindle(shop.lathe, allowances_for(shop))
    driving = shop.lathe.drive.positions[int(position)]

    def gives(held: Duration) -> float:
        return float(spindle.torque(driving, np.array([spindle_speed]), held)[0])

    asked = DURATIONS[int(duration)]
    torque = gives(asked)
    # Another line of the figure, the nearest that can be told from the one asked about.
    others = sorted(
        (gives(other) for other in DURATIONS if other is not asked),
        key=lambda other: abs(other - torque),
    )
    givens = (
        Given(key="spindle-speed", value=spindle_speed, unit=RPM),
        Given(key="position", value=position, unit=COUNT),
        Given(key="duration", value=duration, unit=COUNT),
    )
    return place.numeric(
        Kind.READ_CURVE,
        givens=givens,
        value=torque,
        unit=N_M,
        slips=[
            *((Slip.OTHER_LIMIT, other) for other in others if other > 0.0),
            (Slip.FACTOR_TEN, 10.0 * torque),
            (Slip.MISREAD_SCALE, read_evenly(torque)),
        ],
        working=(Working(key="torque-read", values=givens, result=torque, unit=N_M),),
    )
