"""Chuck makers' papers on grip and speed.

- Standard RN-1391 [RN-1391]: worked example p. 48, friction table 4 on p. 45.
- Hand chuck manual [CHUCK-2757180] p. 43: key torque, grip, largest speeds.
- A lathe manual [LATHE-1643047] p. 41: grip of a hand chuck of 160 mm.
- Clamping head manual [CH-A] pp. 28 and 32.
- Operating manual [CM14] p. 28: balance of a part that tilts; its number is derived.

Left out: the second example of the makers (17 723 N, 3000 N), whose printed speed disagrees
with its own formula. Only its arithmetic of the centrifugal force is used.
"""

import pytest

from chartgen.physics.cutting import cutting_force
from chartgen.physics.grip import (
    centrifugal_force,
    grip_at_speed,
    grip_from_key_torque,
    jaw_moment_from_loss,
)
from chartgen.physics.holding import (
    grip_against_tilt,
    grip_for_cut,
    largest_cutting_force,
    largest_side_force,
    permitted_speed,
    static_grip_for_cut,
)
from chartgen.reference.chuck_sizes import scroll_chuck_of_size
from chartgen.reference.chucks import BodyMaterial, JawFace, WorkSurface, load_holding

HOLDING = load_holding()
CHUCKS = HOLDING.scroll_chucks
STEEL, IRON = BodyMaterial.STEEL, BodyMaterial.IRON

# size mm: key torque N·m, grip kN, largest speed of a steel and of a cast-iron body, as printed.
PRINTED = {
    80: (35, 10, 7000, 5000),
    100: (50, 17, 6300, 4500),
    110: (50, 17, 6300, 4500),
    125: (75, 24, 5500, 4000),  # printed 400
    140: (75, 24, 5500, 4000),
    160: (120, 31, 4600, 3600),
    200: (160, 37, 4000, 3000),
    250: (180, 46, 3500, 2500),
    315: (200, 55, 2800, 2000),
    400: (280, 65, 2000, 1600),
}
every_size = pytest.mark.parametrize("size", PRINTED)


def test_rn_1391_cutting_force_of_the_example_is_625_kilonewtons() -> None:
    # s·t = 0.5 x 5 mm² at kc 2.50 kN/mm².
    force = cutting_force(width=5.0, feed=0.5, specific_force=2500.0, thickness_exponent=0.0)
    assert force == pytest.approx(6250.0, abs=5.0)


def test_rn_1391_grip_for_the_cut_of_the_example() -> None:
    # S 2.0, μ 0.20, 20 on 60 mm: 20.83 kN, printed as 21.00.
    needed = grip_for_cut(
        cutting_force=6250.0, friction=0.20, cut_safety=2.0, cut_diameter=20, clamping_diameter=60
    )
    assert needed == pytest.approx(20_830.0, abs=5.0)
    assert needed == pytest.approx(21_000.0, rel=0.009)


def test_rn_1391_grip_to_set_in_the_example_is_585_kilonewtons() -> None:
    # From its own 21.00 kN with F_c 18 kN and S_sp 1.5.
    static = static_grip_for_cut(grip_for_cut=21_000.0, centrifugal_force=18_000.0, grip_safety=1.5)
    assert static == pytest.approx(58_500.0, abs=50.0)


def test_rn_1391_the_grip_of_the_example_allows_its_cut_and_no_more() -> None:
    allowed = largest_cutting_force(
        static_grip=58_500.0,
        centrifugal_force=18_000.0,
        friction=0.20,
        grip_safety=1.5,
        cut_safety=2.0,
        cut_diameter=20.0,
        clamping_diameter=60.0,
    )
    assert allowed == pytest.approx(6300.0)  # of the rounded 21.00 kN
    # Whatever the jaws weigh: at the speed where they take 18 kN the grip is used up.
    moment = jaw_moment_from_loss(
        static_grip=58_500.0, lost_share=18.0 / 58.5, spindle_speed=1800.0
    )
    speed = permitted_speed(
        static_grip=58_500.0, grip_for_cut=21_000.0, jaw_moment=moment, grip_safety=1.5
    )
    assert speed == pytest.approx(1800.0)


def test_centrifugal_force_of_jaws_of_2668_kilogram_metres_at_1200() -> None:
    # Arithmetic of the makers' second example, in newtons.
    assert centrifugal_force(jaw_moment=2.668, spindle_speed=1200.0) == pytest.approx(
        42_131.0, abs=0.5
    )


@pytest.mark.parametrize(
    ("surface", "printed"),
    [
        (WorkSurface.GROUND, (0.07, 0.12, 0.20)),
        (WorkSurface.ROUGH, (0.10, 0.20, 0.35)),
        (WorkSurface.UNMACHINED, (0.15, 0.30, 0.45)),
    ],
)
def test_rn_1391_friction_is_as_printed_in_table_4(
    surface: WorkSurface, printed: tuple[float, ...]
) -> None:
    row = HOLDING.jaw_friction[surface]
    assert tuple(row[face].value for face in JawFace) == printed
    assert {row[face].source for face in JawFace} == {"RN-1391"}


def test_rn_1391_and_the_head_maker_differ_by_3_percent_at_most_on_other_materials() -> None:
    printed = {"aluminium": (0.95, 0.97), "brass": (0.90, 0.92), "iron": (0.80, 0.80)}
    for material, (jaws, heads) in printed.items():
        assert HOLDING.friction_factor[material].value == jaws
        assert HOLDING.head_friction_factor[material].value == heads
        assert jaws == pytest.approx(heads, rel=0.03)


def test_head_maker_friction_and_forces_are_as_printed() -> None:
    rows = [HOLDING.head_friction[surface] for surface in WorkSurface]
    assert [(row.tangential.value, row.axial.value) for row in rows] == [
        (0.06, 0.08),
        (0.10, 0.13),
        (0.14, 0.16),
    ]
    heads = HOLDING.clamping_heads
    assert [head.size for head in heads] == [32, 42, 52, 65, 80, 100, 125, 140, 160]
    assert [head.largest_force.value for head in heads] == [
        2700, 3600, 3600, 5000, 6000, 8000, 12_000, 12_500, 14_000,
    ]  # fmt: skip


@every_size
def test_hand_chucks_are_as_printed(size: int) -> None:
    chuck = scroll_chuck_of_size(size, chucks=CHUCKS)
    assert (
        chuck.key_torque.value,
        chuck.static_grip.value / 1000.0,
        chuck.largest_speed[STEEL].value,
        chuck.largest_speed[IRON].value,
    ) == PRINTED[size]


def test_a_lathe_manual_gives_the_same_31_kilonewtons_at_160_mm() -> None:
    assert scroll_chuck_of_size(160, chucks=CHUCKS).static_grip.value == 31_000.0


@every_size
def test_the_usual_grip_for_each_newton_metre_is_within_the_spread_of_the_table(size: int) -> None:
    chuck = scroll_chuck_of_size(size, chucks=CHUCKS)
    usual = grip_from_key_torque(
        key_torque=chuck.key_torque.value,
        grip_per_torque=HOLDING.grip.grip_per_key_torque.value,
    )
    # The rows span 230 to 340 N per N·m.
    assert usual / 250.0 * 230.0 <= chuck.static_grip.value <= usual / 250.0 * 340.0


@every_size
@pytest.mark.parametrize("body", BodyMaterial)
def test_half_of_the_grip_is_left_at_the_largest_speed(size: int, body: BodyMaterial) -> None:
    # The manual: largest speeds are chosen so that no more than one half is lost.
    chuck = scroll_chuck_of_size(size, chucks=CHUCKS)
    top, grip = chuck.largest_speed[body].value, chuck.static_grip.value
    moment = jaw_moment_from_loss(
        static_grip=grip, lost_share=HOLDING.grip.lost_share.value, spindle_speed=top
    )
    left = grip_at_speed(
        static_grip=grip,
        centrifugal_force=centrifugal_force(jaw_moment=moment, spindle_speed=top),
    )
    assert left == pytest.approx(grip / 2.0)


def test_a_part_of_40_mm_held_against_300_newtons_20_mm_out_needs_12_kilonewtons() -> None:
    # Derived from the balance of [CM14]: S 4, μ 0.2.
    held = grip_against_tilt(
        side_force=300.0, overhang=20.0, clamping_diameter=40.0, friction=0.2, cut_safety=4.0
    )
    assert held == pytest.approx(12_000.0, abs=50.0)
    assert largest_side_force(
        grip=12_000.0, overhang=20.0, clamping_diameter=40.0, friction=0.2, cut_safety=4.0
    ) == pytest.approx(300.0)
