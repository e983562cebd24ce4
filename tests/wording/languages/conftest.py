"""Where messages come from that do not stand where they are said: data files, enumerations."""

import pytest

from chartgen.layout.layout_file import every_layout_name, load_layout
from chartgen.model.blade import Edge, ToolMaterial
from chartgen.model.tooling import BarMaterial, DrillPoint
from chartgen.wording.printed_change import CardState
from chartgen.wording.section_titles import SectionTitle


@pytest.fixture(scope="session")
def said_from_data() -> frozenset[str]:
    """Return every such message."""
    return frozenset(
        {
            *(title.value for title in SectionTitle),
            *(load_layout(name).title for name in every_layout_name()),
            *(state.value for state in CardState),
            *(word.value for kind in (ToolMaterial, Edge, BarMaterial, DrillPoint) for word in kind),
        }
    )
