"""The same facts for machines: keys, agreement with the words, and nothing JSON cannot hold."""

import json
from collections.abc import Callable
from typing import Any

import pytest

from chartgen.inquiry import cut_request, explain_cell, try_cut
from chartgen.model.shop import Shop
from chartgen.pipeline import table_card
from chartgen.wording.answers import chart_answer, cut_answer, explanation_answer

ShopOf = Callable[..., Shop]
KEYS: dict[str, set[str]] = {
    "": {
        "spindle_speed_rpm",
        "drive_position",
        "cutting_speed_m_min",
        "feed_mm_rev",
        "feed_rate_mm_min",
        "handle_seconds_per_turn",
        "force_n",
        "power_w",
        "torque_nm",
        "floor",
        "ceiling",
        "verdict",
        "advice",
    },
    "force_n": {"low", "nominal", "high"},
    "power_w": {"needed_high", "continuous", "one_cut"},
    "torque_nm": {"needed_high", "available"},
    "floor": {"feed_mm_rev", "reason"},
    "ceiling": {"feed_mm_rev", "reason"},
}


def tried(
    shop: Shop, material: str = "mild-steel", tool: str = "A", **words: str
) -> dict[str, Any]:
    request = cut_request(
        shop,
        material=material,
        tool=tool,
        **({"diameter": "25 mm"} | words),
    )
    answer = try_cut(shop, request)
    return cut_answer(shop, answer.cut, answer.windows, answer.advice)


@pytest.mark.parametrize("place", KEYS)
def test_an_answer_has_every_key_of_the_list(example: Shop, place: str) -> None:
    answer = tried(example, speed="1270 rpm", feed="0.05 mm/rev")
    table = answer[place] if place else answer
    assert KEYS[place] <= table.keys()


def test_the_numbers_of_an_answer_hang_together(example: Shop) -> None:
    answer = tried(example, speed="1200 rpm", feed="0.05 mm/rev")
    force, power, torque = answer["force_n"], answer["power_w"], answer["torque_nm"]
    assert answer["spindle_speed_rpm"] == 1200.0
    assert answer["feed_mm_rev"] == 0.05
    assert answer["feed_rate_mm_min"] == pytest.approx(60.0)
    assert answer["handle_seconds_per_turn"] == pytest.approx(2.0)
    assert answer["time_min"] == pytest.approx(25.0 / (2.0 * 60.0), abs=1e-6)
    assert force["low"] < force["nominal"] < force["high"]
    assert torque["needed_high"] == pytest.approx(force["high"] * 25.0 / 2000.0)
    v = answer["cutting_speed_m_min"]
    assert power["needed_high"] == pytest.approx(force["high"] * v / 60.0)
    assert power["continuous"] < power["one_cut"]
    assert answer["floor"] == {"feed_mm_rev": 0.027, "reason": "edge rubs instead of cutting"}
    assert answer["margin"] == pytest.approx(answer["ceiling"]["feed_mm_rev"] / 0.05, abs=1e-4)
    assert (answer["material"], answer["tool"]) == ("mild-steel", "2.0 carbide")
    assert (answer["diameter_mm"], answer["bore_mm"]) == (25.0, 0.0)
    assert answer["soft_floor_m_min"] == 60.0


@pytest.mark.parametrize(
    ("speed", "feed", "verdict"),
    [
        ("1200 rpm", "0.05 mm/rev", "inside"),
        ("125 rpm", "0.015 mm/rev", "too timid"),
        ("1200 rpm", "0.15 mm/rev", "too bold"),
    ],
)
def test_the_verdict_is_one_of_the_words_of_try(
    example: Shop, speed: str, feed: str, verdict: str
) -> None:
    assert tried(example, speed=speed, feed=feed)["verdict"] == verdict


def test_a_cell_without_window_says_so_and_still_holds_in_json(example: Shop) -> None:
    answer = tried(example, tool="C", diameter="50 mm", speed="160 rpm", feed="0.04 mm/rev")
    assert answer["verdict"] == "no window"
    assert answer["ceiling"] == {"feed_mm_rev": 0.0, "reason": "blade too short"}
    assert json.loads(json.dumps(answer, allow_nan=False)) == answer


def test_the_remarks_of_the_cell_are_flags(example: Shop) -> None:
    roomy = tried(example)
    assert (roomy["tight"], roomy["slow"]) == (False, False)
    starved = tried(example, tool="B")
    assert (starved["tight"], starved["slow"]) == (True, False)
    # At 6 mm the spindle would have to turn 5300 rev/min, and its jaws hold too little for 2500.
    assert tried(example, diameter="6 mm")["slow"] is True


def test_a_limit_that_does_not_apply_is_null(example: Shop) -> None:
    answer = tried(example, speed="1200 rpm", feed="0.05 mm/rev")
    by_reason = {limit["reason"]: limit["feed_mm_rev"] for limit in answer["limits"]["ceilings"]}
    assert by_reason["motor torque, long cut"] is None
    assert by_reason["motor torque, one cut"] is not None
    assert answer["limits"]["floors"]
    assert {"surface speed of the edge", "chuck speed"} <= {
        s["reason"] for s in answer["limits"]["speeds"]
    }


def test_a_material_without_force_has_null_for_what_is_not_known(example: Shop) -> None:
    answer = tried(example, material="nylon", speed="1200 rpm", feed="0.05 mm/rev")
    assert answer["force_n"] is None
    assert answer["force_models_n"] is None
    assert answer["power_w"]["needed_high"] is None
    assert answer["torque_nm"]["needed_high"] is None
    assert answer["soft_floor_m_min"] is None
    assert answer["power_w"]["one_cut"] > 0.0


def test_an_answer_tells_what_a_sudden_bite_does_to_the_very_cut_asked_about(
    example: Shop,
) -> None:
    slow = tried(example, speed="160 rpm", feed="0.05 mm/rev")["dig_in"]
    fast = tried(example, speed="1200 rpm", feed="0.05 mm/rev")["dig_in"]
    bold = tried(example, speed="1200 rpm", feed="0.06 mm/rev")["dig_in"]
    assert slow.keys() == {"slack_mm", "gives", "carried_turns"}
    assert fast["gives"] == "grip"
    # What stops at 160 rev/min rides through at 1200, by the square of the ratio of the speeds
    # and by what the motor's rotor counts for in the other belt position.
    assert slow["carried_turns"] < 0.2
    assert fast["carried_turns"] > 3.0
    # The same force, and 0.01 mm of it already taken up.
    assert bold["slack_mm"] == pytest.approx(fast["slack_mm"] - 0.01, abs=1e-6)
    assert tried(example, material="nylon")["dig_in"] is None


def test_a_metal_without_a_second_model_has_null_for_it(example: Shop) -> None:
    answer = tried(example, material="free-cutting-brass", speed="900 rpm", feed="0.05 mm/rev")
    assert answer["force_models_n"]["unit_energy_sharp"] is None
    assert answer["force_models_n"]["power_law_sharp"] > 0.0


def test_an_explanation_is_answered_step_by_step(example: Shop) -> None:
    request = cut_request(example, material="mild-steel", tool="A", diameter="25 mm")
    explanation = explain_cell(example, request).explanation
    answer = explanation_answer(explanation)
    assert answer["heading"] == explanation.heading
    assert answer["outcome"] == explanation.outcome
    assert len(answer["steps"]) == len(explanation.steps)
    first, told = explanation.steps[0], answer["steps"][0]
    assert told == {
        "title": first.title,
        "formula": first.formula,
        "values": first.values,
        "result": first.result,
        "source": first.source,
    }
    assert answer["allowances"] == list(explanation.allowances)
    assert answer["ways_out"] == list(explanation.ways)
    assert answer["sensitivity"] == list(explanation.sensitivity)
    assert len(answer["ways_out"]) > 1
    assert len(answer["sensitivity"]) > 1
    json.dumps(answer, allow_nan=False)


def test_a_chart_is_answered_in_the_very_strings_of_the_card(example: Shop) -> None:
    chart = table_card(example, "mild-steel").chart
    answer = chart_answer(chart)
    assert answer["title"] == chart.title
    assert answer["units"] == {
        "diameter": "Ø mm",
        "speed": "rev/min",
        "feed": "mm/rev",
        "pace": "s/turn",
    }
    assert [row["diameter"] for row in answer["rows"]] == list(chart.stub)
    for row, cells in zip(answer["rows"], chart.rows, strict=True):
        for told, cell in zip(row["cells"], cells, strict=True):
            assert (told["speed"], told["feed"], told["pace"]) == (cell.speed, cell.feed, cell.pace)
            assert told["sign"] == cell.sign
            assert told["ceiling"] == {"feed": cell.ceiling, "reason": cell.ceiling_reason}
            assert told["floor"] == {"feed": cell.floor, "reason": cell.floor_reason}
            assert (told["verdict"], told["way_out"]) == (cell.verdict, cell.way_out)
    assert answer["legend"] == {entry.sign: entry.sentence for entry in chart.legend}
    assert [c["letter"] for c in answer["columns"]] == ["A", "B", "C"]
