"""A card as words: everything a layout may place, and nothing it has to work out."""

from dataclasses import dataclass, replace
from typing import Generic, TypeAlias, TypeVar

from chartgen.charts.speed_feed import lathe_chart, overview_chart
from chartgen.limits.allowances import allowances_for
from chartgen.limits.window import Windows
from chartgen.model.blade import Blade
from chartgen.model.job import Job
from chartgen.model.material import Material
from chartgen.model.shop import Shop
from chartgen.wording.assumptions import assumption_lines, force_band_line
from chartgen.wording.cautions import PrintedCaution, card_cautions, deference, short_deference
from chartgen.wording.check_code import check_code, job_check_code
from chartgen.wording.curves.nomogram import PrintedNomogram
from chartgen.wording.figure import PrintedCurves
from chartgen.wording.language import ENGLISH, tr
from chartgen.wording.lessons.printed_class import (
    PrintedExercises,
    PrintedKey,
    PrintedQuiz,
    PrintedRoll,
    PrintedSignOff,
)
from chartgen.wording.printed import PrintedChart, PrintedTable, print_lathe_chart, print_overview
from chartgen.wording.printed_change import PrintedChange
from chartgen.wording.printed_job import PrintedJob

Body = TypeVar(
    "Body",
    bound=PrintedChart
    | PrintedTable
    | PrintedCurves
    | PrintedNomogram
    | PrintedChange
    | PrintedJob
    | PrintedExercises
    | PrintedKey
    | PrintedQuiz
    | PrintedSignOff
    | PrintedRoll,
)


@dataclass(frozen=True, slots=True, kw_only=True)
class PrintedCard(Generic[Body]):
    """One card, all text made. `file_stem` is a safe name for its file.

    `student` is the line of the one whom a class's card was made for: number, name, course.
    """

    file_stem: str
    layout: str
    lathe: str
    chart: Body
    cautions: tuple[PrintedCaution, ...]
    assumptions: tuple[str, ...]
    force_band: str
    deference: str
    short_deference: str
    identity: str
    check_code: str
    language: str = ENGLISH
    student: str = ""


AnyCard: TypeAlias = (
    PrintedCard[PrintedChart]
    | PrintedCard[PrintedTable]
    | PrintedCard[PrintedCurves]
    | PrintedCard[PrintedNomogram]
    | PrintedCard[PrintedChange]
    | PrintedCard[PrintedJob]
    | PrintedCard[PrintedExercises]
    | PrintedCard[PrintedKey]
    | PrintedCard[PrintedQuiz]
    | PrintedCard[PrintedSignOff]
    | PrintedCard[PrintedRoll]
)
ChartCard: TypeAlias = PrintedCard[PrintedChart]


def lathe_card(
    shop: Shop,
    windows: Windows,
    material: Material,
    layout: str,
    blades: tuple[Blade, ...] | None = None,
) -> ChartCard:
    """Return the lathe chart card of one material, with some of the blades or all of them."""
    shown = windows.grid.blades if blades is None else blades
    chart = print_lathe_chart(lathe_chart(shop, windows, material, shown))
    return make_card(shop, chart, (material,), shown, layout, material.key, windows)


def overview_card(
    shop: Shop,
    windows: Windows,
    blade: Blade,
    layout: str,
    materials: tuple[Material, ...] | None = None,
) -> ChartCard:
    """Return the overview card of one blade, with some of the materials or all of them."""
    shown = windows.grid.materials if materials is None else materials
    chart = print_overview(overview_chart(shop, windows, blade, shown))
    return make_card(shop, chart, shown, (blade,), layout, blade.name)


def make_card(
    shop: Shop,
    chart: Body,
    materials: tuple[Material, ...],
    blades: tuple[Blade, ...],
    layout: str,
    subject: str,
    windows: Windows | None = None,
    assumptions: tuple[str, ...] | None = None,
    job: Job | None = None,
) -> PrintedCard[Body]:
    """Return a card round its chart: cautions, assumptions, identity, check code.

    With the windows of its chart a card also tells what a dig-in does. `assumptions` stand in
    place of those that follow from machine, blades and materials. With the job that it is of,
    its check code is that of a job's card.
    """
    if job is None:
        code = check_code(shop, materials=materials, layout=layout, subject=subject)
    else:
        code = job_check_code(shop, job, materials=materials, layout=layout)
    date = shop.date or tr("undated")
    revision = tr("revision {revision}", revision=shop.revision)
    return PrintedCard(
        file_stem=f"{layout}-{file_name_part(subject)}",
        layout=layout,
        lathe=shop.lathe.name,
        chart=chart,
        cautions=card_cautions(shop, materials),
        assumptions=assumption_lines(shop, materials=materials, blades=blades, windows=windows)
        if assumptions is None
        else assumptions,
        force_band=force_band_line(materials, allowances_for(shop), shop.request.units),
        deference=deference(),
        short_deference=short_deference(),
        identity=f"{shop.name} · {shop.lathe.name} · {revision} · {date}",
        check_code=code,
        language=shop.request.language.value,
    )


def nomogram_card(shop: Shop, body: PrintedNomogram, layout: str) -> PrintedCard[PrintedNomogram]:
    """Return the card of a nomogram: arithmetic only, so it has assumptions of its own."""
    card = make_card(shop, body, (), shop.blades, layout, shop.name, assumptions=body.assumptions)
    return replace(card, file_stem=layout, force_band="")


def file_name_part(text: str) -> str:
    """Return text as part of a file name: letters, digits and hyphens only."""
    words = "".join(c if c.isalnum() and c.isascii() else " " for c in text.lower()).split()
    return "-".join(words) or "card"
