"""A class file: bytes in, the course out, or every fault of it and of its roster at once."""

from collections.abc import Callable, Mapping
from functools import partial
from typing import Any, Final

from chartgen.description.class_tables import ClassFile, ClassTable
from chartgen.description.example_class import example_class_text, example_class_value
from chartgen.description.forms import Form
from chartgen.description.known import Known
from chartgen.description.problems import KeyPath, Problems
from chartgen.description.roster import Lacking, read_roster
from chartgen.description.tables import Place, Table, TableOf, read_at
from chartgen.description.toml_text import decoded, opened, parsed
from chartgen.errors import ChartgenError, DescriptionError, Fault
from chartgen.model.course import Course, Student

__all__ = ["CLASS_FORM", "example_class_text", "lathe_paths", "read_class"]

CLASS_FORM: Final = Form(ClassFile, example_class_value, 'level = "first"')
_MEND: Final = "Compare the file with the example."
_TABLE: Final = "class"

RosterReader = Callable[[str], bytes]
"""The path of a roster as the class file writes it -> the bytes there."""


def read_class(
    text: bytes,
    *,
    file: str,
    known: Known,
    roster: RosterReader,
    lacking: Lacking = lambda _: (),
) -> Course:
    """Return the course that a class file and its roster describe.

    Parameters
    ----------
    text
        The file as it lies on the disk.
    file
        Its name, for messages.
    known
        The names it may use; of these, the materials.
    roster
        Reads the roster that the file names.
    lacking
        Tells the characters that no font of the cards has.

    Raises
    ------
    DescriptionError
        With every fault found in both files.
    """
    needs = (
        "A class file needs [class] with name, level, students or roster, lathes and "
        "materials; `chartgen example --class` prints one to start from."
    )
    source, raw = opened(text, file=file, needs=needs, form=CLASS_FORM)
    problems = Problems()
    table = _table(raw, known, problems)
    students: tuple[Student, ...] = ()
    of_roster: list[Fault] = []
    # Read even where the class file has faults: its owner hears of all of them at once.
    path = _roster_path(raw)
    if path is not None:
        try:
            students = read_roster(roster(path), file=_beside(file, path), lacking=lacking)
        except DescriptionError as error:
            of_roster += error.faults
        except ChartgenError as error:
            problem, _, mend = str(error).partition("; ")
            problems.add((_TABLE, "roster"), f"{problem}.".replace("..", "."), _sentence(mend))
    course = None
    if table is not None and not problems.found and not of_roster:
        course = problems.attempt((_TABLE,), partial(_course, table, students), mend=_MEND)
    if course is None:
        from chartgen.description.complaints import faults_of  # noqa: PLC0415 - words for a fault

        own = faults_of(problems.found, file=file, text=source, form=CLASS_FORM)
        raise DescriptionError([*own, *of_roster])
    return course


def lathe_paths(text: bytes) -> tuple[str, ...]:
    """Return the shop files that a class file names, as far as it can be read; for more faults."""
    try:
        raw = parsed(decoded(text, file=""), file="")
    except DescriptionError:
        return ()
    table = raw.get(_TABLE)
    lathes = table.get("lathes") if isinstance(table, dict) else None
    if not isinstance(lathes, list):
        return ()
    return tuple(dict.fromkeys(one for one in lathes if isinstance(one, str) and one.strip()))


def _table(raw: Mapping[str, Any], known: Known, problems: Problems) -> ClassTable | None:
    whole: dict[KeyPath, Table] = {}
    file = read_at(Place((), known, problems, whole), TableOf(ClassFile), raw)
    given = raw.get(_TABLE)
    if isinstance(given, dict):
        path = (_TABLE, "students")
        if "students" in given and "roster" in given:
            problem = "stands beside roster, which says who the students are."
            problems.add(path, problem, "Keep one of the two lines.")
        elif "students" not in given and "roster" not in given:
            mend = 'Add a line such as students = 12, or roster = "roster.csv".'
            problems.add(path, "is missing.", mend)
    table: ClassTable | None = None if file is None else file.values[_TABLE]
    return table


def _roster_path(raw: Mapping[str, Any]) -> str | None:
    table = raw.get(_TABLE)
    path = table.get("roster") if isinstance(table, dict) else None
    return path.strip() if isinstance(path, str) and path.strip() and path.isprintable() else None


def _course(table: ClassTable, students: tuple[Student, ...]) -> Course:
    count = table.students or 0
    return Course(
        name=table.name,
        revision=table.revision,
        date=table.date,
        seed=table.seed,
        level=table.level,
        language=table.language,
        units=table.units,
        students=students or tuple(Student(number=n, name="") for n in range(1, count + 1)),
        lathes=table.lathes,
        materials=table.materials,
        exercises=table.exercises,
        rules=table.rules,
    )


def _beside(file: str, path: str) -> str:
    """Return the name of the roster for messages: where it lies beside the class file."""
    folder = file.replace("\\", "/").rpartition("/")[0]
    return f"{folder}/{path}" if folder and not path.startswith("/") else path


def _sentence(words: str) -> str:
    return f"{words[:1].upper()}{words[1:]}" if words else _MEND
