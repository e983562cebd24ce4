"""The command that marks a class's answers and tells which mistakes were made."""

from pathlib import Path

import click

from chartgen.cli.files import read_bytes, write_whole
from chartgen.cli.options import json_option, print_json

_FILE = click.Path(path_type=Path)
_NO_KEY = "check the name; `chartgen class` writes it, as key.json"
_NO_ANSWERS = "check the name; `chartgen class` writes answers.csv to type them into"


@click.command()
@click.argument("key", type=_FILE)
@click.argument("answers", type=_FILE)
@click.option("--out", default=None, type=_FILE, help="Folder to write the marks to as PDF.")
@click.option("--csv", "as_csv", is_flag=True, help="A line a student, for a spreadsheet.")
@json_option
def mark(key: Path, answers: Path, out: Path | None, *, as_csv: bool, as_json: bool) -> None:
    """Mark a class's answers and say which mistake a wrong one matches.

    KEY is the key.json that `chartgen class` wrote, ANSWERS its answers.csv, filled in. Numbers
    may have a point or a comma and a unit behind them; choices are letters.
    """
    if as_csv and as_json:
        raise click.UsageError("Ask for one kind of answer: --csv or --json.")
    from chartgen import pipeline
    from chartgen.description.csv_table import PARTED_BY
    from chartgen.marking_run import marked_class, open_key
    from chartgen.renderers.marks_text import render_marks, render_marks_csv

    key_bytes = read_bytes(key, mend=_NO_KEY)
    opened = open_key(key_bytes, file=str(key))
    given = read_bytes(answers, mend=_NO_ANSWERS)
    marked = marked_class(opened, key_bytes, given, file=str(answers))
    # Written before anything is said, so that a page that cannot be made says only why.
    written = None
    if out is not None:
        page = marked.page()
        written = out / page.file_name
        write_whole(written, pipeline.render(page))
    if as_json:
        print_json(marked.data())
    else:
        told = marked.told()
        parted_by = PARTED_BY[opened.language]
        text = render_marks_csv(told, parted_by) if as_csv else render_marks(told)
        click.echo(text, nl=False)
    if written is not None:
        # A program that reads CSV or JSON wants nothing else on its input.
        click.echo(str(written), err=as_csv or as_json)
