"""The committed examples are what the tool says and draws today."""

import subprocess
import sys
from pathlib import Path

import numpy as np
import pypdfium2
import pytest
from PIL import Image

FOLDER = Path(__file__).parents[1] / "output_examples"
SWAP = FOLDER / "motor-swap"


@pytest.mark.parametrize(
    ("name", "words"),
    [
        ("table-mild-steel.txt", ["table", "--material", "mild-steel"]),
        ("table-mild-steel.csv", ["table", "--material", "mild-steel", "--csv"]),
        ("table-mild-steel.json", ["table", "--material", "mild-steel", "--json"]),
        ("materials.txt", ["materials"]),
        (
            "motor-swap/compare.txt",
            ["compare", str(SWAP / "before.toml"), str(SWAP / "after.toml")],
        ),
    ],
)
def test_the_tool_still_prints_the_committed_example(name: str, words: list[str]) -> None:
    said = subprocess.run(
        [sys.executable, "-m", "chartgen", *words], check=True, capture_output=True
    ).stdout

    assert said == (FOLDER / name).read_bytes()


@pytest.mark.parametrize(
    ("name", "card", "number"),
    [
        ("lathe-chart-a5-mild-steel.png", "lathe-chart-a5-mild-steel.pdf", 0),
        ("window-curves-a5-mild-steel.png", "window-curves-a5-mild-steel.pdf", 0),
        ("motor-swap/change-card.png", "motor-swap/change-card-a5-shed-at-number-nine.pdf", 1),
    ],
)
def test_a_picture_of_the_readme_shows_the_committed_card(
    name: str, card: str, number: int
) -> None:
    picture = np.asarray(Image.open(FOLDER / name).convert("L"))
    page = pypdfium2.PdfDocument(FOLDER / card)[number]
    drawn = np.asarray(page.render(scale=150 / 72).to_pil().convert("L"))

    assert picture.shape == drawn.shape
    different = np.abs(picture.astype(int) - drawn.astype(int)) > 96
    # Another build of the rasteriser may smooth an edge differently, not move a digit.
    assert different.mean() < 1e-3
