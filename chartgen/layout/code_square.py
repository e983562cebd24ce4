"""The check code as a QR code (ISO/IEC 18004): drawn as one path, in exact squares.

The text keeps to the signs of the alphanumeric mode, so that the smallest symbol with the
error correction of level M holds it.
"""

from functools import lru_cache

from chartgen.layout.placed import Drawing
from chartgen.layout.primitives import Blocks
from chartgen.layout.roles import figure_of
from chartgen.quantities import Millimetres
from chartgen.wording.check_code import square_text
from chartgen.wording.language import tr

MODULE: Millimetres[float] = 0.5
"""A telephone at the distance of a hand reads modules from 0.4 mm."""
QUIET_ZONE: Millimetres[float] = 4 * MODULE
"""Paper left on every side; ISO/IEC 18004 asks for four modules."""
_LEVEL = "M"


@lru_cache(maxsize=16)
def code_square(check_code: str) -> Drawing:
    """Return the dark modules of the square, without its quiet zone."""
    import segno  # noqa: PLC0415 - a layout without a back side does without

    text = square_text(check_code)
    matrix = segno.make(text, error=_LEVEL, boost_error=False, micro=False).matrix
    count = len(matrix)
    runs = []
    for row, line in enumerate(matrix):
        start = None
        for column, dark in enumerate([*line, 0]):
            if dark and start is None:
                start = column
            elif not dark and start is not None:
                # The origin of a drawing is its lower left corner.
                runs.append((start, count - 1 - row, column - start))
                start = None
    meaning = tr("QR code that says {text}", text=text)
    return Drawing(
        x=0.0,
        y=0.0,
        size=count * MODULE,
        primitives=(Blocks(tuple(runs), count, "ink"),),
        meaning=meaning,
        tags=figure_of("check code", meaning),
    )
