"""The assumed errors of readings: marked, sourced, each used, in an order that makes sense."""

from pathlib import Path

import pytest

import chartgen
from chartgen.model.motor import MotorKind
from chartgen.reference.reading_errors import load_reading_errors, read_reading_errors
from chartgen.reference.tables import load_bibliography
from chartgen.sources import Mark

ERRORS = load_reading_errors()


@pytest.mark.parametrize("name", ERRORS)
def test_an_error_says_why_and_whence(name: str) -> None:
    one = ERRORS[name]
    assert 0.0 <= one.least < one.most
    assert len(one.reason) > 15
    unsourced = one.mark in {Mark.MEMORY, Mark.PRACTICE}
    assert (one.source == "none") is unsourced
    assert unsourced or one.source in load_bibliography()


def test_every_error_is_used() -> None:
    folder = Path(chartgen.__file__).parent / "learning"
    code = "".join(path.read_text("utf-8") for path in folder.glob("*.py"))
    kinds = {f"marginal_{kind.value.replace('-', '_')}" for kind in MotorKind}
    assert kinds <= set(ERRORS)
    assert [name for name in ERRORS if name not in kinds and f'"{name}"' not in code] == []


def test_a_hand_is_less_even_than_a_gearbox_and_a_plate_better_than_none() -> None:
    """Common practice, no source."""
    assert ERRORS["feed_by_hand"].most > ERRORS["feed_by_power"].most
    assert ERRORS["direct_current_line_assumed"].most > ERRORS["direct_current_line"].most
    assert ERRORS["marginal_single_phase"].most < ERRORS["marginal_three_phase"].most


@pytest.mark.parametrize(
    ("text", "message"),
    [
        ("[a]\nvalue = 0.0\n", "a.reason: is missing"),
        ('[a]\nvalue = 0.0\nreason = "r"\nsource = "none"\nmark = "memory"\n', "does not rise"),
        ('[a]\nleast = 2.0\nmost = 1.0\nreason = "r"\nsource = "none"\nmark = "memory"\n', "rise"),
        ('[a]\nvalue = 1.0\nreason = "r"\nsource = "none"\nmark = "gossip"\n', "mark"),
    ],
)
def test_an_entry_that_cannot_be_used_is_refused(text: str, message: str) -> None:
    with pytest.raises(ValueError, match=message):
        read_reading_errors(text, file="e.toml")
