"""Every message of a card is there in every language: none forgotten, none stale, none broken."""

import ast
import string
from collections.abc import Iterator
from functools import cache
from pathlib import Path

import pytest
from babel.messages.catalog import Message
from babel.messages.pofile import read_po

import chartgen
from chartgen.wording.language import ENGLISH, LANGUAGES, speaking, tr, trn

PACKAGE = Path(chartgen.__file__).parent
SPEAKING = ("wording", "layout", "renderers")
OTHERS = [language for language in LANGUAGES if language != ENGLISH]
each_language = pytest.mark.parametrize("language", OTHERS)


def calls(name: str) -> Iterator[tuple[str, ast.Call]]:
    for folder in SPEAKING:
        for path in (PACKAGE / folder).rglob("*.py"):
            for node in ast.walk(ast.parse(path.read_text("utf-8"))):
                is_named = isinstance(node, ast.Call) and isinstance(node.func, ast.Name)
                if is_named and node.func.id == name:
                    yield f"{path.name}:{node.lineno}", node


@cache
def said_in_code() -> frozenset[str]:
    """Return the messages written where they are said."""
    messages = set()
    for _, call in calls("tr"):
        first = call.args[0]
        if isinstance(first, ast.Constant) and isinstance(first.value, str):
            messages.add(first.value)
    return frozenset(messages)


@cache
def counted_in_code() -> frozenset[tuple[str, str]]:
    return frozenset(
        (call.args[0].value, call.args[1].value)  # type: ignore[attr-defined]
        for _, call in calls("trn")
    )


@cache
def parts_of(language: str) -> tuple[Message, ...]:
    messages = []
    for path in sorted((PACKAGE / "locale" / language).glob("*.po")):
        with path.open("rb") as file:
            messages += [one for one in read_po(file, locale=language) if one.id]
    return tuple(messages)


def ids(message: Message) -> tuple[str, ...]:
    return message.id if isinstance(message.id, tuple) else (message.id,)


def strings(message: Message) -> tuple[str, ...]:
    return message.string if isinstance(message.string, tuple) else (message.string,)


def places(text: str) -> set[str]:
    """Return the places that a message leaves for values, with their formats."""
    return {f"{name}:{spec}" for _, name, spec, _ in string.Formatter().parse(text) if name}


def test_a_message_is_a_plain_text_that_a_catalogue_can_hold() -> None:
    for place, call in calls("tr"):
        assert not isinstance(call.args[0], ast.JoinedStr), place
    for place, call in calls("trn"):
        assert all(isinstance(one, ast.Constant) for one in call.args[:2]), place


@each_language
def test_no_message_is_untranslated(language: str, said_from_data: frozenset[str]) -> None:
    there = {ids(message)[0] for message in parts_of(language)}
    counted = {one for one, _ in counted_in_code()}
    missing = (said_in_code() | said_from_data | counted) - there
    assert sorted(missing) == []


@each_language
def test_no_translation_is_of_a_message_that_nobody_says(
    language: str, said_from_data: frozenset[str]
) -> None:
    said = said_in_code() | said_from_data | {one for one, _ in counted_in_code()}
    assert sorted({ids(m)[0] for m in parts_of(language)} - said) == []


@each_language
def test_a_translation_is_whole_and_keeps_the_places_of_its_values(language: str) -> None:
    for message in parts_of(language):
        assert not message.fuzzy, message.id
        for text in strings(message):
            assert text.strip(), message.id
            assert places(text) <= set().union(*map(places, ids(message))), message.id
            if len(ids(message)) == 1:
                assert places(text) == places(ids(message)[0]), message.id


@each_language
def test_a_message_has_one_translation(language: str) -> None:
    found: dict[object, object] = {}
    for message in parts_of(language):
        assert found.setdefault(message.id, message.string) == message.string, message.id


@each_language
def test_the_compiled_messages_are_those_of_the_files(language: str) -> None:
    with speaking(language):
        for message in parts_of(language):
            if isinstance(message.id, tuple):
                values = {
                    place.partition(":")[0]: "x" for one in ids(message) for place in places(one)
                }
                values.pop("number", None)
                for number, text in ((1, strings(message)[0]), (7, strings(message)[1])):
                    assert trn(*message.id, number, **values) == text.format(
                        number=number, **values
                    )
            else:
                assert tr(message.id) == message.string
