import tomllib
from collections.abc import Callable
from pathlib import Path

import pytest

import chartgen.reference
from chartgen.description.shop_file import example_text
from chartgen.model.shop import Shop

Read = Callable[[str | bytes], Shop]
Complaints = Callable[[str | bytes], list[str]]
EXAMPLE = example_text().decode()
ELEMENTS = tomllib.loads(
    (Path(chartgen.reference.__path__[0]) / "transmission.toml").read_text("utf-8")
)


def example_with(*changes: tuple[str, str]) -> str:
    text = EXAMPLE
    for old, new in changes:
        assert old in text
        text = text.replace(old, new, 1)
    return text


def line_of(words: str, text: str) -> int:
    lines = [n for n, line in enumerate(text.splitlines(), start=1) if line.startswith(words)]
    return lines[0]


@pytest.mark.parametrize(
    ("written", "instead_of", "message"),
    [
        (
            'power = "750 mW"',
            'power = "750 W"',
            "lathe.motor.power: is 0.75 W, which is out of bounds (20 to 50000 W). Check the unit.",
        ),
        (
            'power = "0.75 MW"',
            'power = "750 W"',
            (
                "lathe.motor.power: is 750000 W, which is out of bounds (20 to 50000 W). "
                "Check the unit."
            ),
        ),
        (
            'base_speed = "1.400 rpm"',
            'base_speed = "1400 rpm"',
            (
                "lathe.motor.base_speed: is 1.4 rpm, which is out of bounds (200 to 60000 rpm). "
                "Check number and unit."
            ),
        ),
        (
            'base_speed = "1,400 rpm"',
            'base_speed = "1400 rpm"',
            (
                "lathe.motor.base_speed: '1,400 rpm' has a comma, which is not understood. "
                "Write 1400 for fourteen hundred, 1.4 for one and four tenths."
            ),
        ),
        (
            'fastest_spindle = "25000 rpm"',
            'fastest_spindle = "2500 rpm"',
            (
                "lathe.drive.fastest_spindle: is 25000 rpm, which is out of bounds "
                "(50 to 20000 rpm). Check number and unit."
            ),
        ),
        (
            'insert_width = "2 in"',
            'insert_width = "2 mm"',
            (
                "blade[1].insert_width: is 50.8 mm, which is out of bounds (0.3 to 12 mm). "
                "Check number and unit."
            ),
        ),
        (
            'thickness = "0.16 mm"',
            'thickness = "1.6 mm"',
            (
                "blade[1].thickness: is 0.16 mm, which is out of bounds (0.3 to 12 mm). "
                "Check number and unit."
            ),
        ),
        (
            'height = "26 in"',
            'height = "26 mm"',
            (
                "blade[1].height: is 660.4 mm, which is out of bounds (3 to 80 mm). "
                "Check number and unit."
            ),
        ),
        (
            'projection = "320 mm"',
            'projection = "32 mm"',
            (
                "blade[1].projection: is 320 mm, which is out of bounds (2 to 200 mm). "
                "Check number and unit."
            ),
        ),
        (
            'travel_per_turn = "2 in"',
            'travel_per_turn = "2 mm"',
            (
                "lathe.cross_slide.travel_per_turn: is 50.8 mm, which is out of bounds "
                "(0.2 to 12 mm). Check number and unit."
            ),
        ),
        (
            "divisions = 4000",
            "divisions = 40",
            "lathe.cross_slide.divisions: is out of bounds (4 to 1000). Check the number.",
        ),
        (
            'size = "125 in"',
            'size = "125 mm"',
            (
                "lathe.chuck.size: is 3175 mm, which is out of bounds (25 to 800 mm). "
                "Check number and unit."
            ),
        ),
        (
            'diameters = "10..600 mm step 50 mm"\nspare = [',
            "diameters = [",
            (
                "print.diameters: is 560 mm, which is out of bounds (0.5 to 500 mm). "
                "Check number and unit."
            ),
        ),
        (
            'backlash = "0.5 in"',
            'backlash = "0.15 mm"',
            (
                "lathe.cross_slide.backlash: is 12.7 mm, which is out of bounds (0 to 5 mm). "
                "Check number and unit."
            ),
        ),
        (
            'power_feeds = ["3 mm/rev"]',
            '# power_feeds = ["0.03 mm/rev", "0.05 mm/rev"]',
            (
                "lathe.cross_slide.power_feeds[1]: is 3 mm/rev, which is out of bounds "
                "(0.001 to 2 mm/rev). Check number and unit."
            ),
        ),
        (
            'tool_stiffness = "20 N/mm"',
            '# tool_stiffness = "20 N/um"',
            (
                "lathe.tool_stiffness: is 20 N/mm, which is out of bounds (100 to 1000000 N/mm). "
                "Check number and unit."
            ),
        ),
        (
            'marked_speed = "none"',
            'marked_speed = "4000 rpm"',
            "lathe.chuck.marked_speed: 'none' is no value. Leave the line out if there is none.",
        ),
        (
            'backlash = ""',
            'backlash = "0.15 mm"',
            "lathe.cross_slide.backlash: '' is no value. Leave the line out if there is none.",
        ),
        (
            'date = "the day before yesterday"',
            "date = 2026-11-25",
            "shop.date: has 24 letters. Use at most 20, to fit on a card.",
        ),
        (
            'speeds = "60-1000 rpm"',
            'speeds = "60..1000 rpm"',
            (
                "lathe.drive.position[1].speeds: '60-1000 rpm' may be a range or a single number. "
                "Write a range with two points, as in '60..1000 rpm'."
            ),
        ),
    ],
)
def test_a_slip_is_named_at_its_line(
    complaints: Complaints, written: str, instead_of: str, message: str
) -> None:
    text = example_with((instead_of, written))
    line = line_of(written.split("\n", maxsplit=1)[0], text)

    assert complaints(text)[0] == f"my.toml:{line}: {message}"


@pytest.mark.parametrize(
    ("instead_of", "written"),
    [
        ('power = "750 W"', 'power = "20 W"'),
        ('power = "750 W"', 'power = "50 kW"'),
        ('insert_width = "2 mm"', 'insert_width = "12 mm"'),
        ('travel_per_turn = "2 mm"', 'travel_per_turn = "0.2 mm"'),
        ("divisions = 40", "divisions = 4"),
        ("divisions = 40", "divisions = 1000"),
        ('size = "125 mm"', 'size = "25 mm"'),
        ('size = "125 mm"', 'size = "800 mm"'),
        ('backlash = "0.15 mm"', 'backlash = "0 mm"'),
        ('backlash = "0.15 mm"', 'backlash = "5 mm"'),
        ('# tool_stiffness = "20 N/um"', 'tool_stiffness = "0.1 N/um"'),
        ("date = 2026-11-25", 'date = "yesterday"'),
        ("date = 2026-11-25", 'date = "12345678901234567890"'),
    ],
)
def test_the_bounds_themselves_are_read(read: Read, instead_of: str, written: str) -> None:
    assert read(example_with((instead_of, written))).name == "Invented training shop"


@pytest.mark.parametrize(
    "speeds", ["60 to 1000 rpm", "60 - 1000 rpm", "60...1000 rpm", "60–1000 rpm", "60…1000 RPM"]
)
def test_a_range_may_be_written_as_people_do(read: Read, speeds: str) -> None:
    assert read(example_with(("60..1000 rpm", speeds))) == read(EXAMPLE)


def test_a_range_of_diameters_may_be_written_as_people_do(read: Read) -> None:
    def diameters(text: str) -> tuple[float, ...]:
        changed = f'diameters = "{text}"\n#'
        lines = EXAMPLE.splitlines()
        start = lines.index("diameters = [")
        lines[start : lines.index("]", start) + 1] = [changed]
        return read("\n".join(lines)).request.diameters

    assert diameters("10 to 60 mm step 25 mm") == (10.0, 35.0, 60.0)
    assert diameters("10 - 60 mm step 25 mm") == (10.0, 35.0, 60.0)
    assert diameters("R5 10–63 mm") == (10.0, 16.0, 25.0, 40.0, 63.0)


def test_an_empty_mark_is_no_mark(read: Read) -> None:
    text = example_with(('mark = "L"', 'mark = ""'), ('mark = "H"', 'mark = " "'))

    # Two ranges are told apart by letters where the file gives none.
    assert [one.mark for one in read(text).lathe.drive.positions] == ["A", "B"]


def test_a_list_of_single_speeds_needs_no_mark(read: Read) -> None:
    text = example_with(
        ('kind = "inverter"', 'kind = "three-phase"'),
        ('mark = "L"', 'mark = ""'),
        ('speeds = "60..1000 rpm"', 'speeds = ["160 rpm", "250 rpm"]'),
        ('mark = "H"', ""),
        ('speeds = "150..2500 rpm"', 'speeds = ["400 rpm", "630 rpm"]'),
    )

    assert [one.mark for one in read(text).lathe.drive.positions] == ["", "", "", ""]


def test_the_example_lists_every_drive_element() -> None:
    start = EXAMPLE.index("elements = ")
    comment = EXAMPLE[start : EXAMPLE.index("# efficiency", start)]

    assert len(ELEMENTS) == 7
    assert [word for word in ELEMENTS if f'"{word}"' not in comment] == []
