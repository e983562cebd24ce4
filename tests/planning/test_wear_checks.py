"""When an edge is looked at, where no law of its life is known: common practice, no source."""

from collections.abc import Callable

import pytest

from chartgen.model.job import Bar, Job, Piece
from chartgen.model.shop import Shop
from chartgen.planning.run import plan_job
from chartgen.reference.allowances import load_allowances
from chartgen.reference.tables import load_material

MOST = load_allowances()["wear_pieces"].value


@pytest.mark.parametrize(("material", "pieces"), [("acetal", MOST), ("stainless-304", 2)])
def test_plastic_spares_an_edge_and_stainless_does_not(
    example: Shop, job_of: Callable[..., Job], material: str, pieces: float
) -> None:
    job = job_of(
        Bar(diameter=20.0, length=400.0),
        Piece(diameter=18.0, length=15.0),
        material=material,
        quantity=12,
    )
    checks = plan_job(example, job, load_material(material)).wear_checks
    assert checks
    assert {(check.pieces, check.short) for check in checks} == {(pieces, None)}
