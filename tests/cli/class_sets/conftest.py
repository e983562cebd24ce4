"""A small class as files, and what the command makes of it."""

from collections.abc import Callable
from pathlib import Path

import pytest

EXAMPLE = Path(__file__).parents[3] / "output_examples" / "class"
CLASS = """[class]
name = "Tuesdays"
date = 2026-11-25
level = "first"
exercises = 3
students = 3
lathes = ["belt-lathe.toml"]
materials = ["mild-steel"]
"""
Inside = Callable[..., tuple[int, str, str]]
Written = Callable[..., str]
Snapshot = Callable[[str], dict[str, bytes]]


@pytest.fixture
def class_file(tmp_path: Path) -> Written:
    """Return a function: changes of a small class, (old, new) each -> its file's name."""

    def written(*changes: tuple[str, str], roster: str | None = None) -> str:
        text = CLASS
        if roster is not None:
            text = text.replace("students = 3", 'roster = "roster.csv"')
            (tmp_path / "roster.csv").write_text(roster, "utf-8")
        for old, new in changes:
            assert old in text
            text = text.replace(old, new)
        for lathe in ("belt-lathe.toml", "knob-lathe.toml"):
            (tmp_path / lathe).write_bytes((EXAMPLE / lathe).read_bytes())
        (tmp_path / "class.toml").write_text(text, "utf-8")
        return "class.toml"

    return written


@pytest.fixture
def files_in(tmp_path: Path) -> Snapshot:
    """Return a function: a folder -> its files by name, hidden ones too."""

    def found(folder: str) -> dict[str, bytes]:
        root = tmp_path / folder
        return {
            str(path.relative_to(root)): path.read_bytes()
            for path in sorted(root.rglob("*"))
            if path.is_file()
        }

    return found
