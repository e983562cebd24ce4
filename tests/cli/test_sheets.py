"""`make --sheet`: several cards on sheets of paper, or one sentence why not."""

import io
from collections.abc import Callable
from pathlib import Path

import pikepdf
import pytest

Inside = Callable[..., tuple[int, str, str]]
ONE = ("make", "--material", "mild-steel")


def test_it_writes_a_file_for_each_size_of_card(inside: Inside, tmp_path: Path) -> None:
    code, out, err = inside(*ONE, "--sheet", "A4", "--out", "x")
    assert (code, err) == (0, "")
    names = ["sheet-a4-a5-landscape.pdf", "sheet-a4-a6-landscape.pdf"]
    assert out.splitlines() == [str(Path("x") / name) for name in names]
    assert sorted(path.name for path in (tmp_path / "x").iterdir()) == names


def test_edge_to_edge_takes_fewer_sheets_and_the_flip_is_in_the_file(
    inside: Inside, tmp_path: Path
) -> None:
    words = (*ONE, "--layout", "blade-card-a6", "--sheet", "A4", "--flip", "short")
    pages = []
    for more in ([], ["--edge-to-edge"]):
        assert inside(*words, *more)[0] == 0
        data = (tmp_path / "cards" / "sheet-a4-a6-landscape.pdf").read_bytes()
        with pikepdf.open(io.BytesIO(data)) as pdf:
            pages.append(len(pdf.pages))
            assert pdf.Root.ViewerPreferences.Duplex == "/DuplexFlipShortEdge"
    # Three cards of two leaves each: two, or four, on a sheet.
    assert pages == [6, 4]


@pytest.mark.parametrize("words", [("--margin", "wide"), ("--laminate", "together"), ("--hole",)])
def test_every_wish_has_its_way(inside: Inside, tmp_path: Path, words: tuple[str, ...]) -> None:
    layout = ("--layout", "blade-card-a6")
    assert inside(*ONE, *layout, "--sheet", "A4")[0] == 0
    file = tmp_path / "cards" / "sheet-a4-a6-landscape.pdf"
    plain = file.read_bytes()
    assert inside(*ONE, *layout, "--sheet", "A4", *words)[0] == 0
    assert file.read_bytes() != plain


@pytest.mark.parametrize(
    ("words", "message"),
    [
        (("--sheet", "A9"), "sheet 'A9' is unknown. Did you mean 'A4' or 'A3'?"),
        (("--sheet", "foolscap"), "sheet 'foolscap' is unknown. Known are: A4, letter, A3, tab"),
        (("--sheet", "A4", "--flip", "left"), "'left' is not one of 'long', 'short'."),
        (("--sheet", "A4", "--laminate", "no"), "'no' is not one of 'singly', 'together'."),
        (("--sheet", "A4", "--margin", "0"), "'0' is not one of 'cautious', 'wide'."),
        (("--flip", "long"), "--flip is about sheets of cards; say which with --sheet A4."),
        (("--edge-to-edge",), "--edge-to-edge is about sheets of cards"),
        (("--hole",), "--hole is about sheets of cards"),
        (
            ("--sheet", "A4", "--laminate", "together", "--edge-to-edge"),
            "cards laminated together need film between them;",
        ),
        (
            ("--sheet", "A4", "--hole", "--layout", "speed-nomogram-a5"),
            "speed-nomogram-a5: content stands wherever a hole could be",
        ),
    ],
    ids=lambda part: " ".join(part) if isinstance(part, tuple) else "",
)
def test_what_cannot_be_done_is_one_sentence_and_writes_nothing(
    inside: Inside, tmp_path: Path, words: tuple[str, ...], message: str
) -> None:
    code, out, err = inside(*ONE, *words)
    assert (code, out) == (2, "")
    assert message in err
    assert list(tmp_path.iterdir()) == []


def test_one_size_that_cannot_be_made_leaves_the_others_unwritten(
    inside: Inside, tmp_path: Path
) -> None:
    layouts = ("--layout", "blade-card-a6", "--layout", "speed-nomogram-a5")
    code, out, err = inside(*ONE, *layouts, "--sheet", "A4", "--hole")
    assert (code, out) == (2, "")
    assert len(err.splitlines()) == 1
    assert list(tmp_path.iterdir()) == []
