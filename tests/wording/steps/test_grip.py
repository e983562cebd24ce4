"""How the work is held: every step can be worked out again from what it prints."""

import re
from dataclasses import replace
from math import inf

import pytest

from chartgen.inquiry import CutAnswer, cut_request, explain_cell
from chartgen.limits.allowances import allowances_for
from chartgen.limits.friction import friction_of
from chartgen.limits.holding import make_holding
from chartgen.model.lathe import BarSurface, Chuck, ChuckKind, JawFace
from chartgen.model.shop import Shop
from chartgen.reference.tables import load_material, material_keys
from chartgen.wording.steps.step import Step


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


def with_chuck(shop: Shop, **changes: object) -> Shop:
    chuck: Chuck = replace(shop.lathe.chuck, **changes)  # type: ignore[arg-type]
    return replace(shop, lathe=replace(shop.lathe, chuck=chuck))


@pytest.fixture(scope="module")
def cell(example: Shop) -> CutAnswer:
    return asked(example, "mild-steel", "A", "25 mm")


@pytest.fixture(scope="module")
def slipping(example: Shop) -> CutAnswer:
    """Return a cell that the grip limits."""
    return asked(example, "mild-steel", "C", "25 mm")


def test_the_grip_works_out_again_from_the_table_to_the_ceiling(slipping: CutAnswer) -> None:
    share, table, size, per_torque, pull = numbers(step(slipping, "Grip at standstill").values)
    static = numbers(step(slipping, "Grip at standstill").result)[0]
    assert (share, table, size) == (0.5, 24000.0, 125.0)
    assert static == min(max(share * table, per_torque * pull), table) == 12000.0
    lost_share, grip, n, fastest = numbers(step(slipping, "Grip that speed").values)
    lost = numbers(step(slipping, "Grip that speed").result)[0]
    assert lost == pytest.approx(lost_share * grip * (n / fastest) ** 2, abs=0.5)
    friction = numbers(step(slipping, "Friction").result)[0]
    assert friction == numbers(step(slipping, "Friction").values)[0] == 0.1
    slips = numbers(step(slipping, "Force at which the work slips").result)[0]
    assert slips == pytest.approx(friction * (static - lost), abs=0.6)
    ceiling = step(slipping, "Ceiling: grip")
    mu, f0, grip_safety, fc, cut_safety = numbers(ceiling.values)
    assert (mu, f0, fc) == (friction, static, lost)
    assert numbers(ceiling.result)[0] == pytest.approx(
        mu * (f0 / grip_safety - fc) / cut_safety, abs=0.6
    )
    margin = step(slipping, "Grip over the expected force")
    top, expected = numbers(margin.values)
    assert (top, expected) == (slips, numbers(step(slipping, "Force with reserve").result)[0])
    assert numbers(margin.result)[:2] == [pytest.approx(top / expected, abs=0.01), 4.0]
    tilt = step(slipping, "Tilting")
    mu, left, diameter, length = numbers(tilt.values.replace("F0", "").replace("F_c", ""))
    assert left == static - lost
    assert numbers(tilt.result)[0] == pytest.approx(mu * left * diameter / (4.0 * length), abs=0.6)


def test_the_margin_of_the_grip_says_what_becomes_of_it(example: Shop) -> None:
    def said(material: str, tool: str, diameter: str) -> str:
        margin = step(asked(example, material, tool, diameter), "Grip over the expected force")
        return margin.result.split(": ")[1]

    assert said("mild-steel", "C", "25 mm") == "no mark"
    assert said("stainless-304", "A", "12 mm") == "tight"
    assert said("mild-steel", "A", "25 mm") == "waived, the spindle stalls at 617 N"


def test_a_spindle_that_stalls_first_waives_the_limit_of_the_grip(cell: CutAnswer) -> None:
    stall = 2000.0 * cell.cut.torque_stall / 25.0
    spared = 0.1 * (12000.0 / 1.5 - numbers(step(cell, "Grip that speed").result)[0])
    assert stall < spared
    assert step(cell, "Ceiling: grip").result == (
        f"waived: the spindle stalls at {stall:.0f} N, before the work can slip at "
        f"{spared:.0f} N (S_c left out)"
    )
    assert {c.reason.name: c.feed for c in cell.cut.ceilings}["GRIP"] == inf


def test_a_known_pull_on_the_key_decides_up_to_the_table(example: Shop) -> None:
    def standstill(torque: float) -> Step:
        shop = with_chuck(example, key_torque=torque)
        return step(asked(shop, "mild-steel", "A", "25 mm"), "Grip at standstill")

    usual = standstill(40.0)
    assert usual.formula == "F0 = q T, at most that of the table"
    assert usual.values == (
        "q = 250 N per N·m, T = 40 N·m; at most 24000 N by the table for 125 mm"
    )
    assert usual.result == "10000 N, all jaws together"
    assert "shop file" in usual.source
    assert "allowance" not in usual.source
    assert standstill(150.0).result == "24000 N, all jaws together"


@pytest.mark.parametrize(
    ("size", "values"),
    [
        (
            63.0,
            (
                "share 0.5, 6202 N: no table for 63 mm, scaled from 80 mm by the square of the "
                "size; q = 250 N per N·m, T = 25 N·m"
            ),
        ),
        (
            500.0,
            (
                "share 0.5, 65000 N: no table for 500 mm, the largest one stands; "
                "q = 250 N per N·m, T = 25 N·m"
            ),
        ),
    ],
)
def test_a_chuck_outside_the_table_is_said_to_be(example: Shop, size: float, values: str) -> None:
    answer = asked(with_chuck(example, size=size), "mild-steel", "C", "12 mm")
    assert step(answer, "Grip at standstill").values == values


def test_without_a_known_pull_both_of_its_sources_are_named(example: Shop) -> None:
    answer = asked(with_chuck(example, size=80.0), "mild-steel", "C", "12 mm")
    one = step(answer, "Grip at standstill")
    assert one.formula == (
        "F0 = share x table, or q T for a light pull on the key, the larger; at most the table"
    )
    assert one.values == (
        "share 0.5, 10000 N by the table for 80 mm; q = 250 N per N·m, T = 25 N·m"
    )
    assert one.result == "6250 N, all jaws together"
    assert "allowance grip_share" in one.source
    assert "allowance key_pull" in one.source


def test_a_collet_is_said_to_have_no_limit(example: Shop) -> None:
    answer = asked(with_chuck(example, kind=ChuckKind.COLLET), "mild-steel", "C", "12 mm")
    assert step(answer, "Grip").result == (
        "no limit is worked out; a collet grips hard and loses little by speed"
    )


@pytest.mark.parametrize("surface", BarSurface)
@pytest.mark.parametrize("jaws", JawFace)
def test_the_friction_told_is_the_friction_used(
    example: Shop, surface: BarSurface, jaws: JawFace
) -> None:
    shop = with_chuck(example, jaws=jaws)
    shop = replace(shop, work=replace(shop.work, surface=surface))
    materials = [load_material(key) for key in material_keys()]
    used = make_holding(shop.lathe.chuck, surface, materials, allowances_for(shop)).friction
    told = [
        friction_of(shop.lathe.chuck, shop.work.surface, material).value for material in materials
    ]
    assert told == pytest.approx(used.reshape(-1).tolist())


# 0.35 on steel times 0.90 for brass [RN-1391].
def test_the_friction_names_surface_jaws_and_factor(example: Shop) -> None:
    shop = with_chuck(example, jaws=JawFace.SERRATED)
    one = step(asked(shop, "free-cutting-brass", "A", "25 mm"), "Friction")
    assert one.values == "bright bar in serrated jaws, on steel 0.35; factor 0.9 for brass"
    assert one.result == "0.315"
    assert one.source.count("[RN-1391]") == 2
