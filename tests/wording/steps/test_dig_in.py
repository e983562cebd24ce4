"""A dig-in explained: what turns, what gives, how much bite is swallowed."""

import re
from dataclasses import replace
from math import pi

import pytest

from chartgen.inquiry import CutAnswer, cut_request, explain_cell
from chartgen.model.lathe import ChuckKind
from chartgen.model.shop import LengthUnits, Shop
from chartgen.physics.dig_in import Gives
from chartgen.wording.steps.dig_in import sudden_bite
from chartgen.wording.steps.step import Step


def asked(shop: Shop, material: str, tool: str, diameter: str) -> CutAnswer:
    request = cut_request(shop, material=material, tool=tool, diameter=diameter)
    return explain_cell(shop, request)


def step(answer: CutAnswer, beginning: str) -> Step:
    (found,) = (s for s in answer.explanation.steps if s.title.startswith(f"Dig-in: {beginning}"))
    return found


def numbers(text: str) -> list[float]:
    return [float(n) for n in re.findall(r"(?<![\w.])[-+]?\d+(?:\.\d+)?", text)]


def with_backlash(shop: Shop, backlash: float | None) -> Shop:
    slide = replace(shop.lathe.cross_slide, backlash=backlash)
    return replace(shop, lathe=replace(shop.lathe, cross_slide=slide))


@pytest.fixture(scope="module")
def fast(example: Shop) -> CutAnswer:
    return asked(example, "mild-steel", "A", "25 mm")


@pytest.fixture(scope="module")
def slow(example: Shop) -> CutAnswer:
    return asked(example, "mild-steel", "A", "60 mm")


# A body of 5.4 kg with a bore of 30 mm: m (R² + r²) / 2; 2 kg·mm² a watt of the rotor.
def test_what_turns_works_out_again(fast: CutAnswer) -> None:
    one = step(fast, "what turns on")
    chuck, size, rotor, power, ratio = numbers(one.values)
    assert chuck == pytest.approx(5.4 * (62.5**2 + 15.0**2) / 2.0, abs=0.5)
    assert (size, rotor, power) == (125.0, 1500.0, 0.75)
    assert numbers(one.result)[0] == pytest.approx(chuck + rotor * ratio**2, abs=2.0)


@pytest.mark.parametrize("which", ["fast", "slow"])
def test_the_carried_turns_work_out_again(request: pytest.FixtureRequest, which: str) -> None:
    answer: CutAnswer = request.getfixturevalue(which)
    one = step(answer, "turns carried")
    inertia, n, force, diameter = numbers(one.values)
    torque = force * diameter / 2000.0
    turns = inertia * (pi * n / 30.0) ** 2 / (4.0 * pi * torque)
    assert numbers(one.result)[0] == pytest.approx(turns, rel=0.005)


@pytest.mark.parametrize("which", ["fast", "slow"])
def test_the_force_that_stops_the_spindle_works_out_again(
    request: pytest.FixtureRequest, which: str
) -> None:
    one = step(request.getfixturevalue(which), "force that stops")
    torque, inertia, n, turns, diameter = numbers(one.values)
    stops = torque + inertia * (pi * n / 30.0) ** 2 / (4.0 * pi * turns)
    assert numbers(one.result)[0] == pytest.approx(2000.0 * stops / diameter, rel=0.001)


def test_the_forces_of_blade_edge_and_grip_work_out_again(fast: CutAnswer) -> None:
    blade = step(fast, "force that bends")
    assert numbers(blade.result)[0] == pytest.approx(
        numbers(blade.values)[0] * 1.6 * 26.0**2 / 6.0 / 32.0, abs=0.6
    )
    edge = step(fast, "force that breaks the edge")
    times, at_largest, feed = numbers(edge.values)
    # From 0.1 mm the band is 25 %.
    assert at_largest == pytest.approx(1.25 * 1780.0 * 2.0 * 1.3 * feed**0.83, abs=0.6)
    assert numbers(edge.result)[0] == pytest.approx(times * at_largest, abs=1.5)
    slips = next(s for s in fast.explanation.steps if s.title.startswith("Force at which the wo"))
    assert numbers(step(fast, "force at which").result)[0] == numbers(slips.result)[0]


@pytest.mark.parametrize(("which", "gives"), [("fast", Gives.GRIP), ("slow", Gives.SPINDLE)])
def test_the_slack_follows_from_the_least_of_the_four_forces(
    request: pytest.FixtureRequest, which: str, gives: Gives
) -> None:
    answer: CutAnswer = request.getfixturevalue(which)
    one = step(answer, "slack")
    force, constant, mc, feed = numbers(one.values)
    forces = [
        numbers(step(answer, title).result)[0]
        for title in ("force that stops", "force at which", "force that bends", "force that br")
    ]
    assert force == min(forces) == forces[gives]
    bite = (force / constant) ** (1.0 / (1.0 - mc)) - feed
    assert numbers(one.result)[0] == pytest.approx(bite, abs=3e-4)


@pytest.mark.parametrize("material", ["mild-steel", "stainless-304", "aluminium-6082"])
@pytest.mark.parametrize("diameter", ["8 mm", "25 mm", "60 mm"])
def test_the_dig_in_of_the_recommended_cut_is_that_of_its_window(
    example: Shop, material: str, diameter: str
) -> None:
    answer = asked(example, material, "A", diameter)
    index = (0, 0, 0)
    found, told = answer.windows.dig_in, sudden_bite(answer.cut)
    assert told is not None
    assert told.slack == pytest.approx(found.slack[index])
    assert told.gives == found.gives[index]
    assert told.carried_turns == pytest.approx(found.carried_turns[index])


def test_one_sentence_says_what_gives_first_and_what_the_backlash_makes_of_it(
    example: Shop,
) -> None:
    def said(backlash: float | None, diameter: str = "25 mm") -> tuple[str, str]:
        answer = asked(with_backlash(example, backlash), "mild-steel", "A", diameter)
        one = step(answer, "what gives first")
        return one.values, one.result

    values, sentence = said(0.15)
    assert values == "backlash 0.15 mm"
    assert sentence == (
        "Over 0.13 mm of sudden extra bite the work slips in the jaws first; your backlash of "
        "0.15 mm is more than that, so pull steadily against the slack and snug the gibs."
    )
    values, sentence = said(0.05, "60 mm")
    assert values == "backlash 0.05 mm"
    assert sentence == (
        "Over 0.10 mm of sudden extra bite the spindle stops first; your backlash of 0.05 mm is "
        "not more than that."
    )
    values, sentence = said(None)
    assert values == "no backlash stated"
    assert sentence == "Over 0.13 mm of sudden extra bite the work slips in the jaws first."


def test_the_sentence_is_in_the_units_of_the_card(example: Shop) -> None:
    shop = replace(example, request=replace(example.request, units=LengthUnits.INCH))
    assert step(asked(shop, "mild-steel", "A", "25 mm"), "what gives first").result.startswith(
        "Over 0.005 in of sudden extra bite the work slips in the jaws first; your backlash of "
        "0.006 in is"
    )


def test_in_a_collet_a_fast_spindle_breaks_the_edge(example: Shop) -> None:
    chuck = replace(example.lathe.chuck, kind=ChuckKind.COLLET)
    shop = replace(example, lathe=replace(example.lathe, chuck=chuck))
    answer = asked(shop, "mild-steel", "A", "12 mm")
    slips = step(answer, "force at which")
    assert (slips.values, slips.result) == ("collet", "no limit is worked out")
    assert "the edge breaks first" in step(answer, "what gives first").result


def test_a_thin_blade_gives_before_all_else(example: Shop) -> None:
    blade = replace(example.blades[2], height=6.0, thickness=1.0)
    answer = asked(replace(example, blades=(blade,)), "mild-steel", "A", "20 mm")
    assert sudden_bite(answer.cut).gives is Gives.BLADE  # type: ignore[union-attr]
    assert "the blade stays bent or breaks first" in step(answer, "what gives first").result


def test_without_force_data_nothing_is_said_of_a_dig_in(example: Shop) -> None:
    assert sudden_bite(asked(example, "nylon", "A", "25 mm").cut) is None
