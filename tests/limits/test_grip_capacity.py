"""What the jaws hold, cell by cell: at standstill, at speed, on which surface. By hand.

Forces and largest speeds by chuck size are printed in [CHUCK-2757180] p. 43, friction in
[RN-1391] p. 45; the share of the table's grip, its loss and the reserves are allowances.
"""

from collections.abc import Callable
from dataclasses import replace
from math import inf, pi

import pytest

from chartgen.limits.allowances import allowances_for
from chartgen.limits.cut import Cut, Side, assess, recommended
from chartgen.limits.holding import make_holding
from chartgen.limits.reasons import Reason
from chartgen.limits.window import Verdict
from chartgen.model.lathe import BarSurface, Chuck, ChuckKind, JawFace, Work
from chartgen.model.material import Material
from chartgen.model.shop import Shop
from chartgen.reference.tables import load_material

ShopOf = Callable[..., Shop]
Held = Callable[[Shop], Shop]
FeedFor = Callable[[float, float], float]
CeilingOf = Callable[[Cut, Reason], float]
# Printed: static grip and largest speed of a steel body, by size.
TABLE = {80.0: (10_000.0, 7000.0), 125.0: (24_000.0, 5500.0), 400.0: (65_000.0, 2000.0)}
# Allowances and derived: share of the table, a light pull on the key [N.m], share lost at its
# speed, N for each N.m, reserves.
SHARE, KEY_PULL, LOST, PER_TORQUE = 0.5, 25.0, 0.5, 250.0
GRIP_SAFETY, CUT_SAFETY, TIGHT = 1.5, 1.2, 4.0
WIDTH = 2.0


def lost_at(speed: float, size: float, scale: float = 1.0) -> float:
    """Return what speed takes off: with its square, half of the table at its largest speed."""
    grip, largest = TABLE[size]
    return LOST * scale * grip * (speed / largest) ** 2


def assumed(table: float) -> float:
    """Return the grip without a known pull: of share and light pull the larger."""
    return min(max(SHARE * table, PER_TORQUE * KEY_PULL), table)


def allowed(static_grip: float, lost: float, friction: float = 0.10) -> float:
    return friction * (static_grip / GRIP_SAFETY - lost) / CUT_SAFETY


def with_chuck(shop: Shop, chuck: Chuck, work: Work | None = None) -> Shop:
    return replace(shop, lathe=replace(shop.lathe, chuck=chuck), work=work or Work())


def cut_of(shop: Shop, material: Material, *, speed: float, diameter: float = 12.0) -> Cut:
    return assess(
        shop, material=material, blade=shop.blades[0], diameter=diameter, speed=speed, feed=0.05
    )


@pytest.mark.parametrize("speed", [300.0, 1000.0, 1800.0])
@pytest.mark.parametrize("size", [80.0, 125.0])
def test_the_larger_of_share_and_light_pull_holds_less_the_faster_it_turns(
    example: Shop,
    mild_steel: Material,
    mild_steel_feed: FeedFor,
    ceiling_of: CeilingOf,
    size: float,
    speed: float,
) -> None:
    shop = with_chuck(example, Chuck(size=size, marked_speed=4000.0))
    assert assumed(TABLE[size][0]) == {80.0: 6250.0, 125.0: 12_000.0}[size]
    force = allowed(assumed(TABLE[size][0]), lost_at(speed, size))
    # 12 mm is thin enough for the drive to turn the bar in the jaws.
    cut = cut_of(shop, mild_steel, speed=speed)
    assert ceiling_of(cut, Reason.GRIP) == pytest.approx(mild_steel_feed(force, WIDTH))


# 30 N.m on the key; 150 N.m would give more than the table, which is all that the scroll gives.
@pytest.mark.parametrize(("torque", "grip"), [(30.0, 7500.0), (60.0, 15_000.0), (150.0, 24_000.0)])
def test_a_measured_pull_on_the_key_sets_the_grip_up_to_the_table(
    example: Shop,
    mild_steel: Material,
    mild_steel_feed: FeedFor,
    ceiling_of: CeilingOf,
    torque: float,
    grip: float,
) -> None:
    assert grip == min(PER_TORQUE * torque, TABLE[125.0][0])
    shop = with_chuck(example, Chuck(size=125.0, marked_speed=4000.0, key_torque=torque))
    found = make_holding(shop.lathe.chuck, BarSurface.BRIGHT, [mild_steel], allowances_for(shop))
    assert found.static_grip == grip
    cut = cut_of(shop, mild_steel, speed=600.0, diameter=6.0)
    force = allowed(grip, lost_at(600.0, 125.0))
    assert ceiling_of(cut, Reason.GRIP) == pytest.approx(mild_steel_feed(force, WIDTH))


def test_a_measured_pull_outranks_the_allowed_share(example: Shop) -> None:
    def grip(share: float, torque: float | None) -> float:
        shop = replace(example, allowances={"grip_share": share})
        chuck = Chuck(size=125.0, key_torque=torque)
        return make_holding(chuck, BarSurface.BRIGHT, [], allowances_for(shop)).static_grip

    assert [grip(share, 40.0) for share in (0.3, 0.9)] == [10_000.0, 10_000.0]
    assert [grip(share, None) for share in (0.3, 0.9)] == pytest.approx([7200.0, 21_600.0])


# 80 mm holds 10 kN by the table: its half stands until the pull gives more, up to the table.
@pytest.mark.parametrize(
    ("pull", "grip"),
    [(19.9, 5000.0), (20.1, 5025.0), (30.0, 7500.0), (39.9, 9975.0), (40.1, 10_000.0)],
)
def test_a_light_pull_counts_where_it_gives_more_than_the_share(
    example: Shop, pull: float, grip: float
) -> None:
    shop = replace(example, allowances={"key_pull": pull})
    found = make_holding(Chuck(size=80.0), BarSurface.BRIGHT, [], allowances_for(shop))
    assert found.static_grip == pytest.approx(grip)
    # A pull stated in the shop file silences both.
    stated = make_holding(
        Chuck(size=80.0, key_torque=16.0), BarSurface.BRIGHT, [], allowances_for(shop)
    )
    assert stated.static_grip == pytest.approx(4000.0)


# [RN-1391] table 4: bright bar counts as rough, black bar as unmachined.
@pytest.mark.parametrize(
    ("surface", "jaws", "friction"),
    [
        (BarSurface.GROUND, JawFace.SMOOTH, 0.07),
        (BarSurface.GROUND, JawFace.SERRATED, 0.20),
        (BarSurface.BRIGHT, JawFace.SMOOTH, 0.10),
        (BarSurface.BRIGHT, JawFace.DIAMOND, 0.20),
        (BarSurface.BRIGHT, JawFace.SERRATED, 0.35),
        (BarSurface.BLACK, JawFace.SMOOTH, 0.15),
        (BarSurface.BLACK, JawFace.DIAMOND, 0.30),
    ],
)
@pytest.mark.parametrize(
    ("key", "factor"),
    [
        ("mild-steel", 1.0),
        ("stainless-304", 1.0),
        ("titanium-pure", 1.0),
        ("aluminium-6082", 0.95),
        ("aluminium-cast", 0.95),
        ("free-cutting-brass", 0.90),
        ("copper", 0.90),
        ("nylon", 0.90),
        ("grey-iron-250", 0.80),
    ],
)
def test_friction_is_that_of_surface_and_jaw_times_that_of_the_metal(
    example: Shop, surface: BarSurface, jaws: JawFace, friction: float, key: str, factor: float
) -> None:
    chuck = Chuck(size=125.0, jaws=jaws)
    found = make_holding(chuck, surface, [load_material(key)], allowances_for(example))
    assert found.friction.shape == (1, 1, 1, 1)
    assert found.friction.item() == pytest.approx(friction * factor)


def test_friction_reaches_the_ceiling(
    example: Shop, mild_steel: Material, mild_steel_feed: FeedFor, ceiling_of: CeilingOf
) -> None:
    chuck = replace(example.lathe.chuck, jaws=JawFace.DIAMOND, key_torque=20.0)
    shop = with_chuck(example, chuck, Work(surface=BarSurface.BLACK))
    cut = cut_of(shop, mild_steel, speed=300.0, diameter=6.0)
    force = allowed(5000.0, lost_at(300.0, 125.0), friction=0.30)
    assert ceiling_of(cut, Reason.GRIP) == pytest.approx(mild_steel_feed(force, WIDTH))


# Cast iron bodies are rated slower for their own sake, not for their jaws.
def test_a_chuck_smaller_than_the_table_grips_with_the_square_of_its_size(
    example: Shop, mild_steel: Material, mild_steel_feed: FeedFor, ceiling_of: CeilingOf
) -> None:
    scale = (63.0 / 80.0) ** 2
    chuck = Chuck(size=63.0, marked_speed=4000.0)
    found = make_holding(chuck, BarSurface.BRIGHT, [mild_steel], allowances_for(example))
    assert not found.in_table
    # 6202 N: a light pull of 25 N.m would give 6250 N, more than the whole table.
    assert scale * 10_000.0 < PER_TORQUE * KEY_PULL
    assert found.static_grip == pytest.approx(scale * 10_000.0)
    cut = cut_of(with_chuck(example, chuck), mild_steel, speed=1000.0)
    force = allowed(scale * 10_000.0, lost_at(1000.0, 80.0, scale))
    assert ceiling_of(cut, Reason.GRIP) == pytest.approx(mild_steel_feed(force, WIDTH))


def test_a_chuck_larger_than_the_table_grips_like_its_largest(example: Shop) -> None:
    allowances = allowances_for(example)
    large, largest = (
        make_holding(Chuck(size=size), BarSurface.BRIGHT, [], allowances) for size in (500.0, 400.0)
    )
    assert (large.in_table, largest.in_table) == (False, True)
    assert large.static_grip == largest.static_grip == SHARE * TABLE[400.0][0]
    assert large.jaw_moment == largest.jaw_moment


def test_a_collet_has_no_limit_of_grip_at_any_speed(
    example: Shop, mild_steel: Material, ceiling_of: CeilingOf
) -> None:
    shop = with_chuck(example, Chuck(size=125.0, kind=ChuckKind.COLLET, marked_speed=4000.0))
    for speed in (100.0, 1000.0, 2500.0):
        assert ceiling_of(cut_of(shop, mild_steel, speed=speed), Reason.GRIP) == inf


def test_at_the_speed_where_nothing_is_left_of_the_grip_no_cut_is_possible(
    example: Shop, mild_steel: Material, ceiling_of: CeilingOf
) -> None:
    shop = with_chuck(example, Chuck(size=125.0, marked_speed=9000.0, key_torque=4.0))
    gone = 5500.0 * (PER_TORQUE * 4.0 / GRIP_SAFETY / (LOST * 24_000.0)) ** 0.5
    assert ceiling_of(cut_of(shop, mild_steel, speed=0.99 * gone), Reason.GRIP) > 0.0
    assert ceiling_of(cut_of(shop, mild_steel, speed=1.01 * gone), Reason.GRIP) == 0.0


# A drive that stalls before the work slips, the reserve on the grip taken off, cannot slip it.
def test_the_limit_is_waived_from_the_diameter_on_at_which_the_drive_stalls_first(
    shop_of: ShopOf, mild_steel: Material, ceiling_of: CeilingOf
) -> None:
    shop = shop_of("250 W brushed DC")
    speed = 600.0
    # Allowances: 1.5 of rated torque at the stall, no load at 1.2 of base speed. The plate says
    # what reaches the spindle, and the spindle's 1500 rev/min are the motor's at no load.
    stall_torque = 1.5 * 60.0 * 250.0 / (2.0 * pi * 2000.0) * 1.2 * 2000.0 / 1500.0
    slips = 0.10 * (assumed(10_000.0) / GRIP_SAFETY - lost_at(speed, 80.0))
    turning = 2000.0 * stall_torque / slips
    thinner = cut_of(shop, mild_steel, speed=speed, diameter=0.999 * turning)
    thicker = cut_of(shop, mild_steel, speed=speed, diameter=1.001 * turning)
    assert ceiling_of(thinner, Reason.GRIP) < inf
    assert ceiling_of(thicker, Reason.GRIP) == inf


def test_a_cut_over_the_hard_limit_of_the_grip_alone_is_too_bold_and_names_it(
    shop_of: ShopOf, mild_steel: Material, ceiling_of: CeilingOf
) -> None:
    shop = shop_of("2.2 kW geared")
    at_limit = ceiling_of(cut_of(shop, mild_steel, speed=503.0, diameter=25.0), Reason.GRIP)
    for feed, side in ((0.999 * at_limit, Side.INSIDE), (1.001 * at_limit, Side.TOO_BOLD)):
        cut = assess(
            shop,
            material=mild_steel,
            blade=shop.blades[0],
            diameter=25.0,
            speed=503.0,
            feed=feed,
        )
        assert cut.ceiling.reason is Reason.GRIP
        assert cut.side is side


# 160 mm: 31 kN and 4600 rev/min. The expected force, without its band, is held four times.
@pytest.mark.parametrize(("share", "verdict"), [(0.999, Verdict.TIGHT), (1.001, Verdict.INSIDE)])
def test_a_grip_under_four_times_the_expected_force_is_tight(
    shop_of: ShopOf, mild_steel: Material, share: float, verdict: Verdict
) -> None:
    expected = 1780.0 * WIDTH * 0.05**0.83 * 1.3
    lost = LOST * 31_000.0 * (1180.0 / 4600.0) ** 2
    grip = share * TIGHT * expected / 0.10 + lost
    strong = shop_of("2.2 kW geared", {'power = "2.2 kW"': 'power = "9 kW"'})
    chuck = replace(strong.lathe.chuck, key_torque=grip / PER_TORQUE)
    shop = with_chuck(strong, chuck)
    found, cut = recommended(shop, material=mild_steel, blade=shop.blades[0], diameter=25.0)
    assert cut.spindle_speed == 1180.0
    assert cut.feed == pytest.approx(0.05)
    assert found.verdict((0, 0, 0)) is verdict


def test_a_loose_grip_is_not_tight_where_the_drive_stalls_before_it_slips(
    shop_of: ShopOf, mild_steel: Material
) -> None:
    shop = shop_of("550 W belts")
    found, cut = recommended(shop, material=mild_steel, blade=shop.blades[0], diameter=25.0)
    slips = 0.10 * (SHARE * 24_000.0 - lost_at(cut.spindle_speed, 125.0))
    assert cut.force is not None
    assert slips < TIGHT * cut.force.nominal
    assert 2000.0 * cut.torque_stall / 25.0 < slips / GRIP_SAFETY
    assert found.verdict((0, 0, 0)) is Verdict.INSIDE
