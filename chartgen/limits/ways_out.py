"""The ways out of an empty or tight window, each tried by running the limits again.

Nothing here is canned advice: a way is offered only if the window it leads to is roomier, and
the ways are ranked by how much roomier. Working between centres is never offered.
"""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from enum import Enum

from chartgen.limits.allowances import allowances_for
from chartgen.limits.holding import nearest_chuck
from chartgen.limits.run import windows
from chartgen.limits.window import Verdict
from chartgen.model.blade import Blade, Edge, ToolMaterial
from chartgen.model.lathe import ChuckKind
from chartgen.model.material import Material
from chartgen.model.shop import Feeding, Shop
from chartgen.quantities import Millimetres, MillimetresPerRev, RevsPerMinute

# A way that opens the window by less than this is not worth a spanner.
_WORTH_IT = 1.05
# No blade is set out further than this many times its height (shop files refuse it too).
_LONGEST = 12.0
_CLOSE_TO_JAWS: Millimetres[float] = 2.0


class Way(Enum):
    """What to change, in a few words with a place for a name or a number.

    Lengths stand in mm; wording writes them in the units of the card.
    """

    OTHER_BLADE = "take blade {what}"
    SHARPER_EDGE = "put in a fresh {what} edge"
    SHORTER = "let the blade stand out only {what}"
    LONGER = "let the blade stand out {what}, if it is long enough"
    CLOSER = "cut {what} from the jaws"
    TIGHTER = "pull the chuck key with {what} N·m, its full torque"
    POWER_FEED = "use the power feed"

    @property
    def is_length(self) -> bool:
        """Whether what is to be changed is a length."""
        return self in {Way.SHORTER, Way.LONGER, Way.CLOSER}


@dataclass(frozen=True, slots=True, kw_only=True)
class WayOut:
    """One way: the window it leads to; `room` is its ceiling over its floor."""

    way: Way
    what: str
    verdict: Verdict
    room: float
    gain: float
    spindle_speed: RevsPerMinute[float]
    feed: MillimetresPerRev[float]


def ways_out(
    shop: Shop,
    *,
    material: Material,
    blade: Blade,
    diameter: Millimetres[float],
    bore: Millimetres[float] = 0.0,
) -> tuple[WayOut, ...]:
    """Return the ways that make a cell roomier, the roomiest first."""
    verdict, before, *_ = _outcome(shop, material, blade, diameter, bore)
    found = []
    for way, what, changed, other in _tries(shop, blade, diameter, bore):
        after, room, speed, feed = _outcome(changed, material, other, diameter, bore)
        opens = verdict is Verdict.NO_WINDOW and after is not Verdict.NO_WINDOW
        worse = verdict is Verdict.INSIDE and after is Verdict.TIGHT
        if after is Verdict.NO_WINDOW or worse or not (opens or room > _WORTH_IT * before):
            continue
        gain = room / max(before, 1e-3)
        found.append(
            WayOut(
                way=way,
                what=what,
                verdict=after,
                room=room,
                gain=gain,
                spindle_speed=speed,
                feed=feed,
            )
        )
    return tuple(sorted(found, key=lambda w: (w.verdict is Verdict.TIGHT, -w.room)))


def _outcome(
    shop: Shop, material: Material, blade: Blade, diameter: float, bore: float
) -> tuple[Verdict, float, float, float]:
    cell = windows(shop, materials=[material], diameters=[diameter], blades=[blade], bore=bore)
    index = (0, 0, 0)
    room = float(cell.ceiling[index] / cell.floor[index])
    return cell.verdict(index), room, float(cell.spindle_speed[index]), float(cell.feed[index])


def _tries(
    shop: Shop, blade: Blade, diameter: float, bore: float
) -> Iterator[tuple[Way, str, Shop, Blade]]:
    """Yield what could be changed: the way, its number, the changed shop and blade."""
    for other in shop.blades:
        if other is not blade:
            yield Way.OTHER_BLADE, other.name, shop, other
    is_hss = blade.tool_material is ToolMaterial.HSS
    keen = Edge.HONED if is_hss else Edge.POLISHED
    if blade.edge is not keen or blade.worn:
        fresh = replace(blade, edge=keen, worn=False, edge_radius=None)
        yield Way.SHARPER_EDGE, keen.value, shop, fresh
    needed = (diameter - bore) / 2.0 + allowances_for(shop).reach_clearance
    reach = float(-(-needed // 0.5) * 0.5)
    if reach < blade.projection:
        yield Way.SHORTER, f"{reach:g}", shop, replace(blade, projection=reach)
    if blade.projection < reach <= _LONGEST * blade.height:
        yield Way.LONGER, f"{reach:g}", shop, replace(blade, projection=reach)
    near = replace(shop, work=replace(shop.work, jaw_distance=_CLOSE_TO_JAWS))
    yield Way.CLOSER, f"{_CLOSE_TO_JAWS:g}", near, blade
    chuck = shop.lathe.chuck
    if chuck.kind is not ChuckKind.COLLET:
        full = nearest_chuck(chuck.size)[0].key_torque.value
        if chuck.key_torque is None or chuck.key_torque < full:
            tight = replace(chuck, key_torque=full)
            yield (
                Way.TIGHTER,
                f"{full:.0f}",
                replace(shop, lathe=replace(shop.lathe, chuck=tight)),
                blade,
            )
    if shop.request.feeding is Feeding.HAND and shop.lathe.cross_slide.power_feeds:
        request = replace(shop.request, feeding=Feeding.POWER)
        yield Way.POWER_FEED, "", replace(shop, request=request), blade
