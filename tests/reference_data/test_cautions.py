"""The cautions: complete, short, chosen by tag, worded by what can happen."""

import re

import pytest

from chartgen.layout.pictograms import PICTOGRAMS
from chartgen.reference.cautions import (
    DEFERENCE,
    Caution,
    Signal,
    choose_cautions,
    load_caution_tags,
    load_cautions,
    parse_cautions,
)
from chartgen.reference.tables import load_material
from chartgen.sources import Mark

FILE = """
[deference]
text = "This card defers."

[tags]
always = "every card"

[caution.eyes]
signal = "warning"
pictogram = "eyes"
text = "Wear eye protection."
when = ["always"]
priority = 1
source = "none"
mark = "practice"
"""
DEADLY = {"bar-behind-spindle", "between-centres", "magnesium", "titanium", "beryllium"}
LETHAL_WORDS = re.compile(r"\b(kill|killed|kills|thrown|pulls you in|winds up|explodes)\b")


def keys(*tags: str) -> list[str]:
    return [caution.key for caution in choose_cautions(tags)]


def contrast(one: str, other: str) -> float:
    """WCAG 2.2 contrast ratio of two hex colours."""

    def luminance(colour: str) -> float:
        parts = (int(colour[i : i + 2], 16) / 255 for i in (1, 3, 5))
        linear = (c / 12.92 if c <= 0.04045 else ((c + 0.055) / 1.055) ** 2.4 for c in parts)
        return sum(w * c for w, c in zip((0.2126, 0.7152, 0.0722), linear, strict=True))

    light, dark = sorted((luminance(one), luminance(other)), reverse=True)
    return (light + 0.05) / (dark + 0.05)


def test_every_card_is_told_the_dangers_that_need_no_tag() -> None:
    assert keys() == [
        "eyes",
        "entanglement",
        "reaching",
        "chuck-key",
        "guard",
        "manual",
        "emery",
        "stopping",
        "swarf",
    ]


def test_the_standing_line_defers_to_manual_codes_and_instruction() -> None:
    assert "the machine's manual, local codes and qualified instruction" in DEFERENCE
    assert len(DEFERENCE) <= 110


def test_titanium_is_named_only_on_a_titanium_card() -> None:
    others = set(load_caution_tags()) - {"titanium"}
    assert not any("titanium" in c.text.lower() for c in choose_cautions(others))
    assert [c.key for c in choose_cautions({"titanium"}) if "titanium" in c.text.lower()] == [
        "titanium-cut",
        "titanium-fire",
    ]


@pytest.mark.parametrize(
    ("tag", "key"),
    [
        ("parting", "dig-in"),
        ("parting", "never-between-centres"),
        ("parting", "set-up"),
        ("between-centres", "never-between-centres"),
        ("drilling", "break-through"),
        ("drilling", "finger-in-bore"),
        ("boring", "finger-in-bore"),
        ("boring", "measuring"),
        ("turning", "measuring"),
        ("tailstock", "tailstock"),
        ("long-overhang", "long-overhang"),
        ("deburring", "filing"),
        ("deburring", "sharp-edge"),
        ("power-feed", "power-feed"),
        ("bar-behind-spindle", "bar-sleeve"),
        ("unmarked-chuck", "unmarked-chuck"),
        ("oil-mist", "oil-smoke"),
        ("leaded", "lead"),
        ("magnesium", "magnesium-water"),
        ("beryllium", "beryllium-dust"),
        ("plastic", "plastic"),
        ("dust", "iron-dust"),
        ("fluoroplastic", "fluoroplastic-fumes"),
        ("stringy-swarf", "stringy-swarf"),
    ],
)
def test_a_tag_brings_its_caution_and_without_it_the_caution_stays_away(tag: str, key: str) -> None:
    assert key in keys(tag)
    assert key not in keys()


# Common practice, no source: what each of these does to its user does not hang on the shop.
@pytest.mark.parametrize(
    ("material", "key"),
    [
        ("ptfe", "fluoroplastic-fumes"),
        ("free-cutting-brass", "lead"),
        ("titanium-pure", "titanium-cut"),
        ("titanium-6al-4v", "titanium-cut"),
        ("grey-iron-250", "iron-dust"),
        ("acetal", "plastic"),
    ],
)
def test_a_material_with_a_hazard_of_its_own_brings_its_caution(material: str, key: str) -> None:
    assert key in keys(*load_material(material).tags)


def test_every_tag_of_the_file_brings_a_caution() -> None:
    for tag in set(load_caution_tags()) - {"always"}:
        assert len(keys(tag)) > len(keys()), tag


def test_a_tag_that_no_caution_answers_to_is_passed_over() -> None:
    assert keys("work-hardens") == keys()


def test_the_gravest_word_stands_first_and_priority_orders_within_it() -> None:
    chosen = choose_cautions({"parting", "magnesium", "dust", "bar-behind-spindle"})
    order = [(c.signal.rank, c.priority) for c in chosen]
    assert order == sorted(order)
    assert [c.signal for c in chosen[:3]] == [Signal.DANGER, Signal.DANGER, Signal.WARNING]
    assert chosen[-1].signal is Signal.NOTICE


@pytest.mark.parametrize("caution", load_cautions(), ids=lambda c: c.key)
def test_a_caution_is_at_most_three_short_sentences(caution: Caution) -> None:
    sentences = caution.text.split(". ")
    assert caution.text.endswith(".")
    assert len(sentences) <= 3
    assert all(len(sentence.split()) <= 14 for sentence in sentences)


@pytest.mark.parametrize("caution", load_cautions(), ids=lambda c: c.key)
def test_its_pictogram_is_one_of_those_drawn(caution: Caution) -> None:
    assert caution.pictogram in {"", *PICTOGRAMS}


def test_no_sign_asks_for_gloves_where_one_forbids_them() -> None:
    assert "no-gloves" in {c.pictogram for c in load_cautions()}
    assert not any(
        re.search(r"\b(wear|use|put on)\b[^.]*\bgloves", c.text, re.IGNORECASE)
        for c in load_cautions()
    )
    assert [p.meaning for p in PICTOGRAMS.values() if "glove" in p.meaning] == [
        "do not wear gloves"
    ]


@pytest.mark.parametrize("caution", load_cautions(), ids=lambda c: c.key)
def test_what_can_kill_is_never_called_a_mere_caution(caution: Caution) -> None:
    # ANSI Z535.4: DANGER will, WARNING could result in death or serious injury.
    if LETHAL_WORDS.search(caution.text) or caution.when & DEADLY:
        assert caution.signal in {Signal.DANGER, Signal.WARNING}


def test_danger_is_kept_for_the_two_that_will_kill() -> None:
    dangers = [c.key for c in load_cautions() if c.signal is Signal.DANGER]
    assert dangers == ["bar-whip", "magnesium-water"]


def test_a_notice_is_not_about_injury() -> None:
    assert [signal for signal in Signal if not signal.is_injury] == [Signal.NOTICE]


@pytest.mark.parametrize("signal", Signal)
def test_a_signal_word_can_be_read_on_its_panel(signal: Signal) -> None:
    # WCAG 2.2, 1.4.6: 7:1 for text.
    assert contrast(signal.panel, signal.lettering) >= 7


def test_common_practice_names_no_source_and_the_rest_do() -> None:
    for caution in load_cautions():
        assert (caution.mark is Mark.PRACTICE) == (caution.source == "none"), caution.key


@pytest.mark.parametrize(
    ("old", "new", "message"),
    [
        (
            'signal = "warning"',
            'signal = "beware"',
            (
                "cautions.toml: caution.eyes: 'beware' is no signal word; "
                "use one of ['danger', 'warning', 'caution', 'notice']"
            ),
        ),
        (
            'when = ["always"]',
            'when = ["allways"]',
            "cautions.toml: caution.eyes: when: allways is not under [tags]",
        ),
        (
            'when = ["always"]',
            "when = []",
            (
                "cautions.toml: caution.eyes: when is empty, so no card would show it; "
                "write 'always' or a tag"
            ),
        ),
        (
            "Wear eye protection.",
            "W" * 111,
            "cautions.toml: caution.eyes: text has 111 characters; write 1 to 110 of them",
        ),
        (
            "priority = 1\n",
            "prority = 1\n",
            "cautions.toml: caution.eyes: missing or unknown: priority, prority",
        ),
        (
            "priority = 1\n",
            'priority = "high"\n',
            "cautions.toml: caution.eyes: priority: 'high' is no whole number",
        ),
        (
            'mark = "practice"',
            'mark = "found"',
            "cautions.toml: caution.eyes: mark 'found' does not go with source 'none'",
        ),
        (
            'mark = "practice"',
            'mark = "hearsay"',
            (
                "cautions.toml: caution.eyes: 'hearsay' is no mark of trust; "
                "use one of ['found', 'derived', 'memory', 'practice']"
            ),
        ),
        (
            'signal = "warning"\npictogram = "eyes"',
            'signal = "notice"\npictogram = "general"',
            "cautions.toml: caution.eyes: a notice carries no warning triangle; take it off",
        ),
        (
            '[deference]\ntext = "This card defers."',
            "",
            "cautions.toml: the file: missing or unknown: deference",
        ),
    ],
)
def test_a_fault_in_the_file_is_named_with_file_and_key(old: str, new: str, message: str) -> None:
    assert old in FILE
    with pytest.raises(ValueError, match=f"^{re.escape(message)}$"):
        parse_cautions(FILE.replace(old, new))


def test_the_file_of_these_tests_is_itself_sound() -> None:
    assert [c.key for c in parse_cautions(FILE).cautions] == ["eyes"]
