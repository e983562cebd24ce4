"""The commands: the only place that reads arguments, prints, writes files or exits.

Heavy parts are imported inside the commands, so that a mistyped word answers at once.
"""

import json
import sys
from pathlib import Path
from time import perf_counter
from typing import TYPE_CHECKING, Any

import click

from chartgen import __version__
from chartgen.cli_files import read_bytes, write_whole
from chartgen.errors import ChartgenError

if TYPE_CHECKING:
    from collections.abc import Iterator

    from chartgen.model.shop import Shop
    from chartgen.pipeline import FinishedCard

_FAILED = 2
_LONG_WORK = 1.0
"""Seconds of work ahead from which a progress bar is worth showing."""

_shop_argument = click.argument("shop", required=False, type=click.Path(path_type=Path))
_json_option = click.option("--json", "as_json", is_flag=True, help="Answer for a machine.")
_material_option = click.option(
    "--material", required=True, help="Material key, as `chartgen materials` lists them."
)
_tool_option = click.option("--tool", required=True, help="Blade by name or by letter.")
_diameter_option = click.option("--diameter", required=True, help='Bar diameter: "25 mm", "1 in".')
_bore_option = click.option("--bore", default=None, help="Bore of a tube; solid if left out.")


@click.group(context_settings={"help_option_names": ["-h", "--help"]})
@click.version_option(__version__, prog_name="chartgen")
def commands() -> None:
    """Print parting-off cards for one particular lathe.

    SHOP is a text file that describes the lathe, its blades and what to print. Without it
    a built-in invented shop is used; `chartgen example` prints that one to start from.
    """


def main() -> None:
    """Run the command line; every known error is a message and exit code 2."""
    try:
        commands(standalone_mode=False)
    except click.exceptions.Exit as leaving:
        sys.exit(leaving.exit_code)
    except click.Abort:
        click.echo("stopped", err=True)
        sys.exit(_FAILED)
    except click.ClickException as error:
        error.show()
        sys.exit(_FAILED)
    except ChartgenError as error:
        click.echo(str(error), err=True)
        sys.exit(_FAILED)


@commands.command()
@_shop_argument
@click.option(
    "--out",
    default="cards",
    show_default=True,
    type=click.Path(path_type=Path),
    help="Folder for the PDF files; made if it is missing.",
)
@click.option("--material", "materials", multiple=True, help="Only this material; may repeat.")
def make(shop: Path | None, out: Path, materials: tuple[str, ...]) -> None:
    """Write the cards of a shop as PDF files."""
    from chartgen import pipeline
    from chartgen.wording.doubts import doubts

    described = pipeline.with_materials(_shop(shop), materials)
    for doubt in doubts(described):
        click.echo(doubt, err=True)
    cards = pipeline.lay_out(pipeline.printed_cards(described))
    for card in _with_progress(cards):
        path = out / card.file_name
        write_whole(path, pipeline.render(card))
        click.echo(str(path))


@commands.command()
@_shop_argument
@_material_option
@click.option("--csv", "as_csv", is_flag=True, help="Comma-separated, for a spreadsheet.")
@_json_option
def table(shop: Path | None, material: str, *, as_csv: bool, as_json: bool) -> None:
    """Print one material's chart as text, with the very strings of the card."""
    from chartgen import pipeline
    from chartgen.renderers.table_text import render_csv, render_table
    from chartgen.wording.answers import chart_answer

    card = pipeline.table_card(_shop(shop), material)
    if as_json:
        _print_json(chart_answer(card.chart))
    else:
        click.echo(render_csv(card) if as_csv else render_table(card), nl=False)


@commands.command(name="try")
@_shop_argument
@_material_option
@_tool_option
@_diameter_option
@_bore_option
@click.option("--speed", required=True, help='Spindle speed: "1000 rpm".')
@click.option("--feed", required=True, help='Feed: "0.05 mm/rev", "0.002 in/rev".')
@_json_option
def try_cut(
    shop: Path | None,
    material: str,
    tool: str,
    diameter: str,
    bore: str | None,
    speed: str,
    feed: str,
    *,
    as_json: bool,
) -> None:
    """Say whether a cut is inside the window, and if not, what to change."""
    from chartgen import inquiry
    from chartgen.wording.answers import cut_answer

    described = _shop(shop)
    request = inquiry.cut_request(
        described,
        material=material,
        tool=tool,
        diameter=diameter,
        bore=bore,
        speed=speed,
        feed=feed,
    )
    answer = inquiry.try_cut(described, request)
    if as_json:
        _print_json(cut_answer(described, answer.cut, answer.windows, answer.advice))
    else:
        click.echo(f"{answer.cut.side.value.upper()}\n{answer.advice}")


@commands.command()
@_shop_argument
@_material_option
@_tool_option
@_diameter_option
@_bore_option
@_json_option
def explain(
    shop: Path | None, material: str, tool: str, diameter: str, bore: str | None, *, as_json: bool
) -> None:
    """Show how the numbers of one cell come about, step by step, with every source."""
    from chartgen import inquiry
    from chartgen.renderers.explanation_text import render_explanation
    from chartgen.wording.answers import cut_answer, explanation_answer

    described = _shop(shop)
    request = inquiry.cut_request(
        described, material=material, tool=tool, diameter=diameter, bore=bore
    )
    answer = inquiry.explain_cell(described, request)
    if as_json:
        numbers = cut_answer(described, answer.cut, answer.windows, answer.advice)
        _print_json(numbers | explanation_answer(answer.explanation))
    else:
        click.echo(render_explanation(answer.explanation), nl=False)


@commands.command()
@_shop_argument
def check(shop: Path | None) -> None:
    """Read a shop file and say what is wrong with it, or what was understood."""
    from chartgen import inquiry, pipeline

    described = _shop(shop)
    for line in inquiry.understood(described):
        click.echo(line)
    cards = pipeline.lay_out(pipeline.printed_cards(described))
    click.echo(f"{len(cards)} cards, all of which fit their layouts.")


@commands.command()
def example() -> None:
    """Print the built-in invented shop file, to copy and fill in."""
    from chartgen.description.shop_file import example_text

    click.echo(example_text().decode(), nl=False)


@commands.command()
def materials() -> None:
    """List the materials, their main data and how far each is trusted."""
    from chartgen.reference.tables import load_material, material_keys
    from chartgen.renderers.listings import render_materials

    click.echo(render_materials([load_material(key) for key in material_keys()]), nl=False)


@commands.command()
def sources() -> None:
    """List the publications behind the numbers."""
    from chartgen.reference.tables import load_bibliography
    from chartgen.renderers.listings import render_sources

    click.echo(render_sources(load_bibliography().values()), nl=False)


def _shop(path: Path | None) -> "Shop":
    from chartgen import pipeline

    if path is None:
        return pipeline.describe(None, pipeline.EXAMPLE_NAME)
    return pipeline.describe(read_bytes(path), str(path))


def _print_json(answer: dict[str, Any]) -> None:
    click.echo(json.dumps(answer, indent=2, ensure_ascii=False))


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
