import tomllib

import pytest
from hypothesis import given
from hypothesis import strategies as st

from chartgen.description.locate import KeyPath, line_of

TEXT = """\
# [shop] in a comment, name = "no"
top = 1

[shop]   # not [lathe]
name = "a # b = [c]"
long = \"\"\"
[lathe]
name = "inside a text" \"\"\"
after = 'it = [s'
"quoted key" = 2
dotted.inner.leaf = 3

[lathe.motor]
power = "550 W"
sizes = [
  "6 mm",  # first
  "8 mm", "10 mm",

  [1,
   2],
]
spec = { kind = "x", nested = { deep = 1 } }

[[blade]]
name = "one"
[[blade]]
name = "two"
[blade.holder]
height = "1/2 in"
[[lathe.drive.position]]
mark = "L"
[[lathe.drive.position]]
mark = "H"
"""


@pytest.mark.parametrize(
    ("path", "line"),
    [
        (("top",), 2),
        (("shop",), 4),
        (("shop", "name"), 5),
        (("shop", "long"), 6),
        (("shop", "after"), 9),
        (("shop", "quoted key"), 10),
        (("shop", "dotted"), 11),
        (("shop", "dotted", "inner", "leaf"), 11),
        (("lathe", "motor"), 13),
        (("lathe", "motor", "power"), 14),
        (("lathe", "motor", "sizes"), 15),
        (("lathe", "motor", "sizes", 0), 16),
        (("lathe", "motor", "sizes", 1), 17),
        (("lathe", "motor", "sizes", 2), 17),
        (("lathe", "motor", "sizes", 3), 19),
        (("lathe", "motor", "sizes", 3, 1), 20),
        (("lathe", "motor", "spec", "nested", "deep"), 22),
        (("blade", 0), 24),
        (("blade", 0, "name"), 25),
        (("blade", 1), 26),
        (("blade", 1, "name"), 27),
        (("blade", 1, "holder"), 28),
        (("blade", 1, "holder", "height"), 29),
        (("lathe", "drive", "position", 0, "mark"), 31),
        (("lathe", "drive", "position", 1), 32),
        (("lathe", "drive", "position", 1, "mark"), 33),
    ],
)
def test_a_key_is_found_on_its_line(path: KeyPath, line: int) -> None:
    assert line_of(TEXT, path) == line


@pytest.mark.parametrize(
    ("path", "line"),
    [
        (("lathe", "motor", "absent"), 13),
        (("blade", 1, "absent"), 26),
        (("blade", 7, "name"), 24),
        (("lathe", "motor", "sizes", 9), 15),
        (("absent", "key"), 0),
        ((), 0),
    ],
)
def test_an_absent_key_falls_back_to_what_encloses_it(path: KeyPath, line: int) -> None:
    assert line_of(TEXT, path) == line


def test_windows_line_ends_count_once() -> None:
    assert line_of(TEXT.replace("\n", "\r\n"), ("blade", 1, "holder", "height")) == 29


def test_the_sample_is_toml() -> None:
    assert tomllib.loads(TEXT)["blade"][1]["name"] == "two"


@given(st.text(alphabet="ab[]{}=.,#\"'\n\\ 1", max_size=80))
def test_any_text_is_borne(text: str) -> None:
    assert 0 <= line_of(text, ("a", "b", 0)) <= text.count("\n") + 1


_KEYS = st.sampled_from(["a", "b", "c"])


@given(st.lists(st.lists(_KEYS, min_size=1, max_size=3), min_size=1, max_size=8))
def test_every_key_of_dotted_lines_stands_where_it_was_written(lines: list[list[str]]) -> None:
    text = "".join(f"{'.'.join(keys)} = [[], {{}}, '[=#']\n" for keys in lines)
    first: dict[tuple[str, ...], int] = {}
    for number, keys in enumerate(lines, start=1):
        for depth in range(len(keys)):
            first.setdefault(tuple(keys[: depth + 1]), number)

    assert {path: line_of(text, path) for path in first} == first
