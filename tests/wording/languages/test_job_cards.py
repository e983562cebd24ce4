"""The set-up card and the batch card in German: whole, in every layout, with no English left."""

import re
from collections.abc import Iterable, Iterator
from dataclasses import replace
from itertools import product
from pathlib import Path

import pytest

from chartgen import pipeline
from chartgen.layout.compose import compose
from chartgen.layout.layout_file import job_layout_names, load_layout
from chartgen.layout.placed import Document, Text
from chartgen.limits.reasons import Reason
from chartgen.limits.ways_out import Way, WayOut
from chartgen.limits.window import Verdict
from chartgen.model.job import Coolant, Job
from chartgen.model.shop import Language, LengthUnits, Shop
from chartgen.planning.operations import Bound, FedBy, Operation
from chartgen.planning.plan import JobPlan, Refusal
from chartgen.renderers.fonts import measure
from chartgen.renderers.job_text import render_batch, render_job
from chartgen.wording.card import PrintedCard
from chartgen.wording.job.amounts import beats
from chartgen.wording.job.cells import step_title
from chartgen.wording.job.step_lines import step_lines
from chartgen.wording.job.watching import watch_line
from chartgen.wording.job.ways import way_words
from chartgen.wording.job_answer import job_answer
from chartgen.wording.language import ENGLISH, speaking
from chartgen.wording.printed_job import PrintedJob

JOBS = Path(__file__).parents[3] / "output_examples" / "jobs"
NAMES = ("bushes", "ring", "spacer")
_WORD = re.compile(r"[A-Za-zÄÖÜäöüß]{3,}")
_ENGLISH_DECIMAL = re.compile(r"\d\.\d")
# What both languages spell alike; "last" is English for the end and German for the load.
_ALIKE = {
    *("min", "hss", "acetal", "emulsion", "name", "hand", "finger", "ring", "start", "rest"),
    *("minute", "radius", "exponent", "last", "code"),
    # What is typed at a terminal.
    *("chartgen", "stale"),
}
_ENGLISH = {
    *("the", "and", "with", "for", "not", "from", "cut", "feed", "speed", "blade", "bar", "jaws"),
    *("rev", "what", "this", "card", "tool", "turn", "drill", "bore", "groove", "piece", "out"),
    *("take", "hold", "use", "way", "its", "it", "of", "is", "to", "no", "or", "by"),
}


def described(name: str, shop: Shop) -> Job:
    text = (JOBS / f"{name}.toml").read_text("utf-8")
    # The owner's own words stay as they are in any language.
    text = re.sub(r"^tolerance = .*$", "", text, flags=re.MULTILINE)
    return pipeline.describe_job(text.encode(), f"{name}.toml", shop)


def in_language(shop: Shop, language: Language, units: LengthUnits = LengthUnits.METRIC) -> Shop:
    return replace(shop, request=replace(shop.request, language=language, units=units))


def without_own(text: str, shop: Shop, job: Job | None = None) -> str:
    """Return a text without what its owner named, sources and designations."""
    tools = shop.tools
    own = [shop.name, shop.lathe.name, *(one.name for one in shop.blades)]
    own += [one.name for one in (*tools.turning, *tools.boring)]
    own += [job.name] if job else []
    for name in sorted(own, key=len, reverse=True):
        text = text.replace(name, "")
    # Keys of sources and of files stand in brackets.
    return re.sub(r"\[[^\]]*\]", "", text)


def words(text: str) -> set[str]:
    return {word.lower() for word in _WORD.findall(text)}


def said(document: Document) -> Iterator[str]:
    """Yield what stands on the pages of a card, and what a screen reader says beside."""
    yield document.title
    for page in document.pages:
        for item in page.items:
            if isinstance(item, Text):
                yield item.text
            yield from (tag.alternative for tag in item.tags if tag.alternative)


def laid_out(cards: Iterable[PrintedCard[PrintedJob]]) -> str:
    documents = [compose(card, load_layout(card.layout), measure) for card in cards]
    # In one line: names of tools wrap as other words do.
    return " ".join(text for document in documents for text in said(document))


def cards_of(shop: Shop, name: str) -> list[PrintedCard[PrintedJob]]:
    return pipeline.printed_job_cards(shop, described(name, shop))


def left_in_english(german: str, english: str) -> set[str]:
    """Return the words of an English text that its German has as well."""
    return ((words(german) & words(english)) | (words(german) & _ENGLISH)) - _ALIKE


@pytest.mark.parametrize(
    ("name", "units"), list(product(NAMES, (LengthUnits.METRIC, LengthUnits.INCH)))
)
def test_every_layout_holds_the_german_cards_and_says_nothing_in_english(
    example: Shop, name: str, units: LengthUnits
) -> None:
    job = described(name, example)
    whole = {
        language: without_own(
            laid_out(cards_of(in_language(example, language, units), name)), example, job
        )
        for language in Language
    }
    assert left_in_english(whole[Language.GERMAN], whole[Language.ENGLISH]) == set()
    assert not _ENGLISH_DECIMAL.search(whole[Language.GERMAN])
    assert re.search(r"\d,\d", whole[Language.GERMAN])


def test_both_layouts_of_a_job_are_laid_out_here(example: Shop) -> None:
    used = {card.layout for card in cards_of(in_language(example, Language.GERMAN), "bushes")}
    assert used == set(job_layout_names())


@pytest.mark.parametrize("name", NAMES)
def test_the_terminal_says_a_german_job_in_german(example: Shop, name: str) -> None:
    job = described(name, example)
    whole = {}
    for language in Language:
        set_up, *others = cards_of(in_language(example, language), name)
        text = render_job(set_up) + "".join(render_batch(card, set_up) for card in others)
        whole[language] = without_own(text, example, job)
    assert left_in_english(whole[Language.GERMAN], whole[Language.ENGLISH]) == set()
    assert not _ENGLISH_DECIMAL.search(whole[Language.GERMAN])


def test_a_trade_word_stands_where_a_german_turner_looks_for_it(example: Shop) -> None:
    set_up, batch = cards_of(in_language(example, Language.GERMAN), "bushes")
    job = set_up.chart
    # Names of operations as DIN 8589 has them: Plandrehen, Bohren, Abstechdrehen ("memory" for
    # the clause numbers; the words are those of its titles).
    steps = [step.what for step in job.steps]
    assert [step.split()[0].rstrip(",") for step in steps] == [
        *("prüfen", "einspannen", "plandrehen", "fasen", "zentrieren", "bohren", "bohren"),
        *("abstechen", "entgraten", "Stange"),
    ]
    assert job.headings == (
        *("", "Schritt", "Werkzeug", "1/min", "mm/U"),
        *(job.headings[5], "Schnitte", "Last", "min"),
    )
    assert batch.chart.title.endswith("Serie von 20")
    assert [name for name, _ in batch.chart.measures] == ["außen", "Bohrung", "Länge"]


def test_the_way_to_the_numbers_stays_english(example: Shop) -> None:
    job = described("ring", example)
    english, german = (
        pipeline.explained_job_text(in_language(example, language), job) for language in Language
    )
    assert german == english


def test_a_program_reads_a_german_job_in_english_under_the_code_of_the_german_card(
    example: Shop,
) -> None:
    german, job = in_language(example, Language.GERMAN), described("ring", example)
    english = [job_answer(card) for card in cards_of(example, "ring")]
    told = [job_answer(card) for card in pipeline.printed_job_cards(german, job, ENGLISH)]
    codes = [card.check_code for card in cards_of(german, "ring")]
    assert [card.pop("check") for card in told] == codes
    assert all(card.pop("check") not in codes for card in english)
    assert told == english


@pytest.fixture(scope="module")
def plan(example: Shop) -> JobPlan:
    return pipeline.job_plan(example, described("ring", example))


def both(say: object, *values: object) -> tuple[str, str]:
    """Return what a function says in English and in German."""
    texts = []
    for language in ("en", "de"):
        with speaking(language):
            found = say(*values)  # type: ignore[operator]
            texts.append(found if isinstance(found, str) else "\n".join(found))
    return texts[0], texts[1]


@pytest.mark.parametrize("operation", Operation)
@pytest.mark.parametrize("is_per_piece", [True, False])
def test_every_step_there_can_be_has_a_german_name_and_warning(
    plan: JobPlan, operation: Operation, *, is_per_piece: bool
) -> None:
    step = replace(plan.steps[0], operation=operation, is_per_piece=is_per_piece)
    for say in (step_title, watch_line, step_lines):
        english, german = both(say, plan, step)
        german, english = (without_own(text, plan.shop, plan.job) for text in (german, english))
        assert left_in_english(german, english) == set()
        assert bool(german) == bool(english)


@pytest.mark.parametrize(
    "operation", [Operation.TURN, Operation.DRILL, Operation.BORE, Operation.CHECK, Operation.PART]
)
@pytest.mark.parametrize("bound", Bound)
def test_every_refusal_says_reason_and_way_out_in_german(
    plan: JobPlan, operation: Operation, bound: Bound
) -> None:
    refused = Refusal(operation=operation, tool="", bound=bound)
    english, german = both(way_words, plan, refused)
    assert len(german.splitlines()) == len(english.splitlines())
    assert left_in_english(without_own(german, plan.shop), english) == set()


@pytest.mark.parametrize("way", Way)
@pytest.mark.parametrize("verdict", [Verdict.INSIDE, Verdict.TIGHT])
def test_every_way_to_part_it_after_all_is_said_in_german(
    plan: JobPlan, way: Way, verdict: Verdict
) -> None:
    one = WayOut(
        way=way,
        what={True: "7.5", False: "honed"}[way.is_length],
        verdict=verdict,
        room=1.25,
        gain=1.5,
        spindle_speed=500.0,
        feed=0.05,
    )
    for ways in ((one,), (one, one)):
        refused = Refusal(
            operation=Operation.PART,
            tool="X",
            bound=Bound.BLADE,
            reasons=(Reason.EDGE_FLOOR, Reason.GRIP),
            ways=ways,
        )
        english, german = both(way_words, plan, refused)
        own = {"honed"} if way is not Way.SHARPER_EDGE else set()
        assert left_in_english(german, english) - own == set()
        assert not _ENGLISH_DECIMAL.search(german)
        assert "1.2 times" in english
        assert "1,2" in german


@pytest.mark.parametrize("coolant", Coolant)
@pytest.mark.parametrize("fed_by", FedBy)
@pytest.mark.parametrize("seconds", [None, 1.0, 3.0, 6.0, 12.0, 90.0])
def test_however_a_step_is_fed_and_wetted_it_is_said_in_german(
    plan: JobPlan, coolant: Coolant, fed_by: FedBy, seconds: float | None
) -> None:
    step = next(one for one in plan.steps if one.operation is Operation.PART)
    assert step.cut is not None
    pace = None if fed_by is FedBy.POWER else seconds
    cut = replace(step.cut, fed_by=fed_by, seconds_per_turn=pace)
    wet = replace(plan, job=replace(plan.job, coolant=coolant))
    for say, values in ((step_lines, (wet, replace(step, cut=cut))), (beats, (cut,))):
        english, german = both(say, *values)
        assert left_in_english(german, english) == set()
        assert not _ENGLISH_DECIMAL.search(german)
