"""The language a card speaks: its messages by gettext, its numbers with its decimal sign.

A message is written once, in English, where it is said: `tr("Chuck {size}.", size=...)`. What an
owner named is passed as a value and never translated. Texts that stand in data or in an
enumeration are translated where they are said, `tr(reason.legend)`; `tests/wording/languages`
lists where those come from, so that none is forgotten.
"""

import gettext
from collections.abc import Iterator
from contextlib import contextmanager
from contextvars import ContextVar
from functools import cache
from pathlib import Path
from typing import Final

DOMAIN: Final = "chartgen"
ENGLISH: Final = "en"
LANGUAGES: Final = ("en", "de")
TAGS: Final = {"en": "en-GB", "de": "de-DE"}
"""Languages as a PDF names them."""
_DECIMAL_SIGN: Final = {"en": ".", "de": ","}
_SAID_OF: Final = "|"
_FOLDER: Final = Path(__file__).parents[1] / "locale"

_spoken: ContextVar[str] = ContextVar("spoken", default=ENGLISH)


@contextmanager
def speaking(language: str) -> Iterator[None]:
    """Let everything said inside be said in a language.

    Raises
    ------
    ValueError
        If there is no such language.
    """
    if language not in LANGUAGES:
        raise ValueError(f"{language!r} is no language of the cards: {', '.join(LANGUAGES)}")
    token = _spoken.set(language)
    try:
        yield
    finally:
        _spoken.reset(token)


def spoken() -> str:
    """Return the language being spoken."""
    return _spoken.get()


def tr(message: str, /, **values: object) -> str:
    """Return a message in the language being spoken, its places filled.

    Where English says two things in one word, what it is said of follows a bar, for whoever
    translates it: `tr("power|feed")` says "power".
    """
    if _spoken.get() == ENGLISH:
        said = message.partition(_SAID_OF)[0]
    else:
        said = _catalogue(_spoken.get()).gettext(message)
    return said.format(**values) if values else said


def trn(one: str, many: str, number: int, /, **values: object) -> str:
    """Return the message for a number of things; `{number}` in it is that number."""
    if _spoken.get() == ENGLISH:
        said = one if number == 1 else many
    else:
        said = _catalogue(_spoken.get()).ngettext(one, many, number)
    return said.format(number=number, **values)


def decimal(text: str) -> str:
    """Return a written number with the decimal sign of the language being spoken."""
    sign = _DECIMAL_SIGN[_spoken.get()]
    return text if sign == "." else text.replace(".", sign)


@cache
def _catalogue(language: str) -> gettext.NullTranslations:
    """Return the messages of a language, from the file that `.ci/languages` compiles."""
    return gettext.translation(DOMAIN, localedir=_FOLDER, languages=[language])
