"""A job file from answers: what is asked, in which order, and the file that comes of it.

Only the pure part: nobody is asked anything here. An answer is checked by reading a job file
that says it, so that no answer passes which the file would be refused for.
"""

from typing import Any, Final

from chartgen.description.complaints import dotted, mend_of
from chartgen.description.example_job import example_job_value
from chartgen.description.job_file import JOB_FORM, job_of
from chartgen.description.job_questions import (
    NO_ANSWERS,
    QUESTIONS,
    SWITCHES,
    Answers,
    Question,
    given,
)
from chartgen.description.known import Known
from chartgen.description.problems import ComplaintError, Problems
from chartgen.description.toml_text import quoted

__all__ = ["QUESTIONS", "Answers", "Question", "fault_of", "new_job_text"]

_YES: Final = frozenset({"yes", "y", "true"})
_NO: Final = frozenset({"no", "n", "false", "none", "-"})
_NOTE_COLUMN: Final = 32
_WHOLE: Final = frozenset({"job.quantity"})
_HEADS: Final = {
    "bar": "the bar that is there",
    "piece": "the piece you want",
    "piece.groove": "one groove in its outside",
    "holding": "how it is held",
    "tools": "tools asked for by name; without one the program chooses",
}
_HEAD: Final = """\
# A JOB FILE, written from answers. Change whatever you like: key = "text", one on a line;
# lengths with their unit, as in "30 mm" or "1-1/4 in". A # before a key leaves it out."""
# What a key that is left out could say, where the example leaves it out too.
_EXAMPLES: Final = {
    "bar.run_out": "0.05 mm",
    "holding.grip_length": "30 mm",
    "tools.blade": "A",
    "tools.turning_tool": "0.4 carbide",
    "tools.boring_bar": "8 mm bar",
}
# Beside a first answer the file lacks the rest: these contradict nothing.
_STAND_INS: Final = {
    "job.name": "-",
    "bar.diameter": "500 mm",
    "bar.length": "6000 mm",
    "piece.diameter": "0.5 mm",
    "piece.length": "0.3 mm",
}
_GROOVE_STAND_INS: Final = {"piece.groove.depth": "0.02 mm", "piece.groove.from_face": "0 mm"}


def fault_of(question: Question, answer: str, *, known: Known, before: Answers = NO_ANSWERS) -> str:
    """Return what is wrong with an answer beside those `before` it, how to mend it, and why.

    Empty where the answer is fine.
    """
    answers = {**before, question.key: answer}
    if question.is_needed and not given(question.key, answers):
        return f"An answer is needed here. {question.why}"
    stand_ins = _STAND_INS | {"job.material": known.materials[0]}
    if given("piece.groove.width", answers):
        stand_ins |= _GROOVE_STAND_INS
    try:
        raw = _raw({**stand_ins, **answers})
    except ComplaintError as complaint:
        return f"{complaint.problem} {complaint.mend} {question.why}"
    problems = Problems()
    job_of(raw, known, problems)
    if not problems.found:
        return ""
    first = problems.found[0]
    problem = f"{first.problem[:1].upper()}{first.problem[1:]}"
    if first.path != question.path:
        problem = f"{dotted(first.path)}: {first.problem}"
    return f"{problem} {mend_of(first, JOB_FORM)} {question.why}"


def new_job_text(answers: Answers) -> str:
    """Return the job file that says the answers, with a note beside every key.

    Raises
    ------
    ComplaintError
        If an answer is no number or no yes or no; `fault_of` tells it beforehand.
    """
    lines = [_HEAD]
    table = ""
    for question in QUESTIONS:
        header, _, name = question.key.rpartition(".")
        words = "" if question.skip(answers) else given(question.key, answers)
        if header != table:
            table = header
            about = f"  # {_HEADS[header]}" if header in _HEADS else ""
            is_left_out = header == "piece.groove" and not words
            lines.append(f"\n{'# ' if is_left_out else ''}[{header}]{about}")
        value = _written(question.key, words) if words else _example(question)
        line = f"{'' if words else '# '}{name} = {value}"
        lines.append(f"{line:<{_NOTE_COLUMN - 2}}  # {question.note}")
    return "\n".join(lines) + "\n"


def _raw(answers: Answers) -> dict[str, Any]:
    """Return the tables of the file that says the answers."""
    tables: dict[str, Any] = {}
    for question in QUESTIONS:
        words = "" if question.skip(answers) else given(question.key, answers)
        if not words:
            continue
        *parents, name = question.key.split(".")
        table = tables
        for parent in parents:
            table = table.setdefault(parent, {})
        table[name] = _value(question.key, words)
    return tables


def _value(key: str, words: str) -> object:
    if key in _WHOLE:
        if not (words.isascii() and words.isdecimal() and len(words) < len("1" * 10)):
            raise ComplaintError(f"{words[:40]!r} is no whole number.", "Write it as in 4.")
        return int(words)
    if key in SWITCHES:
        if words.lower() not in _YES | _NO:
            raise ComplaintError(f"{words[:40]!r} is neither yes nor no.", "Answer yes or no.")
        return words.lower() in _YES
    return words


def _written(key: str, words: str) -> str:
    value = _value(key, words)
    if isinstance(value, bool):
        return str(value).lower()
    return str(value) if isinstance(value, int) else quoted(words)


def _example(question: Question) -> str:
    """Return a value to show for a key that is left out."""
    value = _EXAMPLES.get(question.key) or example_job_value(question.path)
    return quoted(str(value))
