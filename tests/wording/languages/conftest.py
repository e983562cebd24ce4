"""Where messages come from that do not stand where they are said: data files, enumerations."""

import pytest

from chartgen.layout.layout_file import every_layout_name, load_layout
from chartgen.limits.ways_out import Way
from chartgen.limits.window import Verdict
from chartgen.model.blade import Edge, ToolMaterial
from chartgen.model.tooling import BarMaterial, DrillPoint
from chartgen.planning.operations import Bound
from chartgen.wording.printed_change import CardState
from chartgen.wording.section_titles import SectionTitle
from chartgen.wording.steps.dig_in import GIVES


@pytest.fixture(scope="session")
def said_from_data() -> frozenset[str]:
    """Return every such message."""
    return frozenset(
        {
            *(title.value for title in SectionTitle),
            *(load_layout(name).title for name in every_layout_name()),
            *(word.value for kind in (Bound, Way, Verdict) for word in kind),
            *GIVES.values(),
            *(state.value for state in CardState),
            *(word.value for kind in (ToolMaterial, Edge, BarMaterial, DrillPoint) for word in kind),
        }
    )
