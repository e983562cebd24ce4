"""What there is -> terminal text: materials, sources, layouts."""

from collections.abc import Iterable

from chartgen.layout.layout_file import Layout
from chartgen.model.blade import ToolMaterial
from chartgen.model.material import Material
from chartgen.renderers.columns import in_columns
from chartgen.sources import Publication
from chartgen.wording.kinds_of_cards import SHOWS


def render_materials(materials: Iterable[Material]) -> str:
    """Return a table of materials with their main data and the trust put in it."""
    heading = ("key", "name", "ISO", "HB", "kc1.1", "mc", "carbide", "hss", "force from")
    units = ("", "", "", "", "N/mm²", "", "m/min", "m/min", "")
    rows = [heading, units]
    for m in sorted(materials, key=lambda m: ("PMKNS".index(m.iso_group.letter), m.key)):
        force = m.force
        rows.append(
            (
                m.key,
                m.name,
                m.iso_group.letter,
                f"{m.hardness.value:g}" if m.hardness else "",
                f"{force.specific_force.value:g}" if force else "none",
                f"{force.thickness_exponent.value:g}" if force else "",
                f"{m.speeds[ToolMaterial.CARBIDE].start.value:g}",
                f"{m.speeds[ToolMaterial.HSS].start.value:g}",
                f"{force.specific_force.source}, {force.specific_force.mark.word}"
                if force
                else "no published value",
            )
        )
    return in_columns(rows, right=frozenset({3, 4, 5, 6, 7}), rule_after=2)


def render_sources(publications: Iterable[Publication]) -> str:
    """Return the bibliography."""
    lines = []
    for publication in publications:
        note = f"\n      {publication.note}" if publication.note else ""
        lines.append(f"[{publication.key}] {publication.title} ({publication.kind}){note}")
    return "\n".join(lines) + "\n"


def render_layouts(layouts: Iterable[Layout]) -> str:
    """Return a table of layouts: what each shows, on which page, how far off it is read."""
    rows = [("name", "shows", "page", "pouch", "read at, m")]
    for layout in layouts:
        distances = dict.fromkeys(f"{side.reading_distance / 1e3:g}" for side in layout.sides)
        rows.append(
            (layout.name, SHOWS[layout.card], layout.page_name, layout.pouch, ", ".join(distances))
        )
    return in_columns(rows, right=frozenset(), rule_after=1)
