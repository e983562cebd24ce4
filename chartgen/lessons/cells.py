"""Every bar that a lathe's class may be asked about: windows worked out once, as arrays.

The last axis of (material, blade, diameter, other) is for what else an exercise varies.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from functools import cached_property, lru_cache

import numpy as np

from chartgen.lessons.class_units import ClassUnits, class_units
from chartgen.limits.case import Case
from chartgen.limits.choice import choose
from chartgen.limits.force import high_force, nominal_force
from chartgen.limits.run import make_case
from chartgen.limits.spindle import Duration
from chartgen.limits.window import Windows
from chartgen.model.lathe import Drive
from chartgen.model.material import Material
from chartgen.model.shop import Feeding, Shop
from chartgen.quantities import (
    BoolArray,
    FloatArray,
    IntArray,
    NewtonMetres,
    Newtons,
    RevsPerMinute,
    frozen_array,
)

# A class is asked about common bars, whatever the few are that a card prints (mm).
_SMALLEST, _LARGEST = 10.0, 30.0
_MOST_DIAMETERS = 160
_SLIP = 1e-9
_FIRM = 0.6
"""Least share of the recommended feed in an exercise: common practice, no source."""


@dataclass(frozen=True, kw_only=True, eq=False, repr=False)
class Cells:
    """One lathe's cells. Diameters and feeds are in the units of the class, speeds in rev/min."""

    shop: Shop
    materials: tuple[Material, ...]
    diameters: FloatArray
    steps: FloatArray
    case: Case
    windows: Windows

    @property
    def units(self) -> ClassUnits:
        """The units of the class."""
        return class_units(self.shop.request.units)

    @property
    def material(self) -> IntArray:
        """Places of the materials, on their axis."""
        return np.arange(len(self.materials)).reshape(-1, 1, 1, 1)

    @property
    def blade(self) -> IntArray:
        """Places of the blades, on their axis."""
        return np.arange(len(self.shop.blades)).reshape(1, -1, 1, 1)

    @property
    def diameter(self) -> FloatArray:
        """Diameters in the units of the class, on their axis."""
        return self.diameters.reshape(1, 1, -1, 1)

    @property
    def has_window(self) -> BoolArray:
        """Whether a cell has a recommended cut, with a last axis of one."""
        return self.windows.has_window[..., np.newaxis]

    @property
    def speed(self) -> RevsPerMinute[FloatArray]:
        """Speed of the recommended cut, with a last axis of one."""
        return self.windows.spindle_speed[..., np.newaxis]

    @property
    def position(self) -> IntArray:
        """Place of the drive position of the recommended cut, with a last axis of one."""
        return self.windows.position[..., np.newaxis]

    @cached_property
    def feeds(self) -> FloatArray:
        """Feeds in the units of the class: round ones, or those of the gearbox."""
        units, slide = self.units, self.shop.lathe.cross_slide
        if self.shop.request.feeding is Feeding.POWER:
            listed = np.asarray(slide.power_feeds) / units.mm
            return np.unique(np.round(listed, units.feed_decimals))
        most = 0.3 / units.mm
        return np.round(
            units.feed_step * np.arange(1, math.floor(most / units.feed_step) + 1),
            units.feed_decimals,
        )

    def is_inside(self, feed: FloatArray) -> BoolArray:
        """Return whether feeds of the class are in the windows at the recommended speeds.

        Those near the floor are left out, though they lie inside: nobody is taught to be timid.
        """
        mm = feed * self.units.mm
        floor, ceiling = self.windows.floor[..., np.newaxis], self.windows.ceiling[..., np.newaxis]
        firm = _FIRM * self.windows.feed[..., np.newaxis]
        # Where there is no window the recommended feed is NaN, which fmax passes over.
        return self.has_window & (mm >= np.fmax(floor, firm)) & (mm <= ceiling)

    def force(self, feed: FloatArray) -> Newtons[FloatArray]:
        """Return the expected force at feeds of the class; 0 without force data."""
        return nominal_force(self.windows.grid, feed * self.units.mm)

    def force_high(self, feed: FloatArray) -> Newtons[FloatArray]:
        """Return the high side of the force at feeds of the class."""
        return high_force(self.windows.grid, feed * self.units.mm, self.case.allowances)

    @cached_property
    def torque(self) -> dict[Duration, NewtonMetres[FloatArray]]:
        """Torque of the drive at each recommended cut, with a last axis of one."""
        found = {}
        for duration in (Duration.CONTINUOUS, Duration.ONE_CUT):
            torque = np.zeros(self.speed.shape)
            for place, position in enumerate(self.windows.positions):
                given = self.case.spindle.torque(position, self.speed, duration)
                torque = np.where(self.position == place, given, torque)
            found[duration] = torque
        return found

    def is_one_cut(self, feed: FloatArray) -> BoolArray:
        """Return whether a cut at feeds of the class is over within one cut's time."""
        minutes = self.case.allowances.one_cut_minutes
        most = minutes * feed * self.units.mm * self.speed
        return np.asarray(self.windows.grid.depth <= most * (1.0 + _SLIP))

    @cached_property
    def trial(self) -> IntArray:
        """The place of the recommended speed among those tried, with a last axis of one."""
        trials = self.case.trials
        is_it = (trials.speed == self.speed) & (trials.position == self.position)
        return np.asarray(np.argmax(is_it, axis=3))[..., np.newaxis]

    def at_trial(self, values: FloatArray) -> FloatArray:
        """Return values over all trials at the recommended one, with a last axis of one."""
        full = np.broadcast_to(values, (*self.windows.grid.shape, self.case.trials.position.size))
        return np.take_along_axis(full, self.trial, axis=3)


def make_cells(shop: Shop, materials: Sequence[Material]) -> Cells:
    """Work out a lathe's cells; the shop's own request gives units and feeding."""
    units = class_units(shop.request.units)
    diameters = _diameters(shop, units)
    case = make_case(
        shop, materials=materials, blades=shop.blades, diameters=list(diameters * units.mm)
    )
    return Cells(
        shop=shop,
        materials=tuple(materials),
        diameters=diameters,
        steps=spindle_steps(shop.lathe.drive),
        case=case,
        windows=choose(case, shop.request.units),
    )


@lru_cache(maxsize=64)
def spindle_steps(drive: Drive) -> RevsPerMinute[FloatArray]:
    """Return the speeds that the spindle can be set to, rising: steps, or marks of the dial."""
    found: set[float] = set()
    for position in drive.positions:
        if position.is_single_speed:
            found.add(position.slowest)
            continue
        first = math.ceil(position.slowest / position.dial_step - _SLIP)
        last = math.floor(position.fastest / position.dial_step + _SLIP)
        found |= {round(position.dial_step * n, 6) for n in range(first, last + 1)}
    return frozen_array(sorted(step for step in found if step <= drive.fastest_spindle))


def _diameters(shop: Shop, units: ClassUnits) -> FloatArray:
    """Return round diameters, in the units of the class, from the thinnest to the thickest bar."""
    asked = shop.request.diameters
    least = min(*asked, _SMALLEST)
    most = min(max(*asked, _LARGEST), shop.lathe.swing or math.inf)
    step = units.diameter_step
    while (most - least) / units.mm / step > _MOST_DIAMETERS:
        step *= 2.0
    first = math.ceil(least / units.mm / step - _SLIP)
    last = max(first, math.floor(most / units.mm / step + _SLIP))
    return step * np.arange(first, last + 1, dtype=np.float64)
