"""The command that plans one job from bar to finished piece, and the asking for a new one."""

from pathlib import Path
from typing import TYPE_CHECKING

import click

from chartgen.cli.files import read_bytes, write_whole
from chartgen.cli.options import PDF_BEGINNING, json_option, print_json, read_described
from chartgen.errors import RequestError

if TYPE_CHECKING:
    from collections.abc import Sequence

    from chartgen.model.shop import Shop
    from chartgen.pipeline import FinishedCard

_FILE = click.Path(path_type=Path)
_NAME_IT = (
    "Name the job file. `chartgen example --job` prints one to start from, and "
    "`chartgen job FILE --new` asks what is wanted and writes it."
)


@click.command()
@click.argument("job", required=False, type=_FILE)
@click.option("--shop", default=None, type=_FILE, help="Shop file, or a card as PDF.")
@click.option("--out", default=None, type=_FILE, help="Folder to write the cards to as PDF.")
@click.option("--png", is_flag=True, help="With --out: also a picture of each page.")
@click.option("--explain", is_flag=True, help="The way to each step's numbers, with sources.")
@click.option("--new", is_flag=True, help="Ask what is wanted and write the file JOB.")
@json_option
def job(
    job: Path | None,
    shop: Path | None,
    out: Path | None,
    *,
    png: bool,
    explain: bool,
    new: bool,
    as_json: bool,
) -> None:
    """Plan one job, from the bar in the chuck to the finished piece.

    JOB is a file that says which bar there is and which piece is wanted, or the card of a job
    as PDF, which stands for the job and, without --shop, for the shop it carries.
    """
    if job is None:
        raise click.UsageError(_NAME_IT)
    if new and (shop or out or png or explain or as_json):
        raise click.UsageError("--new only asks and writes JOB; leave out the other options.")
    if png and out is None:
        raise click.UsageError("--png draws the cards that are written; add --out FOLDER.")
    if explain and (as_json or out):
        raise click.UsageError("--explain only prints; leave out --out and --json.")
    if new:
        from chartgen.cli.new_job import ask_for_job

        ask_for_job(job)
    elif explain:
        _explain(job, shop)
    else:
        _print(job, shop, out, png=png, as_json=as_json)


def _explain(job: Path, shop: Path | None) -> None:
    """Print the way to the numbers of each step."""
    from chartgen import pipeline

    text, file, carried = _job_at(job)
    described, _ = _shop_of(shop, carried)
    wanted = pipeline.describe_job(text, file, described)
    click.echo(pipeline.explained_job_text(described, wanted), nl=False)


def _print(job: Path, shop: Path | None, out: Path | None, *, png: bool, as_json: bool) -> None:
    """Print the plan of a job, and write its cards if a folder is given."""
    from chartgen import pipeline
    from chartgen.renderers.job_text import render_batch, render_job
    from chartgen.wording.doubts import doubts
    from chartgen.wording.job_answer import job_answer
    from chartgen.wording.language import ENGLISH

    text, file, carried = _job_at(job)
    described, shop_text = _shop_of(shop, carried)
    wanted = pipeline.describe_job(text, file, described)
    cards = pipeline.printed_job_cards(described, wanted)
    # Written before anything is said, so that a card that cannot be made says only why.
    written: list[Path] = []
    if out is not None:
        laid_out = pipeline.lay_out(cards, pipeline.inputs_of_job(shop_text, text))
        written = _write(laid_out, out, png=png)
    for doubt in doubts(described):
        click.echo(doubt, err=True)
    if as_json:
        # A program that reads them is not told in the language of the cards.
        told = pipeline.printed_job_cards(described, wanted, ENGLISH)
        print_json({"cards": [job_answer(card) for card in told]})
    else:
        set_up, *others = cards
        click.echo(render_job(set_up), nl=False)
        for other in others:
            click.echo(f"\n{render_batch(other, set_up)}", nl=False)
    for path in written:
        # A program that reads JSON wants nothing else on its input.
        click.echo(str(path), err=as_json)


def _job_at(path: Path) -> tuple[bytes, str, "tuple[Shop, bytes] | None"]:
    """Return a job file's bytes, its name for messages, and the shop of a card that it is."""
    content = read_bytes(path, mend=f"check the name, or run `chartgen job {path} --new`")
    if not content.startswith(PDF_BEGINNING):
        return content, str(path), None
    from chartgen.description.recipe import JOB_NAME
    from chartgen.reprint import open_printed

    printed = open_printed(content, file=str(path))
    text = printed.inputs.job_file
    if text is None:
        raise RequestError(
            f"{path}: is a card, but of no job; name a job file, or a card that "
            "`chartgen job` wrote."
        )
    return text, f"{path}, {JOB_NAME} in it", (printed.shop, printed.inputs.shop_file)


def _shop_of(
    path: Path | None, carried: "tuple[Shop, bytes] | None"
) -> "tuple[Shop, bytes | None]":
    """Return the shop asked for, or that of the card, or the built-in one, and its bytes."""
    if path is not None:
        return read_described(path)
    if carried is not None:
        return carried
    from chartgen import pipeline

    return pipeline.describe(None, pipeline.EXAMPLE_NAME), None


def _write(cards: "Sequence[FinishedCard]", out: Path, *, png: bool) -> list[Path]:
    """Write the cards, and pictures of their pages if wanted; all are made before the first."""
    from chartgen import pipeline

    pictures_of = pipeline.picture_maker() if png else None
    files: dict[Path, bytes] = {}
    for card in cards:
        path = out / card.file_name
        files[path] = pipeline.render(card)
        for number, picture in enumerate(pictures_of(files[path]) if pictures_of else (), 1):
            files[path.with_name(f"{path.stem}-page-{number}.png")] = picture
    for path, content in files.items():
        write_whole(path, content)
    return list(files)
