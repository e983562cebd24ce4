"""A job as strings: what the set-up card, the batch card and the terminal all show."""

from dataclasses import dataclass
from typing import Literal

from chartgen.quantities import Millimetres
from chartgen.wording.signs import LegendEntry

Part = Literal["chuck", "jaws", "bar", "piece", "cut", "bore", "blade", "groove", "centre"]


@dataclass(frozen=True, slots=True, kw_only=True)
class SketchBox:
    """A part of the set-up seen from the side: along the axis and out from it, in mm.

    `x` runs from the face of the jaws towards the tailstock; `low` and `high` are radii,
    negative below the axis.
    """

    part: Part
    x1: Millimetres[float]
    x2: Millimetres[float]
    low: Millimetres[float]
    high: Millimetres[float]


@dataclass(frozen=True, slots=True, kw_only=True)
class SketchDimension:
    """A dimension of the sketch: along the axis below the bar, or across it at its end."""

    axis: Literal["along", "across"]
    start: Millimetres[float]
    end: Millimetres[float]
    text: str


@dataclass(frozen=True, slots=True, kw_only=True)
class PrintedSketch:
    """The set-up drawn to scale; `description` says it in words."""

    boxes: tuple[SketchBox, ...]
    dimensions: tuple[SketchDimension, ...]
    labels: tuple[tuple[Millimetres[float], Millimetres[float], str], ...]
    description: str


@dataclass(frozen=True, slots=True, kw_only=True)
class PrintedStep:
    """One step. `cells` stand in the table's columns; the rest is read step by step."""

    number: str
    what: str
    cells: tuple[str, ...]
    lines: tuple[str, ...]
    watch: str


@dataclass(frozen=True, slots=True, kw_only=True)
class PrintedJob:
    """A job after rounding: everything the cards and the terminal place.

    `right` names the columns of the step table aligned right, counted with number and step.
    `facts` are name and text: hold, bar, pieces, time, blade. `boxes` are the ticks of a batch
    card, empty on a set-up card; `wear` says when to look at which edge, `wear_marks` after
    which box, counted from 1, and by what sign the line of `wear` begins. `measures` are what
    is to be measured on the first piece, and what is wanted of it.
    """

    title: str
    subtitle: str
    sketch: PrintedSketch
    headings: tuple[str, ...]
    right: frozenset[int]
    steps: tuple[PrintedStep, ...]
    facts: tuple[tuple[str, str], ...]
    checklist: tuple[str, ...]
    dig_in: tuple[str, ...]
    notes: tuple[str, ...]
    wear: tuple[str, ...]
    boxes: tuple[str, ...]
    legend: tuple[LegendEntry, ...]
    wear_marks: tuple[tuple[int, str], ...] = ()
    measures: tuple[tuple[str, str], ...] = ()

    @property
    def rows(self) -> tuple[tuple[str, ...], ...]:
        """The step table's rows."""
        return tuple((step.number, step.what, *step.cells) for step in self.steps)
