"""The shipped data: complete, sourced, in their physical bounds; bad entries refused by name."""

import ast
import re
import tomllib
from collections.abc import Iterator
from importlib.resources import files
from itertools import pairwise
from pathlib import Path

import numpy as np
import pytest

import chartgen
from chartgen.errors import RequestError
from chartgen.model.blade import ToolMaterial
from chartgen.model.material import IsoGroup, Material
from chartgen.reference.cautions import load_caution_tags
from chartgen.reference.tables import (
    load_bibliography,
    load_feed_classes,
    load_material,
    load_size_effect,
    load_transmission,
    material_keys,
    read_bibliography,
    read_feed_classes,
    read_material,
    read_size_effect,
)

DATA = Path(str(files("chartgen.reference")))
PACKAGE = Path(chartgen.__file__).parent
PLASTICS = {"acetal", "nylon", "polyethylene", "ptfe"}
# Cited by docstrings of formulas and by the tests of publications, not by a data entry.
CITED_BY_CODE_ONLY = {"CM14", "DOERFLER", "FBR", "JILM-18", "LATHE-1643047",
    "DRIVE-A", "DRIVE-B", "EQA-58600", "ETB", "GATE", "GM", "HSMD", "HT", "HUB", "IMD",
    "ISO-3864-2", "ISO-513", "ISO-7010", "MIT-M", "MMP", "OD1645", "PCS", "RN-1391",
    "TG-5", "TG-8", "TG-9", "WVU", "Z535",
}  # fmt: skip
# Tags that choose no caution: they say how the chip and the edge behave.
BEHAVIOUR_TAGS = {"abrasive", "dry", "ductile"}


def data_files() -> list[Path]:
    return sorted(DATA.rglob("*.toml"))


def sources_and_marks(node: object) -> Iterator[tuple[str, str]]:
    if isinstance(node, dict):
        if "source" in node:
            yield node["source"], node["mark"]
        for value in node.values():
            yield from sources_and_marks(value)
    elif isinstance(node, list):
        for value in node:
            yield from sources_and_marks(value)


def cited(file: Path) -> set[str]:
    tree = ast.parse(file.read_text("utf-8"))
    kinds = (ast.FunctionDef, ast.ClassDef, ast.Module)
    docstrings = (ast.get_docstring(n) or "" for n in ast.walk(tree) if isinstance(n, kinds))
    sections = (text.partition("References\n-----")[2] for text in docstrings)
    return {key for text in sections for key in re.findall(r"\[([A-Z][\w-]+)\]", text)}


@pytest.fixture(params=material_keys())
def material(request: pytest.FixtureRequest) -> Material:
    return load_material(request.param)


@pytest.mark.parametrize("file", data_files(), ids=lambda file: file.name)
def test_every_source_is_in_the_bibliography_or_none_for_memory_and_practice(file: Path) -> None:
    for source, mark in sources_and_marks(tomllib.loads(file.read_text("utf-8"))):
        if source == "none":
            assert mark in {"memory", "practice"}
        else:
            assert source in load_bibliography()


def test_every_publication_is_used() -> None:
    used = {
        source
        for file in data_files()
        for source, _ in sources_and_marks(tomllib.loads(file.read_text("utf-8")))
    }
    assert load_bibliography().keys() - used <= CITED_BY_CODE_ONLY
    assert load_bibliography().keys() >= CITED_BY_CODE_ONLY


def test_every_publication_a_formula_cites_is_in_the_bibliography() -> None:
    keys = {key for file in PACKAGE.rglob("*.py") for key in cited(file)}
    assert {"GROO5", "TG-6"} <= keys
    assert keys <= load_bibliography().keys()


def test_the_materials_cover_all_groups() -> None:
    materials = [load_material(key) for key in material_keys()]
    assert len(materials) >= 26
    assert {m.iso_group for m in materials} == set(IsoGroup)
    assert len({m.name for m in materials}) == len(materials)


def test_no_material_is_called_like_another() -> None:
    names = [name.casefold() for key in material_keys() for name in load_material(key).also]
    assert sorted(names) == sorted(set(names))


def test_speeds_rise_from_low_to_ceiling(material: Material) -> None:
    for speeds in material.speeds.values():
        assert 0 < speeds.low.value <= speeds.start.value <= speeds.ceiling.value
        assert speeds.soft_floor is None or 0 < speeds.soft_floor.value < speeds.start.value


def test_carbide_is_faster_than_high_speed_steel(material: Material) -> None:
    carbide, hss = material.speeds[ToolMaterial.CARBIDE], material.speeds[ToolMaterial.HSS]
    assert carbide.start.value > hss.start.value
    assert carbide.ceiling.value > hss.ceiling.value
    assert hss.soft_floor is None


def test_only_steels_have_a_speed_under_which_the_edge_builds_up(material: Material) -> None:
    is_steel = material.iso_group in {IsoGroup.P, IsoGroup.M}
    assert (material.speeds[ToolMaterial.CARBIDE].soft_floor is not None) is is_steel


def test_force_constants_are_physical(material: Material) -> None:
    if material.force is None:
        return
    assert 500 <= material.force.specific_force.value <= 3000
    assert 0 <= material.force.thickness_exponent.value < 0.5
    for band in (material.force.band_low, material.force.band_high):
        assert 0.25 <= band.value <= 0.6


def test_plastics_have_no_force_and_say_so(material: Material) -> None:
    is_plastic = material.key in PLASTICS
    assert (material.force is None) is is_plastic
    assert ("plastic" in material.tags) is is_plastic
    assert (material.hardness is None) is is_plastic
    assert material.note.startswith("No force data were found") is is_plastic


def test_density_and_hardness_are_physical(material: Material) -> None:
    assert 0.9 <= material.density.value <= 9.0
    assert material.hardness is None or 60 <= material.hardness.value <= 350


def test_groups_m_and_s_harden_as_they_are_cut(material: Material) -> None:
    assert material.work_hardens is (material.iso_group in {IsoGroup.M, IsoGroup.S})


def test_tags_are_known(material: Material) -> None:
    assert set(material.tags) <= {*load_caution_tags(), *BEHAVIOUR_TAGS}


def test_feeds_rise_with_width() -> None:
    for feed_class in load_feed_classes().values():
        rows = feed_class.rows
        assert [row.width for row in rows][:3] == [2.0, 3.0, 4.0]
        for row in rows:
            assert 0 < row.start.value <= row.largest.value
        for narrow, wide in pairwise(rows):
            assert narrow.start.value <= wide.start.value
            assert narrow.largest.value <= wide.largest.value


def test_every_feed_class_is_used() -> None:
    used = {load_material(key).feeds.key for key in material_keys()}
    assert used == load_feed_classes().keys()


def test_thinner_chips_take_more_energy() -> None:
    thickness, factor = load_size_effect()
    assert np.all(np.diff(thickness) > 0)
    assert np.all(np.diff(factor) < 0)
    assert not factor.flags.writeable


def test_no_element_gives_more_than_it_takes() -> None:
    for efficiency in load_transmission().values():
        assert 0.5 < efficiency.value <= 1.0


def test_an_unknown_material_is_refused_with_the_known_ones() -> None:
    with pytest.raises(RequestError) as caught:
        load_material("../feeds")
    assert str(caught.value) == (
        f"There is no material '../feeds'. Use one of {', '.join(material_keys())}."
    )


BAD_ENTRIES = [
    ('source = "TBM", place', "place", "c99.toml: force.specific_force.source: is missing"),
    ('mark = "found", source = "TBM"', 'mark = "sure", source = "TBM"',
     ("c99.toml: force.specific_force.mark: 'sure' is no mark of trust; use one of "
     "['found', 'derived', 'memory', 'practice']")),
    ('source = "TBM"', 'source = "none"',
     "c99.toml: force.specific_force.source: a number marked found must name its source"),
    ("{value = 1780, ", '{value = "1780", ',
     "c99.toml: force.specific_force.value: must be a number"),
    ("{value = 1780, ", "{value = 1780, unit = 2, ",
     ("c99.toml: force.specific_force.unit: is not known here; use mark, note, place, source, "
     "value")),
    ("band_low", "band_lower", "c99.toml: force.band_low: is missing"),
    ("[speed.hss]", "[speed.bronze]", "c99.toml: speed.hss: is missing"),
    ('soft_floor = "not applicable"', 'soft_floor = "none"',
     "c99.toml: speed.hss.soft_floor: must be a table"),
    ('feeds = "steel"', 'feeds = "wood"',
     ("c99.toml: feeds: 'wood' is not one of steel, stainless, iron, aluminium, brass, titanium, "
     "plastic")),
    ('iso_group = "P"', 'iso_group = "Z"', "c99.toml: iso_group: 'Z' is not one of P, M, K, N, S"),
    ('key = "c99"', 'key = "c98"', "c99.toml: key: 'c98' is not the name of the file"),
    ("tags = [", 'colour = "blue"\ntags = [',
     ("c99.toml: colour: is not known here; use also, condition, density, feeds, force, hardness, "
     "iso_group, key, name, note, speed, tags, tensile_strength, unit_energy, "
      "wants_polished_edge, work_hardens, youngs_modulus")),
    ("work_hardens = false", 'work_hardens = "no"',
     "c99.toml: work_hardens: must be true or false"),
    ('tags = ["ductile", ', "tags = [1, ", "c99.toml: tags: must be a list of texts"),
    ('condition = "', "condition = 3 #", "c99.toml: condition: must be text"),
]  # fmt: skip


@pytest.mark.parametrize(("old", "new", "message"), BAD_ENTRIES)
def test_a_bad_material_is_refused_with_file_and_key(old: str, new: str, message: str) -> None:
    text = (DATA / "materials" / "mild-steel.toml").read_text("utf-8")
    text = text.replace('key = "mild-steel"', 'key = "c99"')
    assert read_material(text, file="c99.toml").key == "c99"
    assert old in text
    with pytest.raises(ValueError, match=f"^{re.escape(message)}$"):
        read_material(text.replace(old, new, 1), file="c99.toml")


def test_text_that_is_no_toml_is_refused_with_the_file() -> None:
    with pytest.raises(ValueError, match=r"^c99\.toml: Invalid value \(at line 1, column 7\)$"):
        read_material("key = ?\n", file="c99.toml")


NUMBER = '{value = 1, mark = "practice", source = "none"}'
ROW = f"[[steel]]\nwidth = 2\nstart = {NUMBER}\nlargest = {NUMBER}\n"
CURVE = (
    'source = "GROO5"\nmark = "found"\nplace = ""\nnote = ""\nreading_uncertainty = 0.03\n'
    "thickness = {}\nfactor = {}"
)


def test_feed_rows_that_do_not_widen_are_refused() -> None:
    message = "feeds.toml: steel row 2.width: 2 mm is not wider than the row before"
    with pytest.raises(ValueError, match=f"^{re.escape(message)}$"):
        read_feed_classes(ROW + ROW, file="feeds.toml")


def test_a_feed_class_that_is_no_list_of_rows_is_refused() -> None:
    with pytest.raises(ValueError, match=r"^feeds\.toml: steel: must be a list$"):
        read_feed_classes("steel = 1", file="feeds.toml")


def test_a_size_effect_of_unlike_lists_is_refused() -> None:
    with pytest.raises(ValueError, match=r"^s\.toml: factor: has 1 numbers for 2 thicknesses$"):
        read_size_effect(CURVE.format([0.1, 0.2], [1.0]), file="s.toml")


def test_a_size_effect_out_of_order_is_refused() -> None:
    with pytest.raises(ValueError, match=r"^s\.toml: thickness: must rise$"):
        read_size_effect(CURVE.format([0.2, 0.1], [1.0, 1.1]), file="s.toml")


def test_a_publication_without_a_title_is_refused() -> None:
    with pytest.raises(ValueError, match=r"^b\.toml: MH31\.title: is missing$"):
        read_bibliography('[MH31]\nkind = "handbook"', file="b.toml")
