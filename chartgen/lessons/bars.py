"""Exercises of material: pieces from a bar."""

import numpy as np

from chartgen.lessons.cells import Cells
from chartgen.lessons.choices import Choices, choices
from chartgen.lessons.class_units import COUNT
from chartgen.lessons.exercise import Exercise, Given, Working
from chartgen.lessons.kinds import Kind, Slip
from chartgen.lessons.place import Place
from chartgen.physics.bar import pieces_from_length

_BARS = {True: (250.0, 500.0, 750.0, 1000.0, 1500.0, 2000.0, 3000.0), False: (12.0, 24.0, 36.0)}
_PIECES = {True: np.arange(12.0, 60.5, 0.5), False: np.arange(0.5, 2.5, 1.0 / 16.0)}
_LEAST_PIECES = 4
_CLEAR = 0.08
"""Share of a piece that is left over, and that the next one lacks."""


def pieces_per_bar_choices(cells: Cells) -> Choices:
    """Return bars and pieces for which no rounding on the way changes the count."""
    units, allowances = cells.units, cells.case.allowances
    metric = units.mm == 1.0
    bar = np.array(_BARS[metric]).reshape(1, 1, -1, 1)
    piece = np.round(_PIECES[metric], 4)
    kerf = np.round(cells.windows.grid.width / units.mm, units.length_decimals)
    facing = round(allowances.facing_stock / units.mm, 2)
    jaws = cells.shop.work.jaw_distance or allowances.jaw_distance
    held = (allowances.grip_length + jaws) / units.mm
    # As a rule would read it, rounded up: whole millimetres, eighths of an inch.
    part = 1.0 if metric else 8.0
    held = np.ceil(held * part - 1e-6) / part
    share = (bar - held) / (piece + kerf + facing)
    rest = share % 1.0
    where = (share >= _LEAST_PIECES) & (rest >= _CLEAR) & (rest <= 1.0 - _CLEAR)
    # Whoever forgets kerf or remnant is to notice.
    whole = np.floor(share)
    where &= (bar - held) / (piece + facing) >= whole + 1.0
    where &= bar / (piece + kerf + facing) >= whole + 1.0
    one = np.ones((1, 1, 1, 1))
    any_window = np.asarray(cells.windows.has_window.any(axis=2))[..., np.newaxis, np.newaxis]
    return choices(
        {
            "bar_length": bar,
            "piece_length": piece,
            "kerf": kerf,
            "facing": facing * one,
            "held": held * one,
        },
        material=cells.material,
        blade=cells.blade,
        where=where & any_window,
    )


def pieces_per_bar(
    place: Place,
    *,
    bar_length: float,
    piece_length: float,
    kerf: float,
    facing: float,
    held: float,
) -> Exercise:
    """Ask how many pieces a bar gives; `held` is what stays in and before the jaws."""
    mm = place.units.mm

    def count(*, held: float, kerf: float) -> float:
        pitch = (piece_length + kerf + facing) * mm
        return float(
            pieces_from_length(bar_length=bar_length * mm, held_length=held * mm, pitch=pitch)
        )

    bar = place.length("bar-length", bar_length)
    remnant = place.length("held", held)
    parts = (
        place.length("piece-length", piece_length),
        place.length("kerf", kerf),
        place.length("facing", facing),
    )
    pitch = piece_length + kerf + facing
    pieces = count(held=held, kerf=kerf)
    return place.numeric(
        Kind.PIECES_PER_BAR,
        givens=(bar, *parts, remnant),
        value=pieces,
        unit=COUNT,
        slips=[
            (Slip.WITHOUT_KERF, count(held=held, kerf=0.0)),
            (Slip.WITHOUT_REMNANT, count(held=0.0, kerf=kerf)),
            (Slip.ROUNDED_UP, pieces + 1.0),
            (Slip.FACTOR_TEN, 10.0 * pieces),
        ],
        working=(
            Working(key="pitch", values=parts, result=pitch, unit=place.units.length),
            Working(
                key="pieces",
                values=(
                    bar,
                    remnant,
                    Given(key="pitch", value=pitch, unit=place.units.length),
                ),
                result=pieces,
                unit=COUNT,
            ),
        ),
    )
