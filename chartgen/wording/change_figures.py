"""The figures of a change card: drives and windows of two shops laid over each other."""

from chartgen.charts.change import CellChanges
from chartgen.charts.feed_windows import feed_windows
from chartgen.charts.spindle_curves import SpindleCurves, spindle_curves
from chartgen.limits.run import windows
from chartgen.model.material import Material
from chartgen.model.shop import LengthUnits, Shop
from chartgen.wording.curves.change import print_drive_change, print_window_change
from chartgen.wording.figure import PrintedCurves

# Panels side by side that leave their numbers readable, as on a lathe chart.
_BLADES_A_FIGURE = {LengthUnits.METRIC: 3, LengthUnits.INCH: 2}


def change_figures(changes: CellChanges) -> tuple[PrintedCurves, ...]:
    """Return what both drives give, then for each material the windows of the blades in both."""
    before, after = changes.before, changes.after
    first = changes.materials[0]
    figures = [print_drive_change(_drive(before, first), _drive(after, first))]
    names = [blade.name for blade in changes.blades]
    most = _BLADES_A_FIGURE[after.request.units]
    for start in range(0, len(names), most):
        group = names[start : start + most]
        old, new = (
            feed_windows(shop, changes.materials, [b for b in shop.blades if b.name in group])
            for shop in (before, after)
        )
        figures += [print_window_change(a, b) for a, b in zip(old, new, strict=True)]
    return tuple(figures)


def _drive(shop: Shop, material: Material) -> SpindleCurves:
    found = windows(shop, materials=[material], diameters=shop.request.diameters)
    return spindle_curves(shop, found, material)
