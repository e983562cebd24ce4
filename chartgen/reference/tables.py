"""Reads the reference data: materials, feeds, size effect, transmission, bibliography.

Each material has a file of its own, so that a run parses only the ones it uses. The
`read_*` functions take text, for the tests; the `load_*` functions read what is shipped.
"""

from collections.abc import Mapping
from functools import cache
from pathlib import Path
from types import MappingProxyType

from chartgen.errors import RequestError
from chartgen.model.blade import ToolMaterial
from chartgen.model.material import FeedClass, FeedRow, ForceData, IsoGroup, Material, SpeedData
from chartgen.quantities import FloatArray, frozen_array
from chartgen.reference.entries import Entry, data_text
from chartgen.sources import Publication, Sourced

NOT_APPLICABLE = "not applicable"

_MATERIALS = "materials"
_SUFFIX = ".toml"
_MATERIAL_KEYS = (
    "key",
    "name",
    "also",
    "iso_group",
    "condition",
    "density",
    "youngs_modulus",
    "tensile_strength",
    "feeds",
    "wants_polished_edge",
    "work_hardens",
    "tags",
    "note",
    "speed",
)
_OPTIONAL_MATERIAL_KEYS = ("hardness", "unit_energy", "force")
_FORCE_KEYS = ("specific_force", "thickness_exponent", "band_low", "band_high")
_SPEED_KEYS = ("start", "low", "ceiling", "soft_floor")
_ISO_GROUPS = {group.letter: group for group in IsoGroup}


@cache
def material_keys() -> tuple[str, ...]:
    """Return the keys of all materials in alphabetical order, without reading their files."""
    folder = Path(__file__).parent.joinpath(_MATERIALS)
    names = (file.name for file in folder.iterdir())
    return tuple(sorted(name.removesuffix(_SUFFIX) for name in names if name.endswith(_SUFFIX)))


@cache
def load_material(key: str) -> Material:
    """Return one material.

    Raises
    ------
    RequestError
        If there is no such material.
    ValueError
        If its file cannot be used.
    """
    if key not in material_keys():
        raise RequestError(
            f"There is no material {key!r}. Use one of {', '.join(material_keys())}."
        )
    name = f"{key}{_SUFFIX}"
    return read_material(data_text(_MATERIALS, name), file=f"{_MATERIALS}/{name}")


def read_material(text: str, *, file: str) -> Material:
    """Return the material that the text of a file describes.

    Raises
    ------
    ValueError
        Naming file and key, if a key is missing, unknown or holds something else.
    """
    entry = Entry.parse(text, file=file)
    entry.expect(_MATERIAL_KEYS, _OPTIONAL_MATERIAL_KEYS)
    key = entry.text("key")
    if key != file.rpartition("/")[2].removesuffix(_SUFFIX):
        raise entry.error(f"{key!r} is not the name of the file", "key")
    speed = entry.table("speed")
    speed.expect([tool.value for tool in ToolMaterial])
    group = entry.choice("iso_group", _ISO_GROUPS)
    feeds = entry.choice("feeds", load_feed_classes())
    return Material(
        key=key,
        name=entry.text("name"),
        also=entry.texts("also"),
        iso_group=group,
        condition=entry.text("condition"),
        hardness=entry.sourced("hardness") if "hardness" in entry else None,
        density=entry.sourced("density"),
        youngs_modulus=entry.sourced("youngs_modulus"),
        tensile_strength=entry.sourced("tensile_strength"),
        force=_force(entry.table("force")) if "force" in entry else None,
        unit_energy=entry.sourced("unit_energy") if "unit_energy" in entry else None,
        speeds={tool: _speed(speed.table(tool.value)) for tool in ToolMaterial},
        feeds=feeds,
        wants_polished_edge=entry.flag("wants_polished_edge"),
        work_hardens=entry.flag("work_hardens"),
        tags=entry.texts("tags"),
        note=entry.text("note"),
    )


def _force(entry: Entry) -> ForceData:
    entry.expect(_FORCE_KEYS)
    return ForceData(
        specific_force=entry.sourced("specific_force"),
        thickness_exponent=entry.sourced("thickness_exponent"),
        band_low=entry.sourced("band_low"),
        band_high=entry.sourced("band_high"),
    )


def _speed(entry: Entry) -> SpeedData:
    entry.expect(_SPEED_KEYS)
    return SpeedData(
        start=entry.sourced("start"),
        low=entry.sourced("low"),
        ceiling=entry.sourced("ceiling"),
        soft_floor=None
        if entry.holds("soft_floor", NOT_APPLICABLE)
        else entry.sourced("soft_floor"),
    )


@cache
def load_feed_classes() -> Mapping[str, FeedClass]:
    """Return the feed classes by key.

    Raises
    ------
    ValueError
        If the file cannot be used.
    """
    return read_feed_classes(data_text("feeds.toml"), file="feeds.toml")


def read_feed_classes(text: str, *, file: str) -> Mapping[str, FeedClass]:
    """Return the feed classes that the text of a file describes.

    Raises
    ------
    ValueError
        Naming file and key, if a row cannot be used or is not wider than the one before.
    """
    entry = Entry.parse(text, file=file)
    classes = {}
    for key in entry.keys:
        rows: list[FeedRow] = []
        for row in entry.rows(key):
            row.expect(("width", "start", "largest"))
            width = row.number("width")
            if rows and width <= rows[-1].width:
                raise row.error(f"{width:g} mm is not wider than the row before", "width")
            rows.append(
                FeedRow(width=width, start=row.sourced("start"), largest=row.sourced("largest"))
            )
        classes[key] = FeedClass(key=key, rows=tuple(rows))
    return MappingProxyType(classes)


@cache
def load_size_effect() -> tuple[FloatArray, FloatArray]:
    """Return chip thicknesses [mm], rising, and the factor on unit energy at each."""
    return read_size_effect(data_text("size_effect.toml"), file="size_effect.toml")


def read_size_effect(text: str, *, file: str) -> tuple[FloatArray, FloatArray]:
    """Return the size-effect curve that the text of a file describes.

    Raises
    ------
    ValueError
        Naming file and key, if the lists differ in length or the thicknesses do not rise.
    """
    entry = Entry.parse(text, file=file)
    entry.expect(("source", "mark", "place", "note", "reading_uncertainty", "thickness", "factor"))
    entry.mark()
    thickness, factor = entry.numbers("thickness"), entry.numbers("factor")
    if len(thickness) != len(factor):
        raise entry.error(f"has {len(factor)} numbers for {len(thickness)} thicknesses", "factor")
    if thickness != sorted(set(thickness)):
        raise entry.error("must rise", "thickness")
    return frozen_array(thickness), frozen_array(factor)


@cache
def load_transmission() -> Mapping[str, Sourced]:
    """Return the efficiency of each element that can lie between motor and spindle."""
    entry = Entry.parse(data_text("transmission.toml"), file="transmission.toml")
    return MappingProxyType({key: entry.sourced(key) for key in entry.keys})


@cache
def load_bibliography() -> Mapping[str, Publication]:
    """Return the publications by key."""
    return read_bibliography(data_text("bibliography.toml"), file="bibliography.toml")


def read_bibliography(text: str, *, file: str) -> Mapping[str, Publication]:
    """Return the publications that the text of a file describes.

    Raises
    ------
    ValueError
        Naming file and key, if an entry has no title or kind, or something unknown.
    """
    entry = Entry.parse(text, file=file)
    publications = {}
    for key in entry.keys:
        one = entry.table(key)
        one.expect(("title", "kind"), ("note",))
        publications[key] = Publication(
            key=key, title=one.text("title"), kind=one.text("kind"), note=one.text("note")
        )
    return MappingProxyType(publications)
