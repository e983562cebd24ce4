"""Exercises of the window: which limit ends it above, and why a cut under it fails."""

import numpy as np

from chartgen.lessons.cells import Cells
from chartgen.lessons.choices import Choices, choices
from chartgen.lessons.class_units import COUNT
from chartgen.lessons.draws import hash_key
from chartgen.lessons.exercise import Exercise, Given, Working
from chartgen.lessons.kinds import Kind, Slip
from chartgen.lessons.place import Place
from chartgen.limits.feed_ceilings import FEED_CEILINGS
from chartgen.limits.feed_floors import FEED_FLOORS
from chartgen.limits.force import feed_for_high_force
from chartgen.limits.force_capacities import DRIVING, HOLDING
from chartgen.limits.force_capacities.torque import shortest_feed
from chartgen.limits.reasons import CODES, Reason
from chartgen.quantities import RPM, FloatArray

_CLEAR = 1.15
"""The next limit lies so far above the one that binds; a feed so far under its floor."""
_OPTIONS = 4
_LARGEST = 1.0
"""A limit from this many mm/rev up ends nobody's window: it is no option."""


def limit_key(reason: Reason) -> str:
    """Return the key of a limit among givens and options."""
    return reason.name.lower().replace("_", "-")


def reason_of_key(key: str) -> Reason:
    """Return the limit of such a key."""
    return Reason[key.upper().replace("-", "_")]


_CEILINGS = tuple(reason for reason, _ in (*DRIVING, *HOLDING, *FEED_CEILINGS))
_NAMES = {reason.name.lower(): reason for reason in _CEILINGS}


def _significant(values: FloatArray, figures: int) -> FloatArray:
    """Return numbers to some figures, rounded down; what is no number above 0 stays."""
    sized = np.isfinite(values) & (values > 0.0)
    plain = np.where(sized, values, 1.0)
    scale = 10.0 ** (figures - 1 - np.floor(np.log10(plain)))
    return np.where(sized, np.floor(plain * scale + 1e-6) / scale, values)


def _ceilings(cells: Cells) -> dict[Reason, FloatArray]:
    """Return the feed (class units) up to which each limit lets each recommended cut go."""
    case, grid = cells.case, cells.windows.grid
    feed = np.nan_to_num(cells.windows.feed[..., np.newaxis])
    short = feed >= cells.at_trial(shortest_feed(case))
    found = {}
    for reason, capacity in (*DRIVING, *HOLDING):
        bears = cells.at_trial(feed_for_high_force(grid, capacity(case), case.allowances))
        # Of the two torques only that counts which fits the time of the cut.
        if reason in {Reason.TORQUE_ONE_CUT, Reason.TORQUE_CONTINUOUS}:
            bears = np.where(short == (reason is Reason.TORQUE_ONE_CUT), bears, np.inf)
        found[reason] = bears
    for reason, limit in FEED_CEILINGS:
        found[reason] = cells.at_trial(limit(case))
    return {
        reason: np.where(
            limit < _LARGEST,
            np.round(_significant(limit / cells.units.mm, 3), 6),
            np.inf,
        )
        for reason, limit in found.items()
    }


def what_binds_choices(cells: Cells) -> Choices:
    """Return recommended cuts whose lowest ceiling is clearly lower than the next."""
    ceilings = _ceilings(cells)
    stacked = np.concatenate(list(ceilings.values()), axis=3)
    rising = np.sort(stacked, axis=3)
    lowest, following = rising[..., :1], rising[..., 1:2]
    enough = np.isfinite(stacked).sum(axis=3, keepdims=True) >= _OPTIONS
    binding = np.argmin(stacked, axis=3)[..., np.newaxis]
    codes = np.array([CODES[reason] for reason in ceilings])[binding]
    # The window names its ceiling itself; only where both say the same is it asked.
    agrees = codes == cells.windows.ceiling_code[..., np.newaxis]
    return choices(
        {
            "diameter": cells.diameter,
            "spindle_speed": cells.speed,
            "position": cells.position.astype(np.float64),
            **{reason.name.lower(): ceiling for reason, ceiling in ceilings.items()},
        },
        material=cells.material,
        blade=cells.blade,
        where=cells.has_window & enough & agrees & (following >= _CLEAR * lowest),
        answer=np.asarray(binding),
    )


def what_binds(
    place: Place, *, diameter: float, spindle_speed: float, position: float, **ceilings: float
) -> Exercise:
    """Ask which limit ends the window above: the lowest of four ceilings of feed.

    `position` is the place of the drive position in the lathe's list, from 0: another may turn
    the same speed with another torque. `ceilings` are feeds by the lower-case name of their
    `Reason`; inf where one does not apply.
    """
    rising = sorted(
        (feed, CODES[_NAMES[name]], _NAMES[name])
        for name, feed in ceilings.items()
        if np.isfinite(feed)
    )[:_OPTIONS]
    feeds = {reason: feed for feed, _, reason in rising}
    # In the order of the legend, so that their place tells nothing.
    options = sorted(feeds, key=CODES.__getitem__)
    limits = tuple(
        Given(key=limit_key(reason), value=feeds[reason], unit=place.units.feed)
        for reason in options
    )
    right, others = rising[0][2], [reason for _, _, reason in rising[1:]]
    # Of two that are met last together, either is.
    slips = [
        (
            Slip.OTHER_SIDE if feeds[reason] == feeds[others[-1]] else Slip.OTHER_LIMIT,
            limit_key(reason),
        )
        for reason in others
    ]
    return place.choice(
        Kind.WHAT_BINDS,
        givens=(
            place.length("diameter", diameter),
            Given(key="spindle-speed", value=spindle_speed, unit=RPM),
            Given(key="position", value=position, unit=COUNT),
            *limits,
        ),
        options=tuple(limit_key(reason) for reason in options),
        right=limit_key(right),
        slips=slips,
        working=(
            Working(
                key="lowest-ceiling", values=limits, result=feeds[right], unit=place.units.feed
            ),
        ),
    )


def too_timid_choices(cells: Cells) -> Choices:
    """Return feeds clearly under just one floor of a cell that has a window."""
    units = cells.units
    step, count = (0.002, 40) if units.mm == 1.0 else (0.0001, 40)
    feed = np.round(step * np.arange(1, count + 1), 4)
    floors = {reason: cells.at_trial(limit(cells.case)) for reason, limit in FEED_FLOORS}
    # Printed as the floors are on cards: rounded up.
    scale = 10.0**units.feed_decimals
    edge, skin = (
        np.ceil(floors[reason] / units.mm * scale - 1e-6) / scale
        for reason in (Reason.EDGE_FLOOR, Reason.SKIN_FLOOR)
    )
    rubs = (feed * _CLEAR <= edge) & (feed >= skin)
    hardens = (feed * _CLEAR <= skin) & (feed >= edge)
    return choices(
        {
            "diameter": cells.diameter,
            "spindle_speed": cells.speed,
            "feed": feed,
            "edge_floor": edge,
            "skin_floor": skin,
        },
        material=cells.material,
        blade=cells.blade,
        where=cells.has_window & (rubs | hardens) & (feed >= np.maximum(edge, skin) / 5.0),
        answer=hardens.astype(np.int_),
    )


def too_timid(
    place: Place,
    *,
    diameter: float,
    spindle_speed: float,
    feed: float,
    edge_floor: float,
    skin_floor: float,
) -> Exercise:
    """Ask why a cut under its floor fails; a skin floor of 0 means the metal has no hard skin."""
    right = Reason.EDGE_FLOOR if feed < edge_floor else Reason.SKIN_FLOOR
    other = Reason.SKIN_FLOOR if right is Reason.EDGE_FLOOR else Reason.EDGE_FLOOR
    # In another order for other numbers, so that neighbours' letters differ.
    options = sorted(
        (Reason.STALL, Reason.BLADE_BENDING, Reason.EDGE_FLOOR, Reason.SKIN_FLOOR),
        key=lambda reason: hash_key(diameter, spindle_speed, feed, reason.name),
    )
    pairs = ((Reason.EDGE_FLOOR, edge_floor), (Reason.SKIN_FLOOR, skin_floor))
    floors = tuple(
        Given(key=limit_key(reason), value=value, unit=place.units.feed)
        for reason, value in pairs
        if value > 0.0
    )
    return place.choice(
        Kind.TOO_TIMID,
        givens=(
            place.length("diameter", diameter),
            Given(key="spindle-speed", value=spindle_speed, unit=RPM),
            place.feed(feed),
            *floors,
        ),
        options=tuple(limit_key(reason) for reason in options),
        right=limit_key(right),
        slips=[
            (Slip.OTHER_LIMIT, limit_key(other)),
            (Slip.OTHER_SIDE, limit_key(Reason.STALL)),
            (Slip.OTHER_SIDE, limit_key(Reason.BLADE_BENDING)),
        ],
        working=(
            Working(
                key="under-floor",
                values=(
                    place.feed(feed),
                    *(one for one in floors if one.key == limit_key(right)),
                ),
                result=edge_floor if right is Reason.EDGE_FLOOR else skin_floor,
                unit=place.units.feed,
            ),
        ),
    )
