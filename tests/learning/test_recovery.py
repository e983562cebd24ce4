"""Noisy readings of a lathe whose truth is known: the spans hold it as often as they state."""

import math
from collections.abc import Callable
from dataclasses import replace
from typing import Any, Protocol

import numpy as np
import pytest

from chartgen.learning.findings import SPREADS_OF_LEVEL, Finding, Verdict, learn
from chartgen.model.lathe import DrivePosition
from chartgen.model.measured import Assumption
from chartgen.model.readings import DroopReading, KnownCut, StallReading, WattsReading
from chartgen.model.shop import Shop


class TrueLathe(Protocol):
    """What the fixture of that name makes."""

    def watts(self, cut: KnownCut) -> WattsReading: ...
    def droop(self, cut: KnownCut, position: DrivePosition, no_load: float) -> DroopReading: ...
    def stall(self, cut: KnownCut, position: DrivePosition) -> StallReading: ...


ShopOf = Callable[..., Shop]
MakeTrue = Callable[..., TrueLathe]
CutOf = Callable[..., KnownCut]
SEEDS = 250
METALS = ("mild-steel", "stainless-304", "aluminium-6082")


def finding(findings: tuple[Finding, ...], assumption: Assumption) -> Finding:
    return next(one for one in findings if one.assumption is assumption)


def holds(one: Finding, truth: float, spreads: float) -> bool:
    half = math.log(one.high / one.value) / SPREADS_OF_LEVEL * spreads
    return abs(math.log(truth / one.value)) <= half


def drawn(
    chance: np.random.Generator, assumed: float, spread: float, span: tuple[float, float]
) -> float:
    """Return a truth as likely as the prior thinks it, within its bounds."""
    while True:
        truth = assumed * math.exp(chance.normal(0.0, spread))
        if span[0] <= truth <= span[1]:
            return truth


def with_truth(shop: Shop, *, reserve: float, **motor: float) -> Shop:
    lathe = replace(shop.lathe, motor=replace(shop.lathe.motor, **motor))  # type: ignore[arg-type]
    drive = replace(lathe.drive, efficiency=motor.get("drive", lathe.drive.efficiency))
    return replace(shop, lathe=replace(lathe, drive=drive), allowances={"confined_chip": reserve})


def chance_lathe(
    true_lathe: MakeTrue, shop: Shop, chance: np.random.Generator, reserve: float, **motor: float
) -> TrueLathe:
    """Return a lathe with drawn efficiency, marginal efficiency and errors of the force data."""
    true = with_truth(shop, reserve=reserve, **motor)
    assumed = 0.93 * 0.98
    efficiency = min(1.0, assumed * math.exp(chance.normal(0.0, math.log(1.05) / 2.0)))
    true = replace(
        true, lathe=replace(true.lathe, drive=replace(true.lathe.drive, efficiency=efficiency))
    )
    spans = {"single-phase": (0.65, 0.8), "inverter": (0.75, 0.9)}
    low, high = spans[shop.lathe.motor.kind.value]
    return true_lathe(
        shop=true,
        chance=chance,
        marginal=math.sqrt(low * high) * math.exp(chance.normal(0.0, math.log(high / low) / 4.0)),
        slip=math.exp(chance.normal(0.0, math.log(1.3) / 2.0)),
        materials={metal: math.exp(chance.normal(0.0, math.log(1.35) / 2.0)) for metal in METALS},
    )


def shares(trials: list[tuple[Finding, float]]) -> tuple[float, float, float]:
    """Return how often one spread, the stated level, and the written span hold the truth."""
    written = [
        abs(one.measured.value - truth) <= one.measured.plus_minus
        for one, truth in trials
        if one.measured is not None
    ]
    assert len(written) > 0.95 * len(trials)
    return (
        float(np.mean([holds(one, truth, 1.0) for one, truth in trials])),
        float(np.mean([holds(one, truth, SPREADS_OF_LEVEL) for one, truth in trials])),
        float(np.mean(written)),
    )


def test_the_force_reserve_is_found_from_watts(
    shop_of: ShopOf, cut_of: CutOf, true_lathe: MakeTrue
) -> None:
    """Truths as likely as assumed; four standard deviations of 250 trials are 5.5 % and 12 %."""
    shop, trials = shop_of("750 W inverter"), []
    for seed in range(SEEDS):
        chance = np.random.default_rng(seed)
        reserve = drawn(chance, 1.3, math.log(2.0) / 4.0, (1.0, 2.0))
        lathe = chance_lathe(true_lathe, shop, chance, reserve)
        readings = [lathe.watts(cut_of(m, diameter=d)) for m in METALS[::2] for d in (20.0, 30.0)]
        trials.append((finding(learn(shop, readings), Assumption.FORCE_RESERVE), reserve))
    one_spread, level, written = shares(trials)
    assert one_spread == pytest.approx(0.683, abs=0.12)
    assert level == pytest.approx(0.95, abs=0.055)
    assert written >= 0.93


@pytest.mark.parametrize("reserve", [1.1, 1.6])
def test_a_force_reserve_off_what_was_assumed_is_found_from_many_readings(
    shop_of: ShopOf, cut_of: CutOf, true_lathe: MakeTrue, reserve: float
) -> None:
    shop, trials = shop_of("750 W inverter"), []
    for seed in range(SEEDS):
        lathe = chance_lathe(true_lathe, shop, np.random.default_rng(1000 + seed), reserve)
        readings = [
            lathe.watts(cut_of(m, diameter=d)) for m in METALS for d in (18.0, 22.0, 26.0, 30.0)
        ]
        trials.append((finding(learn(shop, readings), Assumption.FORCE_RESERVE), reserve))
    one_spread, level, _ = shares(trials)
    # A truth one spread off the prior is pulled back by a third of that.
    assert one_spread == pytest.approx(0.683, abs=0.16)
    assert level == pytest.approx(0.95, abs=0.055)
    centre = float(np.mean([math.log(one.value / 1.3) for one, _ in trials]))
    assert 0.5 < centre / math.log(reserve / 1.3) < 1.0


def test_the_current_limit_is_found_from_stalls_and_watts(
    shop_of: ShopOf, cut_of: CutOf, true_lathe: MakeTrue
) -> None:
    # Overload 150 % bounds the limit from below in the model, breakdown 200 % from above.
    shop, trials = shop_of("750 W inverter", {'overload = "150 %"': 'breakdown = "300 %"'}), []
    low = shop.lathe.drive.positions[0]
    for seed in range(SEEDS):
        chance = np.random.default_rng(2000 + seed)
        limit = drawn(chance, 1.5, math.log(3.0) / 4.0, (1.25, 2.9))
        lathe = chance_lathe(true_lathe, shop, chance, 1.3, current_limit=limit)
        readings = [lathe.watts(cut_of(diameter=d)) for d in (20.0, 24.0, 28.0)]
        readings += [lathe.stall(cut_of(diameter=d, speed=150.0), low) for d in (40.0, 44.0, 50.0)]
        trials.append((finding(learn(shop, readings), Assumption.CURRENT_LIMIT), limit))
    one_spread, level, written = shares(trials)
    assert one_spread == pytest.approx(0.70, abs=0.12)
    assert level == pytest.approx(0.955, abs=0.045)
    assert written >= 0.93


def test_the_motors_efficiency_is_found_from_droop_and_watts(
    shop_of: ShopOf, cut_of: CutOf, true_lathe: MakeTrue
) -> None:
    shop = shop_of(
        "550 W belts",
        {'power = "550 W"\npower_is = "shaft"': 'power = "900 W"\npower_is = "input"'},
    )
    position = next(p for p in shop.lathe.drive.positions if p.fastest == 562.0)
    trials = []
    for seed in range(SEEDS):
        chance = np.random.default_rng(3000 + seed)
        efficiency = drawn(chance, 0.62, math.log(0.9 / 0.4) / 4.0, (0.4, 0.9))
        lathe = chance_lathe(true_lathe, shop, chance, 1.3, efficiency=efficiency)
        readings = [lathe.watts(cut_of(diameter=d)) for d in (20.0, 24.0, 28.0)]
        readings += [
            lathe.droop(cut_of(diameter=d, feed=f), position, 1500.0)
            for d, f in ((30.0, 0.06), (40.0, 0.05), (40.0, 0.07))
        ]
        trials.append((finding(learn(shop, readings), Assumption.MOTOR_EFFICIENCY), efficiency))
    one_spread, level, written = shares(trials)
    assert one_spread == pytest.approx(0.70, abs=0.12)
    assert level == pytest.approx(0.955, abs=0.045)
    assert written >= 0.93


def test_pulls_and_bends_are_found_with_the_scales_of_their_instruments(
    example: Shop, true_lathe: Callable[..., Any]
) -> None:
    pulls, bends = [], []
    for seed in range(500):
        chance = np.random.default_rng(4000 + seed)
        lathe = true_lathe(shop=example, chance=chance)
        scale, gauge = 1.0 + chance.normal(0.0, 0.02), 1.0 + chance.normal(0.0, 0.025)
        readings = [lathe.pull(41.0, 0.06, scale) for _ in range(5)]
        readings += [lathe.bend(p, 15000.0, 3e-4, gauge) for p in (98.0, 147.0, 196.0, 245.0)]
        found = learn(example, readings)
        key, post = (finding(found, a) for a in (Assumption.KEY_TORQUE, Assumption.TOOL_STIFFNESS))
        if key.verdict is Verdict.MEASURED:
            pulls.append(key.low <= 41.0 <= key.high)
        if post.verdict is Verdict.MEASURED:
            bends.append(post.low <= 15000.0 <= post.high)
    assert min(len(pulls), len(bends)) > 490
    # Chance of few readings and a shared scale add a little more than they should.
    assert float(np.mean(pulls)) == pytest.approx(0.96, abs=0.025)
    assert float(np.mean(bends)) == pytest.approx(0.96, abs=0.025)
