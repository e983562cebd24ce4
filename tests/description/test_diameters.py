import json
from collections.abc import Callable

import pytest

from chartgen.description.shop_file import example_text
from chartgen.model.shop import Shop

Read = Callable[[str | bytes], Shop]
Complaints = Callable[[str | bytes], list[str]]
EXAMPLE = example_text().decode()


def with_diameters(value: str) -> str:
    """Return the example with other diameters, as TOML writes them."""
    start = EXAMPLE.index("diameters = [")
    return f"{EXAMPLE[:start]}diameters = {value}{EXAMPLE[EXAMPLE.index(']', start) + 1 :]}"


@pytest.mark.parametrize(
    ("text", "diameters"),
    [
        ("10..60 mm step 10 mm", [10, 20, 30, 40, 50, 60]),
        ("10..25 mm step 10 mm", [10, 20]),
        ("0.6..1.2 mm step 0.1 mm", [0.6, 0.7, 0.8, 0.9, 1.0, 1.1, 1.2]),
        ("1/4..3/4 in step 1/4 in", [6.35, 12.7, 19.05]),
        ("R5 6..63 mm", [6.3, 10, 16, 25, 40, 63]),
        ("R10 6..63 mm", [6.3, 8, 10, 12.5, 16, 20, 25, 31.5, 40, 50, 63]),
        ("R20 10..20 mm", [10, 11.2, 12.5, 14, 16, 18, 20]),
    ],
)
def test_diameters_may_be_a_range_or_preferred_numbers(
    read: Read, text: str, diameters: list[float]
) -> None:
    shop = read(with_diameters(json.dumps(text)))

    assert list(shop.request.diameters) == diameters


@pytest.mark.parametrize(
    ("text", "message"),
    [
        (
            "10..60 mm",
            (
                "'10..60 mm' is neither a list nor a range with a step. "
                "Write it as in '10..60 mm step 5 mm' or 'R10 6..63 mm'."
            ),
        ),
        ("R7 6..63 mm", "'R7' is not a series known here. Use R5, R10, R20."),
        ("R5 11..12 mm", "'R5 11..12 mm' holds no number of R5. Widen the range."),
        (
            "1..60 mm step 0.1 mm",
            "'1..60 mm step 0.1 mm' gives more than 200 diameters. Take a larger step.",
        ),
        ("60..10 mm step 5 mm", "'60..10 mm' runs backwards. Write the smaller end first."),
    ],
)
def test_a_wrong_range_of_diameters_is_refused(
    complaints: Complaints, text: str, message: str
) -> None:
    (complaint,) = complaints(with_diameters(json.dumps(text)))

    line = EXAMPLE[: EXAMPLE.index("diameters = [")].count("\n") + 1
    assert complaint == f"my.toml:{line}: print.diameters: {message}"


def test_more_diameters_than_a_card_could_hold_are_refused(complaints: Complaints) -> None:
    many = json.dumps([f"{number} mm" for number in range(1, 202)])

    (complaint,) = complaints(with_diameters(many))

    assert complaint.endswith("print.diameters: lists 201 diameters. Choose at most 200.")
