"""How many pieces a bar gives: length, kerf, facing, and what stays in the jaws.

A bar that goes through the spindle is advanced piece by piece, and only the last grip of it
is lost. One that does not is sawn into blanks first; each of them loses a grip.
"""

import math

from chartgen.physics.bar import pieces_from_length
from chartgen.physics.turning import mass, ring_volume
from chartgen.planning.machine import Machine
from chartgen.planning.plan import BarUse
from chartgen.quantities import CubicMm, Kilograms, Millimetres

_SLIP = 1e-9


def goes_through(machine: Machine) -> bool | None:
    """Return whether the bar goes through the spindle; None where nobody said how wide it is."""
    hole = machine.shop.lathe.spindle_bore
    return None if hole is None else machine.job.bar.diameter <= hole


def jaw_distance(machine: Machine) -> Millimetres[float]:
    """Return how far from the jaws the near side of the cut stands."""
    asked = machine.shop.work.jaw_distance
    return machine.allowances.jaw_distance if asked is None else asked


def grip_length(machine: Machine) -> Millimetres[float]:
    """Return the length of bar inside the jaws: as the job says, or the allowance."""
    return machine.job.holding.grip_length or machine.allowances.grip_length


def pitch_of(machine: Machine, *, kerf: Millimetres[float]) -> Millimetres[float]:
    """Return how much bar one piece uses up."""
    return machine.job.piece.length + kerf + machine.allowances.facing_stock


def pieces_a_blank(machine: Machine, *, kerf: Millimetres[float]) -> int:
    """Return how many pieces a sawn blank may hold: as many as may stand out of the jaws.

    The bar may stand out no further than it may without a centre, and the outermost piece is
    parted no further from the jaws than the bar is thick. No blank is longer than the bar.
    """
    bar, nearest = machine.job.bar.diameter, jaw_distance(machine)
    pitch = pitch_of(machine, kerf=kerf)
    by_overhang = (machine.allowances.overhang_most * bar - nearest) / pitch
    by_parting = 1.0 + (machine.allowances.parting_distance * bar - nearest - kerf) / pitch
    by_bar = (machine.job.bar.length - grip_length(machine) - nearest) / pitch
    most = max(1, math.floor(min(by_overhang, by_parting, by_bar) + _SLIP))
    return min(most, machine.job.quantity)


def cut_distance(machine: Machine, *, kerf: Millimetres[float]) -> Millimetres[float]:
    """Return how far from the jaws the near side of the outermost cut stands."""
    if goes_through(machine) is not False:
        return jaw_distance(machine)
    more = pieces_a_blank(machine, kerf=kerf) - 1
    return jaw_distance(machine) + more * pitch_of(machine, kerf=kerf)


def pieces_from(machine: Machine, *, kerf: Millimetres[float]) -> int:
    """Return how many pieces one bar gives with a cut of a width."""
    pitch, held = pitch_of(machine, kerf=kerf), grip_length(machine) + jaw_distance(machine)
    length = machine.job.bar.length
    if goes_through(machine) is not False:
        return int(pieces_from_length(bar_length=length, held_length=held, pitch=pitch))
    blanks, last = _blanks(machine, kerf=kerf)
    return blanks * pieces_a_blank(machine, kerf=kerf) + last


def _blanks(machine: Machine, *, kerf: Millimetres[float]) -> tuple[int, int]:
    """Return the whole blanks a bar gives and the pieces of a shorter last one."""
    pitch, held = pitch_of(machine, kerf=kerf), grip_length(machine) + jaw_distance(machine)
    saw, length = machine.allowances.saw_kerf, machine.job.bar.length
    blank = blank_length(machine, kerf=kerf)
    whole = math.floor((length + saw) / (blank + saw) + _SLIP)
    rest = length - whole * (blank + saw)
    last = int(pieces_from_length(bar_length=rest, held_length=held, pitch=pitch))
    return whole, min(last, pieces_a_blank(machine, kerf=kerf))


def blank_length(machine: Machine, *, kerf: Millimetres[float]) -> Millimetres[float]:
    """Return the length of one sawn blank: its pieces and what stays in the jaws."""
    held = grip_length(machine) + jaw_distance(machine)
    return held + pieces_a_blank(machine, kerf=kerf) * pitch_of(machine, kerf=kerf)


def blanks_of(machine: Machine, *, kerf: Millimetres[float], pieces: int) -> int:
    """Return the blanks that so many pieces of one bar come from, the shorter last one too."""
    if goes_through(machine) is not False:
        return 1
    return -(-pieces // pieces_a_blank(machine, kerf=kerf))


def is_sawn(machine: Machine, *, kerf: Millimetres[float]) -> bool:
    """Return whether blanks are sawn off the bar, because it does not go through the spindle.

    A bar that is hardly longer than one blank goes into the jaws as it is.
    """
    if goes_through(machine) is not False:
        return False
    spare = machine.job.bar.length - blank_length(machine, kerf=kerf)
    return spare > machine.allowances.saw_kerf


def bar_use(machine: Machine, *, kerf: Millimetres[float]) -> BarUse:
    """Return what the bars of a job give, and what becomes of them."""
    pieces, quantity = pieces_from(machine, kerf=kerf), machine.job.quantity
    pitch, length = pitch_of(machine, kerf=kerf), machine.job.bar.length
    through = goes_through(machine) is not False
    per_blank = pieces if through else pieces_a_blank(machine, kerf=kerf)
    bars = math.ceil(quantity / pieces) if pieces else 0
    last = quantity - (bars - 1) * pieces if bars else 0
    blank = length if through else blank_length(machine, kerf=kerf)
    piece = piece_volume(machine)
    density = machine.material.density.value
    chips = (
        float(
            ring_volume(outer_diameter=machine.job.bar.diameter, inner_diameter=0.0, length=pitch)
        )
        - piece
    )
    return BarUse(
        pieces=pieces,
        pitch=pitch,
        remnant=length - pieces * pitch if through else blank - per_blank * pitch,
        blanks=(bars - 1) * blanks_of(machine, kerf=kerf, pieces=pieces)
        + blanks_of(machine, kerf=kerf, pieces=last)
        if bars
        else 0,
        blank_length=blank,
        pieces_a_blank=per_blank,
        bars=bars,
        pieces_of_last=last,
        piece_mass=_mass(piece, density),
        chips=chips,
        chips_mass=_mass(chips, density),
    )


def piece_volume(machine: Machine) -> CubicMm[float]:
    """Return the volume of the finished piece, its chamfers left out of account."""
    piece = machine.job.piece
    whole = float(
        ring_volume(outer_diameter=piece.diameter, inner_diameter=piece.bore, length=piece.length)
    )
    if piece.groove is None:
        return whole
    inside = piece.diameter - 2.0 * piece.groove.depth
    return whole - float(
        ring_volume(outer_diameter=piece.diameter, inner_diameter=inside, length=piece.groove.width)
    )


def _mass(volume: CubicMm[float], density: float) -> Kilograms[float]:
    return float(mass(volume=volume, density=density))
