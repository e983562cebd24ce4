import json
import subprocess
import sys
import tomllib
from collections.abc import Callable
from datetime import date
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from chartgen.description.json_schema import json_schema
from chartgen.description.shop_file import example_text
from chartgen.errors import DescriptionError
from chartgen.model.shop import Shop

Read = Callable[[str | bytes], Shop]
Complaints = Callable[[str | bytes], list[str]]
EXAMPLE = example_text().decode()


def example_with(*changes: tuple[str, str]) -> str:
    text = EXAMPLE
    for old, new in changes:
        assert old in text
        text = text.replace(old, new, 1)
    return text


def test_the_example_is_read_as_written(read: Read) -> None:
    shop = read(EXAMPLE)

    assert (shop.name, shop.revision, shop.date) == ("Invented training shop", "A", "2026-11-25")
    assert shop.lathe.motor.plate_power == 750.0
    assert shop.lathe.motor.overload == 1.5
    assert [one.motor_ratio for one in shop.lathe.drive.positions] == [2.8, 1.12]
    assert [one.mark for one in shop.lathe.drive.positions] == ["L", "H"]
    assert [blade.insert_width for blade in shop.blades] == [2.0, 3.0, 1.5875]
    assert shop.request.diameters[0] == 6.0
    assert len(shop.request.diameters) == 12
    assert len(shop.request.materials) == 6


def test_a_byte_order_mark_and_windows_line_ends_change_nothing(read: Read) -> None:
    assert read(b"\xef\xbb\xbf" + EXAMPLE.replace("\n", "\r\n").encode()) == read(EXAMPLE)


@pytest.mark.parametrize("spelled", ["2026-11-25", '"2026-11-25"'])
def test_a_date_is_kept_as_text(read: Read, spelled: str) -> None:
    assert read(example_with(("2026-11-25", spelled))).date == date(2026, 11, 25).isoformat()


@pytest.mark.parametrize(
    ("line", "value"),
    [
        ("confined_chip = 1.2", {"confined_chip": 1.2}),
        ('confined_chip = "120 %"', {"confined_chip": 1.2}),
        ('coated_radius = "12 µm"', {"coated_radius": 12.0}),
        ('blade_stress_hss = "600 N/mm2"', {"blade_stress_hss": 600.0}),
        ('blade_stress_hss = "600 MPa"', {"blade_stress_hss": 600.0}),
        (
            'blade_stress_hss = "100 ksi"',
            {"blade_stress_hss": pytest.approx(1e5 * 4.4482216152605 / 25.4**2)},
        ),
    ],
)
def test_an_allowance_is_overridden_by_name(read: Read, line: str, value: dict[str, float]) -> None:
    shop = read(example_with(("# [allowances]", f"[allowances]\n{line}")))

    assert shop.allowances == value


@given(st.integers(8, 128), st.integers(8, 30), st.integers(64, 2000))
@settings(max_examples=25, deadline=None)
def test_metric_and_inch_spellings_give_the_same_shop(
    read: Read, projection: int, travel: int, chuck: int
) -> None:
    def spelled(count: int, *, metric: bool) -> str:
        # 25.4 / 64 mm is exactly 0.396875 mm.
        return f"{396875 * count}e-6 mm" if metric else f"{count}/64 in"

    metric, inch = (
        example_with(
            ('projection = "32 mm"', f'projection = "{spelled(projection, metric=metric)}"'),
            ('travel_per_turn = "2 mm"', f'travel_per_turn = "{spelled(travel, metric=metric)}"'),
            ('size = "125 mm"', f'size = "{spelled(chuck, metric=metric)}"'),
        )
        for metric in (True, False)
    )

    assert read(metric) == read(inch)


@given(st.one_of(st.binary(max_size=60), st.text(max_size=60).map(str.encode)))
def test_any_bytes_give_nothing_but_a_description_error(read: Read, data: bytes) -> None:
    with pytest.raises(DescriptionError) as caught:
        read(data)
    assert caught.value.faults


def _places(value: object, path: tuple[Any, ...] = ()) -> list[tuple[Any, ...]]:
    inner: list[tuple[Any, Any]] = []
    if isinstance(value, dict):
        inner = list(value.items())
    elif isinstance(value, list):
        inner = list(enumerate(value))
    return [path] * bool(path) + [
        place for key, item in inner for place in _places(item, (*path, key))
    ]


def _toml(value: object) -> str:
    if isinstance(value, dict):
        return "{" + ", ".join(f"{json.dumps(k)} = {_toml(v)}" for k, v in value.items()) + "}"
    if isinstance(value, list):
        return "[" + ", ".join(map(_toml, value)) + "]"
    if isinstance(value, date):
        return value.isoformat()
    return json.dumps(value).replace("NaN", "nan").replace("Infinity", "inf")


# With keys that the example only shows behind a #, so that they are tried too.
_FULL = example_with(
    ("# tool_stiffness", "tool_stiffness"),
    ("# jaws", "jaws"),
    ("# key_torque", "key_torque"),
    ("# strips", "strips"),
    ("# jaw_distance", "jaw_distance"),
    ("# bar_behind", "bar_behind"),
    ("# [allowances]", "[allowances]"),
    ("# confined_chip", "confined_chip"),
)
_TREE = tomllib.loads(_FULL)
_QUANTITIES = st.sampled_from(["0 mm", "9 mm", "1..2 mm", "5 rpm", "7..9 rpm", "1e90 W", "50 %"])
_ANYTHING = st.recursive(
    st.booleans()
    | st.integers()
    | st.integers(10**400, 10**401)
    | st.floats()
    | st.text("ab .\"'#é", max_size=8)
    | _QUANTITIES
    | st.dates(),
    lambda inner: (
        st.lists(inner, max_size=3)
        | st.dictionaries(st.sampled_from(["name", "speeds", "x y"]), inner, max_size=2)
    ),
    max_leaves=4,
)


@given(st.sampled_from(_places(_TREE)), _ANYTHING)
@settings(max_examples=300, deadline=None)
def test_any_value_at_any_key_gives_a_shop_or_faults_with_mends(
    read: Read, place: tuple[Any, ...], value: object
) -> None:
    tree: Any = tomllib.loads(_FULL)
    inside = tree
    for key in place[:-1]:
        inside = inside[key]
    inside[place[-1]] = value
    text = "\n".join(f"{key} = {_toml(part)}" for key, part in tree.items())

    faults = None
    try:
        read(text)
    except DescriptionError as error:
        faults = error.faults

    assert faults is None or (faults and all(fault.problem and fault.mend for fault in faults))
    assert "Input should be" not in str(faults)


def test_the_schema_can_be_given_to_an_editor() -> None:
    schema = json_schema()
    lathe = schema["properties"]["lathe"]["properties"]

    written_by_hand = {"shop", "lathe", "blade", "work", "print", "allowances"}
    tools = {"turning_tool", "boring_bar", "drills", "tailstock"}
    assert set(schema["properties"]) == written_by_hand | tools | {"measured", "reading"}
    assert schema["required"] == ["shop", "lathe", "blade", "print"]
    assert lathe["chuck"] == {
        "type": "object",
        "description": "the chuck in use.",
        "properties": {
            "size": {"type": "string", "examples": ["2 mm"]},
            "marked_speed": {"type": "string", "examples": ["1400 rpm"]},
            "kind": {"enum": ["scroll", "four-jaw", "collet"]},
            "jaws": {"enum": ["smooth", "diamond", "serrated"]},
            "key_torque": {"type": "string", "examples": ["12 N.m"]},
        },
        "required": ["size"],
        "additionalProperties": False,
    }
    assert lathe["cross_slide"]["properties"]["dial_reads"] == {"enum": ["radius", "diameter"]}
    assert lathe["cross_slide"]["properties"]["power_feeds"] == {
        "type": "array",
        "items": {"type": "string", "examples": ["0.05 mm/rev"]},
        "minItems": 1,
        "uniqueItems": True,
    }
    assert schema["properties"]["blade"]["items"]["properties"]["strips"] == {
        "type": "array",
        "items": {"type": "array", "items": {"type": "string"}, "minItems": 2, "maxItems": 2},
        "minItems": 1,
    }


def test_a_sound_file_is_read_without_what_only_faults_need() -> None:
    printing = tomllib.loads(EXAMPLE)["print"]
    script = (
        "import sys; from chartgen.description.shop_file import *\n"
        f"known = Known(materials={printing['materials']}, layouts={printing['layouts']},"
        " allowances={}, transmission=('v-belt',), dc_no_load=1.0)\n"
        "read_shop(example_text(), file='x', known=known)\n"
        "late = {'pint', 'fractions', 'pydantic', 'chartgen.description.complaints'}\n"
        "sys.exit(late & set(sys.modules) or 0)"
    )
    ended = subprocess.run([sys.executable, "-c", script], check=False, capture_output=True)
    assert (ended.returncode, ended.stderr) == (0, b"")


def test_reading_the_example_does_not_import_pint() -> None:
    script = (
        "import sys; from chartgen.description.shop_file import *\n"
        "try: read_shop(example_text(), file='x', known=Known(materials=(), layouts=(),"
        " allowances={}, transmission=(), dc_no_load=1.0))\n"
        "except Exception: pass\n"
        "sys.exit('pint' in sys.modules)"
    )
    assert subprocess.run([sys.executable, "-c", script], check=False).returncode == 0
