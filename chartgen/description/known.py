"""The names a shop file may use, handed in by the caller."""

from collections.abc import Mapping
from typing import NamedTuple

from chartgen.quantities import Unit


class Known(NamedTuple):
    """What exists beside the shop file: reference data, layouts, allowances.

    `allowances` gives least, most and unit by name. `transmission` names the drive
    elements. `dc_no_load` is the no-load speed of a brushed DC motor over its base speed,
    for a plate that does not state it. `change_layouts` are no layouts of a shop, but of a
    comparison of two, `job_layouts` none either, but of a job, and `class_layouts` of a class.
    """

    materials: tuple[str, ...]
    layouts: tuple[str, ...]
    allowances: Mapping[str, tuple[float, float, Unit]]
    transmission: tuple[str, ...]
    dc_no_load: float
    change_layouts: tuple[str, ...] = ()
    job_layouts: tuple[str, ...] = ()
    class_layouts: tuple[str, ...] = ()
