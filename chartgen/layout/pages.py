"""Page and pouch sizes in mm."""

from chartgen.quantities import Millimetres

# ISO 216; US sizes exact from inches. A badge card is what leaves the sealed edge in a badge
# film: 2.5 x 4.25 in, or 67 x 99 mm.
_PORTRAIT: dict[str, tuple[float, float]] = {
    "A3": (297.0, 420.0),
    "A4": (210.0, 297.0),
    "A5": (148.0, 210.0),
    "A6": (105.0, 148.0),
    "A7": (74.0, 105.0),
    "tabloid": (279.4, 431.8),
    "letter": (215.9, 279.4),
    "half-letter": (139.7, 215.9),
    "4x6": (101.6, 152.4),
    "3x5": (76.2, 127.0),
    "badge": (57.0, 101.0),
    "badge-67x99": (61.0, 93.0),
}
PAGES: tuple[str, ...] = (
    *_PORTRAIT,
    *(f"{name} {turn}" for name in _PORTRAIT for turn in ("portrait", "landscape")),
)

# The film of a laminating pouch is larger than its card by the sealed edge all round. A4 to A7
# and both badges as sellers list them; A3, tabloid and 3x5 from memory; of the photo films
# sold for 4x6 the smaller; letter as sellers list it.
POUCHES: dict[str, tuple[float, float]] = {
    "A3": (303.0, 426.0),
    "A4": (216.0, 303.0),
    "A5": (154.0, 216.0),
    "A6": (111.0, 154.0),
    "A7": (80.0, 111.0),
    "tabloid": (292.1, 444.5),
    "letter": (228.6, 292.1),
    "4x6": (107.95, 158.75),
    "3x5": (88.9, 139.7),
    "badge": (63.5, 107.95),
    "badge-67x99": (67.0, 99.0),
}
NO_POUCH = "none"

SEALED_EDGE: Millimetres[float] = 3.0
PRINTER_MARGIN: Millimetres[float] = 6.5
"""No printer prints to the edge: nothing stands nearer to it than this."""
CUT_MARGIN: Millimetres[float] = 4.0
"""A card cut from a larger sheet: front and back of a sheet are up to 3 mm off each other."""

# No printer feeds paper of these sizes.
_CUT_FROM_A_SHEET = frozenset({"A7", "badge", "badge-67x99"})


def page_size(text: str) -> tuple[Millimetres[float], Millimetres[float]]:
    """Return width and height of a page such as "A5 landscape" [mm].

    Raises
    ------
    ValueError
        If there is no such page.
    """
    if text not in PAGES:
        raise ValueError(
            f"{text!r} is no page; use one of {', '.join(_PORTRAIT)}, "
            "followed by 'portrait' or 'landscape'"
        )
    name, _, turn = text.partition(" ")
    width, height = _PORTRAIT[name]
    return (height, width) if turn == "landscape" else (width, height)


def least_margin(text: str) -> Millimetres[float]:
    """Return how near to the edge of a page such as "A5 landscape" something may stand [mm]."""
    return CUT_MARGIN if text.partition(" ")[0] in _CUT_FROM_A_SHEET else PRINTER_MARGIN


def fits_pouch(page: tuple[float, float], pouch: str) -> bool:
    """Return whether a page leaves the sealed edge of a pouch free on every side."""
    if pouch == NO_POUCH:
        return True
    film = sorted(POUCHES[pouch])
    card = sorted(page)
    # A hundredth of a millimetre for sizes in inches.
    return all(c + 2.0 * SEALED_EDGE <= f + 0.01 for c, f in zip(card, film, strict=True))


def pouches_for(page: tuple[float, float]) -> tuple[str, ...]:
    """Return the pouches that a page fits, the smallest first."""
    fitting = [name for name in POUCHES if fits_pouch(page, name)]
    return tuple(sorted(fitting, key=lambda name: POUCHES[name][0] * POUCHES[name][1]))


def page_name(page: tuple[Millimetres[float], Millimetres[float]]) -> str:
    """Return the name of a page size, such as "A6 landscape"."""
    width, height = page
    for name, (short, long) in _PORTRAIT.items():
        if (width, height) == (short, long):
            return f"{name} portrait"
        if (width, height) == (long, short):
            return f"{name} landscape"
    return f"{width:g} x {height:g} mm"


def film_edge(page: tuple[float, float], pouch: str) -> Millimetres[float]:
    """Return how much film a pouch leaves around a page lying in its middle [mm], at its least."""
    film, card = sorted(POUCHES[pouch]), sorted(page)
    return min(f - c for f, c in zip(film, card, strict=True)) / 2.0
