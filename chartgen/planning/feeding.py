"""How a feed is given: by which wheel at what pace, or by the gearbox."""

import math
from dataclasses import dataclass

from chartgen.limits.dial import feed_step
from chartgen.model.shop import Feeding
from chartgen.physics.kinematics import feed_rate, seconds_per_turn
from chartgen.planning.machine import Machine
from chartgen.planning.operations import FedBy
from chartgen.quantities import Millimetres, MillimetresPerRev, RevsPerMinute, Seconds

_SLIP = 1e-9


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
    """Return a feed at or under the one wanted: listed by the gearbox, or a hand's pace.

    A gearbox without so fine a feed leaves the slide to the hand.
    """
    listed = [feed for feed in _power_feeds(machine, slide) if feed <= wanted * (1.0 + _SLIP)]
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
