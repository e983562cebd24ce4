"""Every text of a figure stands where it can be read, beside what it names."""

import itertools
from collections.abc import Callable
from dataclasses import replace

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from chartgen import pipeline
from chartgen.errors import DoesNotFitError
from chartgen.layout.axes import Frame, labelled, share
from chartgen.layout.blocks.figure import figure
from chartgen.layout.blocks.nomogram import nomogram
from chartgen.layout.compose import compose
from chartgen.layout.label_places import Places, anywhere, beside_line, beside_point, dense, leader
from chartgen.layout.layout_file import load_layout
from chartgen.layout.piece import Setting, setting_for
from chartgen.layout.placed import Item, Panel, Plot, Rule, Text
from chartgen.model.shop import Shop
from chartgen.renderers.fonts import measure
from chartgen.wording.card import AnyCard, PrintedCard
from chartgen.wording.curves.nomogram import PrintedNomogram
from chartgen.wording.figure import (
    Dash,
    PrintedCurve,
    PrintedCurves,
    PrintedPanel,
    even_axis,
    log_axis,
)

Bounds = tuple[float, float, float, float]
BoundsOf = Callable[[Item], Bounds]
CardOf = Callable[[str], PrintedCard]
KINDS = ("spindle-curves", "window-curves", "width-curves", "speed-curves")
MACHINES = ("250 W brushed DC", "550 W belts", "1.1 kW brushless", "2.2 kW geared", "measured")
SQUARE = PrintedPanel(title="", x=even_axis("x", 0.0, 10.0), y=even_axis("y", 0.0, 10.0))
FRAME = Frame(x=0.0, y=0.0, width=100.0, height=100.0, panel=SQUARE)


def front(card: AnyCard) -> list[Item]:
    return list(compose(card, load_layout(card.layout), measure).pages[0].items)


def cards_of(shop: Shop, kind: str) -> list[AnyCard]:
    asked = replace(shop.request, layouts=(f"{kind}-a5",))
    return pipeline.printed_cards(replace(shop, request=asked))


def held_to(height: float) -> Setting:
    return setting_for(distance=700.0, width=190.0, measure=measure, height=height)


@pytest.mark.parametrize("kind", KINDS)
def test_a_label_covers_no_other_text(card_of: CardOf, bounds: BoundsOf, kind: str) -> None:
    texts = [item for item in front(card_of(kind)) if isinstance(item, Text)]
    boxes = np.array([bounds(text) for text in texts])
    left, top, right, bottom = (boxes[:, [edge]] for edge in range(4))
    across = np.minimum(right, right.T) - np.maximum(left, left.T)
    down = np.minimum(bottom, bottom.T) - np.maximum(top, top.T)
    clash = np.argwhere(np.triu((across > 0.05) & (down > 0.05), k=1))
    assert not [(texts[a].text, texts[b].text) for a, b in clash]


@pytest.mark.parametrize("kind", KINDS)
def test_every_name_of_a_figure_is_on_the_page(card_of: CardOf, kind: str) -> None:
    card = card_of(kind)
    assert isinstance(card.chart, PrintedCurves)
    printed = [item.text for item in front(card) if isinstance(item, Text)]
    for panel in card.chart.panels:
        for curve in panel.curves:
            if any(len(part) > 1 for part in curve.parts):
                assert curve.label in printed
        for dot in panel.dots:
            assert not dot.label or dot.label in printed
        assert panel.x.name in printed
        assert not panel.title or panel.title in printed
        letters = {text for _, text in panel.letters}
        assert letters <= set(printed)


@pytest.mark.parametrize("kind", KINDS)
def test_the_axes_of_panels_do_not_touch_and_stay_in_the_safe_area(
    card_of: CardOf, kind: str
) -> None:
    plots = [item for item in front(card_of(kind)) if isinstance(item, Plot)]
    assert plots
    for before, after in itertools.pairwise(plots):
        assert before.x + before.width + 2.0 < after.x
    for plot in plots:
        assert plot.x >= 6.5
        assert plot.x + plot.width <= 210.0 - 6.5
        assert plot.height > 40.0


@pytest.mark.parametrize("machine", MACHINES)
@pytest.mark.parametrize("kind", KINDS)
def test_the_figures_of_every_lathe_fit(
    shop_of: Callable[..., Shop], machine: str, kind: str
) -> None:
    found = cards_of(shop_of(machine), kind)
    assert found
    for finished in pipeline.lay_out(found):
        assert finished.document.pages


def test_a_label_stands_by_its_own_curve_on_paper_of_its_own(card_of: CardOf) -> None:
    items = front(card_of("width-curves"))
    (plot,) = (item for item in items if isinstance(item, Plot))
    frame = Frame(x=plot.x, y=plot.y, width=plot.width, height=plot.height, panel=plot.panel)
    texts = {item.text: item for item in items if isinstance(item, Text)}
    paper = [item for item in items if isinstance(item, Panel) and item.paper]
    for curve in plot.panel.curves:
        label = texts[curve.label]
        line = np.concatenate([dense([frame.at(*p) for p in part]) for part in curve.parts])
        width = measure(label.text, label.face, label.size)
        x = np.clip(line[:, 0], label.x, label.x + width)
        y = np.clip(line[:, 1], label.y - 3.3, label.y)
        assert np.hypot(line[:, 0] - x, line[:, 1] - y).min() < 3.0
        assert any(
            p.x <= label.x and label.x + width <= p.x + p.width and p.y <= label.y <= p.y + p.height
            for p in paper
        )


def test_a_figure_without_room_is_refused_with_the_room_it_needs(card_of: CardOf) -> None:
    card = card_of("width-curves")
    with pytest.raises(DoesNotFitError) as caught:
        figure(card, load_layout(card.layout), held_to(39.0))
    assert str(caught.value) == (
        f"layout width-curves-a5: 39 mm are left for the curves of '{card.chart.title}' and they "
        "need 40; use a larger layout"
    )


def test_a_label_that_finds_no_place_is_named(card_of: CardOf) -> None:
    card = card_of("width-curves")
    crowd = PrintedCurve(parts=(((0.1, 1.0), (9.0, 9.0)),), label="W" * 90, dash=Dash.SOLID)
    panel = replace(SQUARE, curves=(crowd,))
    body = replace(card.chart, panels=(panel,))
    with pytest.raises(DoesNotFitError) as caught:
        figure(replace(card, chart=body), load_layout(card.layout), held_to(100.0))
    assert str(caught.value) == (
        f"the curves leave no place for the label {'W' * 90!r} at the reading distance; use a "
        "larger layout"
    )


@pytest.mark.parametrize("block", [figure, nomogram])
def test_another_kind_of_card_has_no_figure(card_of: CardOf, block: Callable[..., object]) -> None:
    card = card_of("lathe-chart")
    with pytest.raises(TypeError, match="block needs a card with"):
        block(card, load_layout(card.layout), held_to(100.0))


@pytest.mark.parametrize("kind", ["speed-nomogram", "power-nomogram"])
def test_the_worked_line_is_straight_through_all_three_scales(card_of: CardOf, kind: str) -> None:
    card = card_of(kind)
    assert isinstance(card.chart, PrintedNomogram)
    items = front(card)
    rules = [item for item in items if isinstance(item, Rule)]
    scales = sorted({(r.x1, r.y1, r.y2) for r in rules if r.x1 == r.x2 and abs(r.y2 - r.y1) > 50.0})
    assert len(scales) == 3
    (line,) = (r for r in rules if r.x1 != r.x2 and r.y1 != r.y2)
    crossings = []
    for (x, top, bottom), height in zip(scales, card.chart.worked, strict=True):
        y = line.y1 + (line.y2 - line.y1) * (x - line.x1) / (line.x2 - line.x1)
        crossings.append(abs(y - (bottom - (bottom - top) * height)))
    assert max(crossings) < 1e-9


@pytest.mark.parametrize("kind", ["speed-nomogram", "power-nomogram"])
def test_a_number_stands_at_its_own_stroke_and_strokes_stay_apart(
    card_of: CardOf, kind: str
) -> None:
    card = card_of(kind)
    assert isinstance(card.chart, PrintedNomogram)
    items = front(card)
    rules = [item for item in items if isinstance(item, Rule)]
    scales = sorted({(r.x1, r.y1, r.y2) for r in rules if r.x1 == r.x2 and abs(r.y2 - r.y1) > 50.0})
    for (x, top, bottom), scale in zip(scales, card.chart.scales, strict=True):
        strokes = sorted(
            r.y1 for r in rules if r.x1 == x and r.y1 == r.y2 and abs(r.x2 - r.x1) < 5.0
        )
        assert np.diff(strokes).min() > 0.9999
        numbers = {text: bottom - (bottom - top) * y for y, text, _ in scale.ticks}
        shown = [t for t in items if isinstance(t, Text) and t.text in numbers]
        near = [t for t in shown if abs(t.x - x) < 5.0]
        assert len(near) >= 8
        for text in near:
            middle = text.y - 0.349 * text.size * 25.4 / 72.0
            assert middle == pytest.approx(numbers[text.text], abs=0.02)


def test_a_nomogram_without_room_is_refused(card_of: CardOf) -> None:
    card = card_of("speed-nomogram")
    with pytest.raises(DoesNotFitError, match="are left for the scales of 'Spindle speed'"):
        nomogram(card, load_layout(card.layout), held_to(70.0))


@given(st.floats(0.01, 100.0), st.floats(1.5, 1e4), st.floats(20.0, 200.0))
def test_numbers_on_an_axis_never_crowd(least: float, ratio: float, length: float) -> None:
    axis = log_axis("x", least, least * ratio)
    chosen = labelled(axis, length, lambda text: 3.0 * len(text))
    ends = [
        (
            length * share(axis, value) - 1.5 * len(text),
            length * share(axis, value) + 1.5 * len(text),
        )
        for value, text in chosen
    ]
    assert all(a[1] <= b[0] + 1e-9 for a, b in itertools.pairwise(ends))
    if chosen:
        # The first rank is asked first: nothing of it was pushed out by a lesser tick.
        assert {v for v, _, rank in axis.ticks if rank == 0} & {v for v, _ in chosen} or not [
            1 for *_, rank in axis.ticks if rank == 0
        ]


def test_a_free_place_is_taken_and_not_given_twice() -> None:
    places = Places(FRAME)
    spots = [places.place(beside_point(50.0, 50.0, 8.0, 4.0), 8.0, 4.0) for _ in range(4)]
    taken = [spot for spot in spots if spot is not None]
    assert len(taken) >= 3
    for number, (left, bottom) in enumerate(taken):
        for other_left, other_bottom in taken[number + 1 :]:
            assert abs(left - other_left) >= 8.0 or abs(bottom - other_bottom) >= 4.0


def test_a_label_keeps_off_another_curve() -> None:
    places = Places(FRAME)
    own, other = dense([(0.0, 50.0), (100.0, 50.0)]), dense([(0.0, 46.0), (100.0, 46.0)])
    places.add_line(0, [own])
    places.add_line(1, [other])
    spot = places.place(beside_line(own, 20.0, 4.0), 20.0, 4.0, 0)
    assert spot is not None
    # Above would lie on the other line: so it goes below its own.
    assert spot[1] - 4.0 > 50.0


def test_where_nothing_is_free_beside_it_a_label_goes_elsewhere_with_a_line_to_it() -> None:
    places = Places(FRAME)
    line = dense([(10.0, 50.0), (90.0, 50.0)])
    places.add_line(0, [line])
    places.add_box((0.0, 35.0, 100.0, 65.0))
    assert places.place(beside_line(line, 20.0, 4.0), 20.0, 4.0, 0) is None
    spot = places.place(anywhere(FRAME, line, 20.0, 4.0), 20.0, 4.0, 0)
    assert spot is not None
    x1, y1, x2, y2 = leader(line, spot, 20.0, 4.0)
    assert y2 == 50.0
    assert x1 == pytest.approx(x2, abs=0.7)
    assert abs(y1 - y2) >= 15.0


def test_a_label_wider_than_the_axes_has_no_place() -> None:
    places = Places(FRAME)
    line = dense([(10.0, 50.0), (90.0, 50.0)])
    assert places.place(anywhere(FRAME, line, 120.0, 4.0), 120.0, 4.0) is None
