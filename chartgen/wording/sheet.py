"""What the foot of a sheet of cards says: how to print, cut and laminate it."""

from dataclasses import dataclass
from enum import Enum

from chartgen.quantities import Millimetres


class Flip(Enum):
    """The edge about which a duplex printer turns an upright sheet."""

    LONG = "long"
    SHORT = "short"


class Lamination(Enum):
    """Whether each cut-out card gets a pouch of its own, or all lie in one of the sheet's size."""

    SINGLY = "singly"
    TOGETHER = "together"


@dataclass(frozen=True, slots=True, kw_only=True)
class Pouch:
    """A pouch as words: its name, its film and the least of film left around what lies in it."""

    name: str
    film: tuple[Millimetres[float], Millimetres[float]]
    edge: Millimetres[float]


RULE_WORDS = "100 mm above, 4 in below: if this rule is not true, print again at 100 %."


def sheet_words(
    *,
    paper: str,
    flip: Flip,
    lamination: Lamination,
    pouch: Pouch,
    gap: Millimetres[float],
    radius: Millimetres[float],
    hole: Millimetres[float] | None,
) -> tuple[str, ...]:
    """Return the sentences of a sheet's foot; `hole` is a diameter, or None for no hole."""
    film = f"{pouch.name} pouch ({pouch.film[0]:.0f} x {pouch.film[1]:.0f} mm)"
    words = [
        f"{paper}, both sides, flip on the {flip.value} edge.",
        f"Cut by the marks of this side; round the corners along the arcs, radius {radius:g} mm.",
    ]
    if lamination is Lamination.SINGLY:
        words.append(
            f"Cut first, then laminate each in its own {film}: leave the {pouch.edge:.1f} mm of "
            "film round the card, or the seal is lost."
        )
    else:
        words.append(
            f"Cut first, then lay all in one {film}, {gap:g} mm apart and {pouch.edge:g} mm from "
            f"its edge, laminate, and cut the film in the middle between them: {pouch.edge:g} mm "
            "of film must stay round each card. Only if the laminator's manual allows several "
            "pieces in one pouch."
        )
    if hole is not None:
        words.append(
            f"Hole: {hole:g} mm at the cross, after laminating; an eyelet keeps the card sealed."
        )
    return tuple(words)


def side_words(number: int, *, back: bool) -> str:
    """Return which side of which sheet this is."""
    return f"sheet {number}, {'back' if back else 'front'}"
