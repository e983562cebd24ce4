"""The card's font: found without importing its package, measured, embedded.

One condensed sans with tabular figures. A character it lacks is drawn from the fallback;
one that both lack is refused by name, never printed as an empty box.
"""

from functools import cache, lru_cache
from importlib.util import find_spec
from pathlib import Path

from reportlab.pdfbase import pdfmetrics
from reportlab.pdfbase.ttfonts import TTFont

from chartgen.errors import ChartgenError
from chartgen.layout.legibility import POINT
from chartgen.layout.placed import Face
from chartgen.quantities import Millimetres

_FAMILY = "IBMPlexSansCondensed"
_PACKAGE = "fontpkg_ibm_plex_sans_condensed"
_FALLBACK = "DejaVuSans"
_FALLBACK_PACKAGE = "matplotlib"
_TEXTS = 2**12
"""How many texts are remembered: those of many cards, not of thousands of students."""


@cache
def font_name(face: Face) -> str:
    """Return the name a face is registered under, registering it at first use."""
    name = f"{_FAMILY}-{face.value}"
    path = _package_folder(_PACKAGE) / "files" / f"{name}.ttf"
    pdfmetrics.registerFont(TTFont(name, str(path)))
    return name


@cache
def fallback_name() -> str:
    """Return the name of the fallback font, registering it at first use."""
    folder = _package_folder(_FALLBACK_PACKAGE) / "mpl-data" / "fonts" / "ttf"
    pdfmetrics.registerFont(TTFont(_FALLBACK, str(folder / f"{_FALLBACK}.ttf")))
    return _FALLBACK


@lru_cache(maxsize=_TEXTS)
def runs(text: str, face: Face) -> tuple[tuple[str, str], ...]:
    """Return the text as (font name, part), cut where a character needs the fallback.

    Raises
    ------
    ChartgenError
        If neither font has a character.
    """
    main = font_name(face)
    if all(ord(c) in _glyphs(main) for c in text):
        return ((main, text),)
    parts: list[tuple[str, str]] = []
    for character in text:
        name = main if ord(character) in _glyphs(main) else fallback_name()
        if ord(character) not in _glyphs(name):
            raise ChartgenError(
                f"no font here has the character {character!r} (U+{ord(character):04X}) of "
                f"{text!r}; write it another way"
            )
        if parts and parts[-1][0] == name:
            parts[-1] = (name, parts[-1][1] + character)
        else:
            parts.append((name, character))
    return tuple(parts)


@lru_cache(maxsize=_TEXTS)
def measure(text: str, face: Face, size: float) -> Millimetres[float]:
    """Return the width of a text [mm] at a font size [pt]."""
    points = sum(pdfmetrics.stringWidth(part, name, size) for name, part in runs(text, face))
    return float(points) * POINT


def lacking(text: str) -> tuple[str, ...]:
    """Return the characters of a text that neither the card's font nor the fallback has."""
    faces = [_glyphs(font_name(face)) for face in Face]
    return tuple(
        character
        for character in dict.fromkeys(text)
        if not all(ord(character) in glyphs for glyphs in faces)
        and ord(character) not in _glyphs(fallback_name())
    )


@cache
def _glyphs(name: str) -> frozenset[int]:
    return frozenset(pdfmetrics.getFont(name).face.charToGlyph)


def _package_folder(package: str) -> Path:
    spec = find_spec(package)
    if spec is None or not spec.submodule_search_locations:
        raise ChartgenError(f"the font package {package} is not installed; install chartgen again")
    return Path(spec.submodule_search_locations[0])
