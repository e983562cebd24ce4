"""The command that tells of a printed card whether it still holds."""

from pathlib import Path

import click

from chartgen.cli.files import read_bytes
from chartgen.cli.options import PDF_BEGINNING, json_option, print_json, read_shop_at
from chartgen.errors import ChartgenError

_FILE = click.Path(path_type=Path)


@click.command()
@click.argument("card", type=_FILE)
@click.argument("shop", type=_FILE)
@json_option
def stale(card: Path, shop: Path, *, as_json: bool) -> None:
    """Say whether a printed card still holds, and if not, what moved.

    CARD is the card as PDF, SHOP the shop file of today.
    """
    from chartgen.renderers.staleness_text import render_staleness
    from chartgen.reprint import open_printed
    from chartgen.wording.staleness import staleness_answer

    content = read_bytes(card)
    if not content.startswith(PDF_BEGINNING):
        raise ChartgenError(f"{card}: is no PDF; name the card first and the shop file after it.")
    printed = open_printed(content, file=str(card))
    found = printed.beside(read_shop_at(shop))
    if as_json:
        print_json(staleness_answer(found))
    else:
        click.echo(render_staleness(found, str(card)), nl=False)
