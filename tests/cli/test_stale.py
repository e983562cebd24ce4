"""A card as PDF on the command line: made again, and asked whether it holds."""

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

Inside = Callable[..., tuple[int, str, str]]
Mend = Callable[[pikepdf.Pdf], None]


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
    assert "leave out --material, --layout, --sheet and --png" in err


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
