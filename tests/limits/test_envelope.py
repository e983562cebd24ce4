"""Which of several limits ends a window."""

import numpy as np
import pytest

from chartgen.limits.envelope import highest, lowest, reason_of
from chartgen.limits.reasons import CODES, Reason

FEED, PACE = Reason.INSERT_FEED, Reason.HAND_PACE


def test_the_lowest_ceiling_and_its_reason_are_kept_at_each_point() -> None:
    envelope = lowest([(FEED, np.array([0.1, 0.3])), (PACE, np.array([0.2, 0.2]))])
    assert envelope.value.tolist() == [0.1, 0.2]
    assert [reason_of(code) for code in envelope.code] == [FEED, PACE]


def test_the_highest_floor_and_its_reason_are_kept_at_each_point() -> None:
    edge, skin = Reason.EDGE_FLOOR, Reason.SKIN_FLOOR
    envelope = highest([(edge, np.array([0.03, 0.009])), (skin, np.array([0.02, 0.02]))])
    assert envelope.value.tolist() == [0.03, 0.02]
    assert [reason_of(code) for code in envelope.code] == [edge, skin]


def test_of_equal_limits_the_first_listed_is_named() -> None:
    equal = np.array([0.1])
    assert reason_of(lowest([(PACE, equal), (FEED, equal)]).code[0]) is PACE
    assert reason_of(highest([(FEED, equal), (PACE, equal)]).code[0]) is FEED


def test_limits_of_different_shape_are_spread_over_each_other() -> None:
    envelope = lowest([(FEED, np.array([[0.1], [0.3]])), (PACE, np.array([[0.2, 0.4]]))])
    assert envelope.value.tolist() == [[0.1, 0.1], [0.2, 0.3]]
    assert envelope.code.shape == (2, 2)


@pytest.mark.parametrize("order", [1, -1])
def test_a_ceiling_that_is_no_number_is_refused_by_name(order: int) -> None:
    limits = [(FEED, np.array([0.1])), (PACE, np.array([np.nan]))][::order]
    with pytest.raises(ValueError, match=r"^limit HAND_PACE is NaN; a limit that does not ap") as e:
        lowest(limits)
    assert str(e.value) == "limit HAND_PACE is NaN; a limit that does not apply is inf or 0"


def test_a_floor_that_is_no_number_is_refused_by_name() -> None:
    with pytest.raises(ValueError, match=r"EDGE_FLOOR") as caught:
        highest([(Reason.EDGE_FLOOR, np.array([np.nan]))])
    assert str(caught.value) == "limit EDGE_FLOOR is NaN; a limit that does not apply is inf or 0"


def test_every_reason_has_a_code_of_its_own_that_leads_back_to_it() -> None:
    assert len(set(CODES.values())) == len(Reason)
    assert all(reason_of(code) is reason for reason, code in CODES.items())


def test_every_reason_has_one_printed_mark_and_words_of_its_own() -> None:
    assert all(len(reason.mark) == 1 and reason.mark.isupper() for reason in Reason)
    assert len({reason.legend for reason in Reason}) == len(Reason)
