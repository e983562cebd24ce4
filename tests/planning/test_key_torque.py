"""How hard the key is pulled: as the heaviest cut needs, but nobody is told to leave it loose."""

from collections.abc import Callable
from dataclasses import replace

import pytest

from chartgen.model.job import Bar, Job, Piece
from chartgen.model.material import Material
from chartgen.model.shop import Shop
from chartgen.planning.run import plan_job
from chartgen.reference.allowances import load_allowances
from chartgen.reference.tables import load_material

BAR = Bar(diameter=20.0, length=200.0)
PIECE = Piece(diameter=18.0, length=15.0)
LIGHT = load_allowances()["key_pull"].value
PER_TORQUE = 250.0
"""Grip [N] for each N·m on the key, as the data file has it."""


def with_pull(shop: Shop, pull: float | None) -> Shop:
    chuck = replace(shop.lathe.chuck, key_torque=pull)
    return replace(shop, lathe=replace(shop.lathe, chuck=chuck))


# Common practice, no source: a chuck is pulled up for the light cut too.
@pytest.mark.parametrize("pull", [None, 20.0, 60.0])
def test_a_light_cut_still_wants_a_light_pull_but_no_more_than_the_owner_pulls(
    example: Shop, job_of: Callable[..., Job], mild_steel: Material, pull: float | None
) -> None:
    plan = plan_job(with_pull(example, pull), job_of(BAR, PIECE), mild_steel)
    needed = plan.set_up.grip_needed / PER_TORQUE
    least = LIGHT if pull is None else min(LIGHT, pull)
    assert plan.set_up.key_torque == pytest.approx(max(needed, least))


def test_without_force_data_no_pull_is_told(example: Shop, job_of: Callable[..., Job]) -> None:
    plan = plan_job(example, job_of(BAR, PIECE, material="acetal"), load_material("acetal"))
    assert plan.set_up.key_torque == 0.0
