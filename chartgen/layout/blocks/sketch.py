"""The set-up drawn to scale: the largest standard scale that leaves room for the steps."""

from dataclasses import dataclass, replace

from chartgen.errors import TooSmallError
from chartgen.layout.blocks.job_body import job_of
from chartgen.layout.blocks.step_table import step_table
from chartgen.layout.dimension_lines import Along, across_items, across_width
from chartgen.layout.drawn_to_scale import SCALES, View, view_of
from chartgen.layout.layout_file import Layout
from chartgen.layout.legibility import CAP_HEIGHT, POINT
from chartgen.layout.piece import Piece, Setting
from chartgen.layout.placed import Align, Face, Item, Text
from chartgen.layout.pointing_labels import Labels, labels_of
from chartgen.layout.roles import figure_of, under
from chartgen.layout.set_up_drawing import drawn
from chartgen.quantities import Millimetres
from chartgen.wording.card import AnyCard
from chartgen.wording.language import tr
from chartgen.wording.printed_job import PrintedSketch

_BEYOND: Millimetres[float] = 3.0
_BELOW: Millimetres[float] = 1.0
_LEAST = 0.4
"""Share of a side that is left to the drawing if the steps are to stand on it whole."""
_SHARE = 0.55
"""Share of a side that the drawing may take where the steps go on overleaf."""


@dataclass(frozen=True, slots=True, kw_only=True)
class _Trial:
    """The sketch at one scale: all of it placed, and what it takes."""

    scale: str
    view: View
    labels: Labels
    along: Along
    width: Millimetres[float]
    height: Millimetres[float]


def sketch(card: AnyCard, layout: Layout, setting: Setting) -> list[Piece]:
    """Return the drawing as one piece.

    Raises
    ------
    TooSmallError
        If not even the smallest scale has room.
    """
    job = job_of(card, "sketch")
    room = setting.height
    if any({"sketch", "step-table"} <= set(side.blocks) for side in layout.sides):
        steps = sum(piece.height for piece in step_table(card, layout, setting))
        left = room - steps
        # Steps that would squeeze the drawing away go on overleaf, and it takes its share.
        room = left if left >= _LEAST * room else _SHARE * room
    for paper, real in SCALES:
        trial = _tried(
            job.sketch, paper / real, tr("Scale {paper}:{real}", paper=paper, real=real), setting
        )
        if trial.height <= room and trial.width <= setting.width:
            items = _items(job.sketch, trial, setting)
            whole = under(figure_of(job.title, job.sketch.description), items)
            return [Piece(height=trial.height, items=tuple(whole))]
    raise TooSmallError(
        f"layout {layout.name}: {setting.width:.0f} x {room:.0f} mm are left for the sketch of "
        f"'{job.title}' and at 1:{SCALES[-1][1]} it takes {trial.width:.0f} x "
        f"{trial.height:.0f}; "
    )


def _tried(body: PrintedSketch, scale: float, scale_name: str, setting: Setting) -> _Trial:
    view = view_of(body, scale)
    width = view.right + _BEYOND + across_width(body, setting)
    # The drawing with its dimensions stands in the middle of the side.
    shift = max(0.0, (setting.width - width) / 2.0)
    view = replace(
        view, origin=view.origin + shift, left=view.left + shift, right=view.right + shift
    )
    labels = labels_of(body, view, setting)
    along = Along(setting, setting.width)
    along.add_all(body, view)
    view = replace(view, axis=view.axis + labels.height)
    scale_words = setting.words * POINT * CAP_HEIGHT + 1.0
    below = along.height
    # The scale stands in the lower right corner, under a dimension that reaches there.
    if not below or along.rightmost > setting.width - setting.measure(
        scale_name, Face.REGULAR, setting.words
    ):
        below += scale_words
    height = labels.height + 2.0 * view.half + below + _BELOW
    return _Trial(
        scale=scale_name, view=view, labels=labels, along=along, width=width, height=height
    )


def _items(body: PrintedSketch, trial: _Trial, setting: Setting) -> list[Item]:
    view = trial.view
    edges = {
        round(view.x(end), 6): _lower_edge(body, view, end)
        for one in body.dimensions
        if one.axis == "along"
        for end in (one.start, one.end)
    }
    along, along_numbers = trial.along.items(view, edges)
    across, across_numbers = across_items(body, view, setting)
    lines, names = trial.labels.items(view.top)
    where = Text(
        x=setting.width,
        y=trial.height - _BELOW - 0.6,
        text=trial.scale,
        size=setting.words,
        align=Align.RIGHT,
    )
    # Texts last: a line that would cross one gives way to its paper.
    drawing = [*drawn(body, view), *along, *across, *lines]
    return [*drawing, *along_numbers, *across_numbers, *names, where]


def _lower_edge(body: PrintedSketch, view: View, end: float) -> Millimetres[float]:
    """Return how far down the work reaches at a place along the axis."""
    if end <= 0.0:
        return view.bottom
    found = [
        box
        for box in body.boxes
        if box.part in {"bar", "piece"} and box.x1 - 1e-6 <= end <= box.x2 + 1e-6
    ]
    return view.y(min((box.low for box in found), default=0.0))
