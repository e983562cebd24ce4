"""How long a page with curves takes: cold against the import of matplotlib alone, and warm.

Cold: a whole `chartgen make` of one page in a process of its own, and a process that only
imports what matplotlib needs for a figure, in turns, so that both see the same machine.
"""

import statistics
import subprocess
import sys
import tempfile
from dataclasses import replace
from pathlib import Path
from time import perf_counter

from chartgen import pipeline

COLD_RUNS, WARM_RUNS = 11, 21
LAYOUTS = ("window-curves-a5", "spindle-curves-a5", "width-curves-a5", "speed-curves-a5")
WANTED_COLD, WANTED_WARM = 2.2, 0.040


def seconds(command: list[str]) -> float:
    """Return how long a command takes."""
    started = perf_counter()
    subprocess.run(command, check=True, stdout=subprocess.DEVNULL)
    return perf_counter() - started


def cold(layout: str) -> None:
    """Print the cold ratio of one layout."""
    bare = [sys.executable, "-c", "import matplotlib.figure"]
    with tempfile.TemporaryDirectory() as folder:
        make = [str(Path(sys.executable).with_name("chartgen")), "make", "--out", folder]
        make += ["--layout", layout, "--material", "mild-steel"]
        seconds(make)
        ratios = sorted(seconds(make) / seconds(bare) for _ in range(COLD_RUNS))
    print(
        f"{layout} cold: {statistics.median(ratios):.2f} times the import of matplotlib "
        f"({ratios[0]:.2f} to {ratios[-1]:.2f}), wanted at most {WANTED_COLD}"
    )


def warm(layout: str) -> None:
    """Print the warm time of one page, numbers, words, places and PDF."""
    shop = pipeline.with_materials(pipeline.describe(None, ""), ["mild-steel"])
    shop = replace(shop, request=replace(shop.request, layouts=(layout,)))
    spent, drawn = [], []
    for _ in range(WARM_RUNS + 1):
        started = perf_counter()
        cards = pipeline.lay_out(pipeline.printed_cards(shop))
        placed = perf_counter()
        for card in cards:
            pipeline.render(card)
        spent.append(perf_counter() - started)
        drawn.append(perf_counter() - placed)
    median = statistics.median(spent[1:])
    print(
        f"{layout} warm: {1000 * median:.1f} ms, of which the PDF "
        f"{1000 * statistics.median(drawn[1:]):.1f}; wanted at most {1000 * WANTED_WARM:.0f}"
    )


def main() -> None:
    """Print the figures."""
    for layout in LAYOUTS:
        cold(layout)
        warm(layout)


main()
