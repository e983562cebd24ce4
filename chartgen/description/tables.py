"""How a table of the file is declared, and the one walk that reads every value once.

A table is a class whose attributes are its keys, each with what reads its value. The walk
goes on after a fault, so that every fault of a file is found at once; the tables that are
whole can be had by their path even where others are not.
"""

from collections.abc import Callable, Collection, Mapping
from typing import Any, ClassVar, Generic, NamedTuple, TypeAlias, TypeVar, overload

from chartgen.description.known import Known
from chartgen.description.problems import (
    MISSING,
    UNKNOWN_KEY,
    ComplaintError,
    KeyPath,
    NotedError,
    Problems,
)

T = TypeVar("T")
Default = TypeVar("Default")
SomeTable = TypeVar("SomeTable", bound="Table")
Keyed = TypeVar("Keyed", bound="Key[Any]")

# What people write into a line that they could leave out.
NOTHING = frozenset({"", "-", "none", "no", "n/a", "nil"})


class Place(NamedTuple):
    """Where in the file a reader is, with what it may need there; `whole` collects tables."""

    path: KeyPath
    known: Known
    problems: Problems
    whole: dict[KeyPath, "Table"]

    def inside(self, part: str | int) -> "Place":
        """Return the place of a key or item."""
        return Place((*self.path, part), self.known, self.problems, self.whole)


Reader: TypeAlias = Callable[[object, Place], T]


class Key(Generic[T]):
    """One key of a table; on a table that was read, its value."""

    def __init__(
        self,
        read: Reader[Any],
        *,
        default: object = None,
        required: bool = False,
        required_unless: tuple[str, object] | None = None,
    ) -> None:
        self.read = read
        self.default = default
        self.required = required
        self.required_unless = required_unless
        self.only_beside: tuple[str, Collection[object]] | None = None
        self.when_missing: tuple[str, Mapping[object, str]] | None = None
        self.name = ""

    def __set_name__(self, owner: type, name: str) -> None:
        self.name = name

    @overload
    def __get__(self, table: None, owner: type) -> "Key[T]": ...
    @overload
    def __get__(self, table: "Table", owner: type) -> T: ...
    def __get__(self, table: "Table | None", owner: type) -> "Key[T] | T":
        if table is None:
            return self
        value: T = table.values[self.name]
        return value

    def may_lack(self, values: dict[str, Any]) -> bool:
        """Whether the key may be left out beside the `values` of the keys before it."""
        if self.required and self.only_beside is not None:
            kind, suitable = self.only_beside
            return values.get(kind) not in suitable
        if self.required_unless is None:
            return not self.required
        other, excuse = self.required_unless
        return values.get(other) is excuse

    def how_to_add(self, values: dict[str, Any], known: Known) -> str | None:
        """Return the mend that suits the `values` of the keys before it, if one is declared."""
        if self.when_missing is None:
            return None
        other, mends = self.when_missing
        mend = mends.get(values.get(other))
        return mend.format(known=known) if mend else None

    def complaint_of(self, value: object, values: dict[str, Any]) -> tuple[str, str] | None:
        """Return why the line should not be there beside the keys before it, and the mend."""
        is_optional = not self.required and self.required_unless is None and self.default is None
        if is_optional and isinstance(value, str) and value.strip().lower() in NOTHING:
            return f"{value.strip()!r} is no value.", "Leave the line out if there is none."
        if self.only_beside is not None:
            other, suitable = self.only_beside
            given = values.get(other)
            if given is not None and given not in suitable:
                word = getattr(given, "value", given)
                return f"has no effect beside {other} = '{word}'.", "Leave it out."
        return None


def required(read: Reader[T]) -> Key[T]:
    """Declare a key that must be there."""
    return Key(read, required=True)


def optional(read: Reader[T], *, default: Default) -> Key[T | Default]:
    """Declare a key that may be left out."""
    return Key(read, default=default)


def required_unless(other: str, excuse: object, read: Reader[T]) -> Key[T | None]:
    """Declare a key that may be left out only where an earlier key has the value `excuse`."""
    return Key(read, required_unless=(other, excuse))


def only_beside(other: str, suitable: Collection[object], key: Keyed) -> Keyed:
    """Declare that a key has an effect only where an earlier key has one of some values."""
    key.only_beside = (other, suitable)
    return key


def required_beside(other: str, suitable: Collection[object], read: Reader[T]) -> Key[T | None]:
    """Declare a key that must be there beside some values of an earlier key, and only there."""
    key: Key[T | None] = Key(read, required=True)
    return only_beside(other, suitable, key)


def when_missing(other: str, mends: Mapping[object, str], key: Keyed) -> Keyed:
    """Declare how a missing key is mended, by the value of an earlier key."""
    key.when_missing = (other, mends)
    return key


class Table:
    """A table of the file, whole and frozen; a key it does not know is a fault."""

    __slots__ = ("values",)
    keys: ClassVar[dict[str, Key[Any]]] = {}

    def __init_subclass__(cls) -> None:
        cls.keys = {name: key for name, key in vars(cls).items() if isinstance(key, Key)}

    def __init__(self, values: dict[str, Any]) -> None:
        self.values = values


class TableOf(Generic[SomeTable]):
    """Reads a table of one kind."""

    def __init__(self, kind: type[SomeTable]) -> None:
        self.kind = kind

    def __call__(self, value: object, place: Place) -> SomeTable:
        """Return the table, or note all its faults and refuse it."""
        if not isinstance(value, dict):
            raise ComplaintError(_shape_of_no_table(value), None)
        values: dict[str, Any] = {}
        is_whole = True
        for name, key in self.kind.keys.items():
            inside = place.inside(name)
            if name in value and (complaint := key.complaint_of(value[name], values)):
                is_whole = False
                place.problems.add(inside.path, *complaint)
            elif name in value:
                values[name] = read_at(inside, key.read, value[name])
                is_whole = is_whole and values[name] is not None
            elif key.may_lack(values):
                values[name] = key.default
            else:
                is_whole = False
                mend = key.how_to_add(values, place.known)
                place.problems.add(inside.path, MISSING, mend)
        for name in value:
            if name not in self.kind.keys:
                is_whole = False
                place.problems.add((*place.path, name), UNKNOWN_KEY, None)
        if not is_whole:
            raise NotedError
        place.whole[place.path] = table = self.kind(values)
        return table


class ListOf(Generic[T]):
    """Reads a list that has at least one item."""

    def __init__(self, read_item: Reader[T]) -> None:
        self.read_item = read_item

    def __call__(self, value: object, place: Place) -> tuple[T, ...]:
        """Return the items, or note the faults of each and refuse the list."""
        if not isinstance(value, list):
            is_of_tables = table_read_by(self) is not None
            raise ComplaintError(
                _shape_of_no_table(value) if is_of_tables else "must be a list.", None
            )
        if not value:
            raise ComplaintError("is empty.", "List at least one.")
        read = [
            read_at(place.inside(index), self.read_item, item) for index, item in enumerate(value)
        ]
        items = tuple(item for item in read if item is not None)
        if len(items) < len(value):
            raise NotedError
        return items


def read_at(place: Place, read: Reader[T], value: object) -> T | None:
    """Return what `read` makes of a value, or None with what is wrong noted."""
    try:
        return read(value, place)
    except ComplaintError as complaint:
        place.problems.add(place.path, complaint.problem, complaint.mend)
    except NotedError:
        pass
    return None


def table_read_by(read: object) -> type[Table] | None:
    """Return the kind of table that a reader reads, itself or as items; None if values."""
    if isinstance(read, ListOf):
        return table_read_by(read.read_item)
    return read.kind if isinstance(read, TableOf) else None


def _shape_of_no_table(value: object) -> str:
    is_bracket_slip = isinstance(value, dict) or (
        isinstance(value, list) and all(isinstance(item, dict) for item in value)
    )
    return "has the wrong brackets." if is_bracket_slip else "must be a table."
