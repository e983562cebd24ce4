"""Widths and wrapping. The measure comes from the renderer, which owns the font."""

from collections.abc import Callable

from chartgen.errors import DoesNotFitError
from chartgen.layout.placed import Face
from chartgen.quantities import Millimetres

Measure = Callable[[str, Face, float], Millimetres[float]]
"""Width [mm] of a text in a face at a size [pt]."""


def wrapped(
    text: str, *, width: Millimetres[float], face: Face, size: float, measure: Measure
) -> list[str]:
    """Return the lines of a text broken between words to a width.

    Raises
    ------
    DoesNotFitError
        If a single word is wider than the line.
    """
    lines: list[str] = []
    line = ""
    space = measure(" ", face, size)
    used = 0.0
    for word in text.split():
        needed = measure(word, face, size)
        if needed > width:
            raise DoesNotFitError(
                f"the word {word!r} is {needed:.0f} mm wide and its column only {width:.0f} mm; "
                "shorten it or use a larger layout"
            )
        if line and used + space + needed > width:
            lines.append(line)
            line, used = word, needed
        else:
            used += needed + (space if line else 0.0)
            line = f"{line} {word}" if line else word
    return [*lines, line] if line else lines
