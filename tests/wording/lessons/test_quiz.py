"""The quiz comes from the cautions: each right answer is one, with its source beside it."""

from collections.abc import Callable
from dataclasses import replace
from typing import Any

import pytest

from chartgen.model.shop import Feeding, Shop
from chartgen.reference.cautions import NO_SOURCE, load_cautions
from chartgen.reference.tables import load_material
from chartgen.wording.cautions import cautions_of
from chartgen.wording.language import speaking
from chartgen.wording.lessons.cards import quiz_cards, sign_off_cards
from chartgen.wording.lessons.quiz import MOST_QUESTIONS, printed_quiz, printed_quiz_key
from chartgen.wording.lessons.quiz_words import asked_of_every_lathe, asked_of_some
from chartgen.wording.lessons.sign_off import printed_sign_off

CAUTIONS = {caution.key: caution for caution in load_cautions()}
ASKED = {**asked_of_every_lathe(), **asked_of_some()}
SETS = [
    ("mild-steel",),
    ("grey-iron-250", "free-cutting-brass"),
    ("titanium-6al-4v", "stainless-304", "mild-steel"),
]


@pytest.mark.parametrize("key", sorted(ASKED))
def test_a_question_is_about_a_caution_there_is(key: str) -> None:
    asked = ASKED[key]
    assert key in CAUTIONS
    assert (asked.truth is None) == (len(asked.wrong) == 2)
    assert asked.text.endswith(("?", "."))
    assert CAUTIONS[key].text not in asked.wrong
    # The right answer is not told by its length.
    lengths = [len(text) for text in asked.wrong]
    assert not lengths or max(lengths) >= 0.5 * len(CAUTIONS[key].text)


@pytest.mark.parametrize("materials", SETS)
def test_the_right_answer_is_the_caution_and_its_source_stands_beside_it(
    example: Shop, materials: tuple[str, ...]
) -> None:
    loaded = [load_material(key) for key in materials]
    quiz, key = printed_quiz(example, loaded), printed_quiz_key(example, loaded)
    assert 8 <= len(quiz.questions) <= MOST_QUESTIONS
    there = {caution.text: caution for caution in cautions_of(example, loaded)}
    for question, solution in zip(quiz.questions, key.solutions, strict=True):
        assert question.text == solution.question
        assert solution.answer in question.options
        if len(question.options) == 2:
            assert question.options == ("true", "false")
            caution = there[solution.lines[0]]
        else:
            assert len(set(question.options)) == 3
            caution = there[solution.answer[3:]]
        source = "common practice" if caution.source == NO_SOURCE else caution.source
        assert question.text.endswith(f"[{source}]")


def test_right_answers_stand_in_every_place(example: Shop) -> None:
    key = printed_quiz_key(example, [load_material("mild-steel")])
    assert {one.answer[0] for one in key.solutions if one.answer[1] == ")"} == {"a", "b", "c"}


def test_what_only_some_lathes_bring_is_asked_of_them_alone(
    shop_of: Callable[[str], Shop],
) -> None:
    steel, by_hand = [load_material("mild-steel")], shop_of("550 W belts")
    power = replace(by_hand, request=replace(by_hand.request, feeding=Feeding.POWER))

    def asks(shop: Shop) -> bool:
        return any("Power feed" in one.text for one in printed_quiz(shop, steel).questions)

    assert asks(power)
    assert not asks(by_hand)


def test_the_sign_off_puts_the_schools_rules_first_and_gives_no_leave(example: Shop) -> None:
    steel = [load_material("mild-steel")]
    body = printed_sign_off(example, steel, "No food.\n\n  Lights off at ten. ")
    assert body.rules[:2] == ("No food.", "Lights off at ten.")
    assert "the rule of the school holds" in body.rules[-1]
    assert "no permission" in body.notes[0]
    assert [row[0] for row in body.fields] == ["Student", "Instructor"]
    assert all("Date" in row for row in body.fields)
    assert len(body.points) >= 8
    # Without any of its own the school's rules still come first.
    assert len(printed_sign_off(example, steel, "").rules) == 1


def test_quiz_and_sign_off_carry_the_full_cautions(room_of: Callable[..., Any]) -> None:
    room = room_of()
    materials = [load_material(key) for key in room.course.materials]
    for shop in room.shops:
        full = {caution.text for caution in cautions_of(shop, materials)}
        for card in (quiz_cards(room.course, shop)[0], *sign_off_cards(room.course, shop)):
            shown = " ".join(caution.text for caution in card.cautions)
            assert all(text in shown for text in full), card.layout


@pytest.mark.parametrize("language", ["en", "de"])
@pytest.mark.parametrize("materials", SETS)
def test_who_ticks_the_longest_answer_gets_half_of_them_wrong(
    example: Shop, materials: tuple[str, ...], language: str
) -> None:
    loaded = [load_material(key) for key in materials]
    with speaking(language):
        quiz, key = printed_quiz(example, loaded), printed_quiz_key(example, loaded)
    pairs = [
        (max(question.options, key=len), solution.answer)
        for question, solution in zip(quiz.questions, key.solutions, strict=True)
        if len(question.options) > 2
    ]
    assert sum(longest == right for longest, right in pairs) <= len(pairs) / 2
