"""Files of the command line: whole or not at all; cold starts; terminals."""

import errno
import os
import re
import subprocess
import sys
from collections.abc import Callable
from functools import cache
from pathlib import Path

import pytest

from chartgen import pipeline
from chartgen.cli import files
from chartgen.description.job_file import example_job_text
from chartgen.errors import ChartgenError

CUT = ("--material", "c45", "--tool", "A", "--diameter", "25 mm")
Inside = Callable[..., tuple[int, str, str]]


def test_make_twice_leaves_the_same_files(inside: Inside, tmp_path: Path) -> None:
    def contents() -> dict[str, bytes]:
        return {path.name: path.read_bytes() for path in (tmp_path / "cards").iterdir()}

    assert inside("make", "--material", "c45")[0] == 0
    first = contents()
    assert inside("make", "--material", "c45")[0] == 0
    assert contents() == first


def test_a_card_is_as_readable_for_others_as_any_new_file(inside: Inside, tmp_path: Path) -> None:
    assert inside("make", "--material", "c45")[0] == 0
    beside = tmp_path / "beside"
    beside.write_bytes(b"")
    modes = {path.stat().st_mode for path in (tmp_path / "cards").iterdir()}
    assert modes == {beside.stat().st_mode}


@pytest.mark.parametrize("module", ["matplotlib", "rich", "pint", "pypdf", "chartgen.planning"])
def test_a_cold_make_of_tables_loads_no_heavy_part(
    cold: Callable[..., frozenset[str]], module: str
) -> None:
    modules = cold("make", "--material", "c45")
    assert {"reportlab", "numpy", "chartgen.pipeline"} <= modules
    assert module not in modules


@pytest.mark.parametrize("module", ["matplotlib", "rich", "pint", "pypdf", "chartgen.learning"])
def test_a_cold_job_loads_no_heavy_part(cold: Callable[..., frozenset[str]], module: str) -> None:
    modules = cold("job", "job.toml")
    assert {"chartgen.description.job_file", "chartgen.planning.run"} <= modules
    assert module not in modules


@pytest.fixture(scope="module")
def cold(tmp_path_factory: pytest.TempPathFactory) -> Callable[..., frozenset[str]]:
    """Return a function: words of a command -> the modules that a cold run of it loads."""
    folder = tmp_path_factory.mktemp("cold")
    (folder / "job.toml").write_bytes(example_job_text())

    @cache
    def modules_of(*words: str) -> frozenset[str]:
        code = (
            "import sys; from chartgen.cli import main\n"
            f"sys.argv = ['chartgen', *{words!r}]\n"
            "try: main()\n"
            "finally: print('\\n'.join(sorted(sys.modules)), file=sys.stderr)"
        )
        done = subprocess.run(
            [sys.executable, "-c", code],
            check=True,
            capture_output=True,
            encoding="utf-8",
            cwd=folder,
        )
        return frozenset(done.stderr.split())

    return modules_of


def test_a_mistyped_word_is_answered_before_any_heavy_part_is_loaded(tmp_path: Path) -> None:
    code = (
        "import sys; from chartgen.cli import main\n"
        "sys.argv = ['chartgen', 'mkae']\n"
        "try: main()\n"
        "except SystemExit: print(sorted({'numpy', 'pydantic', 'reportlab'} & set(sys.modules)))"
    )
    done = subprocess.run(
        [sys.executable, "-c", code], check=True, capture_output=True, text=True, cwd=tmp_path
    )
    assert done.stdout == "[]\n"


def test_a_file_where_the_folder_should_be_is_told(inside: Inside, tmp_path: Path) -> None:
    (tmp_path / "cards").write_text("not a folder", "utf-8")
    code, out, err = inside("make", "--material", "c45")
    assert (code, out) == (2, "")
    assert re.fullmatch(
        r"cards/lathe-chart-a5-c45\.pdf: cannot be written: .+; choose another folder with --out "
        r"or make room, then run again\.\n",
        err,
    )
    assert (tmp_path / "cards").read_text("utf-8") == "not a folder"


def test_a_folder_where_the_file_should_be_is_told(inside: Inside, tmp_path: Path) -> None:
    (tmp_path / "cards/lathe-chart-a5-c45.pdf").mkdir(parents=True)
    code, _, err = inside("make", "--material", "c45")
    assert code == 2
    assert err.startswith("cards/lathe-chart-a5-c45.pdf: cannot be written: ")
    assert [path.name for path in (tmp_path / "cards").iterdir()] == ["lathe-chart-a5-c45.pdf"]


@pytest.fixture
def full_disk(monkeypatch: pytest.MonkeyPatch) -> None:
    """Make the disk take three bytes more, and no other."""

    def write(path: Path, content: bytes) -> int:
        with path.open("wb") as file:
            file.write(content[:3])
        raise OSError(errno.ENOSPC, os.strerror(errno.ENOSPC))

    monkeypatch.setattr(Path, "write_bytes", write)


@pytest.mark.usefixtures("full_disk")
def test_a_full_disk_leaves_the_old_file_and_no_scrap(tmp_path: Path) -> None:
    path = tmp_path / "card.pdf"
    path.write_text("old", "utf-8")
    with pytest.raises(ChartgenError) as caught:
        files.write_whole(path, b"new and longer")
    assert str(caught.value) == (
        f"{path}: cannot be written: no space left on device; choose another folder with --out "
        "or make room, then run again."
    )
    assert {p.name: p.read_bytes() for p in tmp_path.iterdir()} == {"card.pdf": b"old"}


@pytest.mark.usefixtures("full_disk")
def test_a_full_disk_is_told_by_make(inside: Inside, tmp_path: Path) -> None:
    code, out, err = inside("make", "--material", "c45")
    assert (code, out) == (2, "")
    assert "no space left on device" in err
    assert list((tmp_path / "cards").iterdir()) == []


def test_an_interrupted_write_leaves_no_scrap(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def interrupted(_path: Path, _target: Path) -> None:
        raise KeyboardInterrupt

    monkeypatch.setattr(Path, "replace", interrupted)
    with pytest.raises(KeyboardInterrupt):
        files.write_whole(tmp_path / "card.pdf", b"new")
    assert list(tmp_path.iterdir()) == []


def test_a_file_is_written_whole_with_its_folders(tmp_path: Path) -> None:
    path = tmp_path / "a" / "b" / "card.pdf"
    files.write_whole(path, b"one")
    files.write_whole(path, b"two")
    assert {p.name: p.read_bytes() for p in path.parent.iterdir()} == {"card.pdf": b"two"}


def test_ctrl_c_stops_without_a_traceback(inside: Inside, monkeypatch: pytest.MonkeyPatch) -> None:
    def interrupted(*_: object) -> None:
        raise KeyboardInterrupt

    monkeypatch.setattr(pipeline, "printed_cards", interrupted)
    code, out, err = inside("make")
    assert (code, out, err.strip()) == (2, "", "stopped")


def test_a_reader_that_leaves_early_does_no_harm(tmp_path: Path) -> None:
    command = [sys.executable, "-m", "chartgen", "explain", *CUT]
    with subprocess.Popen(
        command, cwd=tmp_path, stdout=subprocess.PIPE, stderr=subprocess.PIPE
    ) as run:
        assert run.stdout is not None
        assert run.stderr is not None
        run.stdout.close()
        assert b"Traceback" not in run.stderr.read()


@pytest.mark.parametrize("encoding", ["ascii", "cp1252"])
@pytest.mark.parametrize("words", [("table", "--material", "c45"), ("example",)], ids="-".join)
def test_a_terminal_that_lacks_a_sign_does_no_harm(
    tmp_path: Path, encoding: str, words: tuple[str, ...]
) -> None:
    done = subprocess.run(
        [sys.executable, "-m", "chartgen", *words],
        check=False,
        capture_output=True,
        cwd=tmp_path,
        env=os.environ | {"PYTHONIOENCODING": encoding, "PYTHONUTF8": "0"},
    )
    assert b"Traceback" not in done.stderr
