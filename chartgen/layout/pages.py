"""Page and pouch sizes in mm."""

from chartgen.quantities import Millimetres

# ISO 216; US sizes exact from inches.
_PORTRAIT: dict[str, tuple[float, float]] = {
    "A3": (297.0, 420.0),
    "A4": (210.0, 297.0),
    "A5": (148.0, 210.0),
    "A6": (105.0, 148.0),
    "A7": (74.0, 105.0),
    "letter": (215.9, 279.4),
    "half-letter": (139.7, 215.9),
    "4x6": (101.6, 152.4),
    "3x5": (76.2, 127.0),
}

# The film of a laminating pouch is larger than its card by the sealed edge all round.
POUCHES: dict[str, tuple[float, float]] = {
    "A4": (216.0, 303.0),
    "A5": (154.0, 216.0),
    "A6": (111.0, 154.0),
    "A7": (80.0, 111.0),
}

SEALED_EDGE: Millimetres[float] = 3.0
PRINTER_MARGIN: Millimetres[float] = 6.5
"""No printer prints to the edge: nothing stands nearer to it than this."""


def page_size(text: str) -> tuple[Millimetres[float], Millimetres[float]]:
    """Return width and height of a page such as "A5 landscape" [mm].

    Raises
    ------
    ValueError
        If there is no such page.
    """
    name, _, turn = text.partition(" ")
    if name not in _PORTRAIT or turn not in {"", "portrait", "landscape"}:
        raise ValueError(
            f"{text!r} is no page; use one of {', '.join(_PORTRAIT)}, "
            "followed by 'portrait' or 'landscape'"
        )
    width, height = _PORTRAIT[name]
    return (height, width) if turn == "landscape" else (width, height)


def fits_pouch(page: tuple[float, float], pouch: str) -> bool:
    """Return whether a page leaves the sealed edge of a pouch free on every side."""
    film = sorted(POUCHES[pouch])
    card = sorted(page)
    return all(c + 2.0 * SEALED_EDGE <= f for c, f in zip(card, film, strict=True))


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
