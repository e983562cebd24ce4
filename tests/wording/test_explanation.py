"""A cell explained: every step has its source, and its numbers can be worked out again."""

import re
from collections.abc import Callable
from dataclasses import replace
from itertools import product
from math import pi

import pytest

from chartgen.inquiry import cut_request, explain_cell
from chartgen.limits.cut import recommended
from chartgen.model.blade import Blade, Edge
from chartgen.model.lathe import DialReads
from chartgen.model.motor import PowerIs
from chartgen.model.shop import Shop
from chartgen.reference.tables import load_bibliography
from chartgen.wording.explanation import Explanation
from chartgen.wording.steps.step import Step, allowance_source

ShopOf = Callable[..., Shop]
CELLS = list(
    product(
        ["mild-steel", "stainless-304", "free-cutting-brass", "nylon", "aluminium-6082"],
        ["A", "B", "C"],
        ["12 mm", "25 mm", "58 mm"],
        [None, "10 mm"],
    )
)


def explained(
    shop: Shop, material: str, tool: str, diameter: str, bore: str | None = None
) -> Explanation:
    request = cut_request(shop, material=material, tool=tool, diameter=diameter, bore=bore)
    return explain_cell(shop, request).explanation


def step(explanation: Explanation, beginning: str) -> Step:
    (found,) = (s for s in explanation.steps if s.title.startswith(beginning))
    return found


def numbers(text: str) -> list[float]:
    return [float(n) for n in re.findall(r"(?<![\w.])[-+]?\d+(?:\.\d+)?", text)]


@pytest.fixture(scope="module")
def cell(example: Shop) -> Explanation:
    return explained(example, "mild-steel", "A", "25 mm")


@pytest.mark.parametrize(("material", "tool", "diameter", "bore"), CELLS)
def test_every_step_says_what_by_which_formula_to_what_result_on_whose_word(
    example: Shop, material: str, tool: str, diameter: str, bore: str | None
) -> None:
    steps = explained(example, material, tool, diameter, bore).steps
    for one in steps:
        assert all((one.title, one.formula, one.values, one.result, one.source)), one
    assert len({one.title for one in steps}) == len(steps)


@pytest.mark.parametrize(("material", "tool", "diameter", "bore"), CELLS)
def test_every_source_cited_stands_in_the_bibliography(
    example: Shop, material: str, tool: str, diameter: str, bore: str | None
) -> None:
    explanation = explained(example, material, tool, diameter, bore)
    texts = [*(one.source for one in explanation.steps), *explanation.allowances]
    cited = {key for text in texts for key in re.findall(r"\[([^\]]+)\]", text)}
    assert cited
    assert cited <= load_bibliography().keys()


def test_the_start_speed_works_out_again(cell: Explanation) -> None:
    one = step(cell, "Start speed")
    v, d = numbers(one.values)
    assert one.formula == "n = 1000 v / (π D)"
    assert numbers(one.result)[0] == pytest.approx(1000.0 * v / (pi * d), abs=0.5)


def test_the_chosen_speed_works_out_to_the_surface_speed(cell: Explanation) -> None:
    n = numbers(step(cell, "Speed chosen").values)[0]
    v = numbers(step(cell, "Speed chosen").result)[0]
    assert v == pytest.approx(pi * 25.0 * n / 1000.0, abs=0.05)


def test_the_force_works_out_again_by_both_models(cell: Explanation) -> None:
    kc, b, h, mc = numbers(step(cell, "Force of a sharp edge").values.replace("kc1.1", "kc"))
    sharp, specific = numbers(step(cell, "Force of a sharp edge").result)
    assert sharp == pytest.approx(kc * b * h ** (1.0 - mc), abs=0.5)
    assert specific == pytest.approx(kc * h**-mc, abs=0.5)
    second = step(cell, "The same by the second model")
    energy, size = numbers(second.values)
    other, difference = numbers(second.result)
    assert other == pytest.approx(1000.0 * energy * size * b * h, rel=0.005)
    assert difference == pytest.approx(100.0 * (other / sharp - 1.0), abs=0.6)


def test_the_reserve_and_the_band_work_out_again(cell: Explanation) -> None:
    sharp = numbers(step(cell, "Force of a sharp edge").result)[0]
    reserve = numbers(step(cell, "Force with reserve").values)[0]
    expected = numbers(step(cell, "Force with reserve").result)[0]
    assert expected == pytest.approx(sharp * reserve, abs=1.2)
    low, high, _ = numbers(step(cell, "Force band").values)
    ends = numbers(step(cell, "Force band").result)
    assert ends == pytest.approx(
        [expected * (1.0 + low / 100), expected * (1.0 + high / 100)], abs=1
    )
    worn = step(cell, "What if the edge is worn")
    assert numbers(worn.result)[0] == pytest.approx(ends[1] * numbers(worn.values)[0], abs=1.0)


def test_the_torque_and_power_needed_work_out_again(cell: Explanation) -> None:
    torque, power = step(cell, "Torque needed"), step(cell, "Power needed")
    force, diameter = numbers(torque.values)
    assert numbers(torque.result)[0] == pytest.approx(force * diameter / 2000.0, abs=0.06)
    surface = numbers(power.values)[0]
    assert numbers(power.result)[0] == pytest.approx(force * surface / 60.0, abs=1.5)


def test_the_torque_of_motor_and_spindle_works_out_again(cell: Explanation) -> None:
    watts, base = numbers(step(cell, "Motor").values)
    shaft, rated = numbers(step(cell, "Motor").result)
    assert shaft == watts
    assert rated == pytest.approx(60.0 * watts / (2.0 * pi * base), abs=0.005)
    ratio, efficiency, n = numbers(step(cell, "At the spindle").values)
    continuous, one_cut, _ = numbers(step(cell, "At the spindle").result)
    x = n * ratio / base
    assert continuous == pytest.approx(rated * ratio * efficiency / x, rel=0.01)
    assert one_cut == pytest.approx(
        rated * ratio * efficiency * min(1.5 / x, 0.75 * 2.0 / x**2), rel=0.01
    )


def test_the_ceiling_of_torque_is_the_inverse_of_the_power_law(cell: Explanation) -> None:
    torque = numbers(step(cell, "Ceiling: torque").values)[0]
    kc, b, _, mc = numbers(step(cell, "Force of a sharp edge").values.replace("kc1.1", "kc"))
    feed = (2000.0 * torque / (25.0 * kc * b * 1.3 * 1.35)) ** (1.0 / (1.0 - mc))
    assert numbers(step(cell, "Ceiling: torque").result)[0] == pytest.approx(feed, abs=0.0015)


def test_the_pace_and_the_time_work_out_again(cell: Explanation) -> None:
    f, n = numbers(step(cell, "Pace of the slide").values)
    rate = numbers(step(cell, "Pace of the slide").result)[0]
    assert rate == pytest.approx(f * n, abs=0.05)
    travel = numbers(step(cell, "Pace of the handle").values)[0]
    seconds, per_second = numbers(step(cell, "Pace of the handle").result)
    assert seconds == pytest.approx(60.0 * travel / rate, abs=0.005)
    assert per_second == pytest.approx(40.0 / seconds, abs=0.1)
    outer, inner = numbers(step(cell, "Time of the cut").values)
    time = numbers(step(cell, "Time of the cut").result)[0]
    assert time == pytest.approx((outer - inner) / (2.0 * rate), abs=0.005)


def test_the_floor_works_out_again(cell: Explanation) -> None:
    k, radius = numbers(step(cell, "Floor: the edge").values)
    assert numbers(step(cell, "Floor: the edge").result)[0] == pytest.approx(k * radius / 1000.0)


def test_a_worn_blade_is_not_asked_what_if_it_were_worn(example: Shop) -> None:
    worn = replace(example, blades=(replace(example.blades[0], worn=True),))
    titles = [one.title for one in explained(worn, "mild-steel", "A", "16 mm").steps]
    assert "What if the edge is worn" not in titles


def test_a_thick_chip_has_the_band_of_the_printings(example: Shop, shop_of: ShopOf) -> None:
    wide = Blade(
        name="4 mm",
        tool_material=example.blades[0].tool_material,
        edge=Edge.THIN_COATED,
        edge_radius=18.0,
        insert_width=4.0,
        thickness=3.2,
        height=26.0,
        projection=36.0,
    )
    # A collet: in the jaws of the chuck this cut would slip before its chip is so thick.
    collet = {"[lathe.chuck]": '[lathe.chuck]\nkind = "collet"'}
    shop = replace(shop_of("2.2 kW geared", collet), blades=(wide,))
    band = step(explained(shop, "mild-steel", "A", "50 mm"), "Force band")
    assert band.values == "-25 % +25 %, chip from 0.1 mm"
    floor = step(explained(shop, "mild-steel", "A", "16 mm"), "Floor: the edge")
    assert floor.source.endswith("radius: shop file")


def test_a_material_without_force_says_that_nothing_is_checked(example: Shop) -> None:
    explanation = explained(example, "nylon", "A", "25 mm")
    assert step(explanation, "Cutting force").result == (
        "no published force constants: force, power, torque, blade, work and grip are not checked"
    )
    titles = [one.title for one in explanation.steps]
    checked = ("Torque", "Power", "Ceiling: torque", "Section", "Overhang", "Grip", "Dig-in")
    assert not any(title.startswith(checked) for title in titles)


def test_a_metal_without_unit_energy_says_so(example: Shop) -> None:
    second = step(explained(example, "free-cutting-brass", "A", "25 mm"), "The same by the second")
    assert (second.values, second.result) == ("no unit energy in the sources", "not available")


def test_a_tube_is_explained_as_a_long_cut(example: Shop) -> None:
    explanation = explained(example, "mild-steel", "A", "25 mm", "20 mm")
    assert (
        explanation.heading == "Mild steel, 2.0 carbide, Ø 25, bore 20, on Invented bench lathe 125"
    )
    which = step(explanation, "Which torque counts")
    assert (which.values, which.result) == ("bored, so a long cut", "continuous")


def test_an_unmarked_chuck_is_explained_by_its_rim(example: Shop) -> None:
    chuck = replace(example.lathe.chuck, marked_speed=None)
    shop = replace(example, lathe=replace(example.lathe, chuck=chuck))
    cap = step(explained(shop, "mild-steel", "A", "25 mm"), "Cap: chuck")
    rim, size = numbers(cap.values)
    assert numbers(cap.result)[0] == int(60_000.0 * rim / (pi * size))
    assert cap.source == allowance_source("chuck_rim_speed")


def test_an_input_plate_shows_what_is_lost_on_the_way_to_the_shaft(example: Shop) -> None:
    motor = replace(example.lathe.motor, power_is=PowerIs.INPUT, plate_power=1500.0)
    shop = replace(example, lathe=replace(example.lathe, motor=motor))
    one = step(explained(shop, "mild-steel", "A", "25 mm"), "Motor")
    assert one.values == "1500 W input power on the plate x efficiency 0.70, 1400 rev/min"
    assert one.result.startswith("1050 W, ")


def test_the_diameter_where_a_cut_falls_below_the_soft_floor_works_out_again(
    cell: Explanation,
) -> None:
    one = step(cell, "Speed under which")
    surface = numbers(step(cell, "Speed chosen").result)[0]
    soft = numbers(one.values)[0]
    assert numbers(one.result)[1] == pytest.approx(25.0 * soft / surface, abs=0.5)


def test_a_dial_that_reads_diameter_counts_twice_the_travel(example: Shop) -> None:
    slide = replace(example.lathe.cross_slide, dial_reads=DialReads.DIAMETER)
    shop = replace(example, lathe=replace(example.lathe, cross_slide=slide))
    values = step(explained(shop, "mild-steel", "A", "25 mm"), "Pace of the handle").values
    assert values == "p = 2 mm of tool travel a turn (the dial counts 4 mm on the diameter)"


def test_a_measured_lathe_is_explained_by_its_readings(shop_of: ShopOf) -> None:
    one = step(explained(shop_of("measured"), "mild-steel", "A", "25 mm"), "Motor")
    assert (one.formula, one.values, one.result, one.source) == (
        "as measured",
        "position only",
        "readings",
        "shop file",
    )


def test_power_feed_has_no_step_for_a_hand(shop_of: ShopOf) -> None:
    shop = shop_of("2.2 kW geared", {"[print]": '[print]\nfeeding = "power"'})
    explanation = explained(shop, "mild-steel", "A", "25 mm")
    assert not any("hand on the handle" in one.title for one in explanation.steps)
    assert "(power feed)" in step(explanation, "Floor: the edge").values


def test_an_allowance_is_cited_by_name_source_and_mark() -> None:
    assert allowance_source("edge_thin_coated") == "allowance edge_thin_coated, [CZT] (found)"
    assert allowance_source("confined_chip") == "allowance confined_chip (memory)"


def test_the_outcome_of_a_window_gives_cut_verdict_ends_and_margin(example: Shop) -> None:
    assert explained(example, "mild-steel", "A", "25 mm").outcome == (
        "1270 rev/min H, 0.050 a turn: inside. Window at this speed: floor 0.027 (edge rubs "
        "instead of cutting), ceiling 0.060 (motor torque, one cut); the ceiling is 1.21 times "
        "the feed."
    )


def test_the_outcome_without_window_gives_both_reasons(example: Shop) -> None:
    assert explained(example, "mild-steel", "C", "50 mm").outcome == (
        "No window. Nearest miss at 160 rev/min: floor 0.009 (edge rubs instead of cutting), "
        "ceiling 0.000 (blade too short)."
    )


# A floor of 0.020 lies under a ceiling of 0.119: that sentence would explain nothing.
def test_the_outcome_of_a_spindle_too_fast_names_the_spindle(shop_of: ShopOf) -> None:
    shop = shop_of("550 W belts", {'"115 rpm", "195 rpm", "331 rpm", ': ""})
    request = cut_request(shop, material="stainless-304", tool="C", diameter="25 mm")
    found, _ = recommended(
        shop, material=request.material, blade=request.blade, diameter=request.diameter
    )
    reason = found.floor_reason((0, 2, 0)).legend
    assert reason in explained(shop, "stainless-304", "C", "25 mm").outcome


def test_the_outcome_of_a_gearbox_without_a_fitting_feed_names_the_gearbox(
    shop_of: ShopOf,
) -> None:
    feeds = '"0.02 mm/rev", "0.03 mm/rev", "0.045 mm/rev", "0.06 mm/rev", "0.09 mm/rev"'
    shop = shop_of(
        "2.2 kW geared",
        {"[print]": '[print]\nfeeding = "power"', feeds: '"0.005 mm/rev", "0.5 mm/rev"'},
    )
    assert "no gearbox feed inside" in explained(shop, "mild-steel", "A", "25 mm").outcome
