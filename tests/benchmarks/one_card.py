"""How long one card takes: a cold process against the same card by typst, and warm.

Ratios from one run on one machine; run it on a quiet one, with the package installed as a
wheel so that its bytecode is warm. typst gets the finished places of every text, rule and
sign, so it only has to read its markup, set the lines and write the file.
"""

import re
import statistics
import subprocess
import sys
import tempfile
from importlib.util import find_spec
from pathlib import Path
from time import perf_counter

from typst_card import typst_markup

from chartgen import pipeline

PAIRS = 21
WARM_CARDS = 200
FONT_PACKAGE = "fontpkg_ibm_plex_sans_condensed"
FAMILY = "IBM Plex Sans Condensed"


def seconds(command: list[str]) -> float:
    """Return how long a command takes as a whole process."""
    started = perf_counter()
    subprocess.run(command, check=True, capture_output=True)
    return perf_counter() - started


def in_turn(ours: list[str], theirs: list[str]) -> tuple[list[float], list[float]]:
    """Return the times of both commands run one after the other, the first pair not counted."""
    seconds(ours), seconds(theirs)
    pairs = [(seconds(ours), seconds(theirs)) for _ in range(PAIRS)]
    return [a for a, _ in pairs], [b for _, b in pairs]


def cold(folder: Path, card: pipeline.FinishedCard) -> None:
    """Print the cold figures of one card."""
    fonts = Path(next(iter(find_spec(FONT_PACKAGE).submodule_search_locations))) / "files"
    source = folder / "card.typ"
    source.write_text(typst_markup(card.document, FAMILY), "utf-8")
    shop = folder / "shop.toml"
    example = subprocess.run(
        [sys.executable, "-m", "chartgen", "example"], check=True, capture_output=True
    ).stdout.decode()
    one_layout = re.sub(
        r"^layouts = \[.*?\]",
        'layouts = ["lathe-chart-a5"]',
        example,
        flags=re.DOTALL | re.MULTILINE,
    )
    shop.write_text(one_layout, "utf-8")
    chartgen = str(Path(sys.executable).with_name("chartgen"))
    ours = [chartgen, "make", str(shop), "--out", str(folder), "--material", "mild-steel"]
    program = (
        f"import typst; typst.compile({str(source)!r}, output={str(folder / 't.pdf')!r}, "
        f"font_paths=[{str(fonts)!r}])"
    )
    mine, other = in_turn(ours, [sys.executable, "-c", program])
    ratios = sorted(a / b for a, b in zip(mine, other, strict=True))
    print(
        f"cold, one card of two pages: {1000 * statistics.median(mine):.0f} ms; "
        f"typst {1000 * statistics.median(other):.0f} ms"
    )
    print(
        f"ratio to typst: median {statistics.median(ratios):.2f} "
        f"({ratios[0]:.2f} to {ratios[-1]:.2f}), wanted at most 4"
    )


def warm(cards: list[pipeline.PrintedCard]) -> None:
    """Print the warm figures: laying out and rendering in one process."""
    pipeline.render(pipeline.lay_out(cards[:1])[0])
    started = perf_counter()
    pages = size = 0
    for number in range(WARM_CARDS):
        finished = pipeline.lay_out([cards[number % len(cards)]])[0]
        size += len(pipeline.render(finished))
        pages += len(finished.document.pages)
    spent = perf_counter() - started
    print(f"warm: {1000 * spent / WARM_CARDS:.1f} ms a card of two pages, wanted at most 12")
    print(f"size: {size / pages / 1000:.1f} kB a page, wanted at most 40")


def main() -> None:
    """Print all figures."""
    shop = pipeline.with_materials(pipeline.describe(None, ""), ["mild-steel"])
    cards = pipeline.printed_cards(shop)
    with tempfile.TemporaryDirectory() as name:
        cold(Path(name), pipeline.lay_out(cards[:1])[0])
    everything = pipeline.printed_cards(pipeline.describe(None, ""))
    warm(everything)


main()
