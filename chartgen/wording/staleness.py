"""One printed card against a shop file, in words: current, stale, and what moved."""

from collections.abc import Sequence
from dataclasses import asdict, dataclass
from typing import Any

from chartgen.charts.change import cell_changes
from chartgen.model.shop import Shop
from chartgen.wording.card import AnyCard
from chartgen.wording.card_states import card_states
from chartgen.wording.change import cell_headings, moved_groups
from chartgen.wording.described_facts import fact_groups
from chartgen.wording.job_moves import job_moves
from chartgen.wording.language import speaking, tr
from chartgen.wording.printed import PrintedChart, overview_title
from chartgen.wording.printed_change import CardState, CellHeadings, FactGroup, MovedGroup
from chartgen.wording.printed_job import PrintedJob


@dataclass(frozen=True, slots=True, kw_only=True)
class PrintedStaleness:
    """What a printed card is worth beside a shop file; `check_now` is empty where it is gone.

    `groups` are the moved cells of a chart, `steps` what moved on the card of a job.
    """

    state: CardState
    remark: str
    title: str
    check_printed: str
    check_now: str
    facts: tuple[FactGroup, ...]
    headings: CellHeadings
    groups: tuple[MovedGroup, ...]
    steps: tuple[FactGroup, ...]

    @property
    def headline(self) -> str:
        """The state on one line, with what is behind it."""
        return f"{self.state.value}{f' ({self.remark})' if self.remark else ''}"

    @property
    def codes(self) -> str:
        """What the card is about, its check code and that of a card printed today."""
        now = f", now {self.check_now}" if self.check_now else ""
        return f"{self.title} · check {self.check_printed} on the card{now}"


def staleness(
    card: AnyCard,
    now: AnyCard | None,
    *,
    before: Shop,
    after: Shop,
    by_older: str = "",
    gone_because: str = "",
) -> PrintedStaleness:
    """Return what a card of the shop before is worth to the shop after.

    Parameters
    ----------
    card
        The printed card, worked out again from what it carries.
    now
        The same card of the shop after, None where that shop has no such card.
    before, after
        The shops.
    by_older
        The version that printed it, where it was not this one: its numbers are not known.
    gone_because
        Why the shop after has no such card, where that can be told.
    """
    job = card.chart if isinstance(card.chart, PrintedJob) else None
    changes = None if job else cell_changes(before, after)
    (line,) = card_states([card], [] if now is None else [now], changes)
    state, remark = line.state, line.remark or gone_because
    if by_older and now is not None:
        remark = "; ".join(filter(None, (f"printed by version {by_older} of chartgen", remark)))
        state = CardState.STALE
    return PrintedStaleness(
        state=state,
        remark=remark,
        title=card.chart.title,
        check_printed=card.check_code,
        check_now="" if now is None else now.check_code,
        facts=fact_groups(before, after),
        headings=cell_headings(after),
        groups=() if changes is None else tuple(_shown_on(card, moved_groups(changes))),
        steps=job_moves(job, now.chart)
        if job and now is not None and isinstance(now.chart, PrintedJob)
        else (),
    )


def _shown_on(card: AnyCard, groups: Sequence[MovedGroup]) -> list[MovedGroup]:
    """Return the moved cells of a chart: those of its material, or of its blade."""
    chart = card.chart
    if not isinstance(chart, PrintedChart):
        return []
    names = {column.name for column in chart.columns}
    # The card says both in its own language, whatever is spoken here.
    with speaking(card.language):
        return [
            group
            for group in groups
            if (chart.title == tr(group.material) and group.blade in names)
            or (chart.title == overview_title(group.blade) and tr(group.material) in names)
        ]


def staleness_answer(found: PrintedStaleness) -> dict[str, Any]:
    """Return what is said of a card, for a machine to read."""
    return {
        "title": found.title,
        "state": found.state.name.lower(),
        "remark": found.remark,
        "check": {"printed": found.check_printed, "now": found.check_now},
        "changed": _groups(found.facts),
        "steps": _groups(found.steps),
        "moved": [
            {"material": group.material, "blade": group.blade}
            | asdict(row)
            | {"moved": row.moved.split(", ")}
            for group in found.groups
            for row in group.rows
        ],
    }


def _groups(groups: Sequence[FactGroup]) -> list[dict[str, Any]]:
    return [
        {"title": group.title, "facts": [asdict(fact) for fact in group.facts]} for group in groups
    ]
