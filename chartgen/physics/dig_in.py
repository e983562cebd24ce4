"""When the tool digs in: how much extra bite a cut can swallow, and what gives first.

A sudden extra bite, by backlash or by a blade that bends under the work, raises the force on
the edge. Either the spindle stops before the bite has gone round, or its flywheel carries it
through and the weakest of grip, blade and edge takes the force.
"""

from dataclasses import dataclass
from enum import IntEnum

import numpy as np

from chartgen.quantities import (
    FloatArray,
    IntArray,
    Millimetres,
    MillimetresPerRev,
    Newtons,
    Numeric,
    Turns,
)


def extra_bite(
    *,
    capacity: Newtons[Numeric],
    force_constant: Newtons[Numeric],
    thickness_exponent: Numeric,
    feed: MillimetresPerRev[Numeric],
) -> Millimetres[Numeric]:
    """Return by how much the chip may suddenly thicken before a force is reached.

    Parameters
    ----------
    capacity
        Force at which something gives [N], 0 or more.
    force_constant
        Force of a chip 1 mm thick [N]: kc1.1 times the insert width, with its allowances.
    thickness_exponent
        mc, from 0 up to but not including 1.
    feed
        Feed of the cut, its thickness before [mm/rev].

    Returns
    -------
    Extra thickness [mm], 0 where the cut already takes that force.

    Notes
    -----
    (F / A)^(1 / (1 - mc)) - f. The power law is fitted to chips of about 0.1 to 1 mm.

    References
    ----------
    Derived from the power law of `cutting_force`.
    """
    thickest = (capacity / force_constant) ** (1.0 / (1.0 - thickness_exponent))
    return np.maximum(0.0, thickest - feed)


class Gives(IntEnum):
    """What gives first; the value is its place in the arrays of `first_to_give`."""

    NOTHING = -1
    SPINDLE = 0
    GRIP = 1
    BLADE = 2
    EDGE = 3


@dataclass(frozen=True, slots=True, kw_only=True)
class Slack:
    """The smallest extra bite that makes something give, and the `Gives` that says what."""

    bite: Millimetres[FloatArray]
    gives: IntArray


def first_to_give(
    *,
    spindle: Newtons[Numeric],
    grip: Newtons[Numeric],
    blade: Newtons[Numeric],
    edge: Newtons[Numeric],
    turns_to_stop: Turns[Numeric],
    most_turns: Turns[Numeric],
    force_constant: Newtons[Numeric],
    thickness_exponent: Numeric,
    feed: MillimetresPerRev[Numeric],
) -> Slack:
    """Return how much extra bite a cut can swallow, and what gives beyond it.

    Parameters
    ----------
    spindle
        Force on the edge at which the spindle stalls [N].
    grip
        Force at which the work slips in the jaws [N].
    blade
        Force at which the blade bends for good or breaks [N].
    edge
        Force at which the insert or the edge breaks [N]. Infinite means: not known, or none.
    turns_to_stop
        Turns the spindle makes before it stops [rev], best taken at the torque of the weakest
        of the other three.
    most_turns
        Turns within which it has to stop to save the others [rev]; half a turn by practice.
    force_constant
        Force of a chip 1 mm thick [N].
    thickness_exponent
        mc, from 0 up to but not including 1.
    feed
        Feed of the cut [mm/rev].

    Returns
    -------
    Slack, in the broadcast shape of the arguments. Of two that give at one bite the first in
    the order of `Gives` is named; where all capacities are infinite the bite is infinite.

    Notes
    -----
    The least of the four capacities, put into `extra_bite`. A spindle that turns on for more
    than `most_turns` is left out: it is too late to save anything. With the
    `stopping_torque` of `flywheel`, as a force, for the capacity of the spindle, the bite is
    the one that stops it just in time.

    References
    ----------
    Derived; the half turn is practice.
    """
    in_time = np.less_equal(turns_to_stop, most_turns)
    capacities = np.stack(
        np.broadcast_arrays(np.where(in_time, spindle, np.inf), grip, blade, edge)
    )
    weakest = capacities.min(axis=0)
    bite = extra_bite(
        capacity=weakest,
        force_constant=force_constant,
        thickness_exponent=thickness_exponent,
        feed=feed,
    )
    gives = np.where(np.isinf(weakest), int(Gives.NOTHING), capacities.argmin(axis=0))
    return Slack(bite=np.asarray(bite), gives=np.broadcast_to(gives, np.shape(bite)))
