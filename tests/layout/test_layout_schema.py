"""The JSON Schema of a layout file, held against a general validator of the open standard."""

import tomllib
from typing import Any

import jsonschema
import pytest

from chartgen.errors import DescriptionError
from chartgen.layout.layout_file import every_layout_name, layout_text, parse_layout
from chartgen.layout.layout_schema import layout_schema

SCHEMA = layout_schema()
# JSON Schema 2020-12, as the library jsonschema reads it.
CHECKER = jsonschema.Draft202012Validator(SCHEMA)
TEXT = layout_text("lathe-chart-a5")


def is_valid(text: str) -> bool:
    return bool(CHECKER.is_valid(tomllib.loads(text)))


def test_it_is_a_schema_itself() -> None:
    jsonschema.Draft202012Validator.check_schema(SCHEMA)
    assert SCHEMA["$schema"] == "https://json-schema.org/draft/2020-12/schema"


@pytest.mark.parametrize("name", every_layout_name())
def test_every_shipped_layout_keeps_to_it(name: str) -> None:
    assert [error.message for error in CHECKER.iter_errors(tomllib.loads(layout_text(name)))] == []


@pytest.mark.parametrize(
    ("old", "new"),
    [
        ('pouch = "A5"', 'pouch = "zip bag"'),
        ('page = "A5 landscape"', 'page = "A5 sideways"'),
        ('card = "lathe-chart"', 'card = "chart"'),
        ("row_pitch = 1.35", "row_pitch = 0.5"),
        ("row_pitch = 1.35", 'row_pitch = "wide"'),
        ("rule_every = 3", "rule_every = 2.5"),
        ("columns = 1", "columns = 0"),
        ('"legend", "foot"', '"legend", "feet"'),
        ('"legend", "foot"', '"legend", "legend", "foot"'),
        ('title = "Lathe chart"\n', ""),
        ('title = "Lathe chart"\n', 'title = "Lathe chart"\nsubtitle = "mine"\n'),
        ('reading_distance = "0.7 m"', "reading_distance = 0.7"),
        ("[[side]]", "[[sides]]"),
    ],
)
def test_what_an_editor_marks_the_program_refuses_too(old: str, new: str) -> None:
    assert old in TEXT
    wrong = TEXT.replace(old, new)
    assert not is_valid(wrong)
    with pytest.raises(DescriptionError):
        parse_layout(wrong, file="mine.toml", name="mine")


def test_it_tells_every_key_and_no_other() -> None:
    def keys(schema: dict[str, Any]) -> set[str]:
        return set(schema["properties"])

    side = SCHEMA["properties"]["side"]["items"]
    raw = tomllib.loads(TEXT)
    assert keys(SCHEMA) == set(raw) == set(SCHEMA["required"])
    assert keys(side) == set(raw["side"][0]) == set(side["required"])
