"""Measured values go into a shop file, and nothing else in it moves."""

import difflib
from collections.abc import Callable
from dataclasses import fields, replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from chartgen.description.example import example_readings_text, example_text
from chartgen.description.readings_file import read_readings
from chartgen.description.shop_file import Known
from chartgen.description.written_back import amount_text, written_back
from chartgen.errors import ChartgenError
from chartgen.model.measured import Assumption, Measured
from chartgen.model.readings import DroopReading, KnownCut, ShopReading, StallReading, WattsReading
from chartgen.model.shop import Shop
from chartgen.quantities import FRACTION, MM, N_M, N_PER_MM, Unit
from chartgen.units import magnitude

Read = Callable[[str | bytes], Shop]
EXAMPLE = example_text()
DATE = "2026-11-25"
VALUES = {
    Assumption.FORCE_RESERVE: (1.37, 0.2),
    Assumption.DRIVE_EFFICIENCY: (0.91, 0.03),
    Assumption.BREAKDOWN: (2.45, 0.3),
    Assumption.CURRENT_LIMIT: (1.62, 0.2),
    Assumption.KEY_TORQUE: (38.5, 2.5),
    Assumption.TOOL_STIFFNESS: (14300.0, 1200.0),
}
MEASURED = tuple(
    Measured(assumption=a, value=v, plus_minus=p, level=0.95, readings=4, date=DATE)
    for a, (v, p) in VALUES.items()
)
CUT = KnownCut(
    material="mild-steel", blade="2.0 carbide", diameter=25.4, speed=901.25, feed=1.0 / 30.0
)
READINGS: tuple[ShopReading, ...] = (
    WattsReading(date=DATE, cut=CUT, idle_power=100.0, cut_power=612.3, meter_error=2.0),
    DroopReading(date=DATE, cut=CUT, idle_speed=950.0, position="low", tachometer_error=0.5),
    StallReading(date="2026-12-01", cut=replace(CUT, feed_error=0.1), position="low"),
)


def write(data: bytes, *measured: Measured, readings: tuple[ShopReading, ...] = ()) -> bytes:
    return written_back(data, measured=measured, withdrawn=(), readings=readings)


def changes(before: bytes, after: bytes) -> tuple[list[str], list[str]]:
    """Return the lines that went and those that came, byte for byte."""
    lines = [text.decode().splitlines(keepends=True) for text in (before, after)]
    differences = list(difflib.ndiff(*lines))
    return (
        [line[2:].rstrip("\r\n") for line in differences if line.startswith("- ")],
        [line[2:].rstrip("\r\n") for line in differences if line.startswith("+ ")],
    )


@pytest.mark.parametrize("one", MEASURED, ids=lambda one: one.assumption.name)
def test_a_value_adds_its_line_and_its_record_and_touches_no_other(
    read: Read, one: Measured
) -> None:
    after = write(EXAMPLE, one)
    gone, came = changes(EXAMPLE, after)
    assert gone == []
    lines = [line for line in came if line]
    heading = ["[allowances]"] if one.assumption is Assumption.FORCE_RESERVE else []
    assert lines[: len(heading)] == heading
    assert lines[len(heading)].startswith(one.assumption.path[-1] + " = ")
    assert lines[len(heading) + 1] == "[[measured]]"
    assert len(lines) == len(heading) + 8
    shop = read(after)
    assert shop.measured == (one,)
    assert one.assumption.stated(shop.lathe, shop.allowances) == pytest.approx(one.value)


def test_all_at_once_with_readings_read_back_the_same(read: Read) -> None:
    shop = read(write(EXAMPLE, *MEASURED, readings=READINGS))
    assert shop.measured == MEASURED
    assert shop.readings == READINGS


def test_a_value_that_stands_there_changes_on_its_own_line_and_keeps_its_note() -> None:
    before = EXAMPLE.replace(
        b'size = "125 mm"\n', b'size = "125 mm"\nkey_torque  =  "50 N.m"   # my guess\n'
    )
    gone, came = changes(before, write(before, MEASURED[4]))
    assert gone == ['key_torque  =  "50 N.m"   # my guess']
    assert came[0] == 'key_torque  =  "38.5 N.m"   # my guess'


def test_writing_the_same_again_changes_no_byte() -> None:
    once = write(EXAMPLE, *MEASURED, readings=READINGS)
    assert write(once, *MEASURED) == once


def test_a_later_value_takes_the_place_of_the_earlier(read: Read) -> None:
    once = write(EXAMPLE, *MEASURED, readings=READINGS)
    later = replace(MEASURED[4], value=41.0, date="2027-01-01", readings=9)
    twice = write(once, later)
    gone, came = changes(once, twice)
    assert gone == [
        'key_torque = "38.5 N.m"',
        'value = "38.5 N.m"',
        "readings = 4",
        "date = 2026-11-25",
    ]
    assert came == [
        'key_torque = "41 N.m"',
        'value = "41 N.m"',
        "readings = 9",
        "date = 2027-01-01",
    ]
    assert read(twice).measured_of(Assumption.KEY_TORQUE) == later


def test_what_is_withdrawn_leaves_the_file_as_it_was_but_for_blank_lines(read: Read) -> None:
    once = write(EXAMPLE, *MEASURED[1:])
    back = written_back(
        once, measured=(), withdrawn=[one.assumption for one in MEASURED[1:]], readings=()
    )
    assert [line for line in back.splitlines() if line] == [
        line for line in EXAMPLE.splitlines() if line
    ]
    assert read(back).measured == ()


@pytest.mark.parametrize("mark", [b"", b"\xef\xbb\xbf"], ids=["plain", "byte-order mark"])
def test_line_ends_and_byte_order_mark_stay(read: Read, mark: bytes) -> None:
    before = mark + EXAMPLE.replace(b"\n", b"\r\n")
    after = write(before, *MEASURED, readings=READINGS)
    assert after.startswith(mark)
    assert after.count(b"\n") == after.count(b"\r\n")
    assert after.replace(b"\r\n", b"\n").removeprefix(mark) == write(
        EXAMPLE, *MEASURED, readings=READINGS
    )
    assert read(after).readings == READINGS


def test_a_last_line_without_an_end_stays_a_line_of_its_own(read: Read) -> None:
    shop = read(write(EXAMPLE.rstrip(b"\n"), MEASURED[4]))
    assert shop.measured == (MEASURED[4],)


def test_records_written_on_one_line_are_refused_with_the_mend() -> None:
    before = b"reading = []\n" + EXAMPLE
    with pytest.raises(ChartgenError, match=r"write each under its own \[\[reading\]\]"):
        write(before, MEASURED[4], readings=READINGS)


def test_a_value_changed_by_hand_counts_as_measured_no_more(read: Read) -> None:
    after = write(EXAMPLE, MEASURED[4]).replace(
        b'key_torque = "38.5 N.m"', b'key_torque = "45 N.m"'
    )
    shop = read(after)
    assert (shop.lathe.chuck.key_torque, shop.measured) == (45.0, ())


def test_amounts_read_back_to_the_same_number() -> None:
    assert amount_text(0.575, FRACTION) == "57.5 %"
    assert amount_text(25.4, MM) == "25.4 mm"
    assert amount_text(38.5, N_M) == "38.5 N.m"
    assert amount_text(16000.0, N_PER_MM) == "16000 N/mm"


@given(st.floats(1e-4, 1e5), st.sampled_from([FRACTION, MM, N_M, N_PER_MM]))
def test_any_amount_reads_back_to_the_very_same_number(value: float, unit: Unit) -> None:
    assert magnitude(amount_text(value, unit), unit) == value


def test_the_example_of_readings_holds_every_kind_that_suits_the_example_shop(
    read: Read,
) -> None:
    from_example = read_readings(
        example_readings_text(), file="r.toml", known=_known(), shop=read(EXAMPLE)
    )
    kinds = {type(one).__name__ for one in from_example}
    assert kinds == {"WattsReading", "DeflectionReading", "KeyTorqueReading"}
    for one in from_example:
        assert all(getattr(one, field.name) != "" for field in fields(one))


def _known() -> Known:
    from chartgen.pipeline import known_names  # noqa: PLC0415 - the names of the real data

    return known_names()
