"""What is said of a cut, word for word, for each verdict."""

import re
from collections.abc import Callable
from dataclasses import replace

import pytest

from chartgen.inquiry import cut_request, explain_cell, try_cut
from chartgen.limits.cut import Cut, FeedLimit, Side, SpeedLimit, assess
from chartgen.limits.feed_ceilings import FEED_CEILINGS
from chartgen.limits.feed_floors import FEED_FLOORS
from chartgen.limits.force_capacities import DRIVING, HOLDING
from chartgen.limits.reasons import Reason
from chartgen.limits.speed_caps import SPEED_CAPS
from chartgen.model.material import Material
from chartgen.model.shop import LengthUnits, Shop
from chartgen.wording.advice import judge, remarks

ShopOf = Callable[..., Shop]


def tried(
    shop: Shop,
    diameter: str,
    speed: str,
    feed: str,
    *,
    tool: str = "A",
    material: str = "mild-steel",
) -> tuple[Side, str]:
    request = cut_request(
        shop, material=material, tool=tool, diameter=diameter, speed=speed, feed=feed
    )
    answer = try_cut(shop, request)
    return answer.cut.side, answer.advice


@pytest.fixture
def plain(example: Shop, mild_steel: Material) -> Cut:
    return assess(
        example,
        material=mild_steel,
        blade=example.blades[0],
        diameter=25.0,
        speed=1000.0,
        feed=0.05,
    )


RECOMMENDED = (
    "Recommended here: 1270 rev/min in position high, 0.050 mm/rev, one handle turn in 1.9 s."
)


def test_a_cut_inside_is_told_its_window_and_the_recommended_cut(example: Shop) -> None:
    assert tried(example, "25 mm", "1270 rpm", "0.055 mm/rev") == (
        Side.INSIDE,
        (
            "Between the floor 0.027 (edge rubs instead of cutting) and the ceiling 0.060 mm/rev "
            f"(motor torque, one cut). {RECOMMENDED}"
        ),
    )


def test_a_cut_inside_a_tight_cell_is_told_so_with_the_reason(example: Shop) -> None:
    side, told = tried(example, "50 mm", "600 rpm", "0.05 mm/rev")
    assert side is Side.INSIDE
    assert re.search(r"\. Even the best cut here is tight \([a-z ,]+\)\. ", told)
    assert "Even the best" not in tried(example, "25 mm", "1270 rpm", "0.05 mm/rev")[1]


def test_a_timid_cut_is_told_that_the_edge_rubs_and_runs_slow(example: Shop) -> None:
    assert tried(example, "25 mm", "125 rpm", "0.015 mm/rev") == (
        Side.TOO_TIMID,
        (
            "Too timid: the feed is 0.56 of the 0.027 mm/rev this edge needs; the edge rubs "
            "instead of cutting; the work hardens and the blade can jam. Slow for this edge: 9.8 "
            "m/min is under the 60 m/min where steel stops welding to carbide; expect a rough, "
            f"noisy cut and use oil. {RECOMMENDED}"
        ),
    )


def test_a_bold_cut_is_told_how_many_times_too_much_it_is_why_and_what_lies_behind(
    example: Shop,
) -> None:
    assert tried(example, "25 mm", "1270 rpm", "0.12 mm/rev") == (
        Side.TOO_BOLD,
        (
            "Too bold: the feed is 2.0 times the 0.060 mm/rev allowed at this speed; the motor "
            "can lack the torque. Behind it: Too bold: the feed is 2.0 times the 0.061 mm/rev "
            f"allowed at this speed; the spindle can stall. {RECOMMENDED}"
        ),
    )


# Far more is wrong with the feed than with the speed, yet the speed is said first.
def test_a_cut_too_fast_is_told_the_speed_allowed_and_why_before_its_feed(example: Shop) -> None:
    assert tried(example, "25 mm", "2400 rpm", "0.12 mm/rev") == (
        Side.TOO_BOLD,
        (
            "Too fast: 2400 rev/min is 1.1 times the 2177 rev/min allowed; the edge overheats. "
            "Behind it: Too bold: the feed is 9.2 times the 0.013 mm/rev allowed at this speed; "
            f"the motor can lack the torque. {RECOMMENDED}"
        ),
    )


# A third way, with blade B, is left to `explain`.
def test_a_cell_without_window_is_told_the_reason_and_the_two_best_ways_out(
    example: Shop,
) -> None:
    assert tried(example, "50 mm", "160 rpm", "0.04 mm/rev", tool="1.6 HSS") == (
        Side.NO_WINDOW,
        (
            "There is no window here at any speed of this lathe. Too deep: the blade sticks out "
            "too little: its holder meets the bar first. No window here with this blade as it "
            "is. Way out: let the blade stand out 26 mm, if it is long enough: tight, 160 "
            "rev/min and 0.040 mm/rev, ceiling 5.8 times the floor; or take blade 2.0 carbide: "
            "tight, 600 rev/min and 0.050 mm/rev, ceiling 2.0 times the floor."
        ),
    )


def test_a_cell_without_window_in_any_way_is_sent_to_the_saw(example: Shop) -> None:
    side, advice = tried(example, "100 mm", "160 rpm", "0.04 mm/rev")
    assert side is Side.NO_WINDOW
    assert advice.endswith(
        "No window here with this blade as it is. Way out: none found: saw it off and face the end."
    )


def test_in_inches_all_of_it_is_in_inches(example: Shop) -> None:
    shop = replace(example, request=replace(example.request, units=LengthUnits.INCH))
    side, advice = tried(shop, "1 in", "125 rpm", "0.0006 in/rev")
    assert side is Side.TOO_TIMID
    assert "0.0011 in/rev this edge needs" in advice
    assert "33 ft/min is under the 197 ft/min" in advice
    assert re.search(r"\bmm?\b", advice) is None


def test_in_inches_the_ways_out_are_in_inches_too(example: Shop) -> None:
    shop = replace(example, request=replace(example.request, units=LengthUnits.INCH))
    side, advice = tried(shop, "2 in", "160 rpm", "0.0016 in/rev", tool="1.6 HSS")
    assert side is Side.NO_WINDOW
    assert "let the blade stand out" in advice
    assert re.search(r"\bmm?\b", advice) is None


def test_under_power_feed_no_handle_is_spoken_of(shop_of: ShopOf) -> None:
    shop = shop_of("2.2 kW geared", {"[print]": '[print]\nfeeding = "power"'})
    _, advice = tried(shop, "25 mm", "1180 rpm", "0.045 mm/rev")
    assert advice.endswith("Recommended here: 1180 rev/min, 0.045 mm/rev.")
    assert "handle" not in advice


def test_a_speed_between_two_steps_is_told_both(shop_of: ShopOf) -> None:
    shop = shop_of("550 W belts")
    _, advice = tried(shop, "25 mm", "700 rpm", "0.05 mm/rev")
    assert "This lathe has no 700 rev/min: the nearest are 562 and 954." in advice


def test_a_speed_past_the_last_step_is_told_the_last(shop_of: ShopOf) -> None:
    shop = shop_of("550 W belts")
    _, advice = tried(shop, "25 mm", "1700 rpm", "0.03 mm/rev")
    assert "This lathe has no 1700 rev/min: the nearest is 1620." in advice
    assert "the lathe does not turn that fast" in advice


def test_a_plastic_without_force_data_is_said_to_be_unchecked(example: Shop) -> None:
    _, advice = tried(example, "25 mm", "1500 rpm", "0.05 mm/rev", material="nylon")
    assert "No published force data for this material: torque is not checked." in advice


def test_aluminium_under_a_coated_edge_is_told_to_want_another(example: Shop) -> None:
    _, advice = tried(example, "25 mm", "1500 rpm", "0.05 mm/rev", material="aluminium-6082")
    assert "Aluminium 6082 wants a polished, sharp edge; this one is thin-coated." in advice
    _, advice = tried(
        example, "25 mm", "900 rpm", "0.05 mm/rev", material="aluminium-6082", tool="1.6 HSS"
    )
    assert "wants a polished" not in advice


def test_a_cut_with_nothing_wrong_or_worth_a_remark_is_told_nothing(
    example: Shop, plain: Cut
) -> None:
    assert plain.side is Side.INSIDE
    assert judge(example, plain) == []
    assert remarks(example, plain) == []


CEILINGS = [reason for reason, _ in (*DRIVING, *HOLDING, *FEED_CEILINGS)]
FLOORS = [reason for reason, _ in FEED_FLOORS]
CAPS = [reason for reason, _ in SPEED_CAPS]


@pytest.mark.parametrize("reason", [*CEILINGS, *FLOORS, *CAPS], ids=lambda reason: reason.name)
def test_every_limit_a_cut_can_break_has_a_sentence_of_its_own(
    example: Shop, plain: Cut, reason: Reason
) -> None:
    broken = {
        **{r: {"ceilings": (FeedLimit(r, 0.01),)} for r in CEILINGS},
        **{r: {"floors": (FeedLimit(r, 0.10),)} for r in FLOORS},
        **{r: {"speed_limits": (SpeedLimit(r, 100.0),)} for r in CAPS},
    }
    said = {r: judge(example, replace(plain, **change)) for r, change in broken.items()}  # type: ignore[arg-type]
    (sentence,) = said[reason]
    assert sentence.endswith(".")
    assert [r for r, sentences in said.items() if sentences == [sentence]] == [reason]


FAST = (
    (SpeedLimit(Reason.CHUCK_SPEED, 900.0), "Too fast: 1000 rev/min is 1.1 times the 900 rev/min"),
    (SpeedLimit(Reason.EDGE_SPEED, 500.0), "Too fast: 1000 rev/min is 2.0 times the 500 rev/min"),
)
BOLD = (
    (FeedLimit(Reason.INSERT_FEED, 0.04), "Too bold: the feed is 1.2 times the 0.040 mm/rev"),
    (FeedLimit(Reason.HAND_PACE, 0.02), "Too bold: the feed is 2.5 times the 0.020 mm/rev"),
)
TIMID = (
    (FeedLimit(Reason.EDGE_FLOOR, 0.06), "Too timid: the feed is 0.83 of the 0.060 mm/rev"),
    (FeedLimit(Reason.SKIN_FLOOR, 0.08), "Too timid: the feed is 0.62 of the 0.080 mm/rev"),
)


# Speed before feed and within each the worst; beside what is broken, a limit that holds is silent.
@pytest.mark.parametrize("fast", [(), FAST[:1], FAST, FAST[::-1]])
@pytest.mark.parametrize("bold", [(), BOLD[:1], BOLD, BOLD[::-1]])
@pytest.mark.parametrize("timid", [(), TIMID[:1], TIMID, TIMID[::-1]])
def test_the_worst_comes_first_and_only_the_next_one_behind_it(
    example: Shop,
    plain: Cut,
    fast: tuple[tuple[SpeedLimit, str], ...],
    bold: tuple[tuple[FeedLimit, str], ...],
    timid: tuple[tuple[FeedLimit, str], ...],
) -> None:
    cut = replace(
        plain,
        ceilings=(*(limit for limit, _ in bold), FeedLimit(Reason.STALL, 0.05)),
        floors=(*(limit for limit, _ in timid), FeedLimit(Reason.EDGE_FLOOR, 0.05)),
        speed_limits=(*(limit for limit, _ in fast), SpeedLimit(Reason.BAR_WHIP, 1000.0)),
    )
    beginnings = [
        sentence.split(" allowed")[0].split(" this edge")[0] for sentence in judge(example, cut)
    ]
    in_order = [
        *(words for _, words in sorted(fast, key=lambda pair: pair[0].speed)),
        *(words for _, words in sorted(bold, key=lambda pair: pair[0].feed)),
        *(words for _, words in sorted(timid, key=lambda pair: -pair[0].feed)),
    ]
    assert beginnings == in_order[:1] + [f"Behind it: {words}" for words in in_order[1:2]]


def test_a_blade_too_short_is_too_deep_not_too_bold(example: Shop, plain: Cut) -> None:
    cut = replace(
        plain,
        ceilings=(FeedLimit(Reason.INSERT_FEED, 0.04), FeedLimit(Reason.REACH, 0.0)),
        floors=(),
        speed_limits=(),
    )
    assert judge(example, cut) == [
        "Too deep: the blade sticks out too little: its holder meets the bar first.",
        (
            "Behind it: Too bold: the feed is 1.2 times the 0.040 mm/rev allowed at this speed; "
            "it is more than an edge of this width takes."
        ),
    ]


def test_an_explained_cell_ends_with_the_recommended_cut(example: Shop) -> None:
    request = cut_request(example, material="mild-steel", tool="A", diameter="25 mm")
    assert explain_cell(example, request).advice.endswith(RECOMMENDED)
