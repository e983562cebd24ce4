"""How many pieces a bar gives, held against cutting it up piece by piece."""

import math
from collections.abc import Callable

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from chartgen.model.job import Bar, Holding, Job, Piece
from chartgen.model.shop import Shop
from chartgen.planning.plan import JobPlan
from chartgen.planning.run import plan_job
from chartgen.reference.tables import load_material

JobOf = Callable[..., Job]
SLIP = 1.0 + 1e-9
FEW = settings(max_examples=40, deadline=None, derandomize=True)


@st.composite
def some_bars(draw: st.DrawFn) -> dict[str, object]:
    """Draw a bar, thin enough for the spindle or not, and what is made of it."""
    bar, length = float(draw(st.integers(8, 60))), float(draw(st.integers(3, 60)))
    return {
        "bar": Bar(diameter=bar, length=length + draw(st.integers(5, 700))),
        "piece": Piece(diameter=bar, length=length),
        "quantity": draw(st.integers(1, 30)),
        "holding": Holding(grip_length=draw(st.sampled_from([None, 15.0, 40.0]))),
    }


def planned(shop: Shop, job: Job) -> JobPlan:
    """Return the plan of a job."""
    return plan_job(shop, job, load_material(job.material))


def sawn_and_parted(plan: JobPlan, *, length: float) -> tuple[int, list[float]]:
    """Return pieces and blanks of one bar, by cutting it one piece after the other."""
    up, use = plan.set_up, plan.bar_use
    held = up.grip_length + up.jaw_distance
    pieces, blanks, rest = 0, [], length
    if up.goes_through_spindle is not False:
        while rest - use.pitch >= held - 1e-9:
            rest, pieces = rest - use.pitch, pieces + 1
        return pieces, [length]
    while rest >= held + use.pitch - 1e-9:
        fits = int((rest - held) / use.pitch + 1e-9)
        holds = min(fits, use.pieces_a_blank)
        blanks.append(held + holds * use.pitch)
        pieces += holds
        rest -= blanks[-1] + plan.allowances.saw_kerf
    return pieces, blanks


@given(parts=some_bars())
@FEW
def test_pieces_of_a_bar_as_if_it_were_cut(
    parts: dict[str, object], example: Shop, job_of: JobOf
) -> None:
    plan = planned(example, job_of(**parts))
    use, job = plan.bar_use, plan.job
    pieces, blanks = sawn_and_parted(plan, length=job.bar.length)
    assert use.pieces == pieces
    assert sum(blanks) + (len(blanks) - 1) * plan.allowances.saw_kerf <= job.bar.length * SLIP
    if pieces == 0:
        assert use.bars == 0
        assert plan.steps[0].refused is not None
        return
    assert plan.steps[0].refused is None
    assert use.bars == math.ceil(job.quantity / pieces)
    assert (use.bars - 1) * pieces + use.pieces_of_last == job.quantity
    assert 1 <= use.pieces_of_last <= pieces
    assert use.blank_length <= job.bar.length * SLIP
    if plan.set_up.goes_through_spindle is False:
        assert plan.set_up.overhang + plan.set_up.grip_length == pytest.approx(use.blank_length)
        assert use.blanks >= math.ceil(job.quantity / use.pieces_a_blank)


@given(parts=some_bars())
@settings(FEW, max_examples=15)
def test_more_pieces_never_take_fewer_bars(
    parts: dict[str, object], example: Shop, job_of: JobOf
) -> None:
    needed = [
        planned(example, job_of(**parts | {"quantity": count})).bar_use.bars
        for count in (1, 2, 3, 5, 8, 30)
    ]
    assert needed == sorted(needed)
