from collections.abc import Callable

import pytest

from chartgen.description.shop_file import example_text
from chartgen.model.lathe import BarSurface, Chuck, ChuckKind, JawFace, Work
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


def test_what_the_file_leaves_out_is_as_usual(read: Read) -> None:
    shop = read(example_with(('kind = "scroll"', ""), ("[work]", ""), ('surface = "bright"', "")))

    assert shop.lathe.chuck == Chuck(
        size=125.0,
        marked_speed=4000.0,
        kind=ChuckKind.SCROLL,
        jaws=JawFace.SMOOTH,
        key_torque=None,
    )
    assert shop.lathe.tool_stiffness is None
    assert shop.work == Work(surface=BarSurface.BRIGHT, jaw_distance=None, bar_behind=0.0)
    assert [blade.strips for blade in shop.blades] == [(), (), ()]
    assert shop == read(EXAMPLE)


def test_a_work_table_may_be_empty(read: Read) -> None:
    assert read(example_with(('surface = "bright"', ""))).work == Work()


def test_every_key_of_chuck_work_and_strips_is_read(read: Read) -> None:
    shop = read(
        example_with(
            ("# tool_stiffness", "tool_stiffness"),
            ('kind = "scroll"', 'kind = "four-jaw"'),
            ("# jaws", "jaws"),
            ("# key_torque", "key_torque"),
            ('surface = "bright"', 'surface = "black"'),
            ("# jaw_distance", "jaw_distance"),
            ('# bar_behind = "0 mm"', 'bar_behind = "300 mm"'),
            ("# strips", "strips"),
        )
    )

    assert shop.lathe.tool_stiffness == 20000.0
    assert shop.lathe.chuck.kind is ChuckKind.FOUR_JAW
    assert shop.lathe.chuck.jaws is JawFace.DIAMOND
    assert shop.lathe.chuck.key_torque == 40.0
    assert shop.work == Work(surface=BarSurface.BLACK, jaw_distance=5.0, bar_behind=300.0)
    assert shop.blades[0].strips == ((1.2, 20.0), (1.6, 6.0))


@pytest.mark.parametrize("kind", [ChuckKind.SCROLL, ChuckKind.FOUR_JAW])
@pytest.mark.parametrize("jaws", JawFace)
def test_any_chuck_with_jaws_has_any_of_them(read: Read, kind: ChuckKind, jaws: JawFace) -> None:
    shop = read(
        example_with(
            ('kind = "scroll"', f'kind = "{kind.value}"'),
            ('# jaws = "diamond"', f'jaws = "{jaws.value}"'),
        )
    )

    assert (shop.lathe.chuck.kind, shop.lathe.chuck.jaws) == (kind, jaws)


def test_inch_spellings_give_the_same_shop(read: Read) -> None:
    # 1/16 in is 1.5875 mm, 1 in 25.4 mm, 3/4 in 19.05 mm, 1/4 in 6.35 mm.
    def spelled(*values: str) -> Shop:
        height, top_thickness, low, high, distance, behind = values
        strips = f'strips = [["1.2 mm", "{low}"], ["{top_thickness}", "{high}"]]'
        return read(
            example_with(
                ('height = "26 mm"', f'height = "{height}"'),
                ('# strips = [["1.2 mm", "20 mm"], ["1.6 mm", "6 mm"]]', strips),
                ('# jaw_distance = "5 mm"', f'jaw_distance = "{distance}"'),
                ('# bar_behind = "0 mm"', f'bar_behind = "{behind}"'),
            )
        )

    inch = spelled("1 in", "1/16 in", "3/4 in", "1/4 in", "3/16 in", "12 in")

    assert inch == spelled("25.4 mm", "1.5875 mm", "19.05 mm", "6.35 mm", "4.7625 mm", "304.8 mm")
    assert inch.blades[0].strips == ((1.2, 19.05), (1.5875, 6.35))


@pytest.mark.parametrize(
    ("text", "newtons_per_mm"),
    [
        ("20 N/um", 20000.0),
        ("20 N/µm", 20000.0),
        ("20 kN/mm", 20000.0),
        ("800 N/mm", 800.0),
        # 1 lbf is 4.4482216152605 N, exact by definition.
        ("100000 lbf/in", 100000 * 4.4482216152605 / 25.4),
    ],
)
def test_a_stiffness_is_a_force_over_a_length(read: Read, text: str, newtons_per_mm: float) -> None:
    shop = read(example_with(('# tool_stiffness = "20 N/um"', f'tool_stiffness = "{text}"')))

    assert shop.lathe.tool_stiffness == pytest.approx(newtons_per_mm, rel=1e-14)


def test_the_torque_of_a_key_may_be_in_foot_pounds(read: Read) -> None:
    shop = read(example_with(('# key_torque = "40 N.m"', 'key_torque = "30 ft-lb"')))

    assert shop.lathe.chuck.key_torque == pytest.approx(30 * 4.4482216152605 * 0.3048)


@pytest.mark.parametrize(
    ("height", "projection"), [("10 mm", "120 mm"), ("1/2 in", "6 in"), ("0.65 in", "7.8 in")]
)
def test_a_projection_of_just_twelve_heights_is_read(
    read: Read, height: str, projection: str
) -> None:
    shop = read(
        example_with(
            ('height = "1/2 in"', f'height = "{height}"'),
            ('projection = "16 mm"', f'projection = "{projection}"'),
        )
    )

    assert shop.blades[2].projection == pytest.approx(12 * shop.blades[2].height)


def test_every_fault_of_one_blade_is_reported_at_once(complaints: Complaints) -> None:
    found = complaints(
        example_with(
            ('height = "26 mm"', 'height = "16 mm"'),
            ('projection = "32 mm"', 'projection = "195 mm"'),
            ('# strips = [["1.2 mm", "20 mm"]', 'strips = [["20 mm", "1.2 mm"]'),
        )
    )

    assert [complaint.split(": ")[1] for complaint in found] == [
        "blade[1].projection",
        "blade[1].strips",
        "blade[1].strips[1]",
    ]
