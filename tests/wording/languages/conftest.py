"""Where messages come from that do not stand where they are said: data files, enumerations."""

import re
from collections.abc import Callable, Iterable

import pytest

from chartgen.layout.layout_file import every_layout_name, load_layout
from chartgen.layout.pictograms import PICTOGRAMS
from chartgen.limits.reasons import Reason
from chartgen.limits.ways_out import Way
from chartgen.limits.window import Verdict
from chartgen.model.blade import Edge, ToolMaterial
from chartgen.model.lathe import DialReads
from chartgen.model.shop import Shop
from chartgen.model.tooling import BarMaterial, DrillPoint
from chartgen.physics.centre import CentreFeedRule
from chartgen.planning.operations import Bound
from chartgen.reference.cautions import DEFERENCE, Signal, load_cautions
from chartgen.reference.tables import load_material, material_keys
from chartgen.wording.assumptions import MOTORS
from chartgen.wording.beyond import BEYOND
from chartgen.wording.holding_lines import BARS
from chartgen.wording.material_names import is_in_words
from chartgen.wording.measured import NAMES
from chartgen.wording.printed_change import CardState
from chartgen.wording.section_titles import SectionTitle
from chartgen.wording.signs import legend_words
from chartgen.wording.steps.dig_in import GIVES

MATERIALS = tuple(load_material(key) for key in material_keys())


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
            *(
                word.value
                for kind in (ToolMaterial, Edge, BarMaterial, DrillPoint)
                for word in kind
            ),
            *(material.name for material in MATERIALS),
            *(name for material in MATERIALS for name in material.also if is_in_words(name)),
            *(caution.text for caution in load_cautions()),
            *(signal.word.upper() for signal in Signal),
            *(pictogram.meaning for pictogram in PICTOGRAMS.values()),
            *(reads.value for reads in DialReads),
            *(rule.words for rule in CentreFeedRule),
            *(reason.legend for reason in Reason),
            *BARS.values(),
            *BEYOND.values(),
            *MOTORS.values(),
            *NAMES.values(),
            *legend_words(),
            DEFERENCE,
        }
    )


EnglishLeft = Callable[..., dict[str, list[str]]]
# Any English sentence of a card has one of these; none is a word of German.
_ENGLISH = frozenset(
    """
    the and of is are with for not from to or on than which where what when before now most least
    cut cuts feed feeds speed speeds blade blades bar jaws rev turn turns this that card cards
    changed moved stale current new print power torque spindle surface width tight good measured
    continuous diameter diameters cells entries other another only stated undated yes no letter
    shaft use saw chuck work edge grip reach bends first met if
    """.split()  # noqa: SIM905 - a list of so many would be a page long
)


@pytest.fixture(scope="session")
def english_left() -> EnglishLeft:
    """Return what finds English words and decimal points, but those in what an owner named."""

    def found(texts: Iterable[str], shop: Shop, known: Iterable[str] = ()) -> dict[str, list[str]]:
        names = {
            *known,
            shop.name,
            shop.lathe.name,
            *(blade.name for blade in shop.blades),
            *(position.name for position in shop.lathe.drive.positions),
        }
        faults = {}
        for text in texts:
            rest = re.sub(r'\[[^\]]*\]|CHARTGEN \S+|"chartgen stale"', " ", text)
            for name in sorted(names, key=len, reverse=True):
                rest = rest.replace(name, " ")
            words = [word.lower() for word in re.findall(r"[^\W\d_]+", rest)]
            left = [word for word in words if word in _ENGLISH] + re.findall(r"\d\.\d+", rest)
            if left:
                faults[text] = left
        return faults

    return found
