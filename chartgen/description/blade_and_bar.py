"""From the tables [[blade]] and [work] to what meets in the cut: a blade and a bar."""

from functools import partial

from chartgen.description.problems import KeyPath, Problems
from chartgen.description.schema import BladeTable, WorkTable
from chartgen.model.blade import Blade
from chartgen.model.lathe import Work

# No blade stands out this far; a slip of the hand, or inches taken for millimetres, does.
LONGEST_IN_HEIGHTS = 12.0


def blade_of(table: BladeTable, path: KeyPath, problems: Problems) -> Blade | None:
    """Return the blade, or None with everything noted that no blade can be."""
    before = len(problems.found)
    # Rounded, so that a blade of exactly this length passes in inches too.
    if round(table.projection / table.height, 9) > LONGEST_IN_HEIGHTS:
        problems.add(
            (*path, "projection"),
            f"projection ({table.projection:g} mm) is over {LONGEST_IN_HEIGHTS:g} times height "
            f"({table.height:g} mm): a blade that long has no meaning.",
            "Check projection and height.",
        )
    for index, (thickness, _) in enumerate(table.strips):
        if thickness > table.insert_width:
            problems.add(
                (*path, "strips", index),
                f"thickness ({thickness:g} mm) is more than insert_width "
                f"({table.insert_width:g} mm): the body would rub in its own slot.",
                "Measure both; in each pair the thickness stands first.",
            )
    make = partial(
        Blade,
        name=table.name,
        tool_material=table.tool,
        edge=table.edge,
        edge_radius=table.edge_radius,
        worn=table.worn,
        insert_width=table.insert_width,
        thickness=table.thickness,
        height=table.height,
        projection=table.projection,
        strips=table.strips,
    )
    mend = "Measure both again."
    blade = problems.attempt(path, make, keys=BladeTable.keys, mend=mend)
    return blade if len(problems.found) == before else None


def work_of(table: WorkTable | None) -> Work:
    """Return how the bar is set, as usual where the file is silent."""
    if table is None:
        return Work()
    return Work(surface=table.surface, jaw_distance=table.jaw_distance, bar_behind=table.bar_behind)
