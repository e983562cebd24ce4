"""The check code: a short sign of everything a card was computed from.

Two cards with the same code rest on the same inputs. Only what the card depends on goes
in (every blade, since one is offered in place of another), so that adding a material to a
shop file does not make the other cards look stale.
"""

import hashlib
from collections.abc import Sequence
from dataclasses import fields
from typing import Final

from chartgen import __version__
from chartgen.model.course import Course
from chartgen.model.job import Job
from chartgen.model.lathe import Lathe
from chartgen.model.material import Material
from chartgen.model.shop import Language, Shop
from chartgen.wording.language import tr

# No I, L, O or U, which are misread on a greasy card.
_ALPHABET = "0123456789ABCDEFGHJKMNPQRSTVWXYZ"
_LENGTH = 8
# What only a job asks of the lathe. No chart rests on it, as none rests on the shop's tools:
# an owner who adds it need not print his charts anew.
ONLY_FOR_JOBS: Final = frozenset({"swing", "spindle_bore", "carriage"})


class _AsItStands(str):
    """Text that goes into the code without quotes."""

    __slots__ = ()
    __repr__ = str.__str__


def check_code(shop: Shop, *, materials: Sequence[Material], layout: str, subject: str) -> str:
    """Return the code of a card, as in "7Q2F-K9MD"."""
    inputs = (
        __version__,
        layout,
        subject,
        shop.revision,
        shop.date,
        _of_charts(shop.lathe),
        shop.work,
        shop.request.units,
        shop.request.feeding,
        *_other_language(shop),
        shop.request.diameters,
        sorted(shop.allowances.items()),
        shop.blades,
        tuple(materials),
        # Cards say how well and when a value was measured; without any the code stays as it was.
        *((shop.measured,) if shop.measured else ()),
        # A shipped layout is told by its name and the version; an owner's own by what it says.
        *(text for name, text in shop.request.own_layouts if name == layout),
    )
    return _code_of(inputs)


def job_check_code(shop: Shop, job: Job, *, materials: Sequence[Material], layout: str) -> str:
    """Return the code of a job's card: a job asks for every tool, and for none of the charts."""
    return _code_of(
        (
            __version__,
            layout,
            job,
            shop.revision,
            shop.date,
            shop.lathe,
            shop.work,
            shop.request.units,
            shop.request.feeding,
            *_other_language(shop),
            sorted(shop.allowances.items()),
            shop.blades,
            shop.tools,
            tuple(materials),
            shop.measured,
        )
    )


def run_code(course: Course, shop_codes: Sequence[str], paper: str, *, each: bool) -> str:
    """Return the code of a class's files; `shop_codes` stand for the shop files' own bytes."""
    return _code_of((__version__, course, tuple(shop_codes), paper, each))


def bytes_code(*contents: bytes) -> str:
    """Return the code of files as they lie on the disk."""
    return _code_of(tuple(hashlib.sha256(content).hexdigest() for content in contents))


def _code_of(inputs: tuple[object, ...]) -> str:
    """Return the signs of whatever inputs, told apart by how Python writes them."""
    number = int.from_bytes(hashlib.sha256(repr(inputs).encode()).digest()[:5], "big")
    digits = [_ALPHABET[(number >> (5 * place)) & 31] for place in reversed(range(_LENGTH))]
    return f"{''.join(digits[:4])}-{''.join(digits[4:])}"


def _of_charts(lathe: Lathe) -> _AsItStands:
    """Return what charts rest on, written as all of the lathe would be."""
    named = (
        f"{field.name}={getattr(lathe, field.name)!r}"
        for field in fields(lathe)
        if field.name not in ONLY_FOR_JOBS
    )
    return _AsItStands(f"Lathe({', '.join(named)})")


def _other_language(shop: Shop) -> tuple[str, ...]:
    """Return the language of a card, nothing for English: those codes stay as they were."""
    language = shop.request.language
    return () if language is Language.ENGLISH else (language.value,)


def square_text(code: str) -> str:
    """Return what the square beside the check rule says: the signs of its smallest alphabet."""
    return f"CHARTGEN {code}"


def square_sentences(code: str) -> tuple[str, str]:
    """Return what stands beside the square, in full and, where room is short, in few words."""
    short = tr("The square says {code}, the code of this card's inputs.", code=square_text(code))
    full = tr(
        'The square says {code}, the code of this card\'s inputs. "chartgen stale" asks a shop '
        "file whether the card still holds.",
        code=square_text(code),
    )
    return full, short
