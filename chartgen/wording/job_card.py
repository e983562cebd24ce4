"""The cards of a job: the set-up card, and for a quantity the batch card."""

from dataclasses import replace

from chartgen.planning.operations import Operation
from chartgen.planning.plan import JobPlan
from chartgen.wording.card import PrintedCard, file_name_part, make_card
from chartgen.wording.cautions import card_cautions
from chartgen.wording.job.amounts import across, size
from chartgen.wording.job.assumed import assumed
from chartgen.wording.job.cells import RIGHT, headings, step_cells, step_title
from chartgen.wording.job.checks import checklist, dig_in
from chartgen.wording.job.facts import job_facts, measures, wear_lines, wear_marks
from chartgen.wording.job.sketching import printed_sketch
from chartgen.wording.job.step_lines import step_lines
from chartgen.wording.job.watching import watch_line
from chartgen.wording.language import tr
from chartgen.wording.material_names import material_name
from chartgen.wording.printed_job import PrintedJob, PrintedStep

SET_UP_LAYOUT = "set-up-card-a5"
BATCH_LAYOUT = "batch-card-a5"
_TAGS = {
    Operation.FACE: {"turning"},
    Operation.TURN: {"turning"},
    Operation.SUPPORT: {"tailstock", "long-overhang"},
    Operation.DRILL: {"drilling", "tailstock"},
    Operation.BORE: {"boring"},
    Operation.PART: {"parting"},
    Operation.DEBURR: {"deburring"},
}


def job_cards(plan: JobPlan) -> list[PrintedCard[PrintedJob]]:
    """Return the set-up card of a plan, and the batch card where more than one is made."""
    body = printed_job(plan)
    cards = [_card(plan, body, SET_UP_LAYOUT)]
    if plan.job.quantity > 1:
        boxes = tuple(str(number) for number in range(1, plan.job.quantity + 1))
        batch = replace(
            body,
            title=tr("{job}: batch of {number}", job=plan.job.name, number=plan.job.quantity),
            boxes=boxes,
            wear_marks=wear_marks(plan),
            measures=measures(plan),
        )
        cards.append(_card(plan, batch, BATCH_LAYOUT))
    return cards


def _card(plan: JobPlan, body: PrintedJob, layout: str) -> PrintedCard[PrintedJob]:
    tags = set().union(*(_TAGS.get(step.operation, set()) for step in plan.steps))
    card = make_card(
        plan.shop,
        body,
        (plan.material,),
        plan.shop.blades,
        layout,
        plan.job.name,
        assumptions=assumed(plan),
        job=plan.job,
    )
    identity = tr(
        "{identity} · job revision {revision}, {date}",
        identity=card.identity,
        revision=plan.job.revision or "–",
        date=plan.job.date or tr("undated"),
    )
    return replace(
        card,
        identity=identity,
        file_stem=f"{layout.removesuffix('-a5')}-{file_name_part(plan.job.name)}",
        cautions=card_cautions(plan.shop, (plan.material,), operations=tags),
    )


def printed_job(plan: JobPlan) -> PrintedJob:
    """Return a plan as strings."""
    return PrintedJob(
        title=plan.job.name,
        subtitle=_subtitle(plan),
        sketch=printed_sketch(plan),
        headings=headings(plan.shop.request.units),
        right=RIGHT,
        steps=tuple(
            PrintedStep(
                number=str(number),
                what=step_title(plan, step),
                cells=step_cells(plan, step),
                lines=step_lines(plan, step),
                watch=watch_line(plan, step),
            )
            for number, step in enumerate(plan.steps, 1)
        ),
        facts=job_facts(plan),
        checklist=checklist(plan),
        dig_in=dig_in(plan),
        notes=(),
        wear=wear_lines(plan),
        boxes=(),
        legend=(),
    )


def _subtitle(plan: JobPlan) -> str:
    units, piece = plan.shop.request.units, plan.job.piece
    sizes = size(piece.diameter, piece.length, units)
    if piece.bore:
        sizes = tr("{piece}, bore {bore}", piece=sizes, bore=across(piece.bore, units))
    return tr(
        "{material}, {piece}, {number} off",
        material=material_name(plan.material),
        piece=sizes,
        number=plan.job.quantity,
    )
