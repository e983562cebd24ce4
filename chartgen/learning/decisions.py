"""What becomes of the shop file: what is written, what is taken back, what is left to its owner."""

from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass
from enum import Enum

from chartgen.learning.findings import Finding, Verdict
from chartgen.model.measured import Assumption, Measured
from chartgen.model.readings import ShopReading
from chartgen.model.shop import Shop


class Deed(Enum):
    """What is done about one finding."""

    WRITE = "write"
    LEAVE = "leave the owner's own value"
    WITHDRAW = "take back what earlier readings gave"
    NOTHING = "nothing"


@dataclass(frozen=True, slots=True, kw_only=True)
class Decision:
    """A finding and what is done about it."""

    finding: Finding
    deed: Deed


def decide(shop: Shop, findings: Sequence[Finding], *, replace: bool) -> tuple[Decision, ...]:
    """Return what is done about each finding; `replace` gives up the owner's own values."""
    return tuple(
        Decision(finding=finding, deed=_deed(shop, finding, replace=replace))
        for finding in findings
    )


def _deed(shop: Shop, finding: Finding, *, replace: bool) -> Deed:
    if finding.verdict is Verdict.MEASURED:
        return Deed.WRITE if finding.stated is None or replace else Deed.LEAVE
    return Deed.WITHDRAW if shop.measured_of(finding.assumption) else Deed.NOTHING


def to_write(decisions: Sequence[Decision]) -> tuple[Measured, ...]:
    """Return the measured values to be written."""
    found = (one.finding.measured for one in decisions if one.deed is Deed.WRITE)
    return tuple(measured for measured in found if measured is not None)


def to_withdraw(decisions: Sequence[Decision]) -> tuple[Assumption, ...]:
    """Return the assumptions whose earlier values no longer stand."""
    return tuple(d.finding.assumption for d in decisions if d.deed is Deed.WITHDRAW)


def concludes(decisions: Sequence[Decision]) -> bool:
    """Whether anything at all follows from the readings."""
    return any(one.deed is not Deed.NOTHING for one in decisions)


def not_kept_yet(
    kept: Sequence[ShopReading], given: Sequence[ShopReading]
) -> tuple[ShopReading, ...]:
    """Return the readings that the shop file does not hold yet.

    Three like pulls on one day are three readings; the same file given twice is one.
    """
    held, new = Counter(kept), []
    for reading in given:
        if held[reading] > 0:
            held[reading] -= 1
        else:
            new.append(reading)
    return tuple(new)
