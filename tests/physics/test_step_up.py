"""On the way to the centre: the falling speed, the plan to step up, feed near the centre."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from chartgen.physics.centre import CentreFeedRule, feed_near_centre, speed_floor_diameter
from chartgen.physics.kinematics import cutting_speed, spindle_speed
from chartgen.physics.step_up import (
    StepUpPlan,
    plan_time,
    shortest_plunge_time,
    slowest_surface_speeds,
    step_up_plan,
)
from chartgen.physics.time import plunge_time
from chartgen.quantities import FloatArray
from chartgen.sources import Mark

BELTS = np.array([150.0, 300.0, 560.0, 950.0, 1600.0, 2500.0])
diameters = st.floats(5.0, 100.0)
bores = st.floats(0.0, 0.9)
feeds = st.floats(0.01, 0.2)
speed_lists = st.lists(st.floats(50.0, 4000.0), min_size=1, max_size=8, unique=True).map(
    lambda speeds: np.array(sorted(speeds))
)
floors = st.floats(5.0, 100.0)
widths_of_band = st.floats(1.0, 5.0)


def plan_of(
    outer: float,
    *,
    inner: float = 0.0,
    start: float = 560.0,
    speeds: FloatArray = BELTS,
    top: float = 5000.0,
    floor: float = 60.0,
    ceiling: float = 171.0,
) -> StepUpPlan:
    """Return the plan of a belt lathe in mild steel, but for what a test varies."""
    return step_up_plan(
        outer_diameter=outer,
        inner_diameter=inner,
        start=start,
        speeds=speeds,
        top=top,
        floor_speed=floor,
        ceiling_speed=ceiling,
    )


def test_six_belts_step_up_twice_in_a_bar_of_50_mm() -> None:
    # By hand: 560 falls to 60 m/min at 34.10 mm, where 950 gives 101.8 and 1600 gives 171.4,
    # above the ceiling; 950 falls to 60 at 20.10 mm, where 2500 gives 157.9.
    plan = plan_of(50.0)
    assert plan.spindle_speeds.tolist() == [560.0, 950.0, 2500.0]
    assert plan.start_diameters == pytest.approx(np.array([50.0, 34.10, 20.10]), abs=0.005)
    assert plan.end_diameters == pytest.approx(np.array([34.10, 20.10, 0.0]), abs=0.005)
    assert slowest_surface_speeds(plan=plan) == pytest.approx(np.array([60.0, 60.0, 0.0]))


def test_a_gap_between_speeds_is_bridged_below_the_floor() -> None:
    # 560 falls to 60 m/min at 34.10 mm, but 2500 keeps under 171 from 21.77 mm only.
    plan = plan_of(50.0, speeds=np.array([560.0, 2500.0]))
    assert plan.start_diameters == pytest.approx(np.array([50.0, 21.77]), abs=0.005)
    assert slowest_surface_speeds(plan=plan)[0] == pytest.approx(38.3, abs=0.05)


def test_a_cap_leaves_out_the_fastest_belts() -> None:
    assert plan_of(50.0, top=1000.0).spindle_speeds.tolist() == [560.0, 950.0]


def test_a_bore_ends_the_plan() -> None:
    plan = plan_of(50.0, inner=25.0)
    assert plan.spindle_speeds.tolist() == [560.0, 950.0]
    assert plan.end_diameters[-1] == 25.0


def test_a_start_below_the_floor_is_changed_up_at_once_where_a_speed_fits() -> None:
    # At 50 mm 300 gives 47 m/min, 950 gives 149 and 1600 gives 251.
    assert plan_of(50.0, start=300.0).spindle_speeds.tolist() == [950.0, 2500.0]


def test_the_start_speed_for_a_ceiling_never_asks_for_more_power() -> None:
    start = float(cutting_speed(spindle_speed=560.0, diameter=50.0))
    plan = plan_of(50.0, floor=0.6 * start, ceiling=start)
    at_starts = cutting_speed(spindle_speed=plan.spindle_speeds, diameter=plan.start_diameters)
    assert len(plan.spindle_speeds) > 2
    assert np.all(at_starts <= start * (1.0 + 1e-12))


@given(d=diameters, n=st.floats(50.0, 3000.0), bore=bores)
def test_a_lathe_of_one_speed_has_one_step(d: float, n: float, bore: float) -> None:
    plan = plan_of(d, inner=bore * d, start=n, speeds=np.array([n]))
    assert plan.spindle_speeds.tolist() == [n]
    assert plan.start_diameters.tolist() == [d]
    assert plan.end_diameters.tolist() == [bore * d]


@given(
    d=diameters, bore=bores, speeds=speed_lists, pick=st.integers(0, 7), f=floors, b=widths_of_band
)
def test_outside_the_band_no_faster_speed_would_be_inside_it(
    d: float, bore: float, speeds: FloatArray, pick: int, f: float, b: float
) -> None:
    start = float(speeds[pick % len(speeds)])
    plan = plan_of(d, inner=bore * d, start=start, speeds=speeds, floor=f, ceiling=b * f)
    for n, outer, inner in zip(
        plan.spindle_speeds, plan.start_diameters, plan.end_diameters, strict=True
    ):
        for at in np.linspace(outer, inner, 7)[1:-1]:
            taken = float(cutting_speed(spindle_speed=float(n), diameter=float(at)))
            if taken < f * (1.0 - 1e-9):
                others = cutting_speed(spindle_speed=speeds[speeds > n], diameter=float(at))
                assert np.all(others > b * f * (1.0 - 1e-9))
            elif n != start:
                assert taken <= b * f * (1.0 + 1e-9)


@given(
    d=diameters,
    bore=bores,
    speeds=speed_lists,
    pick=st.integers(0, 7),
    f=floors,
    b=widths_of_band,
    feed=feeds,
)
def test_a_plan_is_never_longer_than_one_speed_nor_shorter_than_the_ceiling_allows(
    d: float, bore: float, speeds: FloatArray, pick: int, f: float, b: float, feed: float
) -> None:
    start = float(speeds[pick % len(speeds)])
    inner = bore * d
    plan = plan_of(d, inner=inner, start=start, speeds=speeds, floor=f, ceiling=b * f)
    time = plan_time(plan=plan, feed=feed)
    one_speed = plunge_time(outer_diameter=d, inner_diameter=inner, feed=feed, spindle_speed=start)
    fastest = max(b * f, float(cutting_speed(spindle_speed=start, diameter=d)))
    least = shortest_plunge_time(
        outer_diameter=d,
        inner_diameter=inner,
        feed=feed,
        cutting_speed=fastest,
        top=float(speeds[-1]),
    )
    assert least * (1.0 - 1e-9) <= time <= one_speed * (1.0 + 1e-9)
    assert np.all(np.diff(plan.spindle_speeds) > 0.0)
    assert np.all(np.diff(plan.start_diameters) < 0.0)


@given(d=diameters, feed=feeds, v=st.floats(10.0, 300.0))
def test_a_spindle_without_a_top_halves_the_time_of_a_solid_cut(
    d: float, feed: float, v: float
) -> None:
    start = spindle_speed(cutting_speed=v, diameter=d)
    one_speed = plunge_time(outer_diameter=d, inner_diameter=0.0, feed=feed, spindle_speed=start)
    least = shortest_plunge_time(
        outer_diameter=d, inner_diameter=0.0, feed=feed, cutting_speed=v, top=1e9 * start
    )
    assert least == pytest.approx(one_speed / 2.0)


@given(d=diameters, feed=feeds, v=st.floats(10.0, 300.0), share=st.floats(0.05, 1.0))
def test_a_spindle_at_its_top_from_the_start_saves_nothing(
    d: float, feed: float, v: float, share: float
) -> None:
    top = share * spindle_speed(cutting_speed=v, diameter=d)
    one_speed = plunge_time(outer_diameter=d, inner_diameter=0.0, feed=feed, spindle_speed=top)
    least = shortest_plunge_time(
        outer_diameter=d, inner_diameter=0.0, feed=feed, cutting_speed=v, top=top
    )
    assert least == pytest.approx(one_speed)


def test_the_floor_is_crossed_in_proportion_and_never_outside_the_cut() -> None:
    crossing = speed_floor_diameter(
        outer_diameter=25.0,
        inner_diameter=10.0,
        start_speed=100.0,
        floor_speed=np.array([20.0, 60.0, 120.0]),
    )
    assert crossing == pytest.approx(np.array([10.0, 15.0, 25.0]))


@pytest.mark.parametrize("rule", CentreFeedRule)
def test_feed_is_eased_only_near_the_centre(rule: CentreFeedRule) -> None:
    feed = feed_near_centre(feed=0.06, diameter=np.array([20.0, 2.0, 1.9, 0.0]), rule=rule)
    eased = rule.share * 0.06
    assert feed == pytest.approx(np.array([0.06, 0.06, eased, eased]))


def test_the_rules_for_feed_near_the_centre_are_as_printed() -> None:
    # [TG-5] p. 460: less 30 %; [TG-6] p. 581: to one half to one third.
    printed = {rule: (rule.share, rule.source) for rule in CentreFeedRule if rule.mark == "found"}
    assert printed == {
        CentreFeedRule.BY_30_PERCENT: (0.7, "TG-5"),
        CentreFeedRule.TO_HALF: (0.5, "TG-6"),
        CentreFeedRule.TO_A_THIRD: (1.0 / 3.0, "TG-6"),
    }
    assert {Mark.of(rule.mark) for rule in CentreFeedRule} == {Mark.FOUND, Mark.MEMORY}
