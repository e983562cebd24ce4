"""What looks implausible in a shop file though nothing forbids it."""

from collections.abc import Callable
from dataclasses import replace

from chartgen.model.lathe import DialReads
from chartgen.model.motor import MotorKind, PowerIs
from chartgen.model.shop import Shop
from chartgen.wording.doubts import doubts, plate_lines


def with_motor(shop: Shop, **plate: object) -> Shop:
    return replace(shop, lathe=replace(shop.lathe, motor=replace(shop.lathe.motor, **plate)))  # type: ignore[arg-type]


def with_slide(shop: Shop, **slide: object) -> Shop:
    lathe = shop.lathe
    return replace(shop, lathe=replace(lathe, cross_slide=replace(lathe.cross_slide, **slide)))  # type: ignore[arg-type]


def test_plates_and_dials_are_told_as_they_were_read(example: Shop) -> None:
    assert plate_lines(example) == (
        (
            "Motor: inverter, plate 750 W shaft, base 1400 rev/min, fastest 2800 rev/min, "
            "overload 150 %."
        ),
        "Cross-slide: 2 mm of tool travel a turn, 40 divisions. Spindle at most 2500 rev/min.",
        "Blades: 2.0 carbide cuts 2 mm; 3.0 carbide cuts 3 mm; 1.6 HSS cuts 1.587 mm.",
    )


def test_only_what_a_plate_states_is_told_of_it(example: Shop) -> None:
    bare = with_motor(
        example,
        kind=MotorKind.SINGLE_PHASE,
        power_is=PowerIs.INPUT,
        fastest=None,
        overload=None,
        breakdown=2.0,
    )
    assert plate_lines(bare)[0] == (
        "Motor: single-phase, plate 750 W input, base 1400 rev/min, breakdown 200 %."
    )
    limited = with_motor(example, current_limit=1.8)
    assert plate_lines(limited)[0].endswith(
        "fastest 2800 rev/min, overload 150 %, current limit 180 %."
    )


def test_a_measured_motor_is_told_no_plate(shop_of: Callable[..., Shop]) -> None:
    lines = plate_lines(shop_of("measured"))
    assert lines[0] == "Motor: as measured at the spindle."
    assert len(lines) == 3


def test_the_example_leaves_no_doubt(example: Shop) -> None:
    assert doubts(example) == ()


# Motor and inverter: 0.70 of what is drawn reaches the shaft (allowance).
def test_a_motor_that_would_draw_more_than_a_socket_gives_is_doubted(example: Shop) -> None:
    assert 2200.0 / 0.70 > 3000.0
    assert doubts(with_motor(example, plate_power=2200.0)) == (
        (
            "Doubtful: at full load this motor would draw about 3143 W, more than a domestic "
            "socket gives (3000 W). Is the plate power that of the shaft?"
        ),
    )


def test_a_plate_of_input_power_is_compared_as_it_stands(example: Shop) -> None:
    assert doubts(with_motor(example, plate_power=2900.0, power_is=PowerIs.INPUT)) == ()
    (doubt,) = doubts(with_motor(example, plate_power=3500.0, power_is=PowerIs.INPUT))
    assert "about 3500 W" in doubt


def test_a_three_phase_motor_hangs_on_no_domestic_socket(example: Shop) -> None:
    assert doubts(with_motor(example, plate_power=9000.0, kind=MotorKind.THREE_PHASE)) == ()


def test_a_coarse_dial_is_doubted(example: Shop) -> None:
    assert doubts(with_slide(example, divisions=10)) == (
        (
            "Doubtful: one division of the cross-slide dial would be 0.200 mm; check "
            "travel_per_turn and divisions."
        ),
    )


def test_a_dial_that_reads_diameter_counts_double(example: Shop) -> None:
    reads = {"divisions": 20, "travel_per_turn": 2.0}
    assert doubts(with_slide(example, **reads)) == ()
    (doubt,) = doubts(with_slide(example, **reads, dial_reads=DialReads.DIAMETER))
    assert "would be 0.200 mm" in doubt


def test_a_fine_dial_is_doubted(example: Shop) -> None:
    (doubt,) = doubts(with_slide(example, divisions=1000))
    assert "would be 0.002 mm" in doubt


def test_a_chuck_marked_slower_than_the_spindle_is_minded(example: Shop) -> None:
    chuck = replace(example.lathe.chuck, marked_speed=2000.0)
    assert doubts(replace(example, lathe=replace(example.lathe, chuck=chuck))) == (
        (
            "Mind: the spindle can turn 2500 rev/min, the chuck is marked 2000; the cards keep to "
            "the chuck."
        ),
    )


def test_an_unmarked_chuck_is_no_doubt(example: Shop) -> None:
    chuck = replace(example.lathe.chuck, marked_speed=None)
    assert doubts(replace(example, lathe=replace(example.lathe, chuck=chuck))) == ()


def test_every_doubt_is_said(example: Shop) -> None:
    chuck = replace(example.lathe.chuck, marked_speed=2000.0)
    shop = with_slide(with_motor(example, plate_power=5000.0), divisions=10)
    assert len(doubts(replace(shop, lathe=replace(shop.lathe, chuck=chuck)))) == 3
