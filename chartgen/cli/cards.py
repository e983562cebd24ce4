"""Commands that print cards: as PDF files, or one chart as text."""

import sys
from pathlib import Path
from time import perf_counter
from typing import TYPE_CHECKING

import click

from chartgen.cli.files import write_whole
from chartgen.cli.options import (
    json_option,
    material_option,
    print_json,
    read_shop_at,
    shop_argument,
    with_own_layouts,
)

if TYPE_CHECKING:
    from collections.abc import Iterator

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
def make(
    shop: Path | None,
    out: Path,
    materials: tuple[str, ...],
    layouts: tuple[str, ...],
    *,
    png: bool,
) -> None:
    """Write the cards of a shop as PDF files."""
    from chartgen import pipeline
    from chartgen.wording.doubts import doubts

    described = pipeline.with_materials(read_shop_at(shop), materials)
    described = with_own_layouts(pipeline.with_layouts(described, layouts))
    for doubt in doubts(described):
        click.echo(doubt, err=True)
    cards = pipeline.lay_out(pipeline.printed_cards(described), described.request.own_layouts)
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

    card = pipeline.table_card(read_shop_at(shop), material)
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
