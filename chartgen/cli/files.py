"""Files of the command line: read whole, written whole or not at all."""

import os
from contextlib import suppress
from pathlib import Path

from chartgen.errors import ChartgenError

_EXAMPLE = "check the name, or run `chartgen example` for a file to start from"
_ELSEWHERE = "choose another folder with --out or make room, then run again"


def read_bytes(path: Path, *, mend: str = _EXAMPLE) -> bytes:
    """Return a file's bytes; `mend` is what to do where there is no such file.

    Raises
    ------
    ChartgenError
        If it cannot be read; the message says why and what to do.
    """
    try:
        return path.read_bytes()
    except FileNotFoundError:
        raise ChartgenError(f"{path}: there is no such file; {mend}.") from None
    except IsADirectoryError:
        raise ChartgenError(f"{path}: is a folder; name the file in it.") from None
    except OSError as error:
        raise ChartgenError(f"{path}: cannot be read: {_reason(error)}.") from None


def write_whole(path: Path, content: bytes, *, mend: str = _ELSEWHERE) -> None:
    """Write a file by way of a temporary one beside it, so that no half file is ever seen.

    `mend` is what to do where it cannot be written.

    Raises
    ------
    ChartgenError
        If the folder cannot be made or the file not written; an older file is left as it was.
    """
    temporary = path.with_name(f".{path.name}.{os.getpid()}.part")
    try:
        path.parent.mkdir(parents=True, exist_ok=True)
        temporary.write_bytes(content)
        if path.exists():
            # Who may read a file is its owner's affair, and stays.
            temporary.chmod(path.stat().st_mode)
        temporary.replace(path)
    except BaseException as error:
        # Whatever stopped the writing, even the owner's Ctrl-C, no scrap is left behind.
        with suppress(OSError):
            temporary.unlink(missing_ok=True)
        if not isinstance(error, OSError):
            raise
        raise ChartgenError(f"{path}: cannot be written: {_reason(error)}; {mend}.") from None


def _reason(error: OSError) -> str:
    return (error.strerror or str(error)).lower()
