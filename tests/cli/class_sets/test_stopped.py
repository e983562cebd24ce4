"""A run that is stopped: whole files only, and the same command goes on."""

import json
import os
import signal
import subprocess
import sys
import time
from collections.abc import Callable
from pathlib import Path

import pypdfium2
import pytest

from chartgen.cli import class_set as command

Inside = Callable[..., tuple[int, str, str]]
Written = Callable[..., str]
Snapshot = Callable[[str], dict[str, bytes]]


@pytest.mark.parametrize("after", [0, 1, 3, 6])
def test_a_stopped_run_leaves_whole_files_and_goes_on(
    inside: Inside,
    class_file: Written,
    files_in: Snapshot,
    monkeypatch: pytest.MonkeyPatch,
    after: int,
) -> None:
    name = class_file()
    inside("class", name, "--out", "whole")
    whole = files_in("whole")
    written: list[Path] = []
    write = command.write_whole

    def stopped(path: Path, content: bytes) -> None:
        if len(written) == after:
            raise KeyboardInterrupt
        written.append(path)
        write(path, content)

    monkeypatch.setattr(command, "write_whole", stopped)
    code, _, err = inside("class", name, "--jobs", "2")
    assert code == 2
    assert "the same command goes on from there" in err
    monkeypatch.setattr(command, "write_whole", write)
    for file, content in files_in("class").items():
        assert file == "class.json" or content == whole[file]
    assert inside("class", name)[0] == 0
    assert files_in("class") == whole


@pytest.mark.parametrize("ended_by", [signal.SIGTERM, signal.SIGKILL])
def test_a_run_ended_from_outside_goes_on(
    inside: Inside,
    class_file: Written,
    files_in: Snapshot,
    tmp_path: Path,
    ended_by: signal.Signals,
) -> None:
    if not hasattr(os, "fork"):
        pytest.skip("signals are another thing here")
    name = class_file(("students = 3", "students = 41"), ("exercises = 3", "exercises = 1"))
    words = ["class", name, "--jobs", "1"]
    with subprocess.Popen(
        [sys.executable, "-m", "chartgen", *words],
        cwd=tmp_path,
        stdout=subprocess.DEVNULL,
        stderr=subprocess.DEVNULL,
    ) as run:
        record = tmp_path / "class" / "class.json"
        until = time.monotonic() + 50
        while not record.exists() and run.poll() is None and time.monotonic() < until:
            time.sleep(0.01)
        run.send_signal(ended_by)
        assert run.wait(20) != 0
    done = json.loads(record.read_bytes())["done"]
    assert 0 < len(done) < 9
    for path in (tmp_path / "class").rglob("*.pdf"):
        assert len(pypdfium2.PdfDocument(path)) > 0
    assert inside(*words)[0] == 0
    assert inside(*words, "--out", "whole")[0] == 0
    assert files_in("class") == files_in("whole")


def test_answers_typed_into_the_table_are_never_lost(
    inside: Inside, class_file: Written, files_in: Snapshot, tmp_path: Path
) -> None:
    name = class_file()
    assert inside("class", name)[0] == 0
    table = tmp_path / "class" / "answers.csv"
    typed = table.read_bytes().replace(b"1,,,,", b"1,,420,1.5,c")
    table.write_bytes(typed)
    # The same class again: nothing is made, the table stands as it was filled in.
    code, out, err = inside("class", name)
    assert (code, err) == (0, "")
    assert "0 of them made now" in out
    assert table.read_bytes() == typed
    # Its key made again: the answers are still to it.
    (tmp_path / "class" / "key.json").unlink()
    assert inside("class", name)[0] == 0
    assert table.read_bytes() == typed
    # Another class in the folder: the table is that of the new one, the old one is put aside.
    code, _, err = inside("class", class_file(("students = 3", "students = 2")), "--again")
    assert code == 0
    assert "answers.csv: had been written into; kept as answers-kept-1.csv." in err
    files = files_in("class")
    assert files["answers-kept-1.csv"] == typed
    assert files["answers.csv"].decode("utf-8-sig").splitlines()[1:] == ["1,,,,", "2,,,,"]
