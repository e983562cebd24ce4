"""The command that compares two shops, as before and after a new motor."""

from pathlib import Path
from typing import TYPE_CHECKING

import click

from chartgen.cli.files import write_whole
from chartgen.cli.options import json_option, print_json, read_described
from chartgen.errors import ChartgenError

if TYPE_CHECKING:
    from chartgen.model.shop import Shop

    Described = tuple[Shop, bytes]

_SHOP = click.Path(path_type=Path)


@click.command()
@click.argument("before", type=_SHOP)
@click.argument("after", type=_SHOP)
@click.option("--out", default=None, type=_SHOP, help="Folder to write the change card to as PDF.")
@click.option("--csv", "as_csv", is_flag=True, help="The moved cells, for a spreadsheet.")
@json_option
def compare(before: Path, after: Path, out: Path | None, *, as_csv: bool, as_json: bool) -> None:
    """Say what moved between two shop files and which printed cards are stale.

    BEFORE is the shop file the cards at the lathe were printed from, AFTER the new one.
    Either may be a card as PDF: it stands for the shop file it carries.
    """
    from chartgen import pipeline
    from chartgen.carrying import Inputs
    from chartgen.description.recipe import CardOf
    from chartgen.renderers.change_text import render_change, render_moved_csv
    from chartgen.wording.change_answer import change_answer
    from chartgen.wording.doubts import doubts
    from chartgen.wording.language import ENGLISH

    (old, old_text), (new, new_text) = _read_both(before, after)
    card = pipeline.changed_card(old, new)
    # Written before anything is said, so that a card that cannot be made says only why.
    written = None
    if out is not None:
        inputs = Inputs(files=(old_text, new_text), materials=(), made_from=CardOf.CHANGE)
        (finished,) = pipeline.lay_out([card], inputs)
        written = out / finished.file_name
        write_whole(written, pipeline.render(finished))
    for doubt in doubts(new):
        click.echo(doubt, err=True)
    if as_json or as_csv:
        # A program that reads them is not told in the language of the cards.
        card = pipeline.changed_card(old, new, ENGLISH)
    if as_json:
        print_json(change_answer(card))
    else:
        click.echo(render_moved_csv(card) if as_csv else render_change(card), nl=False)
    if written is not None:
        # A program that reads CSV or JSON wants nothing else on its input.
        click.echo(str(written), err=as_csv or as_json)


def _read_both(before: Path, after: Path) -> tuple["Described", "Described"]:
    """Return both shops, or tell the faults of both, each line under the name of its side."""
    found: list[Described] = []
    faults: list[str] = []
    for side, path in (("BEFORE", before), ("AFTER", after)):
        try:
            found.append(read_described(path))
        except ChartgenError as error:
            faults += [f"{side}: {line}" for line in str(error).splitlines()]
    if faults:
        raise ChartgenError("\n".join(faults))
    old, new = found
    return old, new
