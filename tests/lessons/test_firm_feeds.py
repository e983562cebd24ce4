"""Nobody is taught to be timid: what an exercise has cut is no less than a firm feed."""

import numpy as np
import pytest

from chartgen.lessons.cells import make_cells
from chartgen.lessons.paces import time_to_centre_choices
from chartgen.model.material import Material
from chartgen.model.shop import LengthUnits, Shop


# Common practice, no source: a feed of half the usual one is where rubbing begins to be heard.
@pytest.mark.parametrize("units", LengthUnits)
def test_no_cut_that_may_be_asked_about_is_fed_at_half_of_its_best_or_less(
    example: Shop, printed: object, materials: tuple[Material, ...], units: LengthUnits
) -> None:
    cells = make_cells(printed(example, units), materials)  # type: ignore[operator]
    best = np.broadcast_to(cells.windows.feed[..., np.newaxis], cells.is_inside(cells.feeds).shape)
    asked = cells.is_inside(cells.feeds)
    feeds = np.broadcast_to(cells.feeds * cells.units.mm, asked.shape)
    assert asked.any()
    assert (feeds[asked] > 0.55 * best[asked]).all()
    # There are feeds inside the windows that this leaves out: the rule says something.
    timid = cells.has_window & (feeds >= cells.windows.floor[..., np.newaxis]) & (feeds < best / 2)
    assert timid.any()
    assert time_to_centre_choices(cells).material.size > 100
