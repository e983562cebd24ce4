"""The command that learns from readings: what it says, what it writes, when it does not."""

import json
from collections.abc import Callable
from pathlib import Path

import pytest

from chartgen.description.example import example_readings_text, example_text

Inside = Callable[..., tuple[int, str, str]]
PULL = '[[reading]]\nkind = "key-torque"\ndate = 2026-11-25\ntorque = "{} N.m"\n\n'
THREE = "".join(PULL.format(torque) for torque in (38, 40, 42))
STALL = """[[reading]]
kind = "{kind}"
date = 2026-11-25
material = "{material}"
blade = "2.0 carbide"
diameter = "40 mm"
speed = "{speed}"
feed = "0.1 mm/rev"
{rest}
"""


@pytest.fixture
def shop(tmp_path: Path) -> Path:
    path = tmp_path / "s.toml"
    path.write_bytes(example_text())
    (tmp_path / "r.toml").write_bytes(example_readings_text())
    return path


def test_the_example_of_readings_teaches_the_example_shop(inside: Inside, shop: Path) -> None:
    code, out, err = inside("learn", "s.toml", "r.toml")
    assert (code, err) == (0, "")
    assert "Pull on the chuck key (lathe.chuck.key_torque)\n  measured 2026-11-25: 40 N·m ± " in out
    assert out.endswith("s.toml: written.\n")
    text = shop.read_text("utf-8")
    assert text.startswith(example_text().decode().partition("# tool_stiffness")[0])
    assert text.count("[[reading]]") == example_readings_text().decode().count("\n[[reading]]")
    code, out, err = inside("check", "s.toml")
    assert (code, err) == (0, "")
    assert "Measured: pull on the chuck key 40 N·m ± " in out
    assert "from 40 N·m on the key, measured 2026-11-25" in out


def test_a_second_run_changes_nothing(inside: Inside, shop: Path) -> None:
    inside("learn", "s.toml", "r.toml")
    once = shop.read_bytes()
    for words in (("r.toml",), ()):
        code, out, _ = inside("learn", "s.toml", *words)
        assert code == 0
        assert out.endswith("s.toml: holds all this already.\n")
        assert shop.read_bytes() == once


def test_kept_readings_and_new_ones_count_together(
    inside: Inside, shop: Path, tmp_path: Path
) -> None:
    (tmp_path / "a.toml").write_text(THREE, "utf-8")
    (tmp_path / "b.csv").write_text("kind;date;torque\nkey-torque;2026-12-24;41 N.m\n", "utf-8")
    inside("learn", "s.toml", "a.toml")
    out = inside("learn", "s.toml", "b.csv")[1]
    assert "measured 2026-12-24: 40 N·m ± " in out
    assert "from 4 readings" in out
    assert shop.read_text("utf-8").count("[[measured]]") == 1


def test_a_dry_run_shows_the_same_and_writes_nothing(inside: Inside, shop: Path) -> None:
    dry = inside("learn", "s.toml", "r.toml", "--dry-run")
    assert shop.read_bytes() == example_text()
    wet = inside("learn", "s.toml", "r.toml")
    assert wet[1] == dry[1] + "s.toml: written.\n"


def test_the_answer_for_a_machine_has_the_same_facts(inside: Inside, shop: Path) -> None:
    code, out, err = inside("learn", "s.toml", "r.toml", "--json")
    assert (code, err) == (0, "s.toml: written.\n")
    found = {one["key"]: one for one in json.loads(out)["findings"]}
    key = found["lathe.chuck.key_torque"]
    assert (key["value"], key["unit"], key["readings"], key["deed"]) == (40.0, "N·m", 3, "write")
    assert found["lathe.drive.efficiency"]["value"] is None
    assert f'key_torque = "{key["value"]:g} N.m"' in shop.read_text("utf-8")


def test_an_owners_own_value_stays_until_he_gives_it_up(
    inside: Inside, shop: Path, tmp_path: Path
) -> None:
    own = example_text().replace(b'# key_torque = "40 N.m"', b'key_torque = "55 N.m"')
    shop.write_bytes(own)
    (tmp_path / "a.toml").write_text(THREE, "utf-8")
    out = inside("learn", "s.toml", "a.toml")[1]
    assert "Left alone: the file says 55 N·m, and not from readings. --replace puts" in out
    assert b'key_torque = "55 N.m"' in shop.read_bytes()
    assert b"[[measured]]" not in shop.read_bytes()
    assert "Goes into the shop file." in inside("learn", "s.toml", "--replace")[1]
    assert b'key_torque = "40 N.m"     # how hard' in shop.read_bytes()


def test_a_contradiction_takes_an_earlier_value_back(
    inside: Inside, shop: Path, tmp_path: Path
) -> None:
    (tmp_path / "a.toml").write_text(THREE, "utf-8")
    (tmp_path / "b.toml").write_text(PULL.format(41) + PULL.format(120), "utf-8")
    inside("learn", "s.toml", "a.toml")
    code, out, _ = inside("learn", "s.toml", "b.toml")
    assert code == 0
    assert "not concluded: the pull of 120 N·m on 2026-11-25 contradicts the others." in out
    assert "What earlier readings gave is taken out of the shop file." in out
    text = shop.read_text("utf-8")
    assert "[[measured]]" not in text
    assert "\nkey_torque" not in text
    assert inside("check", "s.toml")[0] == 0


def test_the_example_is_printed_to_start_from(inside: Inside) -> None:
    assert inside("learn", "--example") == (0, example_readings_text().decode(), "")


def stall(
    kind: str = "stall", material: str = "c45", speed: str = "150 rpm", rest: str = ""
) -> str:
    return STALL.format(kind=kind, material=material, speed=speed, rest=rest)


@pytest.mark.parametrize(
    ("text", "message"),
    [
        (PULL.format(40), "not concluded: 1 reading, and 3 are needed."),
        (
            PULL.format(40),
            "Would help most, 2 more of it: a pull of a torque wrench in the chuck key's",
        ),
        (PULL.format(40), "Nothing follows from so little; s.toml is left as it was."),
        (PULL.format(10) + PULL.format(40) + PULL.format(90), "scatter too much to tell."),
        (PULL.format(4000), "is 4000 N.m, which is out of bounds (1 to 1000 N.m). Check the unit"),
        (PULL.replace('"{} N.m"', "40"), "reading[1].torque: needs a unit."),
        (PULL.replace("N.m", "N").format(40), "'40 N' is a force, not a torque"),
        ("", "r.toml: holds no readings."),
        ("nonsense", "r.toml:1: "),
        (
            stall(),
            "r.toml:1: reading[1]: 150 rpm can be had in more than one drive position.",
        ),
        (stall(material="nylon", rest='position = "low"'), "no force of nylon is published"),
        (
            stall(kind="droop", rest='idle_speed = "160 rpm"'),
            "the speed of a motor of kind 'inverter' does not fall with its load",
        ),
        (
            stall(rest='position = "low"'),
            "Would help most, 1 more of it: a cut to the stall, if the manual allows it.",
        ),
    ],
)
def test_what_cannot_be_learned_from_is_told_and_the_file_left(
    inside: Inside, shop: Path, tmp_path: Path, text: str, message: str
) -> None:
    (tmp_path / "r.toml").write_text(text, "utf-8")
    code, out, err = inside("learn", "s.toml", "r.toml")
    assert (code, out) == (2, "")
    assert message in err
    assert shop.read_bytes() == example_text()
    assert sorted(path.name for path in tmp_path.iterdir()) == ["r.toml", "s.toml"]


@pytest.mark.parametrize(
    ("words", "message"),
    [
        ((), "Name the shop file that the readings belong to."),
        (("s.toml",), "s.toml: keeps no readings yet; name a file of them."),
        (("s.toml", "none.toml"), "none.toml: there is no such file"),
        (("none.toml", "r.toml"), "none.toml: there is no such file"),
        (("s.toml", "."), ".: is a folder"),
        (("r.toml", "r.toml"), "r.toml"),
    ],
)
@pytest.mark.usefixtures("shop")
def test_what_cannot_be_done_is_a_message(
    inside: Inside, tmp_path: Path, words: tuple[str, ...], message: str
) -> None:
    code, out, err = inside("learn", *words)
    assert (code, out) == (2, "")
    assert message in err
    assert (tmp_path / "s.toml").read_bytes() == example_text()


def test_a_refused_row_of_a_table_is_named_by_its_line(
    inside: Inside, shop: Path, tmp_path: Path
) -> None:
    heading = "kind,date,material,blade,diameter,speed,feed,torque"
    cut = "2026-11-25,c45,2.0 carbide,40 mm,150 rpm,0.1 mm/rev,"
    rows = f"{heading}\nkey-torque,2026-11-25,,,,,,40 N.m\n\nstall,{cut}\n"
    (tmp_path / "r.csv").write_text(rows, "utf-8")
    code, _, err = inside("learn", "s.toml", "r.csv")
    assert code == 2
    assert err.startswith("r.csv:4: reading[2]: 150 rpm can be had in more than one drive position")
    assert "position. Add position = one of 'low', 'high'.\n" in err
    assert shop.read_bytes() == example_text()


def test_a_kept_reading_that_a_new_motor_makes_useless_is_named_in_the_shop_file(
    inside: Inside, shop: Path
) -> None:
    droop = stall(kind="droop", rest='idle_speed = "160 rpm"\nposition = "low"')
    shop.write_bytes(example_text() + f"\n{droop}".encode())
    line = example_text().count(b"\n") + 2
    err = inside("learn", "s.toml")[2]
    assert err.startswith(f"s.toml:{line}: reading[1]: the speed of a motor of kind 'inverter'")


def test_a_link_to_the_shop_file_stays_a_link(inside: Inside, shop: Path, tmp_path: Path) -> None:
    link = tmp_path / "link.toml"
    link.symlink_to(shop)
    assert inside("learn", "link.toml", "r.toml")[0] == 0
    assert link.is_symlink()
    assert b"[[measured]]" in shop.read_bytes()
