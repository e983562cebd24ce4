"""How long the whole window takes: every limit for a large shop, in one process.

24 materials, 6 widths, 60 diameters and every trial speed of every drive position.
"""

import statistics
from dataclasses import replace
from time import perf_counter

from chartgen import pipeline
from chartgen.limits.run import windows
from chartgen.reference.tables import load_material, material_keys

RUNS = 21
MATERIALS = 24
WIDTHS = (1.6, 2.0, 2.5, 3.0, 4.0, 5.0)
DIAMETERS = tuple(3.0 + number for number in range(60))
WANTED = 0.25


def main() -> None:
    """Print the figures."""
    shop = pipeline.describe(None, "")
    first = shop.blades[0]
    blades = tuple(
        replace(first, name=f"{width:g} mm", insert_width=width, thickness=0.8 * width)
        for width in WIDTHS
    )
    materials = [load_material(key) for key in material_keys()[:MATERIALS]]
    shop = replace(shop, blades=blades)
    spent = []
    for _ in range(RUNS + 1):
        started = perf_counter()
        found = windows(shop, materials=materials, diameters=DIAMETERS)
        spent.append(perf_counter() - started)
    warm = sorted(spent[1:])
    print(f"{found.feed.size} cells, {found.has_window.sum()} with a window")
    print(
        f"warm: median {statistics.median(warm):.3f} s ({warm[0]:.3f} to {warm[-1]:.3f}), "
        f"wanted at most {WANTED}; first run {spent[0]:.3f} s"
    )


main()
