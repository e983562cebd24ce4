"""How long one card takes: a cold process against the same card by typst, and warm.

Ratios from one run on one machine; run it on a quiet one. Uses the installed package.
"""

import statistics
import subprocess
import sys
import tempfile
from collections.abc import Callable
from pathlib import Path
from time import perf_counter

from chartgen import pipeline

RUNS = 15
WARM_CARDS = 200


def typst_source() -> str:
    """Return the same card, front and back, as typst markup: the same strings."""
    shop = pipeline.with_materials(pipeline.describe(None, ""), ["mild-steel"])
    card = pipeline.table_card(shop, "mild-steel")
    chart = card.chart
    cells = [chart.corner]
    for column in chart.columns:
        cells += [f"{column.heading}", chart.feed_heading, chart.pace_heading, ""]
    for stub, row in zip(chart.stub, chart.rows, strict=True):
        cells.append(stub)
        for cell in row:
            first = f"– {cell.way_out}" if cell.way_out else cell.speed + cell.position
            cells += [first, cell.feed, cell.pace, cell.sign]
    table = ", ".join(f"[#{text!r}]".replace("'", '"') for text in cells)
    words = [entry.sentence for entry in chart.legend]
    words += [caution.text for caution in card.cautions] + list(card.assumptions)
    body = "\n\n".join("#" + repr(text).replace("'", '"') for text in words if "'" not in text)
    count = 1 + 4 * len(chart.columns)
    return (
        "#set page(width: 210mm, height: 148mm, margin: 6.5mm)\n#set text(size: 16pt)\n"
        f"= {chart.title}\n#table(columns: {count}, stroke: none, inset: 2pt, {table})\n"
        f"#pagebreak()\n#set text(size: 7.7pt)\n#columns(2)[\n{body}\n]\n"
    )


def median_of(action: Callable[[], object]) -> float:
    """Return the median time of an action in seconds, after one run not counted."""
    action()
    times = []
    for _ in range(RUNS):
        started = perf_counter()
        action()
        times.append(perf_counter() - started)
    return statistics.median(times)


def main() -> None:
    """Print the figures."""
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name)
        source = folder / "card.typ"
        source.write_text(typst_source(), "utf-8")
        shop = folder / "shop.toml"
        text = subprocess.run(
            [sys.executable, "-m", "chartgen", "example"], check=True, capture_output=True
        ).stdout.decode()
        shop.write_text(
            text.replace('"lathe-chart-a5", "overview-a5"', '"lathe-chart-a5"'), "utf-8"
        )
        ours = [sys.executable, "-m", "chartgen", "make", str(shop), "--out", str(folder)]
        ours += ["--material", "mild-steel"]
        program = f"import typst; typst.compile({str(source)!r}, output={str(folder / 't.pdf')!r})"
        theirs = [sys.executable, "-c", program]
        cold = median_of(lambda: subprocess.run(ours, check=True, capture_output=True))
        other = median_of(lambda: subprocess.run(theirs, check=True, capture_output=True))
        print(f"cold, one card: {1000 * cold:.0f} ms; typst {1000 * other:.0f} ms")
        print(f"ratio to typst: {cold / other:.2f}")

    cards = pipeline.printed_cards(pipeline.describe(None, ""))
    pipeline.render(pipeline.lay_out(cards[:1])[0])
    started = perf_counter()
    pages = size = 0
    for number in range(WARM_CARDS):
        finished = pipeline.lay_out([cards[number % len(cards)]])[0]
        size += len(pipeline.render(finished))
        pages += len(finished.document.pages)
    spent = perf_counter() - started
    print(f"warm: {1000 * spent / WARM_CARDS:.1f} ms a card, {1000 * spent / pages:.1f} ms a page")
    print(f"size: {size / pages / 1000:.1f} kB a page")


main()
