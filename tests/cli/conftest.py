import io
import os
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path

import pikepdf
import pytest

from chartgen import cli
from chartgen.description.example import example_text

SWAP = Path(__file__).parents[2] / "output_examples" / "motor-swap"
CARD_LAYOUTS = (
    "lathe-chart-a5",
    "blade-card-a6",
    "overview-a5",
    "spindle-curves-a5",
    "speed-nomogram-a5",
)
Mend = Callable[[pikepdf.Pdf], None]
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


@pytest.fixture(scope="session")
def printed(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Return a folder of cards printed before the motor was changed, and the change card."""
    folder = tmp_path_factory.mktemp("printed")
    chartgen = [sys.executable, "-m", "chartgen"]
    both = [str(SWAP / name) for name in ("before.toml", "after.toml")]
    asked = [word for name in CARD_LAYOUTS for word in ("--layout", name)]
    for words in (
        ["make", both[0], *asked, "--out", "."],
        ["compare", *both, "--out", "."],
    ):
        subprocess.run([*chartgen, *words], check=True, capture_output=True, cwd=folder)
    return folder


@pytest.fixture
def altered(printed: Path, tmp_path: Path) -> Callable[[Mend], Path]:
    """Return a function: what somebody does to a card's file -> the file they leave."""

    def save(mend: Mend) -> Path:
        with pikepdf.open(
            io.BytesIO((printed / "lathe-chart-a5-mild-steel.pdf").read_bytes())
        ) as pdf:
            mend(pdf)
            pdf.save(tmp_path / "altered.pdf")
        return tmp_path / "altered.pdf"

    return save
