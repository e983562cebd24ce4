"""The command that makes everything a class is handed: cards, exercises, keys, quizzes."""

import signal
import sys
from collections.abc import Iterator, Mapping, Sequence
from contextlib import contextmanager, suppress
from itertools import count
from pathlib import Path
from typing import TYPE_CHECKING

import click

from chartgen.cli.files import read_bytes, write_whole
from chartgen.cli.options import PDF_BEGINNING, read_described
from chartgen.errors import ChartgenError

if TYPE_CHECKING:
    from chartgen.class_run import ClassRun, Part
    from chartgen.cli.side_by_side import Files
    from chartgen.description.class_record import ClassRecord
    from chartgen.model.course import Course
    from chartgen.model.shop import Shop

_FILE = click.Path(path_type=Path)
_NO_CLASS = "check the name, or run `chartgen example --class` for a file to start from"
_NO_ROSTER = "check its path, which is from the class file's folder"
_NO_LATHE = "check its path in lathes, which is from the class file's folder"


@click.command(name="class")
@click.argument("class_file", metavar="CLASS", type=_FILE)
@click.option(
    "--out",
    default="class",
    show_default=True,
    type=_FILE,
    help="Folder for the files; made if it is missing.",
)
@click.option("--each", is_flag=True, help="A file a student, not one for forty.")
@click.option(
    "--sheet", type=click.Choice(("A4", "letter")), default="A4", help="Paper to print on."
)
@click.option("--again", is_flag=True, help="Make all anew over a class of other inputs.")
@click.option(
    "--jobs", type=click.IntRange(1, 64), help="How many processes work; by itself up to four."
)
def class_set(
    class_file: Path, out: Path, sheet: str, jobs: int | None, *, each: bool, again: bool
) -> None:
    """Write what a class is handed: cards, exercises, the teacher's key, quizzes.

    CLASS is a file that names the class, its students and the shop files of its lathes. A run
    that was stopped goes on where it stopped when the same command is given again.
    """
    course, described = _read(class_file)
    from chartgen.class_run import ClassRun, for_class, shop_code
    from chartgen.cli.side_by_side import processes
    from chartgen.wording.doubts import doubts

    run = ClassRun(
        course=course,
        shops=tuple(for_class(shop, course) for shop, _ in described),
        shop_codes=tuple(shop_code(content, shop) for shop, content in described),
        paper=sheet,
        each=each,
    )
    for shop in run.shops:
        for doubt in doubts(shop):
            click.echo(doubt, err=True)
    _write(run, out, jobs or processes(), again=again)


def _read(path: Path) -> tuple["Course", "list[tuple[Shop, bytes]]"]:
    """Return the class and its shops with their files' bytes; the faults of all are told."""
    from chartgen.description.class_file import lathe_paths, read_class
    from chartgen.pipeline import known_names
    from chartgen.renderers.fonts import lacking

    content = read_bytes(path, mend=_NO_CLASS)
    if content.startswith(PDF_BEGINNING):
        raise ChartgenError(f"{path}: is a PDF; name the class file.")
    folder = path.parent
    faults: list[str] = []
    course = None
    try:
        course = read_class(
            content,
            file=str(path),
            known=known_names(),
            roster=lambda name: read_bytes(folder / name, mend=_NO_ROSTER),
            lacking=lacking,
        )
    except ChartgenError as error:
        faults.append(str(error))
    described: list[tuple[Shop, bytes]] = []
    for name in lathe_paths(content):
        try:
            # Read for its own mend; a shop file is small.
            read_bytes(folder / name, mend=_NO_LATHE)
            described.append(read_described(folder / name))
        except ChartgenError as error:
            faults.append(str(error))
    if course is None or faults:
        raise ChartgenError("\n".join(faults))
    return course, described


def _write(run: "ClassRun", out: Path, jobs: int, *, again: bool) -> None:
    """Write every part that is not there yet, each file whole, and keep the record of them."""
    from chartgen.class_run import BATCH
    from chartgen.cli.side_by_side import made
    from chartgen.description.class_record import RECORD_NAME, ClassRecord, record_text

    path = out / RECORD_NAME
    old = _record_in(out, run.check, again=again)
    every = run.parts()
    is_same = old is not None and old.check == run.check
    done = {
        part.name: old.done[part.name]
        for part in every
        if old and is_same and _is_whole(old.done.get(part.name), out)
    }
    missing = [part for part in every if part.name not in done]
    listed = len(run.course.students) <= BATCH and not run.each
    if old is not None and not is_same:
        _clear(out, old)
    _sweep(out)
    with _stopped_by_signals():
        try:
            for part, files in _with_bar(made(run, missing, jobs) if missing else (), missing):
                for name, content in files:
                    if not (is_same and _is_filled(out / name, len(content))):
                        _keep_answers(out / name, len(content))
                        write_whole(out / name, content)
                    if listed:
                        click.echo(str(out / name))
                done[part.name] = {name: len(content) for name, content in files}
                # In the order of the parts, whichever of them were made at another time.
                listing = {one.name: done[one.name] for one in every if one.name in done}
                record = ClassRecord(name=run.course.name, check=run.check, done=listing)
                write_whole(path, record_text(record))
        except KeyboardInterrupt:
            told = f"{len(done)} of {len(every)} parts are whole"
            click.echo(f"{out}: {told}; the same command goes on from there.", err=True)
            raise
    files_there = sum(len(files) for files in done.values())
    fresh = sum(len(done[part.name]) for part in missing)
    click.echo(
        f"{out}: {_counted(len(run.course.students), 'student')} at "
        f"{_counted(len(run.shops), 'lathe')}, check {run.check}; "
        f"{_counted(files_there, 'file')}, {fresh} of them made now."
    )


def _record_in(out: Path, check: str, *, again: bool) -> "ClassRecord | None":
    """Return the record of a folder, None if it has none; other inputs need to be agreed to."""
    from chartgen.description.class_record import RECORD_NAME, of_other_inputs, read_record

    path = out / RECORD_NAME
    if not path.exists():
        return None
    try:
        record = read_record(read_bytes(path), file=str(path))
    except ChartgenError:
        if again:
            return None
        raise
    if record.check != check and not again:
        raise of_other_inputs(record, check, file=str(path))
    return record


def _is_whole(files: "Mapping[str, int] | None", out: Path) -> bool:
    """Whether every file of a part is there in its size, or has answers in it by now."""
    if not files:
        return False
    try:
        return all(
            (out / name).stat().st_size == size or _is_filled(out / name, size)
            for name, size in files.items()
        )
    except OSError:
        return False


def _is_filled(path: Path, size: int) -> bool:
    """Whether a file is a table of answers that somebody has written into since it was made."""
    from chartgen.class_run import ANSWERS_NAME

    return path.name == ANSWERS_NAME and path.is_file() and path.stat().st_size != size


def _keep_answers(path: Path, size: int) -> None:
    """Give a table that somebody has written into another name, out of the way of a new one."""
    if not _is_filled(path, size):
        return
    names = (path.with_stem(f"{path.stem}-kept-{number}") for number in count(1))
    free = next(name for name in names if not name.exists())
    path.rename(free)
    click.echo(f"{path}: had been written into; kept as {free.name}.", err=True)


def _clear(out: Path, old: "ClassRecord") -> None:
    """Delete what the other class left, so that no card of it lies among the new ones."""
    from chartgen.description.class_record import RECORD_NAME

    for files in old.done.values():
        for name, size in files.items():
            _keep_answers(out / name, size)
    for name in (RECORD_NAME, *old.files):
        with suppress(OSError):
            (out / name).unlink()
    for folder in {(out / name).parent for name in old.files} - {out}:
        with suppress(OSError):
            folder.rmdir()


def _sweep(out: Path) -> None:
    """Delete the scraps of a run that was ended in the middle of a file."""
    for pattern in (".*.part", "students-*/.*.part", "lathe-*/.*.part"):
        for scrap in out.glob(pattern):
            with suppress(OSError):
                scrap.unlink()


@contextmanager
def _stopped_by_signals() -> Iterator[None]:
    """Let a request to end stop the run as Ctrl-C does, between files."""
    before = signal.signal(signal.SIGTERM, signal.default_int_handler)
    try:
        yield
    finally:
        signal.signal(signal.SIGTERM, before)


def _with_bar(
    work: "Iterator[tuple[Part, Files]] | tuple[()]", parts: "Sequence[Part]"
) -> "Iterator[tuple[Part, Files]]":
    """Yield the work, with a bar on a terminal."""
    if not parts or not sys.stderr.isatty():
        yield from work
        return
    with click.progressbar(work, length=len(parts), label="class", file=sys.stderr) as bar:
        yield from bar


def _counted(number: int, word: str) -> str:
    return f"{number} {word}" if number == 1 else f"{number} {word}s"
