"""One cell asked about: `try`, `explain` and `check`, from a command's words to the answer."""

from dataclasses import dataclass, replace
from functools import partial

from chartgen.errors import RequestError
from chartgen.limits.cut import Cut, Side, assess, recommended
from chartgen.limits.window import Windows
from chartgen.model.blade import Blade
from chartgen.model.material import Material
from chartgen.model.shop import Shop
from chartgen.quantities import (
    MM,
    MM_REV,
    RPM,
    Millimetres,
    MillimetresPerRev,
    RevsPerMinute,
    Unit,
)
from chartgen.reference.tables import load_material, material_keys
from chartgen.units import magnitude
from chartgen.wording.advice import advise
from chartgen.wording.assumptions import assumption_lines
from chartgen.wording.blade_letters import blade_letter
from chartgen.wording.doubts import doubts, plate_lines
from chartgen.wording.explanation import Explanation, explain
from chartgen.wording.measured import measured_lines
from chartgen.wording.nearest import nearest_name


@dataclass(frozen=True, slots=True, kw_only=True)
class CutRequest:
    """A cell that a command asks about, and for `try` the cut in it."""

    material: Material
    blade: Blade
    diameter: Millimetres[float]
    bore: Millimetres[float]
    speed: RevsPerMinute[float] | None
    feed: MillimetresPerRev[float] | None


@dataclass(frozen=True, slots=True, kw_only=True)
class CutAnswer:
    """A cut with the window it was held against and the advice on it."""

    windows: Windows
    cut: Cut
    advice: str
    explanation: Explanation


def cut_request(
    shop: Shop,
    *,
    material: str,
    tool: str,
    diameter: str,
    bore: str | None = None,
    speed: str | None = None,
    feed: str | None = None,
) -> CutRequest:
    """Return what a command's words ask about.

    Raises
    ------
    RequestError
        With every word that cannot be used, a line each.
    """
    faults: list[str] = []

    def number(name: str, text: str | None, unit: Unit, default: float = 0.0) -> float:
        if text is None:
            return default
        try:
            if name == "bore":
                return magnitude(text, unit, least=0.0)
            return magnitude(text, unit, above=0.0)
        except ValueError as error:
            faults.append(f"--{name}: {error}")
            return 1.0

    if material not in material_keys():
        faults.append(
            f"--material: {material!r} is unknown.{nearest_name(material, material_keys())}"
        )
    blades = {blade.name: blade for blade in shop.blades}
    by_word = {blade_letter(shop, name): blade for name, blade in blades.items()} | blades
    if tool not in by_word:
        names = ", ".join(f"{blade_letter(shop, name)} ({name})" for name in blades)
        faults.append(f"--tool: {tool!r} is no blade of this shop; it has {names}.")
    across, through = number("diameter", diameter, MM), number("bore", bore, MM)
    turning, biting = number("speed", speed, RPM), number("feed", feed, MM_REV)
    if not faults and through >= across:
        faults.append(f"--bore: {through:g} mm leaves nothing to cut of {across:g} mm diameter.")
    if faults:
        raise RequestError("\n".join(faults))
    return CutRequest(
        material=load_material(material),
        blade=by_word[tool],
        diameter=across,
        bore=through,
        speed=turning if speed is not None else None,
        feed=biting if feed is not None else None,
    )


def explain_cell(shop: Shop, request: CutRequest) -> CutAnswer:
    """Return a cell's recommended cut, or its nearest miss, explained."""
    found, best = recommended(
        shop,
        material=request.material,
        blade=request.blade,
        diameter=request.diameter,
        bore=request.bore,
    )
    return CutAnswer(
        windows=found,
        cut=best,
        advice=advise(shop, best, found, best),
        explanation=explain(shop, found, best),
    )


def try_cut(shop: Shop, request: CutRequest) -> CutAnswer:
    """Return a given cut held against every limit, with what to change."""
    cell = explain_cell(shop, request)
    index = (0, shop.blades.index(request.blade), 0)
    at = partial(
        assess,
        shop,
        material=request.material,
        blade=request.blade,
        diameter=request.diameter,
        bore=request.bore,
        speed=request.speed or cell.cut.spindle_speed,
        feed=request.feed or cell.cut.feed,
        cell_has_window=bool(cell.windows.has_window[index]),
    )
    strongest = at()
    # A speed that several positions run is inside if it is inside in one of them.
    others = [at(position=position) for position in strongest.case.trials.positions]
    cut = next((c for c in (strongest, *others) if c.side is Side.INSIDE), strongest)
    return replace(cell, cut=cut, advice=advise(shop, cut, cell.windows, cell.cut))


def understood(shop: Shop) -> tuple[str, ...]:
    """Return what a shop file was understood to say, with anything that looks implausible."""
    materials = [load_material(key) for key in shop.request.materials]
    return (
        f"{shop.name}, revision {shop.revision}, {shop.date or 'undated'}",
        *plate_lines(shop),
        *assumption_lines(shop, materials=materials, blades=shop.blades),
        *measured_lines(shop),
        *doubts(shop),
    )
