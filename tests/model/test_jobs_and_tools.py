"""What a job and the tools for it refuse to be, with the whole message."""

from collections.abc import Callable
from dataclasses import replace
from typing import Any

import pytest

from chartgen.model.blade import ToolMaterial
from chartgen.model.blade_letters import blade_called, letter_of
from chartgen.model.job import Bar, Coolant, Groove, Holding, Job, Piece, ToolChoice
from chartgen.model.shop import Shop
from chartgen.model.tooling import BarMaterial, BoringBar, Drills, Tools, TurningTool

PIECE = Piece(diameter=28.0, length=20.0)
JOB = Job(
    name="peg",
    revision="",
    date="",
    material="mild-steel",
    quantity=1,
    bar=Bar(diameter=30.0, length=120.0),
    piece=PIECE,
    holding=Holding(),
    coolant=Coolant.DRY,
    choice=ToolChoice(),
)
BORING = BoringBar(
    name="bar",
    tool_material=ToolMaterial.CARBIDE,
    shank=BarMaterial.STEEL,
    diameter=8.0,
    reach=35.0,
    smallest_bore=10.0,
    nose_radius=0.2,
)
TURNING = TurningTool(name="knife", tool_material=ToolMaterial.HSS, nose_radius=0.2)


def refusal(make: Callable[[], object]) -> str:
    with pytest.raises(ValueError, match=r".") as caught:
        make()
    return str(caught.value)


@pytest.mark.parametrize(
    ("change", "message"),
    [
        (
            {"bore": 28.0},
            "the bore (28 mm) is not smaller than the piece (28 mm): nothing would be left",
        ),
        ({"chamfer": 10.0}, "a chamfer of 10 mm leaves nothing of an edge of the piece"),
        (
            {"chamfer": 2.0, "bore": 24.0},
            "a chamfer of 2 mm leaves nothing of an edge of the piece",
        ),
        (
            {"groove": Groove(width=3.0, depth=14.0, from_face=5.0)},
            "a groove 14 mm deep cuts through to the bore or the centre",
        ),
        (
            {"groove": Groove(width=3.0, depth=1.0, from_face=17.0)},
            "the groove does not lie inside the length of the piece",
        ),
    ],
)
def test_a_piece_that_cannot_be_is_refused(change: dict[str, Any], message: str) -> None:
    assert refusal(lambda: replace(PIECE, **change)) == message


@pytest.mark.parametrize(
    ("change", "message"),
    [
        ({"quantity": 0}, "a quantity of 0 makes nothing"),
        (
            {"piece": replace(PIECE, diameter=30.5)},
            "the piece (30.5 mm) is thicker than the bar (30 mm)",
        ),
        (
            {"piece": replace(PIECE, length=120.0)},
            "the piece (120 mm) is not shorter than the bar (120 mm)",
        ),
    ],
)
def test_a_job_that_cannot_be_is_refused(change: dict[str, Any], message: str) -> None:
    assert refusal(lambda: replace(JOB, **change)) == message


def test_a_piece_as_thick_as_its_bar_is_taken() -> None:
    assert replace(JOB, piece=replace(PIECE, diameter=30.0)).piece.diameter == JOB.bar.diameter


def test_a_boring_bar_that_could_not_enter_is_refused() -> None:
    assert refusal(lambda: replace(BORING, smallest_bore=8.0)) == (
        "smallest_bore (8 mm) is not larger than the bar's own diameter (8 mm): it could not enter"
    )


@pytest.mark.parametrize("diameters", [(), (3.0, 2.0), (2.0, 2.0)])
def test_drills_rise_each_once(diameters: tuple[float, ...]) -> None:
    assert refusal(lambda: Drills(diameters=diameters)) == "the diameters must rise, each once"


def test_two_tools_of_one_name_are_refused() -> None:
    bar = replace(BORING, name=TURNING.name)
    assert (
        refusal(lambda: Tools(turning=(TURNING,), boring=(bar,))) == "two tools have the same name"
    )


def test_a_blade_is_called_by_its_name_or_its_letter(example: Shop) -> None:
    for blade in example.blades:
        letter = letter_of(example.blades, blade.name)
        assert blade_called(example.blades, blade.name) == blade
        assert blade_called(example.blades, letter) == blade
    assert blade_called(example.blades, "Z") is None
    first, second, *rest = example.blades
    confusing = (replace(first, name="B"), second, *rest)
    assert blade_called(confusing, "B") == confusing[0]
