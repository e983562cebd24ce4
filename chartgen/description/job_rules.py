"""What cannot be true together in one job file: each contradiction at its line, with its mend.

Each rule looks only at tables that are sound, so that one fault does not hide another.
"""

from collections.abc import Mapping
from typing import TypeVar

from chartgen.description.job_tables import (
    BarTable,
    ChoiceTable,
    GrooveTable,
    HoldingTable,
    PieceTable,
)
from chartgen.description.problems import KeyPath, Problems
from chartgen.description.tables import Table

SomeTable = TypeVar("SomeTable", bound=Table)


def note_contradictions(whole: Mapping[KeyPath, Table], problems: Problems) -> None:
    """Note everything that the sound tables of a job file cannot mean together."""
    bar = _sound(BarTable, whole, ("bar",))
    piece = _sound(PieceTable, whole, ("piece",))
    holding = _sound(HoldingTable, whole, ("holding",))
    groove = _sound(GrooveTable, whole, ("piece", "groove"))
    choice = _sound(ChoiceTable, whole, ("tools",))
    if bar:
        _of_bar(bar, problems)
    if piece:
        _of_piece(piece, problems)
    if piece and groove:
        _of_groove(groove, piece, problems)
    if bar and piece:
        _of_piece_in_bar(piece, bar, problems)
    if bar and holding and holding.grip_length is not None:
        _of_grip(holding.grip_length, bar, piece, problems)
    if piece and choice and choice.boring_bar is not None and piece.bore == 0.0:
        problems.add(
            ("tools", "boring_bar"),
            "has no effect: the piece has no bore.",
            "Leave it out, or give the bore under [piece].",
        )


def _sound(
    kind: type[SomeTable], whole: Mapping[KeyPath, Table], path: KeyPath
) -> SomeTable | None:
    table = whole.get(path)
    return table if isinstance(table, kind) else None


def _of_bar(bar: BarTable, problems: Problems) -> None:
    if bar.behind >= bar.length:
        problems.add(
            ("bar", "behind"),
            f"is {bar.behind:g} mm, but the whole bar is only {bar.length:g} mm long.",
            "Give what of the bar may stand out behind the spindle; check both.",
        )
    if bar.run_out is not None and bar.run_out >= bar.diameter / 2.0:
        problems.add(
            ("bar", "run_out"),
            f"is {bar.run_out:g} mm on a bar of {bar.diameter:g} mm: no chuck holds it so.",
            "Give how far the dial gauge moves in one turn; check the unit.",
        )


def _of_piece(piece: PieceTable, problems: Problems) -> None:
    if piece.bore >= piece.diameter:
        problems.add(
            ("piece", "bore"),
            f"is {piece.bore:g} mm in a piece of {piece.diameter:g} mm: nothing would be left.",
            "Give a bore smaller than the diameter; check which is which.",
        )
        return
    wall = (piece.diameter - piece.bore) / 2.0
    if piece.chamfer >= wall:
        problems.add(
            ("piece", "chamfer"),
            f"is {piece.chamfer:g} mm, but from the outside to the "
            f"{'bore' if piece.bore else 'centre'} there are only {wall:g} mm.",
            "Give the width of the chamfer, as in '0.5 mm'.",
        )
    if 2.0 * piece.chamfer >= piece.length:
        problems.add(
            ("piece", "chamfer"),
            f"is {piece.chamfer:g} mm at both ends of a piece {piece.length:g} mm long: "
            "nothing of its outside would be left.",
            "Give a smaller chamfer, or leave it out.",
        )


def _of_groove(groove: GrooveTable, piece: PieceTable, problems: Problems) -> None:
    wall = (piece.diameter - piece.bore) / 2.0
    if 0.0 < wall <= groove.depth:
        problems.add(
            ("piece", "groove", "depth"),
            f"is {groove.depth:g} mm and cuts through to the "
            f"{'bore' if piece.bore else 'centre'}, which is {wall:g} mm deep.",
            "Give the depth off the radius, half of what the diameter loses.",
        )
    if groove.from_face + groove.width >= piece.length:
        problems.add(
            ("piece", "groove", "from_face"),
            f"puts the groove from {groove.from_face:g} to {groove.from_face + groove.width:g} "
            f"mm, not inside the piece, which is {piece.length:g} mm long.",
            "Measure from the finished front face to the near side of the groove.",
        )


def _of_piece_in_bar(piece: PieceTable, bar: BarTable, problems: Problems) -> None:
    if piece.diameter > bar.diameter:
        problems.add(
            ("piece", "diameter"),
            f"is {piece.diameter:g} mm, thicker than the bar of {bar.diameter:g} mm.",
            "Take a thicker bar, or check which diameter is which.",
        )
    if piece.length >= bar.length:
        problems.add(
            ("piece", "length"),
            f"is {piece.length:g} mm, not shorter than the bar of {bar.length:g} mm.",
            "Take a longer bar, or check which length is which.",
        )


def _of_grip(
    grip_length: float, bar: BarTable, piece: PieceTable | None, problems: Problems
) -> None:
    if grip_length >= bar.length:
        problems.add(
            ("holding", "grip_length"),
            f"is {grip_length:g} mm, not shorter than the bar of {bar.length:g} mm.",
            "Give how much bar lies inside the jaws.",
        )
    elif piece and piece.length < bar.length <= grip_length + piece.length:
        problems.add(
            ("holding", "grip_length"),
            f"is {grip_length:g} mm: with the piece of {piece.length:g} mm that is the whole bar "
            f"of {bar.length:g} mm, and no room is left to part it off.",
            "Take a longer bar, or grip less of it.",
        )
