"""The key of a class as a file: what marking needs, sealed against slips of the hand.

The seal is a digest, no secret: it tells a key that was changed by accident or saved by
another program, not one that somebody forged.
"""

import hashlib
import json
from collections.abc import Mapping
from typing import Any, Final

from chartgen import __version__
from chartgen.errors import DescriptionError, Fault

FORMAT: Final = 1
"""Of the file; it rises when an older program could not read what a newer one writes."""
_MEND: Final = "Take the key.json that `chartgen class` wrote, or make the class again."


def key_text(content: Mapping[str, Any]) -> bytes:
    """Return the file of a key."""
    whole = {"chartgen_key": FORMAT, "program": __version__, "seal": _seal(content)}
    return _line(whole | {"key": content}).encode() + b"\n"


def read_key(data: bytes, *, file: str) -> dict[str, Any]:
    """Return the content of a key.

    Raises
    ------
    DescriptionError
        If it is no key, was changed, or was written by a newer program than can be read here.
    """
    try:
        whole = json.loads(data.decode())
    except (ValueError, RecursionError):
        whole = None
    if not isinstance(whole, dict) or "chartgen_key" not in whole:
        raise _refused(file, "is no key of a class.", "Name the key first, the answers after it.")
    number = whole["chartgen_key"]
    if not isinstance(number, int) or number < 1:
        raise _refused(file, "is no key of a class.", _MEND)
    if number > FORMAT:
        program = str(whole.get("program"))[:20]
        problem = f"was written by a newer program, chartgen {program}; this is {__version__}."
        raise _refused(file, problem, "Mark with that version or a later one.")
    content = whole.get("key")
    if not isinstance(content, dict) or whole.get("seal") != _seal(content):
        problem = "was changed after it was written, so its answers cannot be trusted."
        raise _refused(file, problem, _MEND)
    return content


def damaged(file: str) -> DescriptionError:
    """Return the error of a key whose seal is whole and whose content is not."""
    return _refused(file, "does not hold what a key holds.", _MEND)


def _seal(content: Mapping[str, Any]) -> str:
    return hashlib.sha256(_line(content).encode()).hexdigest()


def _line(content: Mapping[str, Any]) -> str:
    return json.dumps(content, ensure_ascii=False, separators=(",", ":"), sort_keys=True)


def _refused(file: str, problem: str, mend: str) -> DescriptionError:
    return DescriptionError([Fault(file, 0, "", problem, mend)])
