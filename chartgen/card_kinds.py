"""Which cards a shop asks for: each kind of card with what it is made of, all text made."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from functools import cached_property
from typing import TYPE_CHECKING

from chartgen.layout.capacity import column_groups, in_groups, panel_groups, rows_that_fit
from chartgen.layout.layout_file import Layout, layout_called
from chartgen.limits.run import windows
from chartgen.limits.window import Windows
from chartgen.model.blade import Blade
from chartgen.model.material import Material
from chartgen.model.shop import Shop
from chartgen.renderers.fonts import measure
from chartgen.wording.card import AnyCard, lathe_card, make_card, nomogram_card, overview_card

if TYPE_CHECKING:
    from chartgen.charts.spindle_curves import Demand


@dataclass(frozen=True)
class CardsOf:
    """The cards of one shop and its materials; the windows are worked out once, if asked for.

    What one card cannot hold at its reading distance runs on to further cards: blades,
    materials, drive positions. Too many diameters are refused where the card is laid out.
    """

    shop: Shop
    materials: Sequence[Material]

    @cached_property
    def windows(self) -> Windows:
        """The windows of every material, blade and diameter of the shop."""
        return windows(self.shop, materials=self.materials, diameters=self.shop.request.diameters)

    def layout(self, name: str) -> Layout:
        """Return a layout that the shop asks for."""
        return layout_called(name, self.shop.request.own_layouts)

    def all(self) -> list[AnyCard]:
        """Return every card the shop's layouts ask for, under names of their own."""
        cards = [
            card
            for name in self.shop.request.layouts
            for card in _MAKERS[self.layout(name).card](self, name)
        ]
        return _with_names_of_their_own(cards)

    def lathe_charts(self, name: str) -> list[AnyCard]:
        """Return a chart a material, with as many of the blades each as fit."""
        cards: list[AnyCard] = []
        for material in self.materials:
            whole = lathe_card(self.shop, self.windows, material, name)
            groups = column_groups(whole.chart, self.layout(name), measure)
            cards += [
                lathe_card(self.shop, self.windows, material, name, self._blades(group))
                for group in groups
                if len(groups) > 1
            ] or [whole]
        return cards

    def overviews(self, name: str) -> list[AnyCard]:
        """Return a chart a blade, with as many of the materials each as fit."""
        cards: list[AnyCard] = []
        for blade in self.shop.blades:
            whole = overview_card(self.shop, self.windows, blade, name)
            groups = column_groups(whole.chart, self.layout(name), measure)
            cards += [
                overview_card(
                    self.shop, self.windows, blade, name, tuple(self.materials[i] for i in group)
                )
                for group in groups
                if len(groups) > 1
            ] or [whole]
        return cards

    def blade_cards(self, name: str) -> list[AnyCard]:
        """Return where each blade may be used, with as many of the materials each as fit."""
        from chartgen.wording.blade_card import blade_card

        cards: list[AnyCard] = []
        for blade in self.shop.blades:
            whole = blade_card(self.shop, self.materials, blade, name)
            most = rows_that_fit(whole, self.layout(name), measure)
            cards += [
                blade_card(self.shop, group, blade, name)
                for group in in_groups(self.materials, most or len(self.materials))
                if most
            ] or [whole]
        return cards

    def _blades(self, numbers: Sequence[int]) -> tuple[Blade, ...]:
        return tuple(self.shop.blades[number] for number in numbers)

    def centre_cards(self, name: str) -> list[AnyCard]:
        """Return the way in to the centre of each material."""
        from chartgen.wording.centre_card import centre_card

        return [centre_card(self.shop, self.windows, m, name) for m in self.materials]

    def spindle_curves(self, name: str) -> list[AnyCard]:
        """Return what the drive gives and each material's cuts ask."""
        from chartgen.charts.spindle_curves import spindle_curves
        from chartgen.wording.curves.spindle import POSITIONS_A_CARD, print_spindle_curves

        positions = self.shop.lathe.drive.positions
        ranged = [p for p in positions if not p.is_single_speed]
        groups = in_groups(positions, POSITIONS_A_CARD) if ranged else [list(positions)]
        return [
            make_card(
                self.shop,
                print_spindle_curves(spindle_curves(self.shop, self.windows, material, group)),
                (material,),
                self.shop.blades,
                name,
                material.key,
            )
            for material in self.materials
            for group in groups
        ]

    def window_curves(self, name: str) -> list[AnyCard]:
        """Return each material's windows of feed over diameter."""
        from chartgen.charts.feed_windows import feed_windows
        from chartgen.wording.curves.window import print_feed_windows

        charts = feed_windows(self.shop, self.materials)
        # Every material's axes are alike, so one of them tells what fits.
        bodies = [print_feed_windows(chart) for chart in charts]
        groups = panel_groups(bodies[0], self.layout(name), measure)
        return [
            make_card(
                self.shop,
                bodies[place]
                if len(groups) == 1
                else print_feed_windows(
                    replace(chart, blades=tuple(chart.blades[i] for i in group))
                ),
                (chart.material,),
                self._blades(group),
                name,
                chart.material.key,
            )
            for group in groups
            for place, chart in enumerate(charts)
        ]

    def width_curves(self, name: str) -> list[AnyCard]:
        """Return each material's widest blade over diameter."""
        from chartgen.charts.widest_blade import widest_blades
        from chartgen.wording.curves.width import print_widest_blades

        return [
            make_card(
                self.shop,
                print_widest_blades(widest_blades(self.shop, material)),
                (material,),
                self.shop.blades,
                name,
                material.key,
            )
            for material in self.materials
        ]

    def speed_curves(self, name: str) -> list[AnyCard]:
        """Return each material's spindle speeds over diameter."""
        from chartgen.charts.speed_lines import speed_lines
        from chartgen.wording.curves.speed import print_speed_lines

        return [
            make_card(
                self.shop,
                print_speed_lines(speed_lines(self.shop, self.windows, material)),
                (material,),
                self.shop.blades,
                name,
                material.key,
            )
            for material in self.materials
        ]

    def speed_nomograms(self, name: str) -> list[AnyCard]:
        """Return the nomogram of spindle speed."""
        from chartgen.wording.curves.nomogram import print_speed_nomogram

        return [nomogram_card(self.shop, print_speed_nomogram(self.shop, self._demand), name)]

    def power_nomograms(self, name: str) -> list[AnyCard]:
        """Return the nomogram of cutting power."""
        from chartgen.wording.curves.nomogram import print_power_nomogram

        return [nomogram_card(self.shop, print_power_nomogram(self.shop, self._demand), name)]

    @property
    def _demand(self) -> "Demand | None":
        """The cut worked out on a nomogram: a middling one, or None where nothing has force."""
        from chartgen.charts.spindle_curves import spindle_curves

        for material in self.materials:
            demands = spindle_curves(self.shop, self.windows, material).demands
            if demands:
                first = [demand for demand in demands if demand.blade == demands[0].blade]
                return first[len(first) // 2]
        return None


_MAKERS: dict[str, Callable[[CardsOf, str], list[AnyCard]]] = {
    "lathe-chart": CardsOf.lathe_charts,
    "overview": CardsOf.overviews,
    "blade-card": CardsOf.blade_cards,
    "centre-card": CardsOf.centre_cards,
    "spindle-curves": CardsOf.spindle_curves,
    "window-curves": CardsOf.window_curves,
    "width-curves": CardsOf.width_curves,
    "speed-curves": CardsOf.speed_curves,
    "speed-nomogram": CardsOf.speed_nomograms,
    "power-nomogram": CardsOf.power_nomograms,
}


def _with_names_of_their_own(cards: Sequence[AnyCard]) -> list[AnyCard]:
    """Return the cards, those whose file names would be alike numbered from the second on."""
    taken: set[str] = set()
    named = []
    for card in cards:
        stem, number = card.file_stem, 1
        while stem in taken:
            number += 1
            stem = f"{card.file_stem}-{number}"
        taken.add(stem)
        named.append(replace(card, file_stem=stem))
    return named
