import os
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path

import pytest

from chartgen import cli
from chartgen.description.example import example_text

Run = subprocess.CompletedProcess[str]
Chartgen = Callable[..., Run]


def start(folder: Path, *words: str, stdin: str | None = None) -> Run:
    """Run the installed program in a folder; no run may ever show a traceback."""
    done = subprocess.run(
        [sys.executable, "-W", "error", "-m", "chartgen", *words],
        check=False,
        capture_output=True,
        cwd=folder,
        input=stdin,
        encoding="utf-8",
        env=os.environ | {"PYTHONIOENCODING": "utf-8"},
        timeout=60,
    )
    assert "Traceback" not in done.stderr
    return done


@pytest.fixture
def chartgen(tmp_path: Path) -> Chartgen:
    def run(*words: str, stdin: str | None = None) -> Run:
        return start(tmp_path, *words, stdin=stdin)

    return run


@pytest.fixture
def inside(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> Callable[..., tuple[int, str, str]]:
    """Return a function that runs a command in this process: exit code, output, errors."""
    monkeypatch.chdir(tmp_path)

    def run(*words: str) -> tuple[int, str, str]:
        monkeypatch.setattr(sys, "argv", ["chartgen", *words])
        code = 0
        try:
            cli.main()
        except SystemExit as leaving:
            code = int(leaving.code or 0)
        said = capsys.readouterr()
        return code, said.out, said.err

    return run


@pytest.fixture(scope="session")
def example_with() -> Callable[..., str]:
    """Return a function: changes of the built-in shop file, (old, new) each -> its text."""

    def changed(*changes: tuple[str, str]) -> str:
        text: str = example_text().decode()
        for old, new in changes:
            assert old in text
            text = text.replace(old, new)
        return text

    return changed
