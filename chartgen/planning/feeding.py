"""How a feed is given: by which wheel at what pace, or by the gearbox."""

import math
from collections.abc import Iterator
from dataclasses import dataclass, replace

from chartgen.limits.dial import feed_step
from chartgen.model.shop import Feeding
from chartgen.physics.kinematics import feed_rate, seconds_per_turn
from chartgen.planning.machine import Machine
from chartgen.planning.operations import FedBy
from chartgen.quantities import Millimetres, MillimetresPerRev, RevsPerMinute, Seconds

_SLIP = 1e-9
_NEAR = 1.05
"""A listed feed so little over a start value is that value: an inch gearbox lists 0.004 in for
0.1 mm. Every limit is worked out at the feed given. Common practice, no source."""
_A_STEP_LESS = 0.999
"""Of a feed that stands on a step: rounded down it is the next step."""
_LEAST_FEED_SHARE = 0.5
"""Fed less than half of its start feed an edge rubs. Common practice, no source."""


@dataclass(frozen=True, slots=True, kw_only=True)
class GivenFeed:
    """A feed as it can be given at a speed; `is_held_by_hand` where the hand sets its limit."""

    feed: MillimetresPerRev[float]
    fed_by: FedBy
    travel_per_turn: Millimetres[float] | None
    seconds_per_turn: Seconds[float] | None
    is_held_by_hand: bool


def given_feed(
    machine: Machine,
    *,
    wanted: MillimetresPerRev[float],
    speed: RevsPerMinute[float],
    slide: FedBy,
) -> GivenFeed:
    """Return a feed about or under the one wanted: listed by the gearbox, or a hand's pace.

    A gearbox without so fine a feed leaves the slide to the hand.
    """
    listed = [feed for feed in _power_feeds(machine, slide) if feed <= wanted * _NEAR]
    if listed:
        return GivenFeed(
            feed=max(listed),
            fed_by=FedBy.POWER,
            travel_per_turn=None,
            seconds_per_turn=None,
            is_held_by_hand=False,
        )
    travel = _travel(machine, slide)
    feed, is_held = wanted, False
    if travel is not None:
        by_hand = machine.allowances.handle_turns_steady * travel / speed
        is_held = by_hand < feed
        feed = min(feed, by_hand)
    step = feed_step(feed, machine.shop.request.units)
    feed = max(math.floor(feed / step + _SLIP) * step, step)
    return GivenFeed(
        feed=feed,
        fed_by=slide,
        travel_per_turn=travel,
        seconds_per_turn=None
        if travel is None
        else float(
            seconds_per_turn(
                feed_rate=float(feed_rate(feed=feed, spindle_speed=speed)),
                travel_per_turn=travel,
            )
        ),
        is_held_by_hand=is_held,
    )


def finishing_feed(
    machine: Machine,
    rough: GivenFeed,
    *,
    wanted: MillimetresPerRev[float],
    speed: RevsPerMinute[float],
    slide: FedBy,
) -> GivenFeed:
    """Return the feed of the last pass, given by what gives that of the others.

    A gearbox that roughs finishes too: at its finest feed where it has none so fine.
    """
    given = given_feed(machine, wanted=wanted, speed=speed, slide=slide)
    if rough.fed_by is FedBy.POWER and given.fed_by is not FedBy.POWER:
        return replace(rough, feed=min(_power_feeds(machine, slide)))
    return given


def gentler_feeds(
    machine: Machine,
    *,
    wanted: MillimetresPerRev[float],
    speed: RevsPerMinute[float],
    slide: FedBy,
) -> Iterator[GivenFeed]:
    """Yield the feed given for the one wanted, then finer ones down to half of that wanted.

    Fed more finely still, an edge rubs.
    """
    given = given_feed(machine, wanted=wanted, speed=speed, slide=slide)
    yield given
    while given.feed > 0.0:
        near = _NEAR if given.fed_by is FedBy.POWER else 1.0
        less = given_feed(
            machine, wanted=given.feed * _A_STEP_LESS / near, speed=speed, slide=slide
        )
        if less.feed < _LEAST_FEED_SHARE * wanted or less.feed >= given.feed:
            return
        given = less
        yield given


def _power_feeds(machine: Machine, slide: FedBy) -> tuple[MillimetresPerRev[float], ...]:
    lathe = machine.shop.lathe
    if slide is FedBy.CARRIAGE and lathe.carriage is not None:
        return lathe.carriage.power_feeds
    if slide is FedBy.CROSS_SLIDE and machine.shop.request.feeding is Feeding.POWER:
        return lathe.cross_slide.power_feeds
    return ()


def _travel(machine: Machine, slide: FedBy) -> Millimetres[float] | None:
    lathe, tailstock = machine.shop.lathe, machine.shop.tools.tailstock
    if slide is FedBy.CROSS_SLIDE:
        return lathe.cross_slide.travel_per_turn
    if slide is FedBy.CARRIAGE:
        return lathe.carriage.travel_per_turn if lathe.carriage else None
    return tailstock.travel_per_turn if tailstock else None
