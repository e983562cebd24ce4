"""Exercises of handle and time: seconds a turn of the handle, seconds to the centre."""

import numpy as np

from chartgen.lessons.cells import Cells
from chartgen.lessons.choices import Choices, choices
from chartgen.lessons.class_units import INCH_MIN
from chartgen.lessons.exercise import Exercise, Given, Working
from chartgen.lessons.kinds import Kind, Slip
from chartgen.lessons.place import Place
from chartgen.model.lathe import DialReads
from chartgen.physics.kinematics import feed_rate, seconds_per_turn
from chartgen.physics.time import plunge_time
from chartgen.quantities import MM_MIN, RPM, SECOND


def handle_pace_choices(cells: Cells) -> Choices:
    """Return spindle speeds and feeds of cuts inside their windows."""
    feed = cells.feeds
    units, slide = cells.units, cells.shop.lathe.cross_slide
    travel = slide.travel_per_turn / units.mm
    counted = 2.0 * travel if slide.dial_reads is DialReads.DIAMETER else travel
    return choices(
        {
            "spindle_speed": cells.speed,
            "feed": feed,
            "dial_per_turn": np.full((1, 1, 1, 1), round(counted, units.length_decimals)),
        },
        material=cells.material,
        blade=cells.blade,
        where=cells.is_inside(feed),
    )


def time_to_centre_choices(cells: Cells) -> Choices:
    """Return diameters, spindle speeds and feeds of cuts inside their windows."""
    feed = cells.feeds
    return choices(
        {"diameter": cells.diameter, "spindle_speed": cells.speed, "feed": feed},
        material=cells.material,
        blade=cells.blade,
        where=cells.is_inside(feed),
    )


def _rate(place: Place, spindle_speed: float, feed: float) -> tuple[float, Working]:
    """Return the pace of the slide in mm/min, and the line that works it out."""
    units = place.units
    mm_min = float(feed_rate(feed=feed * units.mm, spindle_speed=spindle_speed))
    line = Working(
        key="feed-rate",
        values=(place.feed(feed), Given(key="spindle-speed", value=spindle_speed, unit=RPM)),
        result=mm_min / units.mm,
        unit=MM_MIN if units.mm == 1.0 else INCH_MIN,
    )
    return mm_min, line


def handle_pace(
    place: Place, *, spindle_speed: float, feed: float, dial_per_turn: float
) -> Exercise:
    """Ask how many seconds one turn of the cross-slide handle takes.

    `dial_per_turn` is what the dial counts in a turn. Where it reads the diameter the question
    gives just that, as `dial-per-turn`, and the tool moves half of it; else `travel-per-turn`.
    """
    units = place.units
    reads_diameter = place.shop.lathe.cross_slide.dial_reads is DialReads.DIAMETER
    travel = dial_per_turn / 2.0 if reads_diameter else dial_per_turn
    rate, line = _rate(place, spindle_speed, feed)
    seconds = float(seconds_per_turn(feed_rate=rate, travel_per_turn=travel * units.mm))
    dial = place.length("dial-per-turn", dial_per_turn)
    travelled = place.length("travel-per-turn", travel)
    # Which of the two a dial tempts to: to take its number as the way of the tool, or half of it.
    trap = (
        (Slip.DIAMETER_FOR_RADIUS, 2.0 * seconds)
        if reads_diameter
        else (Slip.RADIUS_FOR_DIAMETER, seconds / 2.0)
    )
    rate_given = Given(key="feed-rate", value=line.result, unit=line.unit)
    halving = Working(key="travel-per-turn", values=(dial,), result=travel, unit=place.units.length)
    return place.numeric(
        Kind.HANDLE_PACE,
        givens=(
            Given(key="spindle-speed", value=spindle_speed, unit=RPM),
            place.feed(feed),
            dial if reads_diameter else travelled,
        ),
        value=seconds,
        unit=SECOND,
        slips=[
            trap,
            (Slip.FACTOR_SIXTY, seconds / 60.0),
            (Slip.PER_MINUTE_FOR_PER_REV, seconds * spindle_speed),
            (Slip.FACTOR_TEN, 10.0 * seconds),
            (Slip.INCH_FOR_MILLIMETRE, seconds * (25.4 if units.mm == 1.0 else 1.0 / 25.4)),
        ],
        working=(
            *((halving,) if reads_diameter else ()),
            line,
            Working(
                key="seconds-per-turn",
                values=(travelled, rate_given),
                result=seconds,
                unit=SECOND,
            ),
        ),
    )


def time_to_centre(place: Place, *, diameter: float, spindle_speed: float, feed: float) -> Exercise:
    """Ask how many seconds a cut takes to the centre at constant spindle speed."""
    units = place.units
    minutes = float(
        plunge_time(
            outer_diameter=diameter * units.mm,
            inner_diameter=0.0,
            feed=feed * units.mm,
            spindle_speed=spindle_speed,
        )
    )
    seconds = 60.0 * minutes
    across = place.length("diameter", diameter)
    _, line = _rate(place, spindle_speed, feed)
    rate_given = Given(key="feed-rate", value=line.result, unit=line.unit)
    return place.numeric(
        Kind.TIME_TO_CENTRE,
        givens=(
            across,
            Given(key="spindle-speed", value=spindle_speed, unit=RPM),
            place.feed(feed),
        ),
        value=seconds,
        unit=SECOND,
        slips=[
            (Slip.DIAMETER_FOR_RADIUS, 2.0 * seconds),
            (Slip.RADIUS_FOR_DIAMETER, seconds / 2.0),
            (Slip.FACTOR_SIXTY, minutes),
            (Slip.PER_MINUTE_FOR_PER_REV, seconds * spindle_speed),
            (Slip.FACTOR_TEN, 10.0 * seconds),
            (Slip.INCH_FOR_MILLIMETRE, seconds * (25.4 if units.mm == 1.0 else 1.0 / 25.4)),
        ],
        working=(
            line,
            Working(key="time-to-centre", values=(across, rate_given), result=seconds, unit=SECOND),
        ),
    )
