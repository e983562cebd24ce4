"""Help in words of the trade, and the progress bar."""

import re
import sys
from collections.abc import Callable, Iterator
from typing import Any

import pytest

from chartgen.cli import cards as cards_command

COMMANDS = (
    *(
        "make",
        "compare",
        "table",
        "try",
        "explain",
        "check",
        "example",
        "materials",
        "layouts",
        "sources",
        "stale",
        "learn",
        "job",
        "class",
        "mark",
    ),
)
Inside = Callable[..., tuple[int, str, str]]


@pytest.mark.parametrize("command", COMMANDS)
def test_help_says_what_a_command_does_in_words_of_the_trade(inside: Inside, command: str) -> None:
    code, out, _ = inside(command, "--help")
    assert code == 0
    assert re.match(rf"Usage: .*chartgen {command} ", out)
    jargon = (
        r"\b(stdout|stderr|UTF-8|pydantic|dataclass|pipeline|render|schema|API|boolean|string)\b"
    )
    # The name of an open standard, told to the few who write layouts with an editor that knows it.
    told = re.sub(r"--schema\b|JSON Schema", "", out)
    assert not re.search(jargon, told, re.IGNORECASE)
    options = re.findall(r"^  (?:-h, )?(--[a-z]+).*?  +(.+)$", out, re.MULTILINE)
    assert options[-1][0] == "--help"
    named = set(re.findall(r"--[a-z]+", out))
    assert {option for option, _ in options} >= named - {"--out"}
    assert all(len(text) > 5 for _, text in options)


def test_help_lists_every_command(inside: Inside) -> None:
    out = inside("--help")[1]
    assert re.findall(r"^  ([a-z]+)  ", out.partition("Commands:")[2], re.MULTILINE) == sorted(
        COMMANDS
    )
    assert inside("-h")[1] == out


@pytest.fixture
def clock(monkeypatch: pytest.MonkeyPatch) -> Callable[[float], None]:
    """Return a function that makes every look at the clock so many seconds later."""

    def ticking(step: float) -> None:
        times: Iterator[float] = iter(step * n for n in range(1000))
        monkeypatch.setattr(cards_command, "perf_counter", lambda: next(times))

    return ticking


@pytest.mark.parametrize("count", [0, 1, 2, 7])
@pytest.mark.parametrize("step", [0.0, 0.4, 0.6, 5.0])
def test_progress_yields_every_card_once_with_a_bar_from_a_second_ahead(
    clock: Callable[[float], None],
    monkeypatch: pytest.MonkeyPatch,
    capsys: pytest.CaptureFixture[str],
    count: int,
    step: float,
) -> None:
    clock(step)
    monkeypatch.setattr(sys.stderr, "isatty", lambda: True)
    cards: list[Any] = list(range(count))
    assert list(cards_command._with_progress(cards)) == cards  # noqa: SLF001 - has no other door
    said = capsys.readouterr()
    assert said.out == ""
    assert ("cards" in said.err) == (step * (count - 1) >= 1.0)


def test_progress_shows_no_bar_where_nobody_looks(
    clock: Callable[[float], None], capsys: pytest.CaptureFixture[str]
) -> None:
    clock(5.0)
    cards: list[Any] = [1, 2, 3]
    assert list(cards_command._with_progress(cards)) == cards  # noqa: SLF001 - has no other door
    assert capsys.readouterr() == ("", "")
