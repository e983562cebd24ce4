"""What blade, bar and grip bear: every step can be worked out again from what it prints."""

import re
from dataclasses import replace
from math import cbrt, pi, sqrt

import pytest
from scipy.special import gamma, jv  # type: ignore[import-untyped]

from chartgen.inquiry import CutAnswer, cut_request, explain_cell
from chartgen.limits.force_capacities import HOLDING
from chartgen.model.shop import Shop
from chartgen.wording.steps.step import Step, allowance_source


def asked(
    shop: Shop, material: str, tool: str, diameter: str, bore: str | None = None
) -> CutAnswer:
    request = cut_request(shop, material=material, tool=tool, diameter=diameter, bore=bore)
    return explain_cell(shop, request)


def step(answer: CutAnswer, beginning: str) -> Step:
    (found,) = (s for s in answer.explanation.steps if s.title.startswith(beginning))
    return found


def numbers(text: str) -> list[float]:
    return [float(n) for n in re.findall(r"(?<![\w.])[-+]?\d+(?:\.\d+)?", text)]


@pytest.fixture(scope="module")
def cell(example: Shop) -> CutAnswer:
    return asked(example, "mild-steel", "A", "25 mm")


@pytest.fixture(scope="module")
def slipping(example: Shop) -> CutAnswer:
    """Return a cell that the grip limits."""
    return asked(example, "mild-steel", "C", "25 mm")


CEILINGS = {
    "BLADE_BENDING": "Ceiling: bending of the blade",
    "TIP_DROP": "Ceiling: drop of the tip",
    "BLADE_BUCKLING": "Ceiling: blade tips over sideways",
    "WORK_DEFLECTION": "Ceiling: the bar bends away",
    "WORK_STRESS": "Ceiling: the bar bends at the jaws",
    "GRIP": "Ceiling: grip",
}


def test_every_part_that_bears_the_force_has_its_step(slipping: CutAnswer) -> None:
    assert {reason.name for reason, _ in HOLDING} == CEILINGS.keys()
    for title in CEILINGS.values():
        assert step(slipping, title).formula.startswith("F = ")


# Wherever a ceiling is printed with its force, the feed follows by the step before it.
@pytest.mark.parametrize("material", ["mild-steel", "stainless-304", "aluminium-6082"])
@pytest.mark.parametrize("tool", ["A", "B", "C"])
def test_the_ceiling_of_feed_follows_from_the_force_that_is_borne(
    example: Shop, material: str, tool: str
) -> None:
    answer = asked(example, material, tool, "12 mm")
    rule = step(answer, "From a force to a ceiling")
    constant, mc, low, thin, high = numbers(rule.values)
    assert numbers(rule.result)[:2] == pytest.approx([low * constant, high * constant], abs=0.6)
    told = 0
    for title in CEILINGS.values():
        found = re.match(r"(\d+) N, feed at most ([\d.]+) mm/rev", step(answer, title).result)
        if found:
            force, feed = float(found[1]), float(found[2])
            expected = (force / (low * constant)) ** (1.0 / (1.0 - mc))
            if expected >= thin:
                expected = max(thin, (force / (high * constant)) ** (1.0 / (1.0 - mc)))
            rounding = 0.001 * expected
            assert expected - 0.001 - rounding <= feed <= expected + rounding, title
            told += 1
    assert told


def test_the_outcome_names_the_lowest_ceiling_of_the_steps(slipping: CutAnswer) -> None:
    feeds = {
        one.title: float(found[1])
        for one in slipping.explanation.steps
        if (found := re.search(r"feed at most ([\d.]+)", one.result))
    }
    assert min(feeds, key=lambda title: feeds[title]) == CEILINGS["GRIP"]
    assert f"ceiling {feeds[CEILINGS['GRIP']]:.3f} (the work slips in the jaws)" in (
        slipping.explanation.outcome
    )


def test_the_section_and_the_bending_of_the_blade_work_out_again(cell: CutAnswer) -> None:
    t, h = numbers(step(cell, "Section of the blade").values)
    second, modulus, area, top = numbers(step(cell, "Section of the blade").result)
    assert second == pytest.approx(t * h**3 / 12.0, rel=5e-4)
    assert modulus == pytest.approx(t * h**2 / 6.0, rel=5e-4)
    assert area == pytest.approx(t * h / 1.2, rel=5e-4)
    assert top == h / 2.0
    bending = step(cell, "Ceiling: bending")
    stress, w, length = numbers(bending.values)
    force = numbers(bending.result)[0]
    assert force == pytest.approx(stress * w / length, rel=5e-4)
    high = numbers(step(cell, "Force band").result)[1]
    assert numbers(bending.result)[2] == pytest.approx(stress * high / force, abs=1.0)


def test_the_drop_and_the_bite_of_the_tip_work_out_again(cell: CutAnswer) -> None:
    ceiling = step(cell, "Ceiling: drop")
    drop, length, e, second, g, area = numbers(ceiling.values)
    bending, shear = length**3 / (3.0 * e * second), length / (g * area)
    assert numbers(ceiling.result)[0] == pytest.approx(drop / (bending + shear), abs=2.0)
    assert ceiling.values.endswith("post and slides taken as rigid")
    here = step(cell, "Drop of the tip in this cut")
    (force,) = numbers(here.values)
    assert numbers(here.result) == pytest.approx(
        [force * (bending + shear), force * bending, force * shear], abs=1e-4
    )
    nod = step(cell, "Bite of the nodding tip")
    _, top = numbers(nod.values)
    assert numbers(nod.result)[0] == pytest.approx(
        force * length**2 * top / (2.0 * e * second), abs=6e-5
    )


def test_a_measured_tool_post_gives_way_too(example: Shop) -> None:
    lathe = replace(example.lathe, tool_stiffness=5000.0)
    answer = asked(replace(example, lathe=lathe), "mild-steel", "A", "25 mm")
    ceiling = step(answer, "Ceiling: drop")
    drop, length, e, second, g, area, k = numbers(ceiling.values)
    give = length**3 / (3.0 * e * second) + length / (g * area) + 1.0 / k
    assert numbers(ceiling.result)[0] == pytest.approx(drop / give, abs=1.0)
    here = step(answer, "Drop of the tip in this cut")
    assert numbers(here.result)[3] == pytest.approx(numbers(here.values)[0] / 5000.0, abs=1.6e-4)
    assert "post and slides" in here.result


# J_-1/4(λ/2) / J_1/4(λ/2) = 2 ε √λ Γ(5/4) / Γ(3/4): the solution in Bessel functions.
def test_the_force_that_tips_the_blade_over_solves_the_twisting_blade(cell: CutAnswer) -> None:
    one = step(cell, "Force that tips the blade over")
    sideways, twisting, ratio, coefficient = numbers(one.values)
    assert jv(-0.25, coefficient / 2) / jv(0.25, coefficient / 2) == pytest.approx(
        2.0 * ratio * sqrt(coefficient) * gamma(1.25) / gamma(0.75), rel=1e-3
    )
    _, length, e, _, g, _ = numbers(step(cell, "Ceiling: drop").values)
    critical = coefficient * sqrt(e * sideways * g * twisting) / length**2
    (force,) = numbers(one.result)
    assert force == pytest.approx(critical, rel=1e-3)
    ceiling = step(cell, "Ceiling: blade tips")
    assert numbers(ceiling.values) == [force, 2.0]
    assert numbers(ceiling.result)[0] == pytest.approx(force / 2.0, abs=1.0)


def test_a_blade_of_strips_is_told_strip_by_strip(example: Shop) -> None:
    blade = replace(example.blades[0], strips=((1.4, 20.0), (1.8, 6.0)))
    answer = asked(replace(example, blades=(blade,)), "mild-steel", "A", "25 mm")
    section = step(answer, "Section of the blade")
    assert section.values == "strips from the bottom: 1.4 x 20 mm, 1.8 x 6 mm"
    axis = (28.0 * 10.0 + 10.8 * 23.0) / 38.8
    second = 28.0 * (400 / 12 + (10.0 - axis) ** 2) + 10.8 * (36 / 12 + (23.0 - axis) ** 2)
    told = numbers(section.result)
    assert told[0] == pytest.approx(second, rel=5e-4)
    assert told[1] == pytest.approx(second / axis, rel=5e-4)
    assert told[3] == pytest.approx(26.0 - axis, rel=5e-4)


def test_the_depth_of_the_slot_is_a_mark_in_steel_and_no_step_elsewhere(example: Shop) -> None:
    deep = step(asked(example, "mild-steel", "A", "50 mm"), "Depth of the slot")
    assert (deep.values, deep.result) == ("25 mm, b = 2 mm", "12.50: over 8, so tight")
    shallow = step(asked(example, "mild-steel", "A", "25 mm"), "Depth of the slot")
    assert shallow.result == "6.25: no mark up to 8"
    titles = [s.title for s in asked(example, "aluminium-6082", "A", "25 mm").explanation.steps]
    assert not any(title.startswith("Depth of the slot") for title in titles)


@pytest.mark.parametrize("bore", [None, "5 mm"])
def test_what_the_bar_bears_works_out_again(example: Shop, bore: str | None) -> None:
    answer = asked(example, "mild-steel", "B", "6 mm", bore)
    overhang = step(answer, "Overhang of the cut")
    assert numbers(overhang.values) == [5.0, 3.0]
    assert numbers(overhang.result) == [8.0]
    bends = step(answer, "Ceiling: the bar bends away")
    e, deflection, outer, inner, length = numbers(bends.values)
    force = 3.0 * pi * e * deflection * (outer**4 - inner**4) / (64.0 * length**3)
    assert (outer, inner, length) == (6.0, 5.0 if bore else 0.0, 8.0)
    assert numbers(bends.result)[0] == pytest.approx(force, abs=0.6)
    high = numbers(step(answer, "Force band").result)[1]
    assert numbers(bends.result)[-1] == pytest.approx(deflection * high / force, abs=6e-4)
    stress = step(answer, "Ceiling: the bar bends at the jaws")
    share, strength, outer, inner, length = numbers(stress.values)
    force = pi * share * strength * (outer**4 - inner**4) / (32.0 * length * outer)
    assert numbers(stress.result)[0] == pytest.approx(force, abs=0.6)
    assert numbers(stress.result)[-1] == pytest.approx(share * strength * high / force, rel=0.003)


def test_a_stout_bar_has_no_ceiling_worth_a_number(cell: CutAnswer) -> None:
    assert step(cell, "Ceiling: the bar bends away").result == (
        "1727 kN, no ceiling under 1 mm a turn; this cut bends it less than 0.001 mm"
    )


def test_a_stated_distance_from_the_jaws_is_cited_as_such(example: Shop) -> None:
    shop = replace(example, work=replace(example.work, jaw_distance=12.0))
    overhang = step(asked(shop, "mild-steel", "A", "25 mm"), "Overhang of the cut")
    assert (overhang.values, overhang.source) == ("12 mm, b = 2 mm", "shop file")


def test_the_pip_is_the_larger_of_twisted_and_bent_off_and_bored_work_has_none(
    cell: CutAnswer, example: Shop
) -> None:
    pip = step(cell, "The pip")
    force, strength, width = numbers(pip.values)
    assert force == numbers(step(cell, "Force with reserve").result)[0]
    twisted = 2.71 * sqrt(force / strength)
    bent = cbrt(16.0 * force * width / (pi * strength))
    assert numbers(pip.result)[0] == pytest.approx(max(twisted, bent), abs=0.01)
    assert pip.result.endswith("where it twists off")
    titles = [
        s.title for s in asked(example, "mild-steel", "A", "25 mm", "10 mm").explanation.steps
    ]
    assert not any(title.startswith("The pip") for title in titles)


# 43.0e6 d / L² holds for solid steel, by its modulus and density within a per cent.
def test_bar_behind_the_spindle_is_a_cap_of_its_own(example: Shop) -> None:
    shop = replace(example, work=replace(example.work, bar_behind=600.0))
    cap = step(asked(shop, "mild-steel", "A", "12 mm"), "Cap: bar behind")
    share, outer, inner, e, density, length = numbers(cap.values)
    sound = sqrt(1e9 * e / density)
    critical = 60.0 * 3.516 / (2 * pi) * sqrt(outer**2 + inner**2) / 4.0 * sound / length**2
    allowed, told = numbers(cap.result)
    assert told == pytest.approx(critical, rel=1e-3)
    assert told == pytest.approx(43.0e6 * 12.0 / 600.0**2, rel=0.01)
    assert allowed == pytest.approx(share * critical, abs=1.0)
    titles = [s.title for s in asked(example, "mild-steel", "A", "12 mm").explanation.steps]
    assert "Cap: bar behind the spindle whips" not in titles


def test_allowances_are_cited_by_the_blade_they_belong_to(
    cell: CutAnswer, slipping: CutAnswer
) -> None:
    assert allowance_source("blade_stress_carrier") in step(cell, "Ceiling: bending").source
    assert allowance_source("blade_stress_hss") in step(slipping, "Ceiling: bending").source
