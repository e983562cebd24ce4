"""A job file from answers: it reads back to the same job, and no bad answer passes."""

import tomllib
from collections.abc import Mapping

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from chartgen.description.job_file import read_job
from chartgen.description.job_tables import JobFile
from chartgen.description.new_job import QUESTIONS, Question, fault_of, new_job_text
from chartgen.description.tables import NOTHING, table_read_by
from chartgen.model.job import Bar, Coolant, Groove, Holding, Job, Piece, ToolChoice
from chartgen.model.lathe import BarSurface
from chartgen.pipeline import known_names

KNOWN = known_names()
BY_KEY = {question.key: question for question in QUESTIONS}
NEEDED = {
    "job.name": "Peg",
    "bar.diameter": "30 mm",
    "bar.length": "250 mm",
    "piece.diameter": "28 mm",
    "piece.length": "20 mm",
}


def fault(key: str, answer: str, before: Mapping[str, str] = NEEDED) -> str:
    return fault_of(BY_KEY[key], answer, known=KNOWN, before=before)


def job_from(answers: Mapping[str, str]) -> Job:
    return read_job(new_job_text(answers).encode(), file="new.toml", known=KNOWN)


# Sixteenths of a millimetre: exact in a float and in its decimals.
def lengths(least: int, most: int) -> st.SearchStrategy[float]:
    return st.integers(16 * least, 16 * most).map(lambda count: count / 16.0)


WORDS = (
    st.text(st.characters(exclude_categories=["C", "Z"]), min_size=1, max_size=40)
    .filter(str.isprintable)
    .filter(lambda text: text.lower() not in NOTHING)
)


@st.composite
def jobs(draw: st.DrawFn) -> Job:
    diameter, length = draw(lengths(10, 80)), draw(lengths(10, 90))
    bore = draw(st.one_of(st.just(0.0), lengths(1, 5)))
    groove = draw(
        st.one_of(
            st.none(),
            st.builds(Groove, width=lengths(1, 4), depth=lengths(1, 2), from_face=lengths(0, 5)),
        )
    )
    return Job(
        name=draw(WORDS),
        revision=draw(st.just("") | WORDS),
        date=draw(st.sampled_from(["", "2026-11-25", "in spring"])),
        material=draw(st.sampled_from(KNOWN.materials)),
        quantity=draw(st.integers(1, 10_000)),
        bar=Bar(
            diameter=diameter + draw(lengths(0, 10)),
            length=length + draw(lengths(60, 900)),
            surface=draw(st.sampled_from(BarSurface)),
            run_out=draw(st.none() | lengths(0, 2)),
            behind=draw(lengths(0, 50)),
        ),
        piece=Piece(
            diameter=diameter,
            length=length,
            bore=bore,
            chamfer=draw(lengths(0, 2)),
            groove=groove,
            tolerance=draw(st.just("") | WORDS),
        ),
        holding=Holding(
            stop=draw(st.booleans()),
            grip_length=draw(st.none() | lengths(2, 50)),
            live_centre=draw(st.booleans()),
        ),
        coolant=draw(st.sampled_from(Coolant)),
        choice=ToolChoice(
            blade=draw(st.none() | WORDS),
            turning_tool=draw(st.none() | WORDS),
            boring_bar=draw(st.none() | WORDS) if bore else None,
        ),
    )


def answers_for(job: Job) -> dict[str, str]:
    """Return what a person would type who wants this job."""

    def length(value: float | None) -> str:
        return "" if value is None else f"{value!r} mm"

    groove = job.piece.groove
    return {
        "job.name": job.name,
        # A blank answer takes the default, "none" takes nothing.
        "job.revision": job.revision or "none",
        "job.date": job.date,
        "job.material": job.material,
        "job.quantity": str(job.quantity),
        "job.coolant": job.coolant.value,
        "bar.diameter": length(job.bar.diameter),
        "bar.length": length(job.bar.length),
        "bar.surface": job.bar.surface.value,
        "bar.run_out": length(job.bar.run_out),
        "bar.behind": length(job.bar.behind),
        "piece.diameter": length(job.piece.diameter),
        "piece.length": length(job.piece.length),
        "piece.bore": length(job.piece.bore) if job.piece.bore else "none",
        "piece.chamfer": length(job.piece.chamfer),
        "piece.tolerance": job.piece.tolerance,
        "piece.groove.width": length(groove.width if groove else None),
        "piece.groove.depth": length(groove.depth if groove else None),
        "piece.groove.from_face": length(groove.from_face if groove else None),
        "holding.live_centre": "yes" if job.holding.live_centre else "no",
        "holding.stop": "yes" if job.holding.stop else "no",
        "holding.grip_length": length(job.holding.grip_length),
        "tools.blade": job.choice.blade or "",
        "tools.turning_tool": job.choice.turning_tool or "",
        "tools.boring_bar": job.choice.boring_bar or "",
    }


@given(jobs())
@settings(deadline=None, max_examples=150)
def test_a_file_from_answers_reads_back_to_the_job_they_meant(job: Job) -> None:
    assert job_from(answers_for(job)) == job


@given(jobs())
@settings(deadline=None, max_examples=60)
def test_no_answer_of_a_sound_job_is_refused_in_its_turn(job: Job) -> None:
    answers = answers_for(job)
    before: dict[str, str] = {}
    for question in QUESTIONS:
        if question.skip(before):
            continue
        answer = answers[question.key]
        assert fault_of(question, answer, known=KNOWN, before=before) == ""
        before[question.key] = answer


def test_every_key_of_a_job_file_is_asked_for_once_in_the_order_of_the_tables() -> None:
    keys = []
    for name, key in JobFile.keys.items():
        table = table_read_by(key.read)
        assert table is not None
        for inner, of_inner in table.keys.items():
            below = table_read_by(of_inner.read)
            keys += (
                [f"{name}.{inner}.{one}" for one in below.keys] if below else [f"{name}.{inner}"]
            )
    assert sorted(BY_KEY) == sorted(keys)
    assert len(QUESTIONS) == len(keys)
    tables = list(dict.fromkeys(question.key.rpartition(".")[0] for question in QUESTIONS))
    assert tables == ["job", "bar", "piece", "piece.groove", "holding", "tools"]


def test_who_answers_only_what_is_needed_gets_the_plainest_job() -> None:
    job = job_from(NEEDED)
    assert (job.material, job.quantity, job.revision) == ("mild-steel", 1, "A")
    assert job.piece == Piece(diameter=28.0, length=20.0)
    assert (job.holding, job.choice) == (Holding(), ToolChoice())


def test_what_is_left_out_is_shown_behind_a_mark_and_could_be_used() -> None:
    text = new_job_text(NEEDED)
    lines = text.splitlines()
    for key in ("run_out", "bore", "chamfer", "grip_length", "blade", "boring_bar"):
        assert any(line.startswith(f"# {key} = ") for line in lines)
    used = tomllib.loads("\n".join(line.removeprefix("# ") for line in lines[2:]))
    assert used["piece"]["groove"].keys() == {"width", "depth", "from_face"}
    for question in QUESTIONS:
        table = used
        for part in question.key.split("."):
            table = table[part]
        assert table not in {"", "..."}


def test_every_key_has_its_note_beside_it() -> None:
    lines = new_job_text(NEEDED).splitlines()
    for question in QUESTIONS:
        assert sum(line.endswith(f"  # {question.note}") for line in lines) >= 1


@pytest.mark.parametrize(
    ("key", "answer", "words"),
    [
        ("bar.diameter", "30", "'30' needs a unit. Write it as in '2 mm'."),
        ("bar.diameter", "30 kg", "'30 kg' is a mass"),
        ("bar.diameter", "", "An answer is needed here."),
        ("job.name", "  ", "An answer is needed here."),
        ("job.material", "mild-steal", "'mild-steal' is not known. Did you mean 'mild-steel'?"),
        ("job.quantity", "0", "Is 0, which makes nothing."),
        ("job.quantity", "2.5", "'2.5' is no whole number."),
        ("job.quantity", "9" * 30, f"'{'9' * 30}' is no whole number."),
        ("job.coolant", "water", "'water' is not known. Use one of: oil, emulsion, dry."),
        ("piece.diameter", "31 mm", "Is 31 mm, thicker than the bar of 30 mm."),
        ("piece.length", "250 mm", "Is 250 mm, not shorter than the bar of 250 mm."),
        ("piece.bore", "28 mm", "Is 28 mm in a piece of 28 mm: nothing would be left."),
        ("piece.groove.width", "20 mm", "piece.groove.from_face: puts the groove from 0 to 20 mm"),
        ("holding.live_centre", "perhaps", "'perhaps' is neither yes nor no. Answer yes or no."),
        ("holding.grip_length", "300 mm", "Is 300 mm, not shorter than the bar of 250 mm."),
    ],
)
def test_a_bad_answer_is_told_with_its_mend_and_why(key: str, answer: str, words: str) -> None:
    told = fault(key, answer)
    assert told.startswith(words)
    assert told.endswith(BY_KEY[key].why)


@pytest.mark.parametrize("answer", ["", "no", "N", "yes", "Y", "true", "none"])
def test_yes_and_no_may_be_short(answer: str) -> None:
    assert fault("holding.live_centre", answer) == ""
    job = job_from(NEEDED | {"holding.live_centre": answer})
    assert job.holding.live_centre is (answer in {"yes", "Y", "true"})


@pytest.mark.parametrize("answer", ["", "none", "-", "no", " None "])
def test_none_is_no_bore(answer: str) -> None:
    assert fault("piece.bore", answer) == ""
    assert job_from(NEEDED | {"piece.bore": answer}).piece.bore == 0.0


def test_questions_about_what_is_not_there_are_skipped() -> None:
    def asked(answers: Mapping[str, str]) -> set[str]:
        return {question.key for question in QUESTIONS if not question.skip(answers)}

    every = set(BY_KEY)
    groove = {"piece.groove.depth", "piece.groove.from_face"}
    assert asked(NEEDED) == every - groove - {"tools.boring_bar"}
    assert asked(NEEDED | {"piece.groove.width": "3 mm", "piece.bore": "10 mm"}) == every


# An answer to a question that no longer arises must not spoil the file.
def test_an_answer_to_a_skipped_question_is_left_out() -> None:
    stale = NEEDED | {"piece.groove.depth": "9 mm", "tools.boring_bar": "8 mm bar"}
    assert job_from(stale) == job_from(NEEDED)


@pytest.mark.parametrize("question", QUESTIONS, ids=lambda question: question.key)
def test_a_default_is_an_answer_that_passes(question: Question) -> None:
    if question.default:
        assert fault(question.key, question.default) == ""
    assert question.words.endswith(("?", "."))
    assert question.why.endswith(".")
