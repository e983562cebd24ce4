"""The papers of a class in German: on the same paper, and no English word of this part left."""

import re
from collections.abc import Callable
from typing import Any

import pytest

from chartgen.layout.compose import compose
from chartgen.layout.layout_file import class_layout_names, load_layout
from chartgen.layout.placed import Text
from chartgen.model.shop import Language, LengthUnits
from chartgen.renderers.fonts import measure
from chartgen.wording.card import AnyCard

# Without "name" and "hand", which are German too.
ENGLISH = {
    "and",
    "answer",
    "bar",
    "blade",
    "card",
    "cut",
    "date",
    "done",
    "exercises",
    "facts",
    "false",
    "feed",
    "first",
    "for",
    "force",
    "formulas",
    "from",
    "half",
    "hands",
    "how",
    "instructor",
    "is",
    "jaws",
    "lathe",
    "letters",
    "made",
    "many",
    "marks",
    "mistakes",
    "needed",
    "not",
    "nothing",
    "number",
    "of",
    "off",
    "or",
    "piece",
    "power",
    "quiz",
    "read",
    "rev",
    "right",
    "rules",
    "school",
    "shown",
    "speed",
    "spindle",
    "student",
    "the",
    "this",
    "took",
    "torque",
    "true",
    "twice",
    "what",
    "which",
    "with",
    "work",
    "wrong",
}


@pytest.fixture(scope="module", params=["first", "second"])
def german(
    request: pytest.FixtureRequest, of_a_class: dict[str, Any], room_of: Callable[..., Any]
) -> list[AnyCard]:
    """Return the papers of a German class of a level."""
    cards: list[AnyCard] = of_a_class["cards_of"](
        room_of(request.param, LengthUnits.METRIC, Language.GERMAN)
    )
    return cards


def owned(cards: list[AnyCard], of_a_class: dict[str, Any]) -> list[str]:
    """Return what an owner named."""
    names = ["Invented evening class", "Nobody works alone.", "Long hair under a cap."]
    names += [name for name in of_a_class["NAMES"] if name]
    names += [card.lathe for card in cards if card.lathe]
    names += ["Test lathe", "2.0 carbide", "3.0 carbide", "1.6 HSS", "2 coated", "3 coated"]
    names += ["2 polished", "low", "high", "belts"]
    return sorted(names, key=len, reverse=True)


def said(body: object) -> list[str]:
    """Return every text in a body, however deep."""
    if isinstance(body, str):
        return [body]
    if isinstance(body, tuple | list | frozenset):
        return [text for part in body for text in said(part)]
    if hasattr(body, "__dataclass_fields__"):
        return [text for name in body.__dataclass_fields__ for text in said(getattr(body, name))]
    return []


def test_no_english_word_is_left(german: list[AnyCard], of_a_class: dict[str, Any]) -> None:
    names = owned(german, of_a_class)
    for card in german:
        pages = compose(card, load_layout(card.layout), measure).pages
        items = [item for page in pages for item in page.items]
        texts = [item.text for item in items if isinstance(item, Text)]
        texts += [tag.alternative for item in items for tag in item.tags]
        for text in texts:
            whole = text.replace("\N{NO-BREAK SPACE}", " ")
            for name in names:
                whole = whole.replace(name, "")
            words = set(re.findall(r"[a-z]+", re.sub(r"\[[^\]]*\]", "", whole).lower()))
            assert not words & ENGLISH, (card.layout, text)


def test_numbers_have_the_comma(german: list[AnyCard]) -> None:
    commas = 0
    for card in german:
        if card.layout.startswith(("exercise-sheet", "answer-key")):
            for text in said(card.chart):
                own = re.sub(r"\b\d\.\d (carbide|HSS)", "", text)
                assert not re.search(r"\d\.\d", own), text
                commas += len(re.findall(r"\d,\d", text))
    assert commas > 50


@pytest.mark.parametrize("name", class_layout_names())
def test_german_stands_on_the_same_paper(name: str, german: list[AnyCard]) -> None:
    (card, *_) = [card for card in german if card.layout == name]
    document = compose(card, load_layout(name), measure)
    assert document.language == "de-DE"
    assert any(isinstance(item, Text) for page in document.pages for item in page.items)
