"""The data of holding: in their bounds, rising with size, between rows, refused by name."""

import math
import re
from itertools import pairwise
from pathlib import Path

import pytest

import chartgen.reference.chucks
from chartgen.errors import RequestError
from chartgen.reference.chuck_sizes import chuck_body_of_size, scroll_chuck_of_size
from chartgen.reference.chucks import (
    BodyMaterial,
    JawFace,
    WorkSurface,
    load_holding,
    read_holding,
)
from chartgen.sources import Mark

HOLDING = load_holding()
TEXT = Path(chartgen.reference.chucks.__file__).with_suffix(".toml").read_text("utf-8")
CHUCK = "CHUCK-2757180"


def test_bigger_chucks_grip_harder_and_turn_slower() -> None:
    for small, big in pairwise(HOLDING.scroll_chucks):
        assert small.up_to < big.size
        assert small.key_torque.value < big.key_torque.value
        assert small.static_grip.value < big.static_grip.value
        for body in BodyMaterial:
            assert small.largest_speed[body].value > big.largest_speed[body].value


def test_cast_iron_turns_slower_than_steel() -> None:
    for chuck in HOLDING.scroll_chucks:
        iron, steel = (chuck.largest_speed[b] for b in (BodyMaterial.IRON, BodyMaterial.STEEL))
        assert iron.value < steel.value


def test_friction_grows_with_roughness_of_work_and_of_jaw() -> None:
    table = [[HOLDING.jaw_friction[s][face].value for face in JawFace] for s in WorkSurface]
    assert all(row == sorted(set(row)) for row in table)
    assert all(list(column) == sorted(set(column)) for column in zip(*table, strict=True))
    heads = [HOLDING.head_friction[surface] for surface in WorkSurface]
    assert all(a.tangential.value < b.tangential.value for a, b in pairwise(heads))
    assert all(head.tangential.value < head.axial.value for head in heads)


def test_shares_are_shares_and_in_order() -> None:
    grip = HOLDING.grip
    assert 0.0 < grip.lost_share.value < grip.most_lost_share.value < 1.0
    assert 0.0 < grip.dry_scroll_share.value < 1.0
    assert grip.hand_torque_low.value < grip.hand_torque_high.value


def test_masses_are_marked_as_memory_and_below_those_of_solid_iron() -> None:
    for body in HOLDING.chuck_bodies:
        assert body.mass.mark is body.bore.mark is Mark.MEMORY
        assert 0.0 < body.bore.value < body.size
        # A disc of iron (7.2 g/cm³) as thick as its diameter.
        assert body.mass.value < 7.2e-6 * math.pi / 4.0 * body.size**3


def test_a_size_of_the_table_gives_its_row() -> None:
    chuck = scroll_chuck_of_size(125, chucks=HOLDING.scroll_chucks)
    assert chuck.static_grip.mark is Mark.FOUND
    assert chuck.largest_speed[BodyMaterial.IRON].mark is Mark.DERIVED  # a misprint
    assert chuck_body_of_size(125, bodies=HOLDING.chuck_bodies).mass.value == 5.4


def test_a_size_within_a_row_gives_the_row_unchanged() -> None:
    within, row = (scroll_chuck_of_size(s, chucks=HOLDING.scroll_chucks) for s in (105, 100))
    assert (within.size, within.static_grip) == (105, row.static_grip)


def test_a_size_between_rows_is_on_the_straight_line_and_derived() -> None:
    chuck = scroll_chuck_of_size(150, chucks=HOLDING.scroll_chucks)
    # Half way from 140 to 160 mm: 24 to 31 kN, 5500 to 4600 and 4000 to 3600 rev/min.
    assert chuck.static_grip.value == pytest.approx(27_500.0)
    assert chuck.largest_speed[BodyMaterial.STEEL].value == pytest.approx(5050.0)
    assert chuck.largest_speed[BodyMaterial.IRON].value == pytest.approx(3800.0)
    assert chuck.static_grip.mark is Mark.DERIVED
    assert chuck.static_grip.source == CHUCK
    assert chuck.static_grip.note == "between the sizes 140 and 160 mm"


def test_a_mass_between_rows_stays_memory() -> None:
    body = chuck_body_of_size(90, bodies=HOLDING.chuck_bodies)
    assert body.mass.value == pytest.approx(2.7)
    assert body.bore.value == pytest.approx(18.0)
    assert body.mass.mark is Mark.MEMORY


@pytest.mark.parametrize("size", [63.0, 79.9, 400.1])
def test_a_chuck_outside_the_table_is_refused(size: float) -> None:
    with pytest.raises(RequestError) as caught:
        scroll_chuck_of_size(size, chucks=HOLDING.scroll_chucks)
    assert str(caught.value) == (
        f"There are data for chucks of 80 to 400 mm, none for {size:g} mm. "
        "Measure the grip and read the speed off the chuck."
    )


def test_a_body_outside_the_table_is_refused() -> None:
    with pytest.raises(RequestError) as caught:
        chuck_body_of_size(315.0, bodies=HOLDING.chuck_bodies)
    assert str(caught.value) == (
        "There are data for chucks of 80 to 250 mm, none for 315 mm. Weigh the chuck."
    )


BAD_ENTRIES = [
    ("lost_share =", "lost_part =", "c.toml: grip.lost_share: is missing"),
    ("size = 100\n", "size = 80\n",
     "c.toml: scroll_chucks row 2.size: 80 mm is not larger than the row before"),
    ("up_to = 110", "up_to = 90", "c.toml: scroll_chucks row 2.up_to: 90 mm is less than the size"),
    ("largest_speed.steel =", "largest_speed.bronze =",
     "c.toml: scroll_chucks row 1.largest_speed.steel: is missing"),
    ("{value = 7000, ", '{value = "7000", ',
     "c.toml: scroll_chucks row 1.largest_speed.steel.value: must be a number"),
    ("[jaw_friction.ground]", "[jaw_friction.polished]",
     "c.toml: jaw_friction.ground: is missing"),
    ("serrated =", "toothed =", "c.toml: jaw_friction.ground.serrated: is missing"),
    ("axial =", "along =", "c.toml: head_friction.ground.axial: is missing"),
    ("[friction_factor]", "[friction_factor]\nbronze = 1",
     "c.toml: friction_factor.bronze: is not known here; use aluminium, brass, iron"),
    ('mark = "found", source = "RN-1391"', 'mark = "found", source = "none"',
     "c.toml: jaw_friction.ground.smooth.source: a number marked found must name its source"),
    ("[[clamping_heads]]\nsize = 32", "[[clamping_heads]]\nup_to = 40\nsize = 32",
     "c.toml: clamping_heads row 1.up_to: is not known here; use largest_force, size"),
    ("bore =", "hole =", "c.toml: chuck_bodies row 1.bore: is missing"),
    ("[[scroll_chucks]]", "colour = 1\n[[scroll_chucks]]",
     ("c.toml: colour: is not known here; use chuck_bodies, clamping_heads, friction_factor, "
      "grip, head_friction, head_friction_factor, jaw_friction, scroll_chucks")),
]  # fmt: skip


@pytest.mark.parametrize(("old", "new", "message"), BAD_ENTRIES)
def test_a_bad_entry_is_refused_with_file_and_key(old: str, new: str, message: str) -> None:
    assert old in TEXT
    with pytest.raises(ValueError, match=f"^{re.escape(message)}$"):
        read_holding(TEXT.replace(old, new, 1), file="c.toml")


def test_a_table_without_rows_is_refused() -> None:
    head, found, _ = TEXT.partition("[[chuck_bodies]]")
    assert found
    with pytest.raises(ValueError, match=r"^c\.toml: chuck_bodies: has no rows$"):
        read_holding(f"chuck_bodies = []\n{head}", file="c.toml")
