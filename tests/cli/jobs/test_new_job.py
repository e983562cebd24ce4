"""`chartgen job FILE --new`: asks, asks again, writes the whole file or none."""

import io
import sys
from collections.abc import Callable
from pathlib import Path

import pytest

from chartgen.description.job_file import read_job
from chartgen.description.new_job import QUESTIONS
from chartgen.pipeline import known_names

Inside = Callable[..., tuple[int, str, str]]
ANSWERS = {
    "job.name": "Invented stop",
    "bar.diameter": "25 mm",
    "bar.length": "200 mm",
    "piece.diameter": "24 mm",
    "piece.length": "18 mm",
}


class Keyboard(io.StringIO):
    """What somebody types, and what he does instead of the line after it."""

    def __init__(self, lines: list[str], then: BaseException | None = None) -> None:
        super().__init__("".join(f"{line}\n" for line in lines))
        self._then = then

    def readline(self, size: int | None = -1, /) -> str:
        line = super().readline(-1 if size is None else size)
        if not line and self._then is not None:
            raise self._then
        return line


@pytest.fixture
def answered(
    inside: Inside, monkeypatch: pytest.MonkeyPatch
) -> Callable[..., tuple[int, str, str]]:
    """Return a function: lines typed -> what `chartgen job mine.toml --new` says."""

    def run(lines: list[str], then: BaseException | None = None) -> tuple[int, str, str]:
        monkeypatch.setattr(sys, "stdin", Keyboard(lines, then))
        return inside("job", "mine.toml", "--new")

    return run


def lines_for(answers: dict[str, str]) -> list[str]:
    """Return the answers in the order of the questions that are put, blank where none is given."""
    asked, lines = dict[str, str](), []
    for question in QUESTIONS:
        if not question.skip(asked):
            asked[question.key] = answers.get(question.key, "") or question.default
            lines.append(answers.get(question.key, ""))
    return lines


def test_the_answers_become_a_job_file_that_is_read_and_planned(
    inside: Inside, answered: Callable[..., tuple[int, str, str]], tmp_path: Path
) -> None:
    code, out, err = answered(lines_for(ANSWERS))
    assert (code, err) == (0, "")
    assert out.endswith(
        "mine.toml: written; `chartgen job mine.toml --shop SHOP` prints its card.\n"
    )
    assert [path.name for path in tmp_path.iterdir()] == ["mine.toml"]
    job = read_job((tmp_path / "mine.toml").read_bytes(), file="mine.toml", known=known_names())
    assert (job.name, job.quantity) == ("Invented stop", 1)
    assert (job.bar.diameter, job.bar.length) == (25.0, 200.0)
    assert (job.piece.diameter, job.piece.length, job.piece.bore) == (24.0, 18.0, 0.0)
    assert inside("job", "mine.toml")[0] == 0


def test_questions_that_do_not_apply_are_not_put(
    answered: Callable[..., tuple[int, str, str]],
) -> None:
    plain = answered(lines_for(ANSWERS))[1]
    skipped = [q for q in QUESTIONS if q.key in {"piece.groove.depth", "tools.boring_bar"}]
    assert skipped
    assert all(question.words not in plain for question in skipped)


def test_a_wrong_answer_is_told_with_its_reason_and_asked_again(
    answered: Callable[..., tuple[int, str, str]], tmp_path: Path
) -> None:
    lines = lines_for(ANSWERS)
    place = lines.index("24 mm")
    code, out, err = answered([*lines[:place], "30 mm", "thick", *lines[place:]])
    assert code == 0
    question = next(q for q in QUESTIONS if q.key == "piece.diameter")
    assert out.count(question.words) == 3
    assert err.count(question.why) == 2
    assert b'diameter = "24 mm"' in (tmp_path / "mine.toml").read_bytes()


@pytest.mark.parametrize("after", [0, 1, len(lines_for(ANSWERS)) - 1])
@pytest.mark.parametrize("then", [None, KeyboardInterrupt()], ids=["end of input", "Ctrl-C"])
def test_whatever_ends_the_asking_leaves_nothing(
    answered: Callable[..., tuple[int, str, str]],
    tmp_path: Path,
    after: int,
    then: BaseException | None,
) -> None:
    code, _, err = answered(lines_for(ANSWERS)[:after], then)
    assert code == 2
    assert err.endswith("stopped\n")
    assert list(tmp_path.iterdir()) == []


def test_a_file_that_is_there_is_left_as_it_is(
    answered: Callable[..., tuple[int, str, str]], tmp_path: Path
) -> None:
    (tmp_path / "mine.toml").write_bytes(b"his own\n")
    code, out, err = answered(lines_for(ANSWERS))
    assert (code, out) == (2, "")
    assert err == "mine.toml: is there already and is left as it is; name another file.\n"
    assert (tmp_path / "mine.toml").read_bytes() == b"his own\n"


def test_a_place_where_nothing_can_be_written_is_told(
    inside: Inside, monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> None:
    (tmp_path / "notes").write_text("a file, no folder\n", "utf-8")
    monkeypatch.setattr(sys, "stdin", Keyboard(lines_for(ANSWERS)))
    code, _, err = inside("job", "notes/mine.toml", "--new")
    assert code == 2
    assert "notes/mine.toml: cannot be written: " in err
    assert "choose another place for it" in err
