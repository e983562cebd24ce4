"""A shop file: bytes in, the model out, or every fault of the file at once."""

from chartgen.description.assemble import shop_of
from chartgen.description.example import example_text
from chartgen.description.known import Known
from chartgen.description.problems import Problems
from chartgen.description.toml_text import opened
from chartgen.errors import DescriptionError
from chartgen.model.shop import Shop

__all__ = ["Known", "example_text", "read_shop"]


def read_shop(text: bytes, *, file: str, known: Known) -> Shop:
    """Return the shop that a file describes.

    Parameters
    ----------
    text
        The file as it lies on the disk.
    file
        Its name, for messages.
    known
        The names it may use.

    Raises
    ------
    DescriptionError
        With every fault found, in the order of the lines.
    """
    needs = (
        "A shop file needs [shop], [lathe] with its motor, drive, chuck and cross_slide, "
        "a [[blade]] for each blade, and [print]; begin with a copy of the example."
    )
    source, raw = opened(text, file=file, needs=needs)
    problems = Problems()
    shop = shop_of(raw, known, problems)
    if shop is None or problems.found:
        from chartgen.description.complaints import faults_of

        raise DescriptionError(faults_of(problems.found, file=file, text=source))
    return shop
