"""A PDF that is no card, or no longer the card it was: said plainly, nothing written."""

import re
from collections.abc import Callable
from pathlib import Path

import pikepdf
import pytest

SWAP = Path(__file__).parents[2] / "output_examples" / "motor-swap"
BEFORE = str(SWAP / "before.toml")
CARD = "lathe-chart-a5-mild-steel.pdf"

Inside = Callable[..., tuple[int, str, str]]
Mend = Callable[[pikepdf.Pdf], None]


def with_file(name: str, change: Callable[[bytes], bytes], *, checksum: bool = False) -> Mend:
    """Return the change of a carried file, its checksum kept as it was or made to fit."""

    def mend(pdf: pikepdf.Pdf) -> None:
        old = pdf.attachments[name].get_file()
        content = change(old.read_bytes())
        if checksum:
            pdf.attachments[name] = pikepdf.AttachedFileSpec(pdf, content, filename=name)
            return
        tree = pdf.Root.Names.EmbeddedFiles.Names
        (place,) = (i for i in range(0, len(tree), 2) if str(tree[i]) == name)
        tree[place + 1].EF.F.write(content)

    return mend


def refused(inside: Inside, path: Path, *, out: str = "new") -> str:
    """Return what is said of a file that is refused, by every command alike."""
    said = set()
    for words in (
        ("make", str(path), "--out", out),
        ("stale", str(path), BEFORE),
        ("check", str(path)),
    ):
        code, stdout, err = inside(*words)
        assert (code, stdout) == (2, "")
        assert "Traceback" not in err
        said.add(err)
    assert not Path(out).exists()
    (one,) = said
    return one


def test_a_pdf_that_carries_nothing_is_refused(
    inside: Inside, altered: Callable[[Mend], Path]
) -> None:
    def strip(pdf: pikepdf.Pdf) -> None:
        del pdf.Root.Names

    said = refused(inside, altered(strip))
    assert "altered.pdf: carries no shop file: it is no card of chartgen" in said
    assert "Give the file that chartgen wrote" in said


ALTERED = {
    "the motor": with_file("shop.toml", lambda text: text.replace(b'"550 W"', b'"750 W"')),
    "the motor, with its checksum": with_file(
        "shop.toml", lambda text: text.replace(b'"550 W"', b'"750 W"'), checksum=True
    ),
    "a line that is no TOML": with_file("shop.toml", lambda text: text + b"= =", checksum=True),
    "the code": with_file(
        "card.toml", lambda text: re.sub(rb"check = .*", b'check = "0000-0000"', text)
    ),
    "the code, with its checksum": with_file(
        "card.toml",
        lambda text: re.sub(rb"check = .*", b'check = "0000-0000"', text),
        checksum=True,
    ),
    "the layout": with_file(
        "card.toml",
        lambda text: re.sub(rb"layout = .*", b'layout = "../../secret"', text),
        checksum=True,
    ),
    "the number": with_file(
        "card.toml", lambda text: re.sub(rb"number = .*", b"number = 99", text), checksum=True
    ),
    "the file's name": with_file(
        "card.toml",
        lambda text: re.sub(rb"file = .*", b'file = "../../evil"', text),
        checksum=True,
    ),
    "a type": with_file(
        "card.toml", lambda text: re.sub(rb"number = .*", b'number = "1"', text), checksum=True
    ),
    "no recipe at all": with_file("card.toml", lambda _: b"\xff\xfe", checksum=True),
    "the version": with_file(
        "card.toml", lambda text: re.sub(rb"program = .*", b'program = "x"', text), checksum=True
    ),
}


@pytest.mark.parametrize("mend", ALTERED.values(), ids=ALTERED.keys())
def test_a_card_that_was_altered_is_refused(
    inside: Inside, altered: Callable[[Mend], Path], mend: Mend
) -> None:
    said = refused(inside, altered(mend))
    assert "altered.pdf: what it carries was altered, or is damaged; do not trust it." in said
    assert "Make the card anew from your shop file" in said


def test_another_subject_in_the_metadata_is_an_alteration(
    inside: Inside, altered: Callable[[Mend], Path]
) -> None:
    def rename(pdf: pikepdf.Pdf) -> None:
        pdf.docinfo.Subject = "Shop · check 0000-0000"

    assert "was altered" in refused(inside, altered(rename))


def test_a_card_of_a_newer_version_asks_for_that_version(
    inside: Inside, altered: Callable[[Mend], Path]
) -> None:
    newer = with_file(
        "card.toml",
        lambda text: re.sub(rb"program = .*", b'program = "99.0.0"', text),
        checksum=True,
    )
    said = refused(inside, altered(newer))
    assert "was made by version 99.0.0 of chartgen" in said
    assert "install version 99.0.0 or a later one" in said


def test_a_card_of_an_older_version_is_stale_though_nothing_else_changed(
    inside: Inside, altered: Callable[[Mend], Path]
) -> None:
    older = with_file(
        "card.toml",
        lambda text: re.sub(rb"program = .*", b'program = "0.0.9"', text),
        checksum=True,
    )
    code, out, _ = inside("stale", str(altered(older)), BEFORE)
    assert code == 0
    assert "Stale: take down and print again (printed by version 0.0.9 of chartgen)" in out


def test_a_locked_card_is_refused(inside: Inside, printed: Path, tmp_path: Path) -> None:
    with pikepdf.open(printed / CARD) as pdf:
        pdf.save(tmp_path / "locked.pdf", encryption=pikepdf.Encryption(owner="o", user="u"))
    assert "locked.pdf: is locked with a password" in refused(inside, tmp_path / "locked.pdf")


@pytest.mark.parametrize("kept", [5, 20, 3_000, 20_000])
def test_a_card_cut_short_is_refused(
    inside: Inside, printed: Path, tmp_path: Path, kept: int
) -> None:
    (tmp_path / "cut.pdf").write_bytes((printed / CARD).read_bytes()[:kept])
    said = refused(inside, tmp_path / "cut.pdf")
    assert re.search(r"cut\.pdf: (is damaged|carries no shop file|what it carries was)", said)


def test_a_file_that_unpacks_without_end_is_refused(
    inside: Inside, altered: Callable[[Mend], Path]
) -> None:
    bomb = with_file("shop.toml", lambda _: b"#" * 50_000_000)
    said = refused(inside, altered(bomb))
    assert "carries a file of more than 1 MB, which no shop file is" in said


def test_a_file_too_large_for_a_card_is_refused(inside: Inside, tmp_path: Path) -> None:
    (tmp_path / "large.pdf").write_bytes(b"%PDF-1.7\n" + b"\0" * 20_000_001)
    assert "large.pdf: has 20 MB, which no card has" in refused(inside, tmp_path / "large.pdf")
