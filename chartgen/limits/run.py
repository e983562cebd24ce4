"""From a shop to windows: the limits stage on one page."""

from collections.abc import Sequence

from chartgen.limits.allowances import allowances_for
from chartgen.limits.blade_strength import blade_strength
from chartgen.limits.case import Case, Trials
from chartgen.limits.choice import choose
from chartgen.limits.envelope import lowest
from chartgen.limits.grid import make_grid
from chartgen.limits.holding import make_holding
from chartgen.limits.speed_caps import SPEED_CAPS
from chartgen.limits.spindle import make_spindle
from chartgen.limits.trials import make_trials, trials_at
from chartgen.limits.window import Windows
from chartgen.model.blade import Blade
from chartgen.model.material import Material
from chartgen.model.shop import Shop
from chartgen.quantities import Millimetres, RevsPerMinute


def windows(
    shop: Shop,
    *,
    materials: Sequence[Material],
    diameters: Sequence[Millimetres[float]],
    blades: Sequence[Blade] | None = None,
    bore: Millimetres[float] = 0.0,
) -> Windows:
    """Return the windows of some materials and diameters for a shop's blades.

    Raises
    ------
    ValueError
        If the bore leaves nothing to cut.
    """
    case = make_case(
        shop,
        materials=materials,
        blades=shop.blades if blades is None else blades,
        diameters=diameters,
        bore=bore,
    )
    return choose(case, shop.request.units)


def make_case(
    shop: Shop,
    *,
    materials: Sequence[Material],
    blades: Sequence[Blade],
    diameters: Sequence[Millimetres[float]],
    bore: Millimetres[float] = 0.0,
    speed: RevsPerMinute[float] | None = None,
) -> Case:
    """Return a case over all useful speeds, or over one given speed."""
    allowances = allowances_for(shop)
    grid = make_grid(
        materials=materials,
        blades=blades,
        diameters=diameters,
        bore=bore,
        work=shop.work,
        feeding=shop.request.feeding,
        allowances=allowances,
    )
    spindle = make_spindle(shop.lathe, allowances)
    caps = [(reason, cap(grid, shop, allowances)) for reason, cap in SPEED_CAPS]
    cap = lowest(caps)
    trials: Trials = (
        make_trials(grid=grid, spindle=spindle, speed_cap=cap.value)
        if speed is None
        else trials_at(spindle=spindle, speed=speed)
    )
    return Case(
        grid=grid,
        lathe=shop.lathe,
        blades=blade_strength(
            blades, tool_stiffness=shop.lathe.tool_stiffness, allowances=allowances
        ),
        holding=make_holding(shop.lathe.chuck, shop.work.surface, materials, allowances),
        feeding=shop.request.feeding,
        allowances=allowances,
        spindle=spindle,
        speed_cap=cap.value,
        speed_cap_code=cap.code,
        trials=trials,
    )
