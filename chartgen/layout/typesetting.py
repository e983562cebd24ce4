"""Widths and wrapping. The measure comes from the renderer, which owns the font."""

import re
from collections.abc import Callable

from chartgen.errors import TooSmallError
from chartgen.layout.placed import Face
from chartgen.quantities import Millimetres

_NO_BREAK = "\N{NO-BREAK SPACE}"
_BREAKS = re.compile(r"[ \t\n]+")

Measure = Callable[[str, Face, float], Millimetres[float]]
"""Width [mm] of a text in a face at a size [pt]."""


def counted(number: int, thing: str) -> str:
    """Return a number of things in words: "1 blade", "2 blades"."""
    return f"{number} {thing}" if number == 1 else f"{number} {thing}s"


def one_line(
    text: str, *, width: Millimetres[float], face: Face, size: float, measure: Measure
) -> Millimetres[float]:
    """Return the width of a text that must stand on one line.

    Raises
    ------
    TooSmallError
        If it is wider than the line.
    """
    needed = measure(text, face, size)
    if needed > width:
        raise TooSmallError(
            f"{text!r} is {needed:.0f} mm wide and its line only {width:.0f} mm; shorten it or "
        )
    return needed


def _words(text: str) -> list[str]:
    """Return the words that a line may break between: a number keeps to its unit."""
    if _NO_BREAK not in text:
        return text.split()
    return [word for word in _BREAKS.split(text) if word]


def wrapped(
    text: str, *, width: Millimetres[float], face: Face, size: float, measure: Measure
) -> list[str]:
    """Return the lines of a text broken between words to a width.

    Raises
    ------
    TooSmallError
        If a single word is wider than the line.
    """
    lines: list[str] = []
    line = ""
    space = measure(" ", face, size)
    used = 0.0
    for word in _words(text):
        needed = measure(word, face, size)
        if needed > width:
            raise TooSmallError(
                f"the word {word!r} is {needed:.0f} mm wide and its column only {width:.0f} mm; "
                "shorten it or "
            )
        if line and used + space + needed > width:
            lines.append(line)
            line, used = word, needed
        else:
            used += needed + (space if line else 0.0)
            line = f"{line} {word}" if line else word
    return [*lines, line] if line else lines
