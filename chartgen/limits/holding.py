"""How the work is held: static grip, what speed takes off it, friction; resolved once a shop."""

from collections.abc import Sequence
from dataclasses import dataclass, replace

from chartgen.limits.allowances import Allowances
from chartgen.limits.friction import friction_of
from chartgen.model.lathe import BarSurface, Chuck, ChuckKind
from chartgen.model.material import Material
from chartgen.physics.grip import grip_from_key_torque, jaw_moment_from_loss
from chartgen.quantities import (
    FloatArray,
    KilogramMetres,
    Millimetres,
    Newtons,
    frozen_array,
)
from chartgen.reference.chuck_sizes import scroll_chuck_of_size
from chartgen.reference.chucks import BodyMaterial, ScrollChuck, load_holding


@dataclass(frozen=True, slots=True, kw_only=True, eq=False, repr=False)
class Holding:
    """Grip of one chuck. `friction` is (M, 1, 1, 1); `static_grip` is inf for a collet.

    `in_table` is False where the chuck is smaller or larger than any the tables know and the
    grip was scaled from the nearest.
    """

    static_grip: Newtons[float]
    jaw_moment: KilogramMetres[float]
    friction: FloatArray
    in_table: bool


def make_holding(
    chuck: Chuck, surface: BarSurface, materials: Sequence[Material], allowances: Allowances
) -> Holding:
    """Resolve a chuck for some materials.

    The key torque decides where it is known. Else it is a share of the table's static grip,
    since few people pull the key as the table does, or what a light pull gives, if that is
    more, as on a small chuck; never more than the table. Collets grip hard and lose nothing
    by speed, but no table of theirs was found: no limit is worked out for them.
    """
    friction = frozen_array([friction_of(chuck, surface, m).value for m in materials])
    row, in_table = nearest_chuck(chuck.size)
    moment = float(
        jaw_moment_from_loss(
            static_grip=row.static_grip.value,
            lost_share=load_holding().grip.lost_share.value,
            # The steel column: a cast-iron body is slower for its own sake, not its jaws'.
            spindle_speed=row.largest_speed[BodyMaterial.STEEL].value,
        )
    )
    from_key = grip_from_key_torque(
        key_torque=allowances.key_pull if chuck.key_torque is None else chuck.key_torque,
        grip_per_torque=load_holding().grip.grip_per_key_torque.value,
    )
    static_grip = min(float(from_key), row.static_grip.value)
    if chuck.key_torque is None:
        static_grip = max(static_grip, allowances.grip_share * row.static_grip.value)
    if chuck.kind is ChuckKind.COLLET:
        static_grip, moment = float("inf"), 0.0
    return Holding(
        static_grip=static_grip,
        jaw_moment=moment,
        friction=friction.reshape(-1, 1, 1, 1),
        in_table=in_table,
    )


def nearest_chuck(size: Millimetres[float]) -> tuple[ScrollChuck, bool]:
    """Return the table's chuck of a size, and whether the table reaches that far.

    Below its smallest size the static grip is scaled with the square of the size, the
    cautious side of the rows; above its largest the largest row stands.
    """
    rows = load_holding().scroll_chucks
    smallest, largest = rows[0], rows[-1]
    if smallest.size <= size <= largest.up_to:
        return scroll_chuck_of_size(size, chucks=rows), True
    if size > largest.up_to:
        return largest, False
    scaled = (size / smallest.size) ** 2 * smallest.static_grip.value
    return replace(smallest, static_grip=replace(smallest.static_grip, value=scaled)), False
