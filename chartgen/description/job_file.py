"""A job file: bytes in, the job out, or every fault of the file at once."""

from collections.abc import Mapping
from functools import partial
from typing import Any, Final

from chartgen.description.example_job import example_job_text, example_job_value
from chartgen.description.forms import Form
from chartgen.description.job_rules import note_contradictions
from chartgen.description.job_tables import (
    BarTable,
    ChoiceTable,
    GrooveTable,
    HoldingTable,
    JobFile,
    PieceTable,
)
from chartgen.description.known import Known
from chartgen.description.problems import KeyPath, Problems
from chartgen.description.tables import Place, Table, TableOf, read_at
from chartgen.description.toml_text import opened
from chartgen.errors import DescriptionError
from chartgen.model.job import Bar, Groove, Holding, Job, Piece, ToolChoice

__all__ = ["JOB_FORM", "example_job_text", "read_job"]

JOB_FORM: Final = Form(JobFile, example_job_value, 'diameter = "30 mm"')
_MEND: Final = "Compare the file with the example."


def read_job(text: bytes, *, file: str, known: Known) -> Job:
    """Return the job that a file describes.

    Parameters
    ----------
    text
        The file as it lies on the disk.
    file
        Its name, for messages.
    known
        The names it may use; of these, the materials.

    Raises
    ------
    DescriptionError
        With every fault found, in the order of the lines.
    """
    needs = (
        "A job file needs [job] with name and material, [bar] and [piece]; begin with a "
        "copy of the example."
    )
    source, raw = opened(text, file=file, needs=needs, form=JOB_FORM)
    problems = Problems()
    job = job_of(raw, known, problems)
    if job is None or problems.found:
        from chartgen.description.complaints import faults_of  # noqa: PLC0415 - words for a fault

        raise DescriptionError(faults_of(problems.found, file=file, text=source, form=JOB_FORM))
    return job


def job_of(raw: Mapping[str, Any], known: Known, problems: Problems) -> Job | None:
    """Return the job, or None with everything that the file has wrong noted."""
    whole: dict[KeyPath, Table] = {}
    file = read_at(Place((), known, problems, whole), TableOf(JobFile), raw)
    note_contradictions(whole, problems)
    if file is None or problems.found:
        return None
    bar = _bar(file.bar)
    piece = problems.attempt(("piece",), partial(_piece, file.piece), mend=_MEND)
    if piece is None:
        return None
    make = partial(
        Job,
        name=file.job.name,
        revision=file.job.revision,
        date=file.job.date,
        material=file.job.material,
        quantity=file.job.quantity,
        bar=bar,
        piece=piece,
        holding=_holding(file.holding),
        coolant=file.job.coolant,
        choice=_choice(file.tools),
    )
    return problems.attempt((), make, mend=_MEND)


def _bar(table: BarTable) -> Bar:
    return Bar(
        diameter=table.diameter,
        length=table.length,
        surface=table.surface,
        run_out=table.run_out,
        behind=table.behind,
    )


def _piece(table: PieceTable) -> Piece:
    groove = None if table.groove is None else _groove(table.groove)
    return Piece(
        diameter=table.diameter,
        length=table.length,
        bore=table.bore,
        chamfer=table.chamfer,
        groove=groove,
        tolerance=table.tolerance,
    )


def _groove(table: GrooveTable) -> Groove:
    return Groove(width=table.width, depth=table.depth, from_face=table.from_face)


def _holding(table: HoldingTable | None) -> Holding:
    if table is None:
        return Holding()
    return Holding(grip_length=table.grip_length, stop=table.stop, live_centre=table.live_centre)


def _choice(table: ChoiceTable | None) -> ToolChoice:
    if table is None:
        return ToolChoice()
    return ToolChoice(
        blade=table.blade, turning_tool=table.turning_tool, boring_bar=table.boring_bar
    )
