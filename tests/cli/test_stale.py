"""A card as PDF on the command line: made again, asked whether it holds, refused if altered."""

import io
import json
import re
from collections.abc import Callable
from pathlib import Path

import pikepdf
import pytest

SWAP = Path(__file__).parents[2] / "output_examples" / "motor-swap"
BOTH = str(SWAP / "before.toml"), str(SWAP / "after.toml")
CARD = "lathe-chart-a5-mild-steel.pdf"
CHANGE = "change-card-a5-shed-at-number-nine.pdf"
OVERVIEW = "overview-a5-1-5-hss.pdf"
BLADE_CARD = "blade-card-a6-2-carbide.pdf"
CURVES = "spindle-curves-a5-mild-steel.pdf"
LAYOUTS = (
    "lathe-chart-a5",
    "blade-card-a6",
    "overview-a5",
    "spindle-curves-a5",
    "speed-nomogram-a5",
)

Inside = Callable[..., tuple[int, str, str]]
Mend = Callable[[pikepdf.Pdf], None]


@pytest.fixture(scope="module")
def printed(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Return a folder of cards printed before the motor was changed, and the change card."""
    import subprocess  # noqa: PLC0415 - one fixture
    import sys  # noqa: PLC0415

    folder = tmp_path_factory.mktemp("printed")
    chartgen = [sys.executable, "-m", "chartgen"]
    asked = [word for name in LAYOUTS for word in ("--layout", name)]
    for words in (["make", BOTH[0], *asked, "--out", "."], ["compare", *BOTH, "--out", "."]):
        subprocess.run([*chartgen, *words], check=True, capture_output=True, cwd=folder)
    return folder


@pytest.fixture
def altered(printed: Path, tmp_path: Path) -> Callable[[Mend], Path]:
    """Return a function: what somebody does to a card's file -> the file they leave."""

    def save(mend: Mend) -> Path:
        with pikepdf.open(io.BytesIO((printed / CARD).read_bytes())) as pdf:
            mend(pdf)
            pdf.save(tmp_path / "altered.pdf")
        return tmp_path / "altered.pdf"

    return save


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


def test_every_card_is_made_again_from_its_file_alone_byte_for_byte(
    inside: Inside, printed: Path, tmp_path: Path
) -> None:
    cards = sorted(printed.glob("*.pdf"))
    assert len(cards) > 5
    for card in cards:
        code, out, err = inside("make", str(card), "--out", "again")
        assert (code, err) == (0, "")
        assert out == f"{Path('again') / card.name}\n"
        assert (tmp_path / out.strip()).read_bytes() == card.read_bytes()


def test_a_card_asked_for_by_options_is_made_again_too(inside: Inside, tmp_path: Path) -> None:
    inside("make", "--material", "c45", "--material", "ptfe", "--layout", "centre-card-a6")
    for card in sorted((tmp_path / "cards").iterdir()):
        assert inside("make", str(card), "--out", "again")[0] == 0
        assert (tmp_path / "again" / card.name).read_bytes() == card.read_bytes()


def test_a_card_saved_by_another_program_is_made_again_as_it_was_and_that_is_said(
    inside: Inside, printed: Path, tmp_path: Path, altered: Callable[[Mend], Path]
) -> None:
    file = altered(lambda _: None)
    code, out, err = inside("make", str(file))
    assert code == 0
    assert "is not byte for byte what its inputs make" in err
    assert (tmp_path / out.strip()).read_bytes() == (printed / CARD).read_bytes()


def test_a_card_takes_no_options(inside: Inside, printed: Path) -> None:
    code, _, err = inside("make", str(printed / CARD), "--material", "c45")
    assert code == 2
    assert "leave out --material and --layout" in err


@pytest.mark.parametrize("name", [CARD, OVERVIEW, BLADE_CARD, CURVES])
def test_a_card_beside_its_own_shop_is_current(inside: Inside, printed: Path, name: str) -> None:
    code, out, err = inside("stale", str(printed / name), BOTH[0])
    assert (code, err) == (0, "")
    first, second = out.splitlines()
    assert first.endswith(f"{name}: Current: same check code")
    match = re.search(r"check (\S+) on the card, now (\S+)$", second)
    assert match
    assert match[1] == match[2]


def test_a_card_beside_a_new_motor_is_stale_and_what_moved_is_told(
    inside: Inside, printed: Path
) -> None:
    _, compared, _ = inside("compare", *BOTH)
    for name in (CARD, BLADE_CARD):
        code, out, err = inside("stale", str(printed / name), BOTH[1])
        assert (code, err) == (0, "")
        assert "Stale: take down and print again (" in out.splitlines()[0]
        assert "lathe.motor.power" in out
        stem = name.removesuffix(".pdf")
        (line,) = (text for text in compared.splitlines() if text.strip().startswith(f"{stem}:"))
        assert f"({line.partition(': ')[2]})" in out.splitlines()[0]


def test_a_chart_shows_only_its_own_cells(inside: Inside, printed: Path) -> None:
    _, chart, _ = inside("stale", str(printed / CARD), BOTH[1], "--json")
    _, overview, _ = inside("stale", str(printed / OVERVIEW), BOTH[1], "--json")
    assert {cell["material"] for cell in json.loads(chart)["moved"]} == {"Mild steel"}
    assert {cell["blade"] for cell in json.loads(overview)["moved"]} == {"1.5 HSS"}
    assert len({cell["material"] for cell in json.loads(overview)["moved"]}) > 1


def test_the_answer_for_a_machine_says_what_the_words_say(inside: Inside, printed: Path) -> None:
    _, out, _ = inside("stale", str(printed / CARD), BOTH[1], "--json")
    answer = json.loads(out)
    assert answer["state"] == "stale"
    assert answer["check"]["printed"] != answer["check"]["now"]
    cells = int(answer["remark"].split()[0])
    assert cells == len(answer["moved"]) > 0


def test_a_card_whose_numbers_hold_is_said_to_hold(
    inside: Inside, printed: Path, tmp_path: Path
) -> None:
    text = (SWAP / "before.toml").read_text("utf-8")
    later = re.sub(r'^date = "?[0-9-]+"?', 'date = "2031-01-01"', text, flags=re.MULTILINE)
    assert later != text
    (tmp_path / "later.toml").write_text(later, "utf-8")
    _, out, _ = inside("stale", str(printed / CARD), "later.toml")
    assert out.splitlines()[0].endswith("Numbers hold; the card still tells the old assumptions")


def test_a_card_of_a_blade_that_was_sold_is_no_longer_printed(
    inside: Inside, printed: Path, tmp_path: Path
) -> None:
    text = (SWAP / "before.toml").read_text("utf-8")
    assert '"1.5 HSS"' in text
    (tmp_path / "sold.toml").write_text(text.replace('"1.5 HSS"', '"another"'), "utf-8")
    _, out, _ = inside("stale", str(printed / OVERVIEW), "sold.toml")
    assert "No longer printed: take down" in out.splitlines()[0]


def test_a_change_card_is_current_beside_its_second_shop_and_stale_beside_another(
    inside: Inside, printed: Path
) -> None:
    assert "Current" in inside("stale", str(printed / CHANGE), BOTH[1])[1]
    assert "Stale" in inside("stale", str(printed / CHANGE), BOTH[0])[1]


def test_a_card_stands_for_its_shop_file_wherever_one_is_asked_for(
    inside: Inside, printed: Path
) -> None:
    card = str(printed / CARD)
    assert inside("compare", card, BOTH[1]) == inside("compare", *BOTH)
    assert inside("compare", BOTH[1], card) == inside("compare", *reversed(BOTH))
    words = ("--material", "mild-steel")
    assert inside("table", card, *words) == inside("table", BOTH[0], *words)


# ------------------------------------------------------------------------- refusals


def refused(inside: Inside, path: Path, *, out: str = "new") -> str:
    """Return what is said of a file that is refused, by every command alike."""
    said = set()
    for words in (
        ("make", str(path), "--out", out),
        ("stale", str(path), BOTH[0]),
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
    code, out, _ = inside("stale", str(altered(older)), BOTH[0])
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


def test_a_shop_file_is_no_card(inside: Inside) -> None:
    code, out, err = inside("stale", BOTH[0], BOTH[1])
    assert (code, out) == (2, "")
    assert "is no PDF; name the card first and the shop file after it." in err


def test_nothing_is_learned_into_a_card(inside: Inside, printed: Path) -> None:
    before = (printed / CARD).read_bytes()
    code, out, err = inside("learn", str(printed / CARD))
    assert (code, out) == (2, "")
    assert "is a card, and what follows from readings is written into a shop file" in err
    assert (printed / CARD).read_bytes() == before
