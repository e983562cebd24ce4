"""A file of answers: what it says, and every fault at its line with its mend."""

from dataclasses import dataclass

import pytest
from hypothesis import given
from hypothesis import strategies as st

from chartgen.description.answer_file import GivenAnswers, read_answers
from chartgen.errors import DescriptionError, Fault


@dataclass(frozen=True)
class Asked:
    number: int
    name: str
    exercises: tuple[str, ...] = ("a", "b")


PAPERS = (Asked(1, "Ann Ash"), Asked(2, "Zoë Birch"), Asked(7, ""))


def read(text: str | bytes) -> tuple[GivenAnswers, ...]:
    data = text.encode() if isinstance(text, str) else text
    return read_answers(data, file="answers.csv", papers=PAPERS)


def faults(text: str | bytes) -> list[str]:
    with pytest.raises(DescriptionError) as caught:
        read(text)
    return str(caught.value).splitlines()


@pytest.mark.parametrize(
    "text",
    [
        'number,name,q1,q2\n1,Ann Ash,"3,5 mm",B\n7,,,\n',
        "number;name;q1;q2\r\n1;ann ash;3,5 mm;B\r\n7;;;\r\n",
        "Number\tQ1\tQ2\n1\t3,5 mm\tB\n7\t\t\n",
        "\ufeffq2;q1;number\nB;3,5 mm;1\n;;7\n",
    ],
)
def test_answers_are_kept_as_they_were_typed(text: str) -> None:
    first, last = read(text)
    assert (first.number, first.name, first.answers) == (1, "Ann Ash", ("3,5 mm", "B"))
    assert (last.number, last.name, last.answers) == (7, "", ("", ""))
    assert (first.line, last.line) == (2, 3)


def test_a_formula_is_text_like_any_other_answer() -> None:
    assert read("number,q1,q2\n1,=1+1,-5\n")[0].answers == ("=1+1", "-5")


ONE_FAULT = [
    ("", "answers.csv: is empty. Begin it with the line number,name,q1,...,q2."),
    ("number,name,q1,q2\n", "answers.csv: holds no answers. Fill in a line each."),
    (
        "number,name,q1\n1,Ann Ash,3\n",
        (
            "answers.csv:1: there is no column 'q2'; found 'number', 'name', 'q1'. Begin with a "
            "line "
            "such as number,name,q1,...,q2."
        ),
    ),
    (
        "number,name,q1,q2,q3\n1,Ann Ash,3,4,5\n",
        (
            "answers.csv:1: column 5 of 5 is none of this key's. Keep the columns "
            "number,name,q1,...,q2."
        ),
    ),
    (
        "number,name,q1,q2\n1,Ann Ash,3,5,B\n",
        (
            "answers.csv:2: the line has 5 cells under 4 headings. Put a cell that has a comma in "
            "it, such as a decimal comma, in quotes, or save the table with semicolons."
        ),
    ),
    (
        "number,name,q1,q2\n1,Ann Ash,3\n",
        (
            "answers.csv:2: the line has 3 cells under 4 headings. Add the empty cells that are "
            "missing, or the heading's columns are too many."
        ),
    ),
    (
        "number,name,q1,q2\n3,Cy,3,B\n",
        (
            "answers.csv:2: number: there is no student 3 in this key, which has 1 to 7. Correct "
            "the "
            "number, or take the key of that student."
        ),
    ),
    (
        "number,name,q1,q2\n1,Cy,3,B\n",
        (
            "answers.csv:2: name: 'Cy' is not the name of student 1, who is 'Ann Ash'. Correct "
            "number or name, so that both are of one student."
        ),
    ),
    (
        "number,name,q1,q2\none,Cy,3,B\n",
        (
            "answers.csv:2: number: 'one' is no number of a student. Write the number that "
            "stands on "
            "the sheet."
        ),
    ),
    (
        "number,name,q1,q2\n1,,3,B\n2,,3,B\n1,,4,B\n",
        "answers.csv:4: number: 1 stands on line 2 too. Delete one of the two lines.",
    ),
    (
        f"number,name,q1,q2\n1,,{'9' * 61},B\n",
        (
            "answers.csv:2: q1: has 61 letters, too many for an answer. Type the number or the "
            "letter alone."
        ),
    ),
    (
        "number,name,q1,q2\n1,,3\u0007,B\n",
        (
            "answers.csv:2: q1: has the sign U+0007, which is no part of an answer. Type the "
            "answer "
            "again."
        ),
    ),
    (
        "number|name|q1|q2\n1||3|B\n",
        (
            "answers.csv:1: the first line, 'number|name|q1|q2', has no heading that is known; "
            "it has "
            "bars in it. Part the cells by semicolons or commas, as in number,name,q1,...,q2."
        ),
    ),
]


@pytest.mark.parametrize(("text", "message"), ONE_FAULT)
def test_a_fault_is_told_with_its_line_and_its_mend(text: str, message: str) -> None:
    assert faults(text) == [message]


def test_another_encoding_is_refused_by_its_byte() -> None:
    (said,) = faults("number,name,q1,q2\n2,Zoë Birch,3,B\n".encode("latin-1"))
    assert said.startswith("answers.csv:2: is not UTF-8 text: byte 23 of the file, 0xEB,")


@given(st.text(max_size=60))
def test_whatever_was_typed_is_kept_or_refused_in_words(text: str) -> None:
    told: tuple[Fault, ...] = ()
    given_answers: tuple[GivenAnswers, ...] = ()
    try:
        given_answers = read(f"number;q1;q2\n1;{text};B\n".encode(errors="replace"))
    except DescriptionError as error:
        told = error.faults
    assert bool(told) != bool(given_answers)
    assert all(fault.problem and fault.mend for fault in told)
