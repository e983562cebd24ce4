"""The command that reads the owner's readings and writes what follows into his shop file."""

from pathlib import Path
from typing import TYPE_CHECKING

import click

from chartgen.cli.files import read_bytes, write_whole
from chartgen.cli.options import PDF_BEGINNING, json_option, print_json, shop_argument
from chartgen.errors import DescriptionError, Fault, RequestError

if TYPE_CHECKING:
    from collections.abc import Sequence

    from chartgen.learning.decisions import Decision
    from chartgen.learning.refusals import RefusedReadingsError
    from chartgen.model.readings import ShopReading


@click.command()
@shop_argument
@click.argument("readings", required=False, type=click.Path(path_type=Path))
@click.option("--replace", is_flag=True, help="Give up values that you wrote yourself.")
@click.option("--dry-run", is_flag=True, help="Show what follows; write nothing.")
@click.option("--example", is_flag=True, help="Print a file of readings to start from.")
@json_option
def learn(
    shop: Path | None,
    readings: Path | None,
    *,
    replace: bool,
    dry_run: bool,
    example: bool,
    as_json: bool,
) -> None:
    """Let readings of your lathe take the place of assumptions in its shop file.

    READINGS is a TOML file, or a table whose name ends in .csv; without it the readings
    kept in the shop file are gone through again.
    """
    from chartgen import pipeline
    from chartgen.learning.decisions import concludes, decide, not_kept_yet
    from chartgen.learning.findings import learn as learn_from
    from chartgen.learning.refusals import RefusedReadingsError
    from chartgen.renderers.learned_text import render_learned
    from chartgen.wording.learned import learned_answer, learned_lines

    if example:
        from chartgen.description.example import example_readings_text

        click.echo(example_readings_text().decode(), nl=False)
        return
    if shop is None:
        raise click.UsageError("Name the shop file that the readings belong to.")
    data = read_bytes(shop)
    if data.startswith(PDF_BEGINNING):
        raise RequestError(
            f"{shop}: is a card, and what follows from readings is written into a shop file; name "
            "the shop file."
        )
    described = pipeline.describe(data, str(shop))
    fresh: tuple[ShopReading, ...] = ()
    origins = [(shop, data, described.readings)]
    if readings is not None:
        from chartgen.description.readings_file import read_readings

        read = read_bytes(readings)
        given = read_readings(
            read, file=str(readings), known=pipeline.known_names(), shop=described
        )
        origins.append((readings, read, given))
        fresh = not_kept_yet(described.readings, given)
    if not described.readings and not fresh:
        raise RequestError(
            f"{shop}: keeps no readings yet; name a file of them. "
            "`chartgen learn --example` prints one to start from."
        )
    try:
        found = learn_from(described, (*described.readings, *fresh))
    except RefusedReadingsError as error:
        raise _with_lines(error, origins) from error
    decisions = decide(described, found, replace=replace)
    said = render_learned(learned_lines(decisions))
    if not concludes(decisions):
        raise RequestError(f"{said}Nothing follows from so little; {shop} is left as it was.")
    if as_json:
        print_json(learned_answer(decisions))
    else:
        click.echo(said, nl=False)
    if not dry_run:
        wrote = _write(shop, data, decisions, fresh)
        told = f"{shop}: {'written' if wrote else 'holds all this already'}."
        click.echo(told, err=as_json)


def _with_lines(
    error: "RefusedReadingsError", origins: "Sequence[tuple[Path, bytes, Sequence[ShopReading]]]"
) -> DescriptionError:
    """Return the error with file and line of each refused reading."""
    from chartgen.description.readings_file import line_of_reading

    faults = []
    for refused, why in error.refused:
        problem, _, mend = why.partition("; ")
        file, data, index = next(
            (file, data, index)
            for file, data, readings in origins
            for index, reading in enumerate(readings)
            if reading is refused
        )
        line = line_of_reading(data, file=str(file), index=index)
        mend = f"{mend[:1].upper()}{mend[1:]}."
        faults.append(Fault(str(file), line, f"reading[{index + 1}]", f"{problem}.", mend))
    return DescriptionError(faults)


def _write(
    shop: Path, data: bytes, decisions: "Sequence[Decision]", fresh: "Sequence[ShopReading]"
) -> bool:
    """Write what was decided and the new readings; False where the file says it all already."""
    from chartgen import pipeline
    from chartgen.description.written_back import written_back
    from chartgen.learning.decisions import to_withdraw, to_write

    changed = written_back(
        data, measured=to_write(decisions), withdrawn=to_withdraw(decisions), readings=fresh
    )
    if changed == data:
        return False
    # What is written has to be sound; a fault would be ours, and must not cost the file.
    pipeline.describe(changed, str(shop))
    # Behind a link lies the file that is meant.
    write_whole(shop.resolve(), changed)
    return True
