"""The allowances: within bounds that mean something, marked, sourced, each read somewhere."""

import re
import tomllib
from dataclasses import fields, replace
from importlib.resources import files
from pathlib import Path

import pytest

import chartgen
from chartgen.limits.allowances import Allowances, allowances_for
from chartgen.model.shop import Shop
from chartgen.reference.allowances import load_allowances
from chartgen.reference.chucks import load_holding
from chartgen.reference.tables import load_bibliography
from chartgen.sources import Mark

ENTRIES = load_allowances()
PACKAGE = Path(chartgen.__file__).parent
# What the whole window added: blade, work, grip, whip, dig-in.
OF_THE_WHOLE_WINDOW = {
    "blade_stress_carrier": ("N/mm2", Mark.MEMORY),
    "blade_stress_hss": ("N/mm2", Mark.DERIVED),
    "blade_yield_carrier": ("N/mm2", Mark.MEMORY),
    "blade_yield_hss": ("N/mm2", Mark.DERIVED),
    "blade_modulus": ("N/mm2", Mark.MEMORY),
    "blade_shear_modulus": ("N/mm2", Mark.MEMORY),
    "tip_drop": ("mm", Mark.DERIVED),
    "buckling_reserve": ("", Mark.MEMORY),
    "jaw_distance": ("mm", Mark.PRACTICE),
    "work_deflection": ("mm", Mark.MEMORY),
    "work_stress_share": ("", Mark.MEMORY),
    "grip_share": ("", Mark.DERIVED),
    "grip_safety": ("", Mark.DERIVED),
    "cut_safety": ("", Mark.DERIVED),
    "grip_tight": ("", Mark.DERIVED),
    "whip_share": ("", Mark.MEMORY),
    "centre_height": ("mm", Mark.FOUND),
    "edge_overload": ("", Mark.MEMORY),
    "stopping_turns": ("", Mark.PRACTICE),
    "rotor_inertia": ("", Mark.MEMORY),
}


def value(name: str) -> float:
    return ENTRIES[name].value


@pytest.mark.parametrize("name", ENTRIES)
def test_an_allowance_lies_within_bounds_that_leave_room_and_says_why(name: str) -> None:
    entry = ENTRIES[name]
    assert 0.0 <= entry.least < entry.most
    assert entry.least <= entry.value <= entry.most
    assert len(entry.reason) > 15
    assert not entry.reason.endswith(".")


@pytest.mark.parametrize("name", ENTRIES)
def test_what_is_found_or_derived_names_its_publication_and_what_is_not_names_none(
    name: str,
) -> None:
    entry = ENTRIES[name]
    if entry.mark in {Mark.FOUND, Mark.DERIVED}:
        assert entry.source in load_bibliography()
    else:
        assert entry.source == "none"


@pytest.mark.parametrize("name", OF_THE_WHOLE_WINDOW)
def test_what_the_whole_window_assumes_keeps_its_unit_and_its_mark(name: str) -> None:
    raw = tomllib.loads(files("chartgen.reference").joinpath("allowances.toml").read_text("utf-8"))
    assert (raw[name]["unit"], ENTRIES[name].mark) == OF_THE_WHOLE_WINDOW[name]


def test_the_engine_resolves_every_allowance_and_no_other(example: Shop) -> None:
    assert [field.name for field in fields(Allowances)] == list(ENTRIES)
    resolved = allowances_for(replace(example, allowances={}))
    assert {name: getattr(resolved, name) for name in ENTRIES} == {
        name: entry.value for name, entry in ENTRIES.items()
    }


# Those of the edge are found by the name of its state.
@pytest.mark.parametrize("name", [name for name in ENTRIES if not name.startswith("edge_")])
def test_an_allowance_is_read_by_some_formula(name: str) -> None:
    read = re.compile(rf"\ballowances(_for\(\w+\))?\.{name}\b")
    assert any(read.search(file.read_text("utf-8")) for file in PACKAGE.rglob("*.py"))


def test_a_blade_is_allowed_less_than_bends_it_for_good_and_carbide_carriers_less_than_hss() -> (
    None
):
    for kind in ("carrier", "hss"):
        assert value(f"blade_stress_{kind}") < value(f"blade_yield_{kind}") / 2.0
    assert value("blade_stress_carrier") < value("blade_stress_hss")
    assert value("blade_yield_carrier") < value("blade_yield_hss")


# Isotropic: E / 2 G - 1 is Poisson's ratio, 0.27 to 0.31 in steel.
def test_the_moduli_of_blade_steel_agree_with_each_other() -> None:
    poisson = value("blade_modulus") / (2.0 * value("blade_shear_modulus")) - 1.0
    assert 0.27 < poisson < 0.31


# [RN-1391] p. 46: 1.5 on the grip, 1.5 on the expected force, of which 1.25 is in the band.
def test_the_reserves_on_the_grip_are_one_and_a_half_each_and_tight_is_beyond_both() -> None:
    assert value("grip_safety") == 1.5
    assert 1.25 * value("cut_safety") == pytest.approx(1.5)
    assert value("grip_tight") > 1.5 * 1.5


# The share stands for a usual pull: 25 to 50 N.m on a key, by memory, against the table's.
def test_the_share_of_the_grip_is_within_a_usual_pull_on_the_key_of_a_bench_lathe() -> None:
    grip = load_holding().grip
    (chuck,) = (c for c in load_holding().scroll_chucks if c.size == 125.0)
    by_hand = value("grip_share") * chuck.static_grip.value / grip.grip_per_key_torque.value
    assert grip.hand_torque_low.value <= by_hand <= grip.hand_torque_high.value
    assert grip.dry_scroll_share.value <= value("grip_share") < 1.0
