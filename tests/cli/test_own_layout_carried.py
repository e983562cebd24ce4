"""A card made with the owner's own layout carries that too, and is made again from its file."""

from collections.abc import Callable
from pathlib import Path

import pytest

Inside = Callable[..., tuple[int, str, str]]
CARD = "mine-c45.pdf"


@pytest.fixture
def printed(inside: Inside, tmp_path: Path) -> Path:
    code, layout, _ = inside("layouts", "lathe-chart-a6")
    assert code == 0
    (tmp_path / "mine.toml").write_text(layout.replace("1.35", "1.3"), "utf-8")
    code, _, err = inside("make", "--layout", "mine.toml", "--material", "c45", "--out", "first")
    assert (code, err) == (0, "")
    return tmp_path / "first" / CARD


def test_it_is_made_again_byte_for_byte_without_the_layout_file(
    inside: Inside, printed: Path, tmp_path: Path
) -> None:
    (tmp_path / "mine.toml").unlink()
    code, _, err = inside("make", str(printed), "--out", "again")
    assert (code, err) == (0, "")
    assert (tmp_path / "again" / CARD).read_bytes() == printed.read_bytes()


def test_it_is_told_current_or_stale_by_its_own_layout(
    inside: Inside, printed: Path, tmp_path: Path
) -> None:
    shop = inside("example")[1]
    (tmp_path / "s.toml").write_text(shop, "utf-8")
    assert "Current: same check code" in inside("stale", str(printed), "s.toml")[1]
    (tmp_path / "s.toml").write_text(shop.replace('"750 W"', '"550 W"'), "utf-8")
    assert "Stale: take down and print again" in inside("stale", str(printed), "s.toml")[1]


def test_sheets_take_an_own_layout(inside: Inside, printed: Path, tmp_path: Path) -> None:
    assert printed.exists()
    code, out, _ = inside(
        "make", "--layout", "mine.toml", "--material", "c45", "--sheet", "A4", "--out", "sheets"
    )
    assert code == 0
    (name,) = out.split()
    assert (tmp_path / name).read_bytes().startswith(b"%PDF-1.7")
