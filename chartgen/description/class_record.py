"""What a folder of class material says of itself: what it was made from, which files are done.

A run that was stopped goes on from it; a run with other inputs is told apart by the check.
"""

import json
import re
from collections.abc import Mapping
from dataclasses import dataclass
from typing import Final

from chartgen import __version__
from chartgen.errors import DescriptionError, Fault

RECORD_NAME: Final = "class.json"
FORMAT: Final = 1
# Only names that the program itself gives: what the record lists may be deleted.
_NAME = re.compile(r"[a-z0-9][a-z0-9-]*(\.[a-z0-9]+)?(/[a-z0-9][a-z0-9-]*\.[a-z0-9]+)?")
_UNREADABLE: Final = "does not say what is in this folder, or not in a way that can be read here."
_MEND: Final = "Add --again to make all anew, or choose another folder with --out."


@dataclass(frozen=True, slots=True, kw_only=True)
class ClassRecord:
    """`done` has the files of each part that is whole, by part, each file with its size."""

    name: str
    check: str
    done: Mapping[str, Mapping[str, int]]

    @property
    def files(self) -> tuple[str, ...]:
        """Every file that it lists."""
        return tuple(file for files in self.done.values() for file in files)


def record_text(record: ClassRecord) -> bytes:
    """Return the file of a record."""
    whole = {
        "chartgen_class": FORMAT,
        "program": __version__,
        "class": record.name,
        "check": record.check,
        "done": {part: dict(files) for part, files in record.done.items()},
    }
    return json.dumps(whole, ensure_ascii=False, indent=1).encode() + b"\n"


def read_record(data: bytes, *, file: str) -> ClassRecord:
    """Return the record of a folder.

    Raises
    ------
    DescriptionError
        If it is none, or one that this program cannot read.
    """
    try:
        whole = json.loads(data.decode())
        is_known = whole["chartgen_class"] == FORMAT
        done = {
            str(part): {_name(name): int(size) for name, size in files.items()}
            for part, files in whole["done"].items()
        }
        record = ClassRecord(name=str(whole["class"]), check=str(whole["check"]), done=done)
    except (ValueError, KeyError, TypeError, AttributeError, RecursionError) as error:
        raise DescriptionError([Fault(file, 0, "", _UNREADABLE, _MEND)]) from error
    if not is_known:
        raise DescriptionError([Fault(file, 0, "", _UNREADABLE, _MEND)])
    return record


def of_other_inputs(record: ClassRecord, check: str, *, file: str) -> DescriptionError:
    """Return the error of a folder that holds a class made from other inputs."""
    problem = (
        f"this folder holds the class {record.name!r} made from other inputs "
        f"(check {record.check}, now {check})."
    )
    return DescriptionError([Fault(file, 0, "", problem, _MEND)])


def _name(name: str) -> str:
    if not _NAME.fullmatch(name):
        raise ValueError(name)
    return name
