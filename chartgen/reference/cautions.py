"""Reads `cautions.toml`: what a card must warn of, and which operations call for it."""

import tomllib
from collections.abc import Collection, Mapping
from dataclasses import dataclass
from enum import Enum
from functools import cache
from pathlib import Path
from types import MappingProxyType
from typing import Any, Final

from chartgen.sources import Mark

FILE: Final = "cautions.toml"
ALWAYS: Final = "always"
NO_SOURCE: Final = "none"
GENERAL_WARNING: Final = "general"
LONGEST_TEXT: Final = 110
"""Characters; more is not read beside a running machine, nor does it fit on the cards."""
_TEXT: Final = (str, "text")
_KINDS: Final[Mapping[str, tuple[type, str]]] = {
    "signal": _TEXT,
    "pictogram": _TEXT,
    "text": _TEXT,
    "when": (list, "list of tags"),
    "priority": (int, "whole number"),
    "source": _TEXT,
    "mark": _TEXT,
}


class Signal(Enum):
    """Signal words in falling order, each chosen by what can happen (ANSI Z535.4).

    `panel` and `lettering` are hex colours for colour print: red, yellow and blue as the
    screen values of the ISO 3864-4 colours, orange as the nearest to the safety orange of
    ANSI Z535.1 that a screen can show. The word carries the meaning in mono.
    `is_injury` is False where nobody can be hurt: such a panel has no alert triangle.
    """

    DANGER = "danger", "will kill or badly injure if not avoided", "#9B2423", "#FFFFFF", True
    WARNING = "warning", "could kill or badly injure if not avoided", "#E87600", "#000000", True
    CAUTION = "caution", "could injure, not badly, if not avoided", "#F9A800", "#000000", True
    NOTICE = "notice", "harms the work or the machine, not a person", "#005387", "#FFFFFF", False

    def __init__(
        self,
        word: str,
        meaning: str,
        panel: str,
        lettering: str,
        is_injury: bool,  # noqa: FBT001
    ) -> None:
        self.word = word
        self.meaning = meaning
        self.panel = panel
        self.lettering = lettering
        self.is_injury = is_injury

    @property
    def rank(self) -> int:
        """Place among the signal words, 0 for the gravest."""
        return list(Signal).index(self)

    @classmethod
    def of(cls, word: str) -> "Signal":
        """Return the signal that the data file spells `word`.

        Raises
        ------
        ValueError
            If there is no such signal word.
        """
        for signal in cls:
            if signal.word == word:
                return signal
        raise ValueError(f"{word!r} is no signal word; use one of {[s.word for s in cls]}")


@dataclass(frozen=True, slots=True, kw_only=True)
class Caution:
    """One caution: shown where any tag in `when` is on the card.

    `pictogram` is the key of a drawn sign or "", `source` a bibliography key or "none".
    """

    key: str
    signal: Signal
    pictogram: str
    text: str
    when: frozenset[str]
    priority: int
    source: str
    mark: Mark

    def __post_init__(self) -> None:
        if not self.text or len(self.text) > LONGEST_TEXT:
            raise ValueError(
                f"text has {len(self.text)} characters; write 1 to {LONGEST_TEXT} of them"
            )
        if not self.when:
            raise ValueError(f"when is empty, so no card would show it; write {ALWAYS!r} or a tag")
        if self.pictogram == GENERAL_WARNING and not self.signal.is_injury:
            raise ValueError(f"a {self.signal.word} carries no warning triangle; take it off")
        if (self.mark in {Mark.FOUND, Mark.DERIVED}) is (self.source == NO_SOURCE):
            raise ValueError(f"mark {self.mark.word!r} does not go with source {self.source!r}")


@dataclass(frozen=True, slots=True, kw_only=True)
class CautionFile:
    """All that the file holds: the standing line, what each tag means, and the cautions."""

    deference: str
    tags: Mapping[str, str]
    cautions: tuple[Caution, ...]


def parse_cautions(text: str) -> CautionFile:
    """Return what a cautions file with this text holds, cautions in the order to show them.

    Raises
    ------
    ValueError
        If anything is missing, unknown or misspelt; the message names file and key.
    """
    raw = tomllib.loads(text)
    _check_keys("the file", raw, {"deference", "tags", "caution"})
    _check_keys("deference", raw["deference"], {"text"})
    tags = raw["tags"]
    cautions = [_read_caution(key, entry, tags) for key, entry in raw["caution"].items()]
    return CautionFile(
        deference=raw["deference"]["text"],
        tags=MappingProxyType(tags),
        cautions=tuple(sorted(cautions, key=lambda c: (c.signal.rank, c.priority, c.key))),
    )


def _check_keys(where: str, table: Mapping[str, Any], wanted: set[str]) -> None:
    """Refuse a table with a key too few or too many."""
    wrong = sorted(table.keys() ^ wanted)
    if wrong:
        raise ValueError(f"{FILE}: {where}: missing or unknown: {', '.join(wrong)}")


def _read_caution(key: str, raw: Mapping[str, Any], tags: Mapping[str, str]) -> Caution:
    """Return the caution that one table describes."""
    where = f"caution.{key}"
    _check_keys(where, raw, set(_KINDS))
    for field, (kind, name) in _KINDS.items():
        if type(raw[field]) is not kind:
            raise ValueError(f"{FILE}: {where}: {field}: {raw[field]!r} is no {name}")
    unknown = sorted(set(raw["when"]) - tags.keys())
    if unknown:
        raise ValueError(f"{FILE}: {where}: when: {', '.join(unknown)} is not under [tags]")
    try:
        return Caution(
            key=key,
            signal=Signal.of(raw["signal"]),
            pictogram=raw["pictogram"],
            text=raw["text"],
            when=frozenset(raw["when"]),
            priority=raw["priority"],
            source=raw["source"],
            mark=Mark.of(raw["mark"]),
        )
    except ValueError as error:
        raise ValueError(f"{FILE}: {where}: {error}") from error


@cache
def _load() -> CautionFile:
    return parse_cautions(Path(__file__).with_name(FILE).read_text("utf-8"))


DEFERENCE: Final = _load().deference
"""The standing line that every card carries, whatever its cautions."""


def load_cautions() -> tuple[Caution, ...]:
    """Return every caution, gravest signal word first, then by priority."""
    return _load().cautions


def load_caution_tags() -> Mapping[str, str]:
    """Return the tags that cautions answer to, with what each means."""
    return _load().tags


def choose_cautions(tags: Collection[str]) -> tuple[Caution, ...]:
    """Return the cautions of a card with these tags, gravest signal word first.

    The cautions for every card need no tag. Tags that no caution answers to are passed
    over, because a material carries tags for other readers too.
    """
    on_card = {ALWAYS, *tags}
    return tuple(caution for caution in load_cautions() if caution.when & on_card)
