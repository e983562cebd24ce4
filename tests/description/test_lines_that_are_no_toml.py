from collections.abc import Callable

import pytest

Complaints = Callable[[str | bytes], list[str]]
MORE = "there is more on the line than one key and its value."
UNREADABLE = "the value cannot be read."


@pytest.mark.parametrize(
    ("heading", "line", "message"),
    [
        (
            "[shop]",
            "date = 25.11.2026",
            f"at column 13, {MORE} Write the date as 2026-11-25, or in quotes.",
        ),
        (
            "[shop]",
            "date = 2026-13-40",
            f"at column 12, {MORE} Write the date as 2026-11-25, or in quotes.",
        ),
        (
            "[lathe.cross_slide]",
            "divisions = 40,5",
            (
                f"at column 15, {MORE} "
                "Numbers have a point, and this one is a whole number, as in divisions = 40."
            ),
        ),
        (
            "[lathe.cross_slide]",
            "divisions = 40 lines",
            f"at column 16, {MORE} Write a whole number and nothing else, as in divisions = 40.",
        ),
        (
            "[[lathe.drive.position]]",
            "motor_ratio = 2,8",
            f"at column 16, {MORE} Numbers have a point, as in motor_ratio = 2.8.",
        ),
        (
            "[allowances]",
            "confined_chip = 1,2",
            (
                f"at column 18, {MORE} "
                "Write a ratio with a point, as in confined_chip = 1.2; anything else in quotes."
            ),
        ),
        (
            "[[blade]]",
            "worn = yes",
            f"at column 8, {UNREADABLE} Write worn = true or worn = false, in small letters.",
        ),
        (
            "[[blade]]",
            "thickness = 1,6 mm",
            (
                f"at column 14, {MORE} "
                'Put text in quotes, as in thickness = "2 mm", and each key on its own line.'
            ),
        ),
        (
            "[lathe.motor]",
            "kind = inverter",
            f'at column 8, {UNREADABLE} Put text in quotes, as in kind = "inverter".',
        ),
        (
            "[lathe.chuck]",
            "kind = scroll",
            f'at column 8, {UNREADABLE} Put text in quotes, as in kind = "scroll".',
        ),
        (
            "[lathe.chuck]",
            "jaws = diamond",
            f'at column 8, {UNREADABLE} Put text in quotes, as in jaws = "smooth".',
        ),
        (
            "[lathe.drive]",
            "elements = v-belt",
            f'at column 12, {UNREADABLE} Put text in quotes, as in elements = ["v-belt"].',
        ),
        (
            "[lathe.drive]",
            "colour = grey",
            f'at column 10, {UNREADABLE} Put text in quotes, as in power = "550 W".',
        ),
    ],
)
def test_the_hint_fits_the_key(
    complaints: Complaints, heading: str, line: str, message: str
) -> None:
    assert complaints(f"{heading}\n{line}\n") == [f"my.toml:2: {message}"]


@pytest.mark.parametrize(
    ("first", "second", "message"),
    [
        ("[blade]", "[blade]", "at column 7, {} Use double brackets, [[blade]], for each blade."),
        ("[[blade]]", "[blade]", "at column 7, {} Use double brackets, [[blade]], for each blade."),
        ("[blade]", "[[blade]]", "at column 8, {} Use double brackets, [[blade]], for each blade."),
        (
            "[lathe.drive.position]",
            "[lathe.drive.position]",
            ("at column 22, {} Use double brackets, [[lathe.drive.position]], for each position."),
        ),
        ("[shop]", "[[shop]]", "at column 7, {} Put its keys together under one heading."),
    ],
)
def test_a_heading_of_which_there_may_be_several_has_double_brackets(
    complaints: Complaints, first: str, second: str, message: str
) -> None:
    text = f'{first}\nname = "x"\n{second}\nname = "y"\n'

    assert complaints(text) == [f"my.toml:3: {message.format('a table is written twice.')}"]
