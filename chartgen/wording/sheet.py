"""What the foot of a sheet of cards says: how to print, cut and laminate it."""

from dataclasses import dataclass
from enum import Enum

from chartgen.quantities import Millimetres
from chartgen.wording.language import decimal, tr


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


def rule_words() -> str:
    """Return what stands beside the rule of a sheet."""
    return tr("100 mm above, 4 in below: if this rule is not true, print again at 100 %.")


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
    film = tr(
        "{name} pouch ({width} x {height} mm)",
        name=pouch.name,
        width=f"{pouch.film[0]:.0f}",
        height=f"{pouch.film[1]:.0f}",
    )
    words = [
        tr("{paper}, both sides, flip on the long edge.", paper=paper)
        if flip is Flip.LONG
        else tr("{paper}, both sides, flip on the short edge.", paper=paper),
        tr(
            "Cut by the marks of this side; round the corners along the arcs, radius {radius} mm.",
            radius=decimal(f"{radius:g}"),
        ),
    ]
    if lamination is Lamination.SINGLY:
        words.append(
            tr(
                "Cut first, then laminate each in its own {film}: leave the {edge} mm of film "
                "round the card, or the seal is lost.",
                film=film,
                edge=decimal(f"{pouch.edge:.1f}"),
            )
        )
    else:
        words.append(
            tr(
                "Cut first, then lay all in one {film}, {gap} mm apart and {edge} mm from its "
                "edge, laminate, and cut the film in the middle between them: {edge} mm of film "
                "must stay round each card. Only if the laminator's manual allows several pieces "
                "in one pouch.",
                film=film,
                gap=decimal(f"{gap:g}"),
                edge=decimal(f"{pouch.edge:g}"),
            )
        )
    if hole is not None:
        words.append(
            tr(
                "Hole: {hole} mm at the cross, after laminating; an eyelet keeps the card sealed.",
                hole=decimal(f"{hole:g}"),
            )
        )
    return tuple(words)


def side_words(number: int, *, back: bool) -> str:
    """Return which side of which sheet this is."""
    if back:
        return tr("sheet {number}, back", number=number)
    return tr("sheet {number}, front", number=number)
