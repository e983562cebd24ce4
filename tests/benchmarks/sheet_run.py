"""How a long run of cards on sheets goes: time and size a card, memory, two processes, others.

200 A5 lathe charts, every one with numbers of its own, two on an A4 sheet, in one PDF. Each
figure is taken in a process of its own, from words to bytes (numbers and words are made before,
and their time is given beside). Run it on a quiet machine; the ratios are of one run.
"""

import resource
import subprocess
import sys
import tempfile
from collections.abc import Iterator
from concurrent.futures import ProcessPoolExecutor
from dataclasses import dataclass, replace
from importlib.util import find_spec
from multiprocessing import get_context
from pathlib import Path
from time import perf_counter, process_time

from typst_card import typst_markup
from weasyprint_card import weasyprint_markup

from chartgen import pipeline
from chartgen.layout.layout_file import load_layout
from chartgen.layout.placed import Document
from chartgen.reference.tables import material_keys
from chartgen.sheet_run import imposition, render_sheets, sheet_plan
from chartgen.wording.card import AnyCard

CARDS = 200
ROUNDS = 5
LAYOUT = "lathe-chart-a5"
FONT_PACKAGE = "fontpkg_ibm_plex_sans_condensed"
FAMILY = "IBM Plex Sans Condensed"
WATTS = (600.0, 660.0, 720.0, 780.0, 840.0, 900.0)
PLAN = sheet_plan(paper="A4", edge_to_edge=True)


def cards(count: int, first: int = 0) -> Iterator[AnyCard]:
    """Yield cards of the built-in shop: every material, then again with another motor."""
    keys = list(material_keys())
    shop = pipeline.with_layouts(pipeline.describe(None, ""), [LAYOUT])
    for number in range(first, first + count):
        watts = WATTS[number // len(keys)]
        motor = replace(shop.lathe.motor, plate_power=watts)
        changed = replace(shop, lathe=replace(shop.lathe, motor=motor))
        one = pipeline.with_materials(changed, [keys[number % len(keys)]])
        yield replace(pipeline.printed_cards(one)[0], file_stem=f"card-{number}")


@dataclass(frozen=True, slots=True, kw_only=True)
class Taken:
    """What a run of sheets took: bytes, and seconds of words and of PDF by clock and processor."""

    size: int
    words: float
    pdf: float
    processor: float


def sheets(first: int, count: int) -> Taken:
    """Make a run of sheets; numbers and words of each card are made when its turn comes."""
    layout = load_layout(LAYOUT)
    words = words_processor = 0.0

    def timed() -> Iterator[AnyCard]:
        nonlocal words, words_processor
        waiting = cards(count, first)
        while True:
            clock, processor = perf_counter(), process_time()
            card = next(waiting, None)
            words += perf_counter() - clock
            words_processor += process_time() - processor
            if card is None:
                return
            yield card

    clock, processor = perf_counter(), process_time()
    imposed = imposition(layout.page, layout.pouch, PLAN)
    data = render_sheets("run", timed(), imposed)
    return Taken(
        size=len(data),
        words=words,
        pdf=perf_counter() - clock - words,
        processor=process_time() - processor - words_processor,
    )


def run(count: int) -> None:
    """Print what a run of so many cards takes, with its peak of memory."""
    sheets(0, 2)  # fonts and tables are read once
    taken = sheets(0, count)
    peak = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024.0
    print(
        f"{count} cards: {1000 * taken.pdf / count:.1f} ms a card of two pages (wanted at most 8; "
        f"{1000 * taken.processor / count:.1f} ms of processor), "
        f"{taken.size / count / 1000:.1f} kB (wanted at most 12); numbers and words before that "
        f"{1000 * taken.words / count:.1f} ms; peak {peak:.0f} MB"
    )


def two_processes() -> None:
    """Print how much sooner two processes are done with both halves than one is.

    Both run in turn several times and the best of each counts: whatever else the machine does
    only ever adds.
    """
    half = CARDS // 2
    apart, alone = [], []
    with ProcessPoolExecutor(2, mp_context=get_context("spawn")) as pool:
        list(pool.map(sheets, (0,) * 8, (10,) * 8))
        sheets(0, 10)
        for _ in range(ROUNDS):
            started = perf_counter()
            list(pool.map(sheets, (0, half), (half, half)))
            apart.append(perf_counter() - started)
            started = perf_counter()
            sheets(0, half)
            sheets(half, half)
            alone.append(perf_counter() - started)
    print(
        f"two processes: {min(alone) / min(apart):.2f} times one (wanted at least 1.7; rounds "
        f"{', '.join(f'{a / b:.2f}' for a, b in zip(alone, apart, strict=True))})"
    )


def seconds(program: str) -> float:
    """Return how long a Python program takes as a whole process."""
    started = perf_counter()
    subprocess.run([sys.executable, "-c", program], check=True, capture_output=True)
    return perf_counter() - started


def others(folder: Path) -> None:
    """Print the time of the same cards, already placed, by typst and WeasyPrint."""
    fonts = Path(next(iter(find_spec(FONT_PACKAGE).submodule_search_locations))) / "files"
    placed = [card.document for card in pipeline.lay_out(list(cards(CARDS)))]
    for name, some in (("one card", placed[:1]), (f"{CARDS} cards", placed)):
        whole = Document(
            title="", subject="", pages=tuple(page for card in some for page in card.pages)
        )
        (folder / "cards.typ").write_text(typst_markup(whole, FAMILY), "utf-8")
        (folder / "cards.html").write_text(weasyprint_markup(whole, FAMILY, fonts), "utf-8")
        ours = seconds(
            f"import sys; sys.path.insert(0, {str(Path(__file__).parent)!r}); "
            f"import sheet_run; sheet_run.sheets(0, {len(some)})"
        )
        typst = seconds(
            f"import typst; typst.compile({str(folder / 'cards.typ')!r}, "
            f"output={str(folder / 't.pdf')!r}, font_paths=[{str(fonts)!r}])"
        )
        print(
            f"{name}, whole process: {ours:.2f} s with all numbers; typst, places given, "
            f"{typst:.2f} s, ratio {ours / typst:.2f}"
        )
        if find_spec("weasyprint") is None:
            print("WeasyPrint is not installed: no comparison")
            continue
        weasy = seconds(
            f"from weasyprint import HTML; HTML({str(folder / 'cards.html')!r})"
            f".write_pdf({str(folder / 'w.pdf')!r})"
        )
        print(f"{name}, WeasyPrint, places given: {weasy:.2f} s, ratio {ours / weasy:.3f}")


def main() -> None:
    """Print all figures."""
    for count in (50, CARDS):
        # Peak memory is of a whole process.
        subprocess.run([sys.executable, __file__, str(count)], check=True)
    two_processes()
    with tempfile.TemporaryDirectory() as name:
        others(Path(name))


if __name__ == "__main__":
    if len(sys.argv) > 1:
        run(int(sys.argv[1]))
    else:
        main()
