"""A cell asked about by a command's words."""

from collections.abc import Callable
from dataclasses import replace

import pytest

from chartgen.errors import RequestError
from chartgen.inquiry import cut_request, explain_cell, try_cut, understood
from chartgen.limits.cut import Side
from chartgen.model.shop import Shop

ShopOf = Callable[..., Shop]


def refusal(shop: Shop, **words: str) -> list[str]:
    known = {"material": "mild-steel", "tool": "A", "diameter": "25 mm"}
    with pytest.raises(RequestError) as caught:
        cut_request(shop, **(known | words))
    return str(caught.value).splitlines()


def test_words_become_a_cell_in_millimetres(example: Shop) -> None:
    request = cut_request(
        example,
        material="c45",
        tool="1.6 HSS",
        diameter="1 in",
        bore="1/2 in",
        speed="300 rpm",
        feed="0.002 in/rev",
    )
    assert request.material.key == "c45"
    assert request.blade is example.blades[2]
    assert (request.diameter, request.bore) == (25.4, 12.7)
    assert request.speed == 300.0
    assert request.feed == pytest.approx(0.0508)


def test_speed_and_feed_may_be_left_out(example: Shop) -> None:
    request = cut_request(example, material="c45", tool="A", diameter="25 mm")
    assert (request.bore, request.speed, request.feed) == (0.0, None, None)


def test_a_blade_is_known_by_its_letter_and_by_its_name(example: Shop) -> None:
    by_letter, by_name = (
        cut_request(example, material="c45", tool=word, diameter="25 mm").blade
        for word in ("B", "3.0 carbide")
    )
    assert by_letter is by_name is example.blades[1]


def test_an_unknown_material_is_refused_with_the_nearest(example: Shop) -> None:
    assert refusal(example, material="mild-stel")[0].startswith(
        "--material: 'mild-stel' is unknown. Did you mean 'mild-steel'"
    )


def test_an_unknown_blade_is_refused_with_those_there_are(example: Shop) -> None:
    assert refusal(example, tool="D") == [
        (
            "--tool: 'D' is no blade of this shop; it has A (2.0 carbide), B (3.0 carbide), "
            "C (1.6 HSS)."
        )
    ]


def test_a_bore_as_wide_as_the_bar_is_refused(example: Shop) -> None:
    assert refusal(example, bore="25 mm") == [
        "--bore: 25 mm leaves nothing to cut of 25 mm diameter."
    ]


def test_no_bore_at_all_may_be_written(example: Shop) -> None:
    request = cut_request(example, material="c45", tool="A", diameter="25 mm", bore="0 mm")
    assert request.bore == 0.0


@pytest.mark.parametrize("name", ["diameter", "speed", "feed"])
def test_nothing_and_less_than_nothing_are_refused(example: Shop, name: str) -> None:
    unit = {"diameter": "mm", "speed": "rpm", "feed": "mm/rev"}[name]
    for number in ("0", "-5"):
        (line,) = refusal(example, **{name: f"{number} {unit}"})
        assert line.startswith(f"--{name}: ")


def test_every_fault_is_told_at_once(example: Shop) -> None:
    lines = refusal(
        example,
        material="nothing-like-it",
        tool="Z",
        diameter="25",
        bore="x",
        speed="5 mm",
        feed="0.05 mm",
    )
    assert [line.split(":")[0] for line in lines] == [
        "--material",
        "--tool",
        "--diameter",
        "--bore",
        "--speed",
        "--feed",
    ]


def test_a_try_without_speed_and_feed_is_the_recommended_cut(example: Shop) -> None:
    request = cut_request(example, material="mild-steel", tool="A", diameter="25 mm")
    tried, explained = try_cut(example, request), explain_cell(example, request)
    assert tried.cut.spindle_speed == explained.cut.spindle_speed
    assert tried.cut.feed == explained.cut.feed
    assert tried.cut.side is Side.INSIDE


# Two positions may run the same speed; what a card recommends must never be called out of bounds.
@pytest.mark.parametrize("material", ["mild-steel", "stainless-304", "aluminium-6082"])
@pytest.mark.parametrize("built", ["550 W belts", "750 W inverter", "250 W brushed DC"])
def test_what_a_cell_recommends_is_inside_when_it_is_tried(
    shop_of: ShopOf, material: str, built: str
) -> None:
    shop = shop_of(built)
    counted = 0
    for blade in shop.blades:
        for diameter in (6, 12, 20, 32, 50):
            words = {"material": material, "tool": blade.name, "diameter": f"{diameter} mm"}
            cell = explain_cell(shop, cut_request(shop, **words))
            if not cell.windows.has_window[0, shop.blades.index(blade), 0]:
                continue
            speed, feed = f"{cell.cut.spindle_speed!r} rpm", f"{cell.cut.feed!r} mm/rev"
            again = try_cut(shop, cut_request(shop, **words, speed=speed, feed=feed))
            assert again.cut.side is Side.INSIDE, words
            counted += 1
    assert counted


def test_a_try_where_no_cut_is_possible_says_no_window(example: Shop) -> None:
    request = cut_request(
        example, material="mild-steel", tool="C", diameter="50 mm", speed="160 rpm"
    )
    assert try_cut(example, request).cut.side is Side.NO_WINDOW


def test_a_tube_is_asked_about_with_its_bore(example: Shop) -> None:
    request = cut_request(example, material="mild-steel", tool="C", diameter="40 mm", bore="32 mm")
    answer = explain_cell(example, request)
    assert answer.cut.bore == 32.0
    assert answer.windows.has_window[0, 2, 0]


def test_a_checked_shop_tells_who_it_is_what_is_assumed_and_what_is_doubtful(
    example: Shop,
) -> None:
    first, *lines = understood(example)
    assert first == "Invented training shop, revision A, 2026-11-25"
    assert not any(line.startswith("Doubtful") for line in lines)
    doubtful = replace(
        example,
        date="",
        lathe=replace(example.lathe, cross_slide=replace(example.lathe.cross_slide, divisions=10)),
    )
    first, *lines = understood(doubtful)
    assert first.endswith(", undated")
    assert lines[-1].startswith("Doubtful: one division of the cross-slide dial")
