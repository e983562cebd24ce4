"""A class's marks as a card: which mistakes were made, as bars, and a line a student."""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final

from chartgen.lessons.kinds import Kind, Slip
from chartgen.lessons.marking import ClassSummary, KindSummary, Outcome, PaperMarks, QuestionMark
from chartgen.wording.card import PrintedCard
from chartgen.wording.cautions import deference, short_deference
from chartgen.wording.language import ENGLISH, decimal, tr, trn
from chartgen.wording.lessons.class_card import identity_of, on_paper
from chartgen.wording.lessons.matrix import kind_words, name_in_roll
from chartgen.wording.lessons.printed_class import PrintedBar, PrintedRoll
from chartgen.wording.lessons.slips import slip_words

MARKS_LAYOUT: Final = "class-marks-a4"
_SIGNS: Final = {
    Outcome.RIGHT: "✓",
    Outcome.WRONG: "✗",
    Outcome.EMPTY: "–",
    Outcome.UNREADABLE: "?",
}


@dataclass(frozen=True, slots=True, kw_only=True)
class MarkedCourse:
    """What a key says of its class; `code` is the check code of key and answers together."""

    name: str
    revision: str
    date: str
    code: str
    language: str = ENGLISH


def printed_marks(
    of: MarkedCourse, marks: Sequence[PaperMarks], summary: ClassSummary
) -> PrintedCard[PrintedRoll]:
    """Return the marks of a class, said in the language being spoken."""
    return PrintedCard(
        file_stem=MARKS_LAYOUT,
        layout=MARKS_LAYOUT,
        lathe="",
        chart=_body(of, marks, summary),
        cautions=on_paper(),
        assumptions=(
            tr(
                "A wrong answer is put down to a mistake if it is what that mistake leads to, "
                "within the span that passes for right. That is likely, not certain: ask."
            ),
        ),
        force_band="",
        deference=deference(),
        short_deference=short_deference(),
        identity=identity_of(course=of.name, lathe="", revision=of.revision, date=of.date),
        check_code=of.code,
        language=of.language,
    )


def mistake_bars(summary: ClassSummary) -> tuple[PrintedBar, ...]:
    """Return the bars of the mistakes, the most frequent first; what matches none is the last."""
    letters = slip_letters(summary)
    bars = [
        PrintedBar(
            label=f"{letters[slip]}: {_words(summary, slip)}",
            count=count,
            remark=", ".join(_flat(kind) for kind in _kinds_with(summary, slip)),
        )
        for slip, count in summary.slips
    ]
    unmatched = sum(kind.unmatched for kind in summary.kinds)
    if unmatched:
        bars.append(PrintedBar(label=tr("matches no known mistake"), count=unmatched))
    return tuple(bars)


def slip_letters(summary: ClassSummary) -> dict[Slip, str]:
    """Return a letter for each mistake that was made, A for the most frequent."""
    return {slip: chr(ord("A") + place) for place, (slip, _) in enumerate(summary.slips)}


def kind_line(kind: KindSummary) -> str:
    """Return what a class made of one kind of exercise, in a sentence."""
    parts = [
        tr("{number} wrong", number=kind.wrong) if kind.wrong else "",
        tr("{number} empty", number=kind.empty) if kind.empty else "",
        tr("{number} unreadable", number=kind.unreadable) if kind.unreadable else "",
    ]
    right = tr(
        "{kind}: {right} of {asked} right",
        kind=_flat(kind.kind),
        right=kind.right,
        asked=kind.asked,
    )
    return ", ".join(part for part in (right, *parts) if part)


def _body(of: MarkedCourse, marks: Sequence[PaperMarks], summary: ClassSummary) -> PrintedRoll:
    places = max((len(paper.questions) for paper in marks), default=0)
    bars, letters = mistake_bars(summary), slip_letters(summary)
    return PrintedRoll(
        title=tr("Marks"),
        subtitle=of.name,
        headings=(
            tr("No."),
            tr("Name"),
            *(str(place) for place in range(1, places + 1)),
            tr("right"),
            "%",
        ),
        right=frozenset(range(2, places + 4)),
        rows=tuple(_row(paper, places, letters) for paper in marks),
        notes=(
            tr(
                "✓ right, ✗ wrong, with the letter of its mistake above if it matches one, "
                "– empty, ? unreadable."
            ),
            *(kind_line(kind) for kind in summary.kinds),
        ),
        bars_title=tr("Mistakes made, by how often"),
        bars=bars,
        description=_described(bars),
    )


def _row(paper: PaperMarks, places: int, letters: dict[Slip, str]) -> tuple[str, ...]:
    signs = [_sign(one, letters) for one in paper.questions]
    share = 100.0 * paper.right / len(paper.questions) if paper.questions else 0.0
    return (
        str(paper.number),
        name_in_roll(paper.name),
        *signs,
        *("" for _ in range(places - len(signs))),
        str(paper.right),
        decimal(f"{share:.0f}"),
    )


def _sign(one: QuestionMark, letters: dict[Slip, str]) -> str:
    letter = letters[one.slip] if one.slip else ""
    return f"{_SIGNS[one.outcome]}{letter}"


def _kinds_with(summary: ClassSummary, slip: Slip) -> list[Kind]:
    """Return in which kinds of exercise a mistake was made."""
    return [kind.kind for kind in summary.kinds if slip in dict(kind.slips)]


def _words(summary: ClassSummary, slip: Slip) -> str:
    """Return a mistake in the words of its kind of exercise, if it was made in one alone."""
    kinds = _kinds_with(summary, slip)
    return slip_words(slip, kinds[0] if len(kinds) == 1 else None)


def _flat(kind: Kind) -> str:
    """Return the heading of a kind on one line."""
    return kind_words(kind).replace("-\n", "").replace("\n", " ")


def _described(bars: Sequence[PrintedBar]) -> str:
    """Return the plot in words."""
    if not bars:
        return tr("No wrong answers.")
    parts = ", ".join(
        trn("{label}: once", "{label}: {number} times", bar.count, label=bar.label) for bar in bars
    )
    return tr("Bars, one a mistake, as long as it was made often. {parts}.", parts=parts)
