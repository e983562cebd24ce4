"""The friction in the jaws taken apart: which surface, which jaws, whose factor.

Friction on steel and the factors of other materials are printed in [RN-1391] p. 45.
"""

from dataclasses import replace

import pytest

from chartgen.limits.friction import friction_of, held_in
from chartgen.model.lathe import BarSurface, Chuck, JawFace
from chartgen.model.shop import Shop
from chartgen.reference.tables import load_material, material_keys


@pytest.mark.parametrize(
    ("key", "name", "factor"),
    [
        ("grey-iron-250", "iron", 0.80),
        ("nodular-iron-600", "iron", 0.80),
        ("aluminium-7075", "aluminium", 0.95),
        ("free-cutting-brass", "brass", 0.90),
        ("tin-bronze", "brass", 0.90),
        ("ptfe", "brass", 0.90),
    ],
)
def test_the_factor_is_that_of_the_group_and_of_brass_where_none_is_printed(
    key: str, name: str, factor: float
) -> None:
    found = friction_of(Chuck(size=125.0), BarSurface.BRIGHT, load_material(key))
    assert found.factor is not None
    assert (found.factor_name, found.factor.value) == (name, factor)
    assert found.factor.source == "RN-1391"
    assert found.value == pytest.approx(0.10 * factor)


def test_a_factor_is_named_just_where_there_is_one() -> None:
    for key in material_keys():
        found = friction_of(Chuck(size=125.0), BarSurface.BRIGHT, load_material(key))
        assert bool(found.factor_name) is (found.factor is not None)
        assert found.value <= found.on_steel.value == 0.10


def test_steel_stands_as_printed_without_a_factor() -> None:
    chuck = Chuck(size=125.0, jaws=JawFace.SERRATED)
    found = friction_of(chuck, BarSurface.BRIGHT, load_material("mild-steel"))
    assert (found.factor, found.factor_name) == (None, "")
    assert found.value == found.on_steel.value == 0.35
    assert found.held == "bright bar in serrated jaws"


@pytest.mark.parametrize(
    ("surface", "jaws", "words"),
    [
        (BarSurface.BRIGHT, JawFace.SMOOTH, "bright bar"),
        (BarSurface.GROUND, JawFace.SMOOTH, "ground bar"),
        (BarSurface.BLACK, JawFace.DIAMOND, "black bar in diamond jaws"),
        (BarSurface.BRIGHT, JawFace.SERRATED, "bright bar in serrated jaws"),
    ],
)
def test_smooth_jaws_are_not_worth_a_word(
    example: Shop, surface: BarSurface, jaws: JawFace, words: str
) -> None:
    chuck = replace(example.lathe.chuck, jaws=jaws)
    shop = replace(
        example,
        lathe=replace(example.lathe, chuck=chuck),
        work=replace(example.work, surface=surface),
    )
    assert held_in(shop) == words
