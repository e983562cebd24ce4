"""Kinds of value that are one of some words: of an enumeration, or of what there is."""

from collections.abc import Sequence
from enum import Enum
from typing import Generic, TypeVar

from chartgen.description.problems import ComplaintError, Nearest
from chartgen.description.tables import Place

Member = TypeVar("Member", bound=Enum)


class OneOf(Generic[Member]):
    """A member of an enumeration, by its value."""

    def __init__(self, members: type[Member]) -> None:
        self.members = members

    def __call__(self, value: object, _place: Place) -> Member:
        """Return the member."""
        return self.members(chosen(value, [str(member.value) for member in self.members]))


class ChosenFrom:
    """One of some words."""

    def __init__(self, choices: Sequence[str]) -> None:
        self.choices = choices

    def __call__(self, value: object, _place: Place) -> str:
        """Return the word."""
        return chosen(value, self.choices)


class NameIn:
    """A name that `Known` has under the attribute `shelf`; a short shelf is `listed` in full."""

    def __init__(self, shelf: str, *, listed: bool = False) -> None:
        self.shelf = shelf
        self.listed = listed

    def __call__(self, value: object, place: Place) -> str:
        """Return the name."""
        names = getattr(place.known, self.shelf)
        if self.listed and isinstance(value, str) and value not in names:
            raise ComplaintError(
                f"{value[:60]!r} is not known.", f"Use one of: {', '.join(names)}."
            )
        return chosen(value, names)


class LayoutName(NameIn):
    """A layout that a shop may ask for; that of a change card is told apart kindly.

    A name that ends in ".toml" is the path of the owner's own file, read by the caller.
    """

    def __call__(self, value: object, place: Place) -> str:
        """Return the name."""
        if isinstance(value, str) and value.endswith(".toml") and value.isprintable():
            return value
        if value in place.known.change_layouts:
            raise ComplaintError(
                f"{value!r} is the card of a change from one shop file to another.",
                "Leave it out here; `chartgen compare BEFORE AFTER --out DIR` makes it.",
            )
        if value in place.known.job_layouts:
            raise ComplaintError(
                f"{value!r} is the card of a job, and a shop file describes none.",
                "Leave it out here; `chartgen job JOB` makes it.",
            )
        if value in place.known.class_layouts:
            raise ComplaintError(
                f"{value!r} is a paper of a class, and a shop file describes none.",
                "Leave it out here; `chartgen class CLASS` makes it.",
            )
        return super().__call__(value, place)


def chosen(value: object, choices: Sequence[str]) -> str:
    """Return `value` if it is among `choices`, or complain with the nearest of them."""
    if not isinstance(value, str):
        raise ComplaintError("must be text in quotes.", f"Use one of: {', '.join(choices)}.")
    if value not in choices:
        raise ComplaintError(f"{value[:60]!r} is not known.", Nearest(value, choices))
    return value
