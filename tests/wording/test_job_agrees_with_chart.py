"""The same cell says the same on a lathe chart and on a set-up card."""

from dataclasses import replace

import pytest

from chartgen.model.job import Bar, Coolant, Holding, Job, Piece, ToolChoice
from chartgen.model.shop import Shop
from chartgen.pipeline import printed_job_cards, table_card


@pytest.mark.parametrize("diameter", [10.0, 20.0, 24.0, 25.0])
@pytest.mark.parametrize("place", [0, 1])
def test_speed_feed_and_pace_of_a_parting_step_are_those_of_the_chart(
    example: Shop, diameter: float, place: int
) -> None:
    blade = example.blades[place]
    job = Job(
        name="test",
        revision="",
        date="",
        material="mild-steel",
        quantity=1,
        bar=Bar(diameter=diameter, length=200.0),
        piece=Piece(diameter=diameter, length=12.0),
        holding=Holding(),
        coolant=Coolant.OIL,
        choice=ToolChoice(blade=blade.name),
    )
    steps = printed_job_cards(example, job)[0].chart.steps
    (told,) = (step.cells for step in steps if step.cells[0] == f"blade {blade.name}")
    request = replace(example.request, diameters=(diameter,))
    chart = table_card(replace(example, request=request), "mild-steel").chart
    cell = chart.rows[0][[column.name for column in chart.columns].index(blade.name)]
    assert told[1:4] == (f"{cell.speed} {cell.position}", cell.feed, cell.pace)
