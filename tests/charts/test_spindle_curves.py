"""What the drive gives, over its speeds, and what the cuts ask: held to the motor's own plate."""

import math
from collections.abc import Callable
from dataclasses import replace

import numpy as np
import pytest

from chartgen.charts.spindle_curves import SpindleCurves, spindle_curves
from chartgen.inquiry import cut_request, explain_cell
from chartgen.limits.run import windows
from chartgen.limits.spindle import Duration
from chartgen.model.material import Material
from chartgen.model.shop import Shop
from chartgen.reference.tables import load_material, material_keys

ShopOf = Callable[..., Shop]
every_machine = pytest.mark.parametrize(
    "machine",
    ["250 W brushed DC", "550 W belts", "750 W inverter", "1.1 kW brushless", "2.2 kW geared"],
)


@pytest.fixture(scope="module")
def chart_of(shop_of: ShopOf) -> Callable[[str], SpindleCurves]:
    def of(machine: str) -> SpindleCurves:
        shop = shop_of(machine)
        steel = load_material("mild-steel")
        found = windows(shop, materials=[steel], diameters=(12.0, 25.0, 40.0))
        return spindle_curves(shop, found, steel)

    return of


@every_machine
def test_power_is_torque_times_speed_over_9549(
    chart_of: Callable[[str], SpindleCurves], machine: str
) -> None:
    """The handbook's identity P[kW] = T n / 9549 (Machinery's Handbook; exact: 60000 / 2 pi)."""
    for curve in chart_of(machine).curves:
        np.testing.assert_allclose(curve.power, curve.torque * curve.speed / 9.5493, rtol=1e-5)


@every_machine
def test_no_speed_gives_more_for_ever_than_for_one_cut_or_than_at_the_stall(
    chart_of: Callable[[str], SpindleCurves], machine: str
) -> None:
    chart = chart_of(machine)
    for position in chart.positions:
        of = {c.duration: c for c in chart.curves if c.position is position}
        assert set(of) == set(Duration)
        assert np.all(of[Duration.CONTINUOUS].torque <= of[Duration.ONE_CUT].torque + 1e-9)
        assert np.all(of[Duration.ONE_CUT].torque <= of[Duration.STALL].torque + 1e-9)


@every_machine
def test_a_position_is_drawn_over_its_own_speeds_and_no_further(
    chart_of: Callable[[str], SpindleCurves], machine: str
) -> None:
    chart = chart_of(machine)
    top = chart.shop.lathe.drive.fastest_spindle
    for curve in chart.curves:
        assert curve.speed[0] == pytest.approx(curve.position.slowest)
        assert curve.speed[-1] == pytest.approx(
            min(curve.position.fastest, max(top, curve.speed[0]))
        )
        assert np.all(np.diff(curve.speed) > 0.0)
        assert (curve.speed.size == 1) is curve.position.is_single_speed


def test_a_slow_belt_multiplies_torque_and_no_power(
    chart_of: Callable[[str], SpindleCurves],
) -> None:
    """Six belt steps of one motor: the same watts at each, less only what the belt keeps."""
    chart = chart_of("550 W belts")
    steady = [c for c in chart.curves if c.duration is Duration.CONTINUOUS]
    watts = [float(c.power[0]) for c in steady]
    assert watts == pytest.approx([watts[0]] * len(watts))
    assert 0.85 * 550.0 < watts[0] < 550.0
    assert float(steady[0].torque[0]) > 10.0 * float(steady[-1].torque[0])


def test_power_rises_to_base_speed_and_is_flat_above_it(
    chart_of: Callable[[str], SpindleCurves],
) -> None:
    """Constant torque below, constant power above base speed, as [MMP] has it."""
    chart = chart_of("750 W inverter")
    low = next(c for c in chart.curves if c.duration is Duration.CONTINUOUS)
    base = chart.shop.lathe.motor.base_speed / low.position.motor_ratio
    assert base in low.speed
    over = low.speed >= base
    at_base = float(low.power[low.speed == base][0])
    # Flat until the breakdown torque takes over: 0.75 b / x² crosses 1 / x at x = 0.75 b.
    flat = over & (low.speed < 1.4 * base)
    np.testing.assert_allclose(low.power[flat], at_base)
    assert np.all(np.diff(low.power[low.speed <= base]) > 0.0)


def test_a_demand_is_the_torque_of_the_cut_the_chart_recommends(
    shop_of: ShopOf, mild_steel: Material
) -> None:
    shop = shop_of("750 W inverter")
    found = windows(shop, materials=[mild_steel], diameters=(25.0,))
    demand = spindle_curves(shop, found, mild_steel).demands[0]
    request = cut_request(shop, material="mild-steel", tool=demand.blade.name, diameter="25 mm")
    cut = explain_cell(shop, request).cut
    assert cut.force is not None
    assert demand.speed == cut.spindle_speed
    assert demand.torque == pytest.approx(cut.force.nominal * 25.0 / 2000.0)
    assert demand.torque_high == pytest.approx(cut.force.high * 25.0 / 2000.0)
    assert demand.power == pytest.approx(2.0 * math.pi * demand.torque * demand.speed / 60.0)


def test_no_cut_asks_more_than_one_cut_torque(
    chart_of: Callable[[str], SpindleCurves],
) -> None:
    chart = chart_of("250 W brushed DC")
    (one_cut,) = (c for c in chart.curves if c.duration is Duration.ONE_CUT)
    assert chart.demands
    for demand in chart.demands:
        given = float(np.interp(demand.speed, one_cut.speed, one_cut.torque))
        assert demand.torque_high <= given * 1.001


def test_owners_readings_stand_for_every_duration(shop_of: ShopOf, mild_steel: Material) -> None:
    shop = shop_of("measured")
    found = windows(shop, materials=[mild_steel], diameters=(25.0,))
    curves = spindle_curves(shop, found, mild_steel).curves
    assert [curve.duration for curve in curves] == [None] * len(shop.lathe.drive.positions)
    for curve in curves:
        for reading in curve.position.readings:
            if reading.speed in curve.speed:
                assert reading.torque == float(curve.torque[curve.speed == reading.speed][0])


def test_a_material_without_force_data_asks_nothing_that_is_known(shop_of: ShopOf) -> None:
    shop = shop_of("750 W inverter")
    plastic = next(m for m in map(load_material, material_keys()) if m.force is None)
    found = windows(shop, materials=[plastic], diameters=(25.0,))
    assert spindle_curves(shop, found, plastic).demands == ()


def test_some_positions_alone(shop_of: ShopOf, mild_steel: Material) -> None:
    shop = shop_of("750 W inverter")
    found = windows(shop, materials=[mild_steel], diameters=(25.0,))
    high = shop.lathe.drive.positions[1]
    chart = spindle_curves(shop, found, mild_steel, [high])
    assert {curve.position for curve in chart.curves} == {high}
    held = replace(shop.lathe.drive, fastest_spindle=2000.0)
    slower = replace(shop, lathe=replace(shop.lathe, drive=held))
    chart = spindle_curves(slower, found, mild_steel, [high])
    assert float(chart.curves[0].speed[-1]) == pytest.approx(2000.0)
