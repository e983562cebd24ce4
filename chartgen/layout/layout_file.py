"""A layout file: text in, the layout out, or every fault of the file at once."""

import tomllib
from collections.abc import Sequence
from dataclasses import dataclass
from functools import cache, lru_cache
from pathlib import Path
from typing import Any

from chartgen.description.known import Known
from chartgen.description.problems import KeyPath, Problems
from chartgen.description.tables import Place, TableOf, read_at
from chartgen.description.toml_text import parsed
from chartgen.errors import DescriptionError
from chartgen.layout.layout_schema import LayoutTable, problems_between_keys
from chartgen.layout.pages import page_size
from chartgen.quantities import Millimetres

# Cards about two shops, of a job, and of a class: no shop file can ask for one.
_OF_TWO_SHOPS = ("change-card",)
_OF_A_JOB = ("set-up-card", "batch-card")
OF_A_CLASS = (
    "student-card",
    "exercise-sheet",
    "answer-key",
    "answer-matrix",
    "safety-quiz",
    "sign-off-card",
    "class-marks",
)
_EXAMPLE = "lathe-chart-a5"
_NOTHING_KNOWN = Known(materials=(), layouts=(), allowances={}, transmission=(), dc_no_load=0.0)


@dataclass(frozen=True, slots=True, kw_only=True)
class Side:
    """One side of a card: blocks flow down its columns, the foot stands at the bottom."""

    reading_distance: Millimetres[float]
    margin: Millimetres[float]
    columns: int
    blocks: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Layout:
    """How one kind of card stands on paper.

    `cell` says which numbers a table cell shows; `rule_every` sets a thin rule after so many
    rows; `row_pitch` is the line pitch over the font size. `page_name` is the page in words.
    """

    name: str
    title: str
    card: str
    page_name: str
    page: tuple[Millimetres[float], Millimetres[float]]
    pouch: str
    cell: tuple[str, ...]
    row_pitch: float
    rule_every: int
    sides: tuple[Side, ...]


@cache
def layout_names() -> tuple[str, ...]:
    """Return the names of the layouts that came with the program and a shop file may name."""
    others = (*_OF_TWO_SHOPS, *_OF_A_JOB, *OF_A_CLASS)
    return tuple(name for name in every_layout_name() if not name.startswith(others))


@cache
def change_layout_names() -> tuple[str, ...]:
    """Return the names of the layouts of a change card, which `compare` makes."""
    return tuple(name for name in every_layout_name() if name.startswith(_OF_TWO_SHOPS))


@cache
def job_layout_names() -> tuple[str, ...]:
    """Return the names of the layouts of a job's cards, which `job` makes."""
    return tuple(name for name in every_layout_name() if name.startswith(_OF_A_JOB))


@cache
def class_layout_names() -> tuple[str, ...]:
    """Return the names of the layouts of what a class is handed, which `class` and `mark` make."""
    return tuple(name for name in every_layout_name() if name.startswith(OF_A_CLASS))


@cache
def every_layout_name() -> tuple[str, ...]:
    """Return the names of all layouts that came with the program."""
    folder = _folder()
    return tuple(
        sorted(
            entry.name[: -len(".toml")]
            for entry in folder.iterdir()
            if entry.name.endswith(".toml")
        )
    )


def layout_text(name: str) -> str:
    """Return the file of a layout that came with the program, as it stands."""
    return _folder().joinpath(f"{name}.toml").read_text("utf-8")


@cache
def load_layout(name: str) -> Layout:
    """Return a layout that came with the program."""
    return parse_layout(layout_text(name), file=f"{name}.toml", name=name)


def layout_called(name: str, own: Sequence[tuple[str, str]]) -> Layout:
    """Return a layout by its name: one of the owner's own, by name and text, or a shipped one."""
    for owned, text in own:
        if owned == name:
            return _parsed_once(text, name)
    return load_layout(name)


@lru_cache(maxsize=32)
def _parsed_once(text: str, name: str) -> Layout:
    return parse_layout(text, file=f"{name}.toml", name=name)


def parse_layout(text: str, *, file: str, name: str) -> Layout:
    """Return the layout that a file's text describes.

    Raises
    ------
    DescriptionError
        With every fault found, in the order of the lines.
    """
    try:
        raw = tomllib.loads(text)
    except (ValueError, RecursionError):
        from chartgen.layout.layout_form import LAYOUT_FORM  # noqa: PLC0415 - words for a fault

        raw = parsed(text, file=file, form=LAYOUT_FORM)
    problems, whole = Problems(), dict[KeyPath, Any]()
    table = read_at(Place((), _NOTHING_KNOWN, problems, whole), TableOf(LayoutTable), raw)
    if table is not None:
        problems.found += problems_between_keys(table)
    if table is None or problems.found:
        from chartgen.description.complaints import faults_of  # noqa: PLC0415 - words for a fault
        from chartgen.layout.layout_form import LAYOUT_FORM  # noqa: PLC0415 - words for a fault

        raise DescriptionError(faults_of(problems.found, file=file, text=text, form=LAYOUT_FORM))
    return Layout(
        name=name,
        title=table.title,
        card=table.card,
        page_name=table.page,
        page=page_size(table.page),
        pouch=table.pouch,
        cell=table.cell,
        row_pitch=table.row_pitch,
        rule_every=table.rule_every,
        sides=tuple(
            Side(
                reading_distance=side.reading_distance,
                margin=side.margin,
                columns=side.columns,
                blocks=side.blocks,
            )
            for side in table.side
        ),
    )


def example_value(path: KeyPath) -> object:
    """Return what a shipped layout has at `path`, for the mend of a fault; None if nothing."""
    value: Any = tomllib.loads(layout_text(_EXAMPLE))
    for part in path:
        try:
            value = value[0 if isinstance(part, int) else part]
        except (KeyError, IndexError, TypeError):
            return None
    return value


def _folder() -> Path:
    """Return the layouts: inside the installed package, or beside it in a checkout."""
    installed = Path(__file__).parents[1] / "layout_files"
    return installed if installed.is_dir() else Path(__file__).parents[2] / "layouts"
