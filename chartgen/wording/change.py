"""Two shops compared, in words: what changed, which cells moved, which cards are stale."""

from collections.abc import Sequence
from dataclasses import replace
from itertools import groupby

from chartgen.charts.change import CellChanges, CellPair, Move, cell_changes
from chartgen.charts.speed_feed import ChartCell, Column, SpeedFeedChart
from chartgen.errors import RequestError
from chartgen.model.shop import Feeding, LengthUnits, Shop
from chartgen.wording.beyond import BEYOND
from chartgen.wording.blade_letters import blade_letter
from chartgen.wording.card import AnyCard, PrintedCard, file_name_part, make_card
from chartgen.wording.card_states import card_states
from chartgen.wording.change_figures import change_figures
from chartgen.wording.check_code import check_code
from chartgen.wording.described_facts import fact_groups
from chartgen.wording.language import tr, trn
from chartgen.wording.numbers import (
    feed_label,
    length_label,
    write_feed,
    write_length,
    write_pace,
    write_seconds,
    write_speed,
)
from chartgen.wording.printed_change import (
    CardLine,
    CardState,
    CellHeadings,
    MovedCell,
    MovedGroup,
    PrintedChange,
    PrintedSide,
)
from chartgen.wording.signs import LegendEntry, legend_of, sign_of, sign_order

_SIGN_ORDER = sign_order()
_USE = "use"
"""The place in a legend of "use A", whatever the letter."""


def change_card(
    before: Shop,
    after: Shop,
    *,
    old_cards: Sequence[AnyCard],
    new_cards: Sequence[AnyCard],
    layout: str,
) -> PrintedCard[PrintedChange]:
    """Return the card of a change from one shop to another.

    Raises
    ------
    RequestError
        If the shops have no material in common, so that nothing can be compared.
    """
    changes = cell_changes(before, after)
    if not changes.materials:
        raise RequestError(
            "BEFORE and AFTER print no material in common "
            f"({', '.join(before.request.materials)} and {', '.join(after.request.materials)}), "
            "so no cell can be compared; list one of them in both files under [print] materials."
        )
    states = card_states(old_cards, new_cards, changes)
    blades = changes.blades or after.blades
    body = print_change(changes, states)
    # The code of the card before is the subject: another BEFORE makes another card.
    subject = check_code(before, materials=changes.materials, layout=layout, subject=before.name)
    card = make_card(after, body, changes.materials, blades, layout, subject)
    return replace(card, file_stem=f"{layout}-{file_name_part(after.name)}")


def print_change(changes: CellChanges, states: tuple[CardLine, ...]) -> PrintedChange:
    """Return a comparison as strings."""
    before, after = changes.before, changes.after
    return PrintedChange(
        title=tr("What changed"),
        subtitle=f"{_edition(before)} → {_edition(after)}",
        summary=_summary(changes, states),
        facts=fact_groups(before, after),
        cards=states,
        figures=change_figures(changes),
        headings=cell_headings(after),
        groups=tuple(moved_groups(changes)),
        legend=_legend(changes),
    )


def cell_headings(after: Shop) -> CellHeadings:
    """Return what stands over moved cells, in the units of the shop after the change."""
    units = after.request.units
    by_hand = after.request.feeding is Feeding.HAND
    return CellHeadings(
        diameter=f"Ø {length_label(units)}",
        before=tr("before"),
        after=tr("now"),
        limit=tr("now\nlimited by"),
        speed=tr("rev/min"),
        feed=feed_label(units),
        pace=tr("s/turn") if by_hand else tr("s/cut"),
    )


def _edition(shop: Shop) -> str:
    revision = (
        tr("revision {revision}", revision=shop.revision) if shop.revision else tr("no revision")
    )
    return f"{revision}, {shop.date or tr('undated')}"


def _summary(changes: CellChanges, states: Sequence[CardLine]) -> tuple[str, ...]:
    compared = tr(
        "Compared: {materials}, {blades} and {diameters} that both files have.",
        materials=trn("{number} material", "{number} materials", len(changes.materials)),
        blades=trn("{number} blade", "{number} blades", len(changes.blades)),
        diameters=trn("{number} diameter", "{number} diameters", len(changes.diameters)),
    )
    to_do = [line for line in states if line.state not in {CardState.HOLDS, CardState.CURRENT}]
    moved = len(changes.moved)
    if not changes.cells:
        return (compared, tr("No cell can be compared."))
    if not moved and not to_do:
        return (compared, tr("Nothing on the cards has moved."))
    stale = sum(line.state is CardState.STALE for line in states)
    shared = sum(line.state not in {CardState.NEW, CardState.GONE} for line in states)
    told = trn(
        "{moved} of {cells} moved by more than the rounding; "
        "{number} of {cards} that both print is stale.",
        "{moved} of {cells} moved by more than the rounding; "
        "{number} of {cards} that both print are stale.",
        stale,
        moved=moved,
        cells=trn("{number} cell", "{number} cells", len(changes.cells)),
        cards=trn("{number} card", "{number} cards", shared),
    )
    return (compared, told)


def no_cell_moved() -> str:
    """Return what stands in place of the moved cells where there are none."""
    return tr("No cell moved by more than it is rounded to.")


def moved_groups(changes: CellChanges) -> list[MovedGroup]:
    """Return the cells that moved, a group a material and blade."""
    after = changes.after
    groups = []
    for (material, blade), members in groupby(
        changes.moved, key=lambda cell: (cell.material.name, cell.blade.name)
    ):
        groups.append(
            MovedGroup(
                title=f"{tr(material)}, {blade_letter(after, blade)} {blade}",
                material=material,
                blade=blade,
                rows=tuple(_row(changes, cell) for cell in members),
            )
        )
    return groups


def _row(changes: CellChanges, pair: CellPair) -> MovedCell:
    units = changes.after.request.units
    return MovedCell(
        diameter=write_length(pair.diameter, units),
        before=_side(pair.before, changes.before, units),
        after=_side(pair.after, changes.after, units),
        limit=tr(BEYOND[pair.after.telling_reason]),
        moved=", ".join(move.value for move in Move if move in pair.moves),
    )


def _side(cell: ChartCell, shop: Shop, units: LengthUnits) -> PrintedSide:
    """Return a cell of either shop in the units of the shop after the change."""
    cut = cell.cut
    if cut is None:
        other = cell.way_out
        way_out = tr("use {blade}", blade=blade_letter(shop, other.name)) if other else tr("saw")
        return PrintedSide(
            speed="",
            position="",
            feed="",
            pace="",
            sign=sign_of(cell),
            way_out=way_out,
        )
    if shop.request.feeding is Feeding.HAND:
        pace = write_pace(
            seconds=cut.seconds_per_turn, feed=cut.feed, floor=cell.floor, ceiling=cell.ceiling
        )
    else:
        pace = write_seconds(cut.seconds_of_cut)
    return PrintedSide(
        speed=write_speed(cut.spindle_speed),
        position=cut.position.mark,
        feed=write_feed(cut.feed, units),
        pace=pace,
        sign=sign_of(cell),
        way_out="",
    )


def _legend(changes: CellChanges) -> tuple[LegendEntry, ...]:
    """Return the signs that the moved cells use, before or now, each once."""
    entries: dict[str, LegendEntry] = {}
    moved = changes.moved
    for shop, cells in (
        (changes.before, [pair.before for pair in moved]),
        (changes.after, [pair.after for pair in moved]),
    ):
        chart = SpeedFeedChart(
            shop=shop,
            columns=tuple(
                Column(material=pair.material, blade=blade)
                for pair in moved[:1]
                for blade in shop.blades
            ),
            diameters=(),
            rows=(tuple(cells),),
        )
        for entry in legend_of([chart]):
            is_use = entry.sign not in _SIGN_ORDER and entry.sign != tr("saw")
            entries.setdefault(_USE if is_use else entry.sign, entry)
    if _USE in entries:
        letters = ", ".join(
            tr(
                "{letter} is {name}",
                letter=blade_letter(changes.after, blade.name),
                name=blade.name,
            )
            for blade in changes.after.blades
        )
        entries[_USE] = LegendEntry(
            tr("use"),
            tr("no window, another blade has"),
            tr(
                "No window for this blade at this diameter, but for another one: {letters}.",
                letters=letters,
            ),
            on_back=True,
        )
    return tuple(sorted(entries.values(), key=lambda entry: _place(entry.sign)))


def _place(sign: str) -> int:
    """Return where a sign stands in a legend: letters, then doubts, then ways out."""
    return _SIGN_ORDER.index(sign) if sign in _SIGN_ORDER else len(_SIGN_ORDER)
