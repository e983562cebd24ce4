"""A file of readings: TOML or a table, every fault with its line, its key and its mend."""

from collections.abc import Callable

import pytest

from chartgen.description.example import example_text
from chartgen.description.readings_file import read_readings
from chartgen.errors import DescriptionError
from chartgen.model.readings import (
    DeflectionReading,
    KeyTorqueReading,
    KnownCut,
    ShopReading,
    StallReading,
    WattsReading,
)
from chartgen.model.shop import Shop
from chartgen.pipeline import known_names

Read = Callable[[str | bytes], Shop]
Readings = Callable[..., tuple[ShopReading, ...]]
TABLE = """kind,date,material,blade,diameter,speed,feed,idle_power,cut_power,torque,pull,movement
watts,2026-11-25,mild-steel,2.0 carbide,1 in,900 rpm,0.002 in/rev,150 W,0.7 kW,,,
key-torque,2026-11-25,,,,,,,,30 ft.lb,,
deflection,2026-11-26,,,,,,,,,10 kgf,6 um
"""
WATTS = """[[reading]]
kind = "watts"
date = 2026-11-25
material = "mild-steel"
blade = "2.0 carbide"
diameter = "25 mm"
speed = "900 rpm"
feed = "0.05 mm/rev"
idle_power = "150 W"
cut_power = "700 W"
"""
STALL = WATTS.replace("watts", "stall").partition("idle_power")[0]
PULL = '[[reading]]\nkind = "key-torque"\ndate = 2026-11-25\ntorque = "40 N.m"\n'


@pytest.fixture
def readings(read: Read) -> Readings:
    def of(text: str | bytes, file: str = "r.toml") -> tuple[ShopReading, ...]:
        data = text.encode() if isinstance(text, str) else text
        return read_readings(data, file=file, known=known_names(), shop=read(example_text()))

    return of


@pytest.fixture
def faults(readings: Readings) -> Callable[..., list[str]]:
    def of(text: str | bytes, file: str = "r.toml") -> list[str]:
        with pytest.raises(DescriptionError) as caught:
            readings(text, file)
        return str(caught.value).splitlines()

    return of


@pytest.mark.parametrize(
    "change",
    [
        lambda text: text,
        lambda text: text.replace(",", ";"),
        lambda text: text.replace(",", "\t"),
        lambda text: "\ufeff" + text.replace("\n", "\r\n"),
        lambda text: "\n" + text.replace("kind,", "kind ,").replace(",150 W,", ', "150 W",', 0),
        lambda text: text + ",,,,,,,,,,,\n\n# a note\n",
    ],
    ids=["commas", "semicolons", "tabs", "mark and line ends", "blanks", "blank rows"],
)
def test_a_table_is_read_whatever_parts_its_cells(
    readings: Readings, change: Callable[[str], str]
) -> None:
    cut = KnownCut(
        material="mild-steel",
        blade="2.0 carbide",
        diameter=25.4,
        speed=900.0,
        feed=pytest.approx(0.0508),
    )
    assert readings(change(TABLE), "r.csv") == (
        WattsReading(date="2026-11-25", cut=cut, idle_power=150.0, cut_power=700.0),
        # 1 ft.lb is 1.3558 N.m; 1 kgf is 9.80665 N exactly.
        KeyTorqueReading(date="2026-11-25", torque=pytest.approx(40.675, abs=0.001)),
        DeflectionReading(date="2026-11-26", pull=pytest.approx(98.0665), movement=0.006),
    )


def test_toml_and_table_say_the_same(readings: Readings) -> None:
    heading = "kind,date,material,blade,diameter,speed,feed,idle_power,cut_power"
    row = "watts,2026-11-25,mild-steel,2.0 carbide,25 mm,900 rpm,0.05 mm/rev,150 W,700 W"
    assert readings(WATTS) == readings(f"{heading}\n{row}\n", "r.CSV")


def test_a_reading_is_kept_in_the_shop_file_too(read: Read) -> None:
    shop = read(example_text() + f"\n{STALL}position = 'low'\n{PULL}".encode())
    assert [type(one) for one in shop.readings] == [StallReading, KeyTorqueReading]


@pytest.mark.parametrize(
    ("old", "new", "fault"),
    [
        ('"150 W"', "150", "r.toml:9: reading[1].idle_power: needs a unit. Write it as text in"),
        ('"150 W"', '"150"', "r.toml:9: reading[1].idle_power: '150' needs a unit."),
        ('"150 W"', '"150 mm"', "r.toml:9: reading[1].idle_power: '150 mm' is a length, not"),
        ('"150 W"', '"150 MW"', "r.toml:9: reading[1].idle_power: is 1.5e+08 W, which is out of"),
        ('"700 W"', '"140 W"', "r.toml:10: reading[1].cut_power: cut_power (140 W) is not above"),
        ('"0.05 mm/rev"', '"5 mm/rev"', "r.toml:8: reading[1].feed: is 5 mm/rev, which is out of"),
        ('feed = "0.05 mm/rev"\n', "", "r.toml:1: reading[1].feed: is missing. Add a line such as"),
        ("date = 2026-11-25", 'date = "last week"', "r.toml:3: reading[1].date: 'last week' is no"),
        ("date = 2026-11-25\n", "", "r.toml:1: reading[1].date: is missing. Add a line such as"),
        ('"mild-steel"', '"mild-stel"', "r.toml:4: reading[1].material: 'mild-stel' is not known."),
        ('"2.0 carbide"', '"2.0"', "r.toml:5: reading[1].blade: '2.0' is not in the shop file."),
        ('"watts"', '"volts"', "r.toml:2: reading[1].kind: 'volts' is not known."),
        ("cut_power", "cut_watts", "r.toml:10: reading[1].cut_watts: is not a known key."),
        ('"watts"', '"stall"', "r.toml:9: reading[1].idle_power: has no effect beside kind = 'st"),
        ("[[reading]]", "[reading]", "r.toml:1: reading: has the wrong brackets."),
        ("[[reading]]", "[[readings]]", "r.toml:1: readings: has no place in a file of readings."),
    ],
)
def test_a_slip_in_a_reading_is_told_with_line_key_and_mend(
    faults: Callable[..., list[str]], old: str, new: str, fault: str
) -> None:
    assert old in WATTS
    said = faults(WATTS.replace(old, new))
    assert said[0].startswith(fault) or any(line.startswith(fault) for line in said)
    assert all(len(line) > len(fault) - 20 for line in said)


def test_a_droop_that_rises_and_a_position_that_is_none_are_told(
    faults: Callable[..., list[str]],
) -> None:
    droop = STALL.replace("stall", "droop") + 'idle_speed = "890 rpm"\n'
    assert (
        faults(droop)[0].startswith(
            "r.toml:10: reading[1].idle_speed: idle_speed (890 rpm) is not above"
        )
        or "idle_speed (890 rpm) is not above the speed in the cut" in faults(droop)[0]
    )
    assert (
        "position: 'lower' is not in the shop file. Use one of: high, low; or take"
        in (faults(STALL + 'position = "lower"\n')[0])
    )


def test_all_faults_of_a_file_are_told_at_once(faults: Callable[..., list[str]]) -> None:
    text = WATTS.replace('"150 W"', '"150"') + PULL.replace('"40 N.m"', '"40 mm"')
    assert [line.split(": ")[1] for line in faults(text)] == [
        "reading[1].idle_power",
        "reading[2].torque",
    ]


@pytest.mark.parametrize(
    ("text", "file", "fault"),
    [
        ("", "r.toml", "r.toml: holds no readings."),
        ("", "r.csv", "r.csv: holds no readings."),
        ("kind,date\n", "r.csv", "r.csv: holds no readings."),
        ("a,b\n1,2\n", "r.csv", "r.csv:1: the first line is no heading: 'a' comes first."),
        ("kind,date\nwatts,2026-11-25,8\n", "r.csv", "r.csv:2: the line has 3 cells under 2"),
        ("kind,date,torque\nkey-torque,2026-11-25,40\n", "r.csv", "r.csv:2: torque: '40' needs a"),
        ("kind,date\nkey-torque,2026-11-25\n", "r.csv", "r.csv:2: torque: is missing. Fill in its"),
        ("kind,date,troque\nkey-torque,2026-11-25,4 N.m\n", "r.csv", "r.csv:2: troque: is not a"),
        (b"\xff\xfe", "r.csv", "r.csv:1: is not UTF-8 text"),
    ],
)
def test_a_file_without_usable_readings_is_told(
    faults: Callable[..., list[str]], text: str | bytes, file: str, fault: str
) -> None:
    assert any(line.startswith(fault) for line in faults(text, file))


@pytest.mark.parametrize(
    ("old", "new", "fault"),
    [
        ("lathe.chuck.key_torque", "lathe.chuck.size", "'lathe.chuck.size' cannot be measured."),
        ('"40 N.m"\nplus', '"0 N.m"\nplus', "must be more than 0."),
        ('"40 N.m"\nplus', "40\nplus", "needs a unit."),
        ('plus_minus = "2 N.m"', "plus_minus = true", "must be text in quotes."),
        ('level = "95 %"', 'level = "5 %"', "which is out of bounds"),
        ("readings = 3", "readings = 0", "is out of bounds"),
        ('plus_minus = "2 N.m"\n', "", "is missing."),
    ],
)
def test_a_record_of_a_measured_value_is_checked(
    read: Read, complaints: Callable[[str], list[str]], old: str, new: str, fault: str
) -> None:
    record = (
        '\n[[measured]]\nkey = "lathe.chuck.key_torque"\nvalue = "40 N.m"\n'
        'plus_minus = "2 N.m"\nlevel = "95 %"\nreadings = 3\ndate = 2026-11-25\n'
    )
    text = example_text().decode().replace('# key_torque = "40 N.m"', 'key_torque = "40 N.m"')
    assert len(read(text + record).measured) == 1
    assert old in record
    said = complaints(text + record.replace(old, new))
    assert len(said) == 1
    assert fault in said[0]
    assert "measured[1]" in said[0]


def test_a_value_measured_twice_is_told(complaints: Callable[[str], list[str]]) -> None:
    record = (
        '\n[[measured]]\nkey = "lathe.chuck.key_torque"\nvalue = "40 N.m"\n'
        'plus_minus = "2 N.m"\nlevel = "95 %"\nreadings = 3\ndate = 2026-11-25\n'
    )
    text = example_text().decode().replace('# key_torque = "40 N.m"', 'key_torque = "40 N.m"')
    assert complaints(text + record + record)[0].endswith(
        "measured[2].key: is measured a second time. Keep one of the two."
    )
