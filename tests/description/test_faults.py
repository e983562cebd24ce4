import tomllib
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from chartgen.description.shop_file import example_text
from chartgen.errors import DescriptionError
from chartgen.model.shop import Shop

Read = Callable[[str | bytes], Shop]
Complaints = Callable[[str | bytes], list[str]]
EXAMPLE = example_text().decode()
FAULTS = tomllib.loads(Path(__file__).with_name("faults.toml").read_text("utf-8"))["fault"]


def line_of_nth(words: str, occurrence: int, text: str) -> int:
    """Return the line of the nth line that begins with `words`."""
    lines = [n for n, line in enumerate(text.splitlines(), start=1) if line.startswith(words)]
    return lines[occurrence - 1]


def example_with(*changes: tuple[str, str]) -> str:
    text = EXAMPLE
    for old, new in changes:
        assert old in text
        text = text.replace(old, new, 1)
    return text


@pytest.mark.parametrize("fault", FAULTS, ids=lambda fault: fault["write"])
def test_a_fault_names_line_key_and_mend(complaints: Complaints, fault: dict[str, Any]) -> None:
    text = example_with((fault["instead_of"], fault["write"]))
    line = line_of_nth(fault["at"], fault.get("occurrence", 1), text)

    assert complaints(text) == [f"my.toml:{line}: {fault['message']}"]


@pytest.mark.parametrize(
    ("text", "message"),
    [
        (
            "power = 550 W",
            (
                "my.toml:1: at column 13, there is more on the line than one key and its value. "
                'Put text in quotes, as in power = "550 W", and each key on its own line.'
            ),
        ),
        (
            "\npower = W",
            (
                "my.toml:2: at column 9, the value cannot be read. "
                'Put text in quotes, as in power = "550 W".'
            ),
        ),
        (
            'power = "550 W\nx = 1\n',
            "my.toml:1: at column 15, a text has no closing quote. End it with a quote.",
        ),
        (
            "a = 1\na = 2\n",
            ("my.toml:2: at column 6, a key is written twice. Keep one of the two lines."),
        ),
        (
            "[shop]\n[shop]\n",
            (
                "my.toml:2: at column 6, a table is written twice. "
                "Put its keys together under one heading."
            ),
        ),
        (
            "some words",
            (
                "my.toml:1: at column 6, this is not a key with its value. "
                'Write key = "text", or begin the line with # if it is a note.'
            ),
        ),
        (
            "[shop",
            "my.toml:1: at the end of the file, a table's heading is not closed. End it with ].",
        ),
        ("x = " + "[" * 5000, "my.toml: has brackets within brackets without end. Close them."),
        (
            "",
            (
                "my.toml: is empty. A shop file needs [shop], [lathe] with its motor, drive, chuck "
                "and cross_slide, a [[blade]] for each blade, and [print]; "
                "begin with a copy of the example."
            ),
        ),
    ],
)
def test_a_file_that_is_not_toml_is_refused_in_plain_words(
    complaints: Complaints, text: str, message: str
) -> None:
    assert complaints(text) == [message]


def test_another_encoding_is_refused_with_the_byte(complaints: Complaints) -> None:
    data = EXAMPLE.replace("Invented training", "Übungs").encode("latin-1")
    byte = data.index(b"\xdc") + 1
    line = line_of_nth("name = ", 1, EXAMPLE)

    assert complaints(data) == [
        (
            f"my.toml:{line}: is not UTF-8 text: byte {byte} of the file cannot be "
            "read. Save the file again with the encoding UTF-8."
        )
    ]


def test_missing_tables_say_what_they_need(complaints: Complaints) -> None:
    assert complaints('[shop]\nname = "x"\n') == [
        (
            "my.toml: blade: is missing. Add a table under the line [[blade]], with name, tool, "
            "edge, insert_width, thickness, height and projection."
        ),
        (
            "my.toml: lathe: is missing. Add a table under the line [lathe], with name, motor, "
            "drive, chuck and cross_slide."
        ),
        (
            "my.toml: print: is missing. Add a table under the line [print], with materials, "
            "diameters and layouts."
        ),
    ]


def test_slips_with_brackets_are_named(complaints: Complaints) -> None:
    text = "shop = 3\n[[lathe]]\n[blade]\n"

    assert complaints(text)[1:] == [
        (
            "my.toml:1: shop: must be a table. Write its heading as [shop], "
            "and its keys on the lines below."
        ),
        (
            "my.toml:2: lathe: has the wrong brackets. Write its heading as [lathe], "
            "and its keys on the lines below."
        ),
        (
            "my.toml:3: blade: has the wrong brackets. Write its heading as [[blade]], "
            "and its keys on the lines below."
        ),
    ]


def test_all_faults_are_reported_at_once_in_the_order_of_the_file(read: Read) -> None:
    text = example_with(
        ('name = "Invented training shop"', "name = 3"),
        ('power = "750 W"', "power = 750"),
        ('speeds = "60..1000 rpm"', 'speeds = "1000..60 rpm"'),
        ('size = "125 mm"', 'sizes = "125 mm"'),
        ('thickness = "1.6 mm"', 'thickness = "2.6 mm"'),
        ('name = "3.0 carbide"', 'name = "2.0 carbide"'),
        ('projection = "16 mm"', 'projection = "0 mm"'),
        ('"c45"', '"c54"'),
        ("# [allowances]", "[allowances]\nconfined_chip = 9"),
    )
    with pytest.raises(DescriptionError) as caught:
        read(text)
    faults = caught.value.faults

    assert {fault.key for fault in faults} == {
        "shop.name",
        "lathe.motor.power",
        "lathe.drive.position[1].speeds",
        "lathe.chuck.sizes",
        "blade[1].thickness",
        "blade[2].name",
        "blade[3].projection",
        "print.materials[2]",
        "allowances.confined_chip",
    }
    assert [fault.line for fault in faults] == sorted(fault.line for fault in faults)
    assert all(fault.mend and fault.line for fault in faults)
