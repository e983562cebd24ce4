"""The small file beside the shop file: read back as written, refused where it is not one."""

import tomllib

import pytest
from hypothesis import given
from hypothesis import strategies as st

from chartgen import __version__
from chartgen.description.recipe import CARRIED, CardOf, Recipe, read_recipe, recipe_text
from chartgen.errors import ChartgenError

TEXTS = st.text(st.characters(exclude_categories=["Cs"]), max_size=40)
RECIPES = st.builds(
    Recipe,
    program=st.sampled_from(["0.0.1", "0.0", __version__]),
    layout=TEXTS,
    number=st.integers(1, 10**6),
    file=TEXTS,
    materials=st.lists(TEXTS, max_size=4).map(tuple),
    check=TEXTS,
    made_from=st.sampled_from(CardOf),
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
    assert raw["kind"] == recipe.made_from.value


def test_a_key_of_a_later_version_is_passed_over() -> None:
    recipe = Recipe(program="0.1", layout="l", number=1, file="f", materials=(), check="c")
    later = recipe_text(recipe) + b'layout_file = "layout.toml"\n'
    assert read_recipe(later, file="card.pdf") == recipe


@pytest.mark.parametrize(
    "key", ["program", "kind", "layout", "number", "file", "materials", "check"]
)
def test_a_recipe_without_one_of_its_keys_is_refused(key: str) -> None:
    recipe = Recipe(program="0.1", layout="l", number=1, file="f", materials=("m",), check="c")
    lines = recipe_text(recipe).decode().splitlines()
    left = "\n".join(line for line in lines if not line.startswith(f"{key} ="))
    assert len(left.splitlines()) == len(lines) - 1
    with pytest.raises(ChartgenError, match=r"card\.pdf: what it carries was altered"):
        read_recipe(left.encode(), file="card.pdf")


@pytest.mark.parametrize("number", ["0", "-1", "true", "1.5", '"1"', "[1]"])
def test_a_number_counts_from_one(number: str) -> None:
    recipe = Recipe(program="0.1", layout="l", number=1, file="f", materials=("m",), check="c")
    text = recipe_text(recipe).decode().replace("number = 1", f"number = {number}")
    with pytest.raises(ChartgenError):
        read_recipe(text.encode(), file="card.pdf")


# As the first cards said it, which hang at lathes: what they say must be understood for ever.
OLDER = """# Which card of shop.toml this is. `chartgen make CARD.pdf` makes it again.
program = "0.1.0"
kind = "{kind}"
layout = "lathe-chart-a5"
number = 2
file = "lathe-chart-a5-c45"
materials = ["mild-steel", "c45"]
check = "7Q2F-K9MD"
"""


@pytest.mark.parametrize(
    ("kind", "made_from", "carried"),
    [
        ("card", CardOf.SHOP, ("shop.toml",)),
        ("change", CardOf.CHANGE, ("before.toml", "after.toml")),
    ],
)
def test_an_older_recipe_is_read(kind: str, made_from: CardOf, carried: tuple[str, ...]) -> None:
    recipe = read_recipe(OLDER.format(kind=kind).encode(), file="card.pdf")
    assert (recipe.made_from, recipe.carried) == (made_from, carried)
    assert (recipe.layout, recipe.number, recipe.check) == ("lathe-chart-a5", 2, "7Q2F-K9MD")
    if made_from is CardOf.SHOP:
        assert recipe_text(recipe) == OLDER.format(kind=kind).encode()


def test_every_card_carries_a_shop_and_no_name_in_it_is_a_path() -> None:
    assert set(CARRIED) == set(CardOf)
    for names in CARRIED.values():
        assert len(set(names)) == len(names) > 0
        assert all(name.replace(".toml", "").isalpha() for name in names)


def test_a_kind_of_card_that_is_not_known_is_refused() -> None:
    with pytest.raises(ChartgenError, match=r"card\.pdf: what it carries was altered"):
        read_recipe(OLDER.format(kind="../shop").encode(), file="card.pdf")


def test_a_kind_of_card_of_a_newer_version_asks_for_that_version() -> None:
    text = OLDER.format(kind="class-set").replace("0.1.0", "99.0.0")
    with pytest.raises(ChartgenError, match=r"was made by version 99\.0\.0 of chartgen"):
        read_recipe(text.encode(), file="card.pdf")
