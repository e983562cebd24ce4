"""Commands that print cards: as PDF files, or one chart as text."""

import sys
from pathlib import Path
from time import perf_counter
from typing import TYPE_CHECKING

import click

from chartgen.cli.files import read_bytes, write_whole
from chartgen.cli.options import (
    PDF_BEGINNING,
    json_option,
    material_option,
    print_json,
    read_shop_at,
    shop_argument,
    with_own_layouts,
)

if TYPE_CHECKING:
    from collections.abc import Iterator

    from chartgen.layout.sheets.plan import SheetPlan
    from chartgen.model.shop import Shop
    from chartgen.pipeline import FinishedCard

_LONG_WORK = 1.0
"""Seconds of work ahead from which a progress bar is worth showing."""


@click.command()
@shop_argument
@click.option(
    "--out",
    default="cards",
    show_default=True,
    type=click.Path(path_type=Path),
    help="Folder for the PDF files; made if it is missing.",
)
@click.option("--material", "materials", multiple=True, help="Only this material; may repeat.")
@click.option(
    "--layout",
    "layouts",
    multiple=True,
    help="Only this layout, by its name or the path of your own file; may repeat.",
)
@click.option("--png", is_flag=True, help="Also a picture of each page, for the screen.")
@click.option("--sheet", default=None, help="Several cards on sheets of A4, letter, A3, tabloid.")
@click.option("--flip", type=click.Choice(("long", "short")), help="Edge the printer turns about.")
@click.option(
    "--laminate",
    type=click.Choice(("singly", "together")),
    help="Each card in a pouch of its own, or all of a sheet in one.",
)
@click.option(
    "--margin", type=click.Choice(("cautious", "wide")), help="wide: for old ink-jet printers."
)
@click.option("--edge-to-edge", is_flag=True, help="More cards: no gaps, few marks.")
@click.option("--hole", is_flag=True, help="Mark a hole to hang each card by.")
def make(
    shop: Path | None,
    out: Path,
    materials: tuple[str, ...],
    layouts: tuple[str, ...],
    sheet: str | None,
    *,
    png: bool,
    **wishes: str | bool | None,
) -> None:
    """Write the cards of a shop as PDF files, one a card or several on a sheet.

    SHOP may be a card as PDF: that card is made again from what it carries.
    """
    from chartgen import pipeline
    from chartgen.wording.doubts import doubts

    asked = {name: wish for name, wish in wishes.items() if wish}
    if asked and sheet is None:
        option = f"--{next(iter(asked))}".replace("_", "-")
        raise click.UsageError(f"{option} is about sheets of cards; say which with --sheet A4.")
    if png and sheet is not None:
        raise click.UsageError("--png draws single cards; leave it out, or leave out --sheet.")
    text = None if shop is None else read_bytes(shop)
    if text is not None and text.startswith(PDF_BEGINNING):
        if materials or layouts or sheet or png:
            raise click.UsageError(
                "A card is made again as it was; leave out --material, --layout, --sheet and "
                "--png, or take the shop file."
            )
        _make_again(text, str(shop), out)
        return
    plan = None
    if sheet is not None:
        from chartgen.sheet_run import sheet_plan

        plan = sheet_plan(paper=sheet, **asked)
    described = pipeline.describe(text, str(shop))
    described = with_own_layouts(described, folder=Path() if shop is None else shop.parent)
    described = pipeline.with_materials(described, materials)
    described = with_own_layouts(pipeline.with_layouts(described, layouts))
    for doubt in doubts(described):
        click.echo(doubt, err=True)
    if plan is not None:
        _make_sheets(described, plan, out)
    else:
        _make_cards(described, text, out, png=png)


def _make_sheets(shop: "Shop", plan: "SheetPlan", out: Path) -> None:
    """Write the sheets; all are made before the first is written, or nothing is left behind."""
    from chartgen import pipeline
    from chartgen.sheet_run import on_sheets

    cards = pipeline.printed_cards(shop)
    for name, content in list(on_sheets(cards, plan, shop.request.own_layouts)):
        write_whole(out / name, content)
        click.echo(str(out / name))


def _make_cards(shop: "Shop", text: bytes | None, out: Path, *, png: bool) -> None:
    """Write each card, and a picture of each of its pages if they are wanted."""
    from chartgen import pipeline

    inputs = pipeline.inputs_of(text, shop)
    cards = pipeline.lay_out(pipeline.printed_cards(shop), inputs, shop.request.own_layouts)
    pictures_of = pipeline.picture_maker() if png else None
    for card in _with_progress(cards):
        path = out / card.file_name
        content = pipeline.render(card)
        pictures = pictures_of(content) if pictures_of else []
        write_whole(path, content)
        click.echo(str(path))
        for number, picture in enumerate(pictures, 1):
            page = path.with_name(f"{path.stem}-page-{number}.png")
            write_whole(page, picture)
            click.echo(str(page))


def _make_again(content: bytes, file: str, out: Path) -> None:
    """Write the card that a PDF is, from what it carries."""
    from chartgen import pipeline
    from chartgen.reprint import open_printed

    printed = open_printed(content, file=file)
    finished = printed.made_again()
    made = pipeline.render(finished)
    path = out / finished.file_name
    write_whole(path, made)
    if made != content:
        click.echo(
            f"{file}: is not byte for byte what its inputs make, so another program or version "
            f"saved it or its pages were changed. Trust {path}.",
            err=True,
        )
    click.echo(str(path))


@click.command()
@shop_argument
@material_option
@click.option("--csv", "as_csv", is_flag=True, help="Comma-separated, for a spreadsheet.")
@json_option
def table(shop: Path | None, material: str, *, as_csv: bool, as_json: bool) -> None:
    """Print one material's chart as text, with the very strings of the card."""
    from chartgen import pipeline
    from chartgen.renderers.table_text import render_csv, render_table
    from chartgen.wording.answers import chart_answer

    described = read_shop_at(shop)
    if as_json or as_csv:
        # A program and a spreadsheet read the same words and decimal points from every shop.
        described = pipeline.in_english(described)
    card = pipeline.table_card(described, material)
    if as_json:
        print_json(chart_answer(card.chart))
    else:
        click.echo(render_csv(card) if as_csv else render_table(card), nl=False)


def _with_progress(cards: "list[FinishedCard]") -> "Iterator[FinishedCard]":
    """Yield the cards; with a bar once the first shows that there is real work ahead."""
    if not cards or not sys.stderr.isatty():
        yield from cards
        return
    started = perf_counter()
    yield cards[0]
    ahead = (perf_counter() - started) * (len(cards) - 1)
    if ahead < _LONG_WORK:
        yield from cards[1:]
        return
    with click.progressbar(cards[1:], label="cards", file=sys.stderr) as bar:
        yield from bar
