"""The small file beside the shop file: read back as written, refused where it is not one."""

import tomllib

import pytest
from hypothesis import given
from hypothesis import strategies as st

from chartgen.description.recipe import Recipe, read_recipe, recipe_text
from chartgen.errors import ChartgenError

TEXTS = st.text(st.characters(exclude_categories=["Cs"]), max_size=40)
RECIPES = st.builds(
    Recipe,
    program=TEXTS,
    layout=TEXTS,
    number=st.integers(1, 10**6),
    file=TEXTS,
    materials=st.lists(TEXTS, max_size=4).map(tuple),
    check=TEXTS,
    is_change=st.booleans(),
)


# Quotes, line breaks, control signs: whatever an owner calls his things stays a text.
@given(RECIPES)
def test_a_recipe_reads_back_as_it_was_written(recipe: Recipe) -> None:
    assert read_recipe(recipe_text(recipe), file="card.pdf") == recipe


# tomllib, a parser of the TOML standard that is not ours, sees the same values.
@given(RECIPES)
def test_it_is_a_toml_file_of_one_key_a_line(recipe: Recipe) -> None:
    raw = tomllib.loads(recipe_text(recipe).decode())
    assert raw["layout"] == recipe.layout
    assert raw["materials"] == list(recipe.materials)
    assert raw["kind"] == ("change" if recipe.is_change else "card")


def test_a_key_of_a_later_version_is_passed_over() -> None:
    recipe = Recipe(program="1.0", layout="l", number=1, file="f", materials=(), check="c")
    later = recipe_text(recipe) + b'layout_file = "layout.toml"\n'
    assert read_recipe(later, file="card.pdf") == recipe


@pytest.mark.parametrize(
    "key", ["program", "kind", "layout", "number", "file", "materials", "check"]
)
def test_a_recipe_without_one_of_its_keys_is_refused(key: str) -> None:
    recipe = Recipe(program="1.0", layout="l", number=1, file="f", materials=("m",), check="c")
    lines = recipe_text(recipe).decode().splitlines()
    left = "\n".join(line for line in lines if not line.startswith(f"{key} ="))
    assert len(left.splitlines()) == len(lines) - 1
    with pytest.raises(ChartgenError, match=r"card\.pdf: what it carries was altered"):
        read_recipe(left.encode(), file="card.pdf")


@pytest.mark.parametrize("number", ["0", "-1", "true", "1.5", '"1"', "[1]"])
def test_a_number_counts_from_one(number: str) -> None:
    recipe = Recipe(program="1.0", layout="l", number=1, file="f", materials=("m",), check="c")
    text = recipe_text(recipe).decode().replace("number = 1", f"number = {number}")
    with pytest.raises(ChartgenError):
        read_recipe(text.encode(), file="card.pdf")
