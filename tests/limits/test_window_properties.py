"""What better parts may never spoil, tried on many lathes, materials, blades and diameters."""

from collections.abc import Callable
from dataclasses import replace
from math import inf

from hypothesis import given, settings
from hypothesis import strategies as st

from chartgen.limits.cut import Cut, assess
from chartgen.limits.force_capacities.grip import slip_force
from chartgen.limits.force_capacities.stall import stall
from chartgen.limits.reasons import Reason
from chartgen.limits.run import windows
from chartgen.model.blade import Blade
from chartgen.model.lathe import BarSurface, JawFace, Work
from chartgen.model.material import Material
from chartgen.model.shop import Shop
from chartgen.reference.tables import load_material, material_keys

ShopOf = Callable[..., Shop]
Held = Callable[[Shop], Shop]
LATHES = (
    "250 W brushed DC",
    "550 W belts",
    "750 W inverter",
    "1.1 kW brushless",
    "2.2 kW geared",
)
lathes = st.sampled_from(LATHES)
materials = st.sampled_from(material_keys()).map(load_material)
metals = st.sampled_from(
    [key for key in material_keys() if load_material(key).force is not None]
).map(load_material)
blades = st.integers(0, 3)
diameters = st.floats(4.0, 70.0)
speeds = st.floats(60.0, 2000.0)
moderate = settings(max_examples=80, deadline=None, derandomize=True)
SLIP = 1e-9


def ceilings(cut: Cut) -> dict[Reason, float]:
    return {limit.reason: limit.feed for limit in cut.ceilings}


def same_cut(shop: Shop, material: Material, blade: Blade, diameter: float, speed: float) -> Cut:
    return assess(shop, material=material, blade=blade, diameter=diameter, speed=speed, feed=0.05)


def stiffer(blade: Blade, *, thicker: float, higher: float, shorter: float) -> Blade:
    thickness = min(blade.insert_width, blade.thickness * thicker)
    return replace(
        blade,
        thickness=thickness,
        height=blade.height * higher,
        projection=blade.projection / shorter,
    )


@moderate
@given(
    lathe=lathes,
    material=metals,
    blade=blades,
    diameter=diameters,
    thicker=st.floats(1.0, 1.25),
    higher=st.floats(1.0, 1.6),
    shorter=st.floats(1.0, 2.0),
)
def test_a_stiffer_blade_that_still_reaches_never_narrows_a_window(
    shop_of: ShopOf,
    lathe: str,
    material: Material,
    blade: int,
    diameter: float,
    thicker: float,
    higher: float,
    shorter: float,
) -> None:
    shop = shop_of(lathe)
    # Room enough for the shorter one too: being too short is another limit.
    first = replace(shop.blades[blade], projection=2.0 * (diameter / 2.0 + 1.0))
    second = stiffer(first, thicker=thicker, higher=higher, shorter=shorter)
    before, after = (
        ceilings(same_cut(shop, material, tool, diameter, 300.0)) for tool in (first, second)
    )
    for reason, feed in before.items():
        assert after[reason] >= feed * (1.0 - SLIP), reason
    weak, strong = (
        windows(shop, materials=[material], diameters=[diameter], blades=[tool])
        for tool in (first, second)
    )
    assert strong.has_window.item() or not weak.has_window.item()
    assert strong.floor.item() == weak.floor.item()


@moderate
@given(
    lathe=lathes,
    material=materials,
    blade=blades,
    diameter=diameters,
    speed=speeds,
    times=st.floats(1.0, 3.0),
    collet=st.booleans(),
)
def test_more_motor_power_lowers_no_ceiling_but_that_of_a_grip_it_no_longer_stalls_before(
    shop_of: ShopOf,
    in_a_collet: Held,
    lathe: str,
    material: Material,
    blade: int,
    diameter: float,
    speed: float,
    times: float,
    *,
    collet: bool,
) -> None:
    weak = in_a_collet(shop_of(lathe)) if collet else shop_of(lathe)
    motor = weak.lathe.motor
    strong = replace(
        weak,
        lathe=replace(weak.lathe, motor=replace(motor, plate_power=times * motor.plate_power)),
    )
    first, second = (
        same_cut(shop, material, shop.blades[blade], diameter, speed) for shop in (weak, strong)
    )
    before, after = ceilings(first), ceilings(second)
    for reason in before.keys() - {Reason.GRIP}:
        assert after[reason] >= before[reason] * (1.0 - SLIP), reason
    assert second.torque_available >= first.torque_available * (1.0 - SLIP)
    slips = slip_force(first.case, grip_safety=1.5)
    was_first = bool((stall(first.case) <= slips).all())
    is_first = bool((stall(second.case) <= slips).all())
    assert was_first or not is_first
    if was_first == is_first:
        assert after[Reason.GRIP] == before[Reason.GRIP]
        assert second.ceiling.feed >= first.ceiling.feed * (1.0 - SLIP)
    else:
        assert not collet
        assert before[Reason.GRIP] == inf
    if collet:
        assert second.ceiling.feed >= first.ceiling.feed * (1.0 - SLIP)


# The exception itself: a strong drive no longer stalls, and the grip that was enough is not.
def test_a_stronger_motor_may_turn_the_work_in_jaws_that_held_it_against_a_weak_one(
    shop_of: ShopOf, mild_steel: Material
) -> None:
    weak = shop_of("750 W inverter")
    strong = shop_of("750 W inverter", {'power = "750 W"': 'power = "1.5 kW"'})
    first, second = (
        ceilings(same_cut(shop, mild_steel, shop.blades[0], 50.0, 300.0)) for shop in (weak, strong)
    )
    assert first[Reason.GRIP] == inf
    assert second[Reason.GRIP] < min(first.values())


@moderate
@given(
    lathe=lathes,
    material=metals,
    blade=blades,
    diameter=diameters,
    speed=speeds,
    torque=st.floats(5.0, 60.0),
    times=st.floats(1.0, 3.0),
    surface=st.sampled_from(list(BarSurface)),
    jaws=st.sampled_from(list(JawFace)),
)
def test_a_tighter_grip_never_lowers_a_ceiling(
    shop_of: ShopOf,
    lathe: str,
    material: Material,
    blade: int,
    diameter: float,
    speed: float,
    torque: float,
    times: float,
    surface: BarSurface,
    jaws: JawFace,
) -> None:
    plain = shop_of(lathe)
    rougher = list(JawFace)[min(2, list(JawFace).index(jaws) + 1)]
    coarser = list(BarSurface)[min(2, list(BarSurface).index(surface) + 1)]

    def held(torque: float, jaws: JawFace, surface: BarSurface, safety: float) -> float:
        chuck = replace(plain.lathe.chuck, key_torque=torque, jaws=jaws)
        shop = replace(
            plain,
            lathe=replace(plain.lathe, chuck=chuck),
            work=Work(surface=surface),
            allowances={"grip_safety": safety},
        )
        return same_cut(shop, material, shop.blades[blade], diameter, speed).ceiling.feed

    least = held(torque, jaws, surface, 1.5) * (1.0 - SLIP)
    assert held(torque * times, jaws, surface, 1.5) >= least
    assert held(torque, rougher, surface, 1.5) >= least
    assert held(torque, jaws, coarser, 1.5) >= least
    assert held(torque, jaws, surface, 1.2) >= least


@moderate
@given(
    lathe=lathes,
    material=metals,
    blade=blades,
    diameter=diameters,
    bore_share=st.floats(0.0, 0.9),
    near_side=st.floats(1.0, 100.0),
    share=st.floats(0.1, 1.0),
)
def test_a_cut_closer_to_the_jaws_never_lowers_a_ceiling(
    shop_of: ShopOf,
    lathe: str,
    material: Material,
    blade: int,
    diameter: float,
    bore_share: float,
    near_side: float,
    share: float,
) -> None:
    plain = shop_of(lathe)

    def at(distance: float) -> dict[Reason, float]:
        shop = replace(plain, work=Work(jaw_distance=distance))
        cut = assess(
            shop,
            material=material,
            blade=shop.blades[blade],
            diameter=diameter,
            bore=bore_share * diameter,
            speed=300.0,
            feed=0.05,
        )
        return ceilings(cut)

    far, close = at(near_side), at(share * near_side)
    for reason, feed in far.items():
        assert close[reason] >= feed * (1.0 - SLIP), reason
