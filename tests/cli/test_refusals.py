"""What cannot be done is told in full, with exit code 2 and never a traceback."""

import os
import re
import subprocess
from collections.abc import Callable
from pathlib import Path

import pytest

from chartgen.description.example import example_text

CUT = ("--material", "c45", "--tool", "A", "--diameter", "25 mm")
Chartgen = Callable[..., subprocess.CompletedProcess[str]]
Inside = Callable[..., tuple[int, str, str]]
ExampleWith = Callable[..., str]


def test_every_word_that_cannot_be_used_is_told_at_once(chartgen: Chartgen) -> None:
    done = chartgen(
        *("try", "--material", "c46", "--tool", "Q", "--diameter", "25"),
        *("--bore", "hole", "--speed", "1000", "--feed", "fast"),
    )
    assert (done.returncode, done.stdout) == (2, "")
    assert [line.partition(":")[0] for line in done.stderr.splitlines()] == [
        "--material",
        "--tool",
        "--diameter",
        "--bore",
        "--speed",
        "--feed",
    ]
    assert "--material: 'c46' is unknown. Did you mean 'c60' or 'c45'?\n" in done.stderr
    assert (
        "--tool: 'Q' is no blade of this shop; it has A (2.0 carbide), B (3.0 carbide), "
        "C (1.6 HSS)." in done.stderr
    )
    assert "--diameter: '25' needs a unit: write it as in '2 mm'\n" in done.stderr


def test_every_fault_of_a_shop_file_is_told_at_once(
    chartgen: Chartgen, tmp_path: Path, example_with: ExampleWith
) -> None:
    text = example_with(
        ('"750 W"', '"750"'), ('"mild-steel"', '"mild-stel"'), ("divisions", "divs")
    )
    (tmp_path / "my.toml").write_text(text, "utf-8")
    done = chartgen("make", "my.toml")
    assert (done.returncode, done.stdout) == (2, "")
    assert len(done.stderr.splitlines()) >= 3
    assert all(line.startswith("my.toml:") for line in done.stderr.splitlines())
    assert not (tmp_path / "cards").exists()


@pytest.mark.parametrize(
    ("words", "message"),
    [
        (("mkae",), "No such command 'mkae'."),
        (("make", "--folder", "x"), "No such option"),
        (("table",), "Missing option '--material'."),
        (("table", "--material", "c46"), "material 'c46' is unknown. Did you mean 'c60' or 'c45'?"),
        (("make", "--material", "zzz"), "material 'zzz' is unknown."),
        (("make", "a.toml", "b.toml"), "Got unexpected extra argument"),
        (("make", "no.toml"), "no.toml: there is no such file; check the name, or run"),
        (("check", "."), ".: is a folder; name the file in it."),
        (("explain", *CUT, "--bore", "30 mm"), "--bore: 30 mm leaves nothing to cut of 25 mm"),
        (("explain", *CUT[:4], "--diameter", "0 mm"), "--diameter: "),
        (("explain", *CUT[:4], "--diameter", "-5 mm"), "--diameter: "),
        (("explain", *CUT[:4], "--diameter", "5 kg"), "--diameter: "),
        (("try", *CUT, "--speed", "0 rpm", "--feed", "1e999 mm/rev"), "--feed: "),
    ],
    ids=lambda part: " ".join(part)[:40] if isinstance(part, tuple) else "",
)
def test_what_cannot_be_done_is_a_message_and_exit_code_2(
    inside: Inside, words: tuple[str, ...], message: str
) -> None:
    code, out, err = inside(*words)
    assert (code, out) == (2, "")
    assert message in err


@pytest.mark.parametrize(
    ("content", "message"),
    [
        (b"", "my.toml: is empty. A shop file needs [shop], [lathe]"),
        (b"# nothing but a note\n", "my.toml: is empty."),
        (b"\xff\xfe[shop]\n", "my.toml:1: is not UTF-8 text: byte 1 of the file cannot be read."),
        (b"[shop]\nname = \xe9\n", "my.toml:2: is not UTF-8 text"),
        (b"a letter to my aunt\n", "my.toml:1: at column 3, this is not a key with its value."),
        (b"%PDF-1.7\n%\xe2\xe3\xcf\xd3\n", "my.toml: is damaged and cannot be read as a PDF"),
        (b"\x00\x00", "my.toml:1: "),
        (b"shop = 1\nlathe = 2\nblade = 3\nprint = 4\n", "my.toml:1: shop"),
    ],
    ids=["empty", "notes only", "utf-16", "latin-1", "no toml", "a pdf", "zeros", "not tables"],
)
@pytest.mark.parametrize("command", ["make", "check"])
def test_a_file_that_is_no_shop_file_is_refused(
    inside: Inside, tmp_path: Path, command: str, content: bytes, message: str
) -> None:
    (tmp_path / "my.toml").write_bytes(content)
    code, out, err = inside(command, "my.toml")
    assert (code, out) == (2, "")
    assert err.startswith(message)


def test_a_byte_order_mark_does_no_harm(inside: Inside, tmp_path: Path) -> None:
    (tmp_path / "my.toml").write_bytes(b"\xef\xbb\xbf" + example_text().replace(b"\n", b"\r\n"))
    assert inside("check", "my.toml")[:2] == inside("check")[:2]


@pytest.mark.skipif(
    not hasattr(os, "geteuid") or os.geteuid() == 0, reason="nothing is barred to root"
)
def test_a_file_that_may_not_be_read_is_told(inside: Inside, tmp_path: Path) -> None:
    (tmp_path / "my.toml").write_bytes(example_text())
    (tmp_path / "my.toml").chmod(0)
    code, _, err = inside("check", "my.toml")
    assert (code, err) == (2, "my.toml: cannot be read: permission denied.\n")


def test_a_card_too_large_for_its_layout_writes_no_file_at_all(
    inside: Inside, tmp_path: Path, example_with: ExampleWith
) -> None:
    many = ", ".join(f'"{d} mm"' for d in range(61, 100))
    (tmp_path / "my.toml").write_text(example_with(('"60 mm",', f'"60 mm", {many},')), "utf-8")
    code, out, err = inside("make", "my.toml")
    assert (code, out) == (2, "")
    assert re.search(r"holds \d+ of the 51 rows of '.+' at its reading distance: drop \d+", err)
    assert not (tmp_path / "cards").exists()
