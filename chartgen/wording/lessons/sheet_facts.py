"""What a sheet states once for all its questions: speeds of the lathe, formulas, cards to read."""

import re
from itertools import groupby
from typing import Final

from chartgen.lessons.class_units import class_units
from chartgen.lessons.exercise import Paper
from chartgen.lessons.kinds import Kind
from chartgen.model.shop import LengthUnits, Shop
from chartgen.wording.language import decimal, tr
from chartgen.wording.lessons.amounts import unit_label
from chartgen.wording.lessons.formulas import formula_text, letters, unit_of_letter
from chartgen.wording.numbers import write_speed

_UNBROKEN: Final = "\N{NO-BREAK SPACE}"
_READ: Final = frozenset({Kind.READ_NOMOGRAM, Kind.READ_CURVE})
_OF_FORCE: Final = frozenset({Kind.CUTTING_FORCE, Kind.CUTTING_POWER, Kind.MOTOR_PULLS})


def sheet_facts(shop: Shop, paper: Paper) -> tuple[tuple[str, str], ...]:
    """Return the facts that a paper's questions rest on, each with its name."""
    kinds = {exercise.kind for exercise in paper.exercises}
    facts = [(tr("Lathe"), shop.lathe.name)]
    if Kind.NEAREST_STEP in kinds:
        facts.append((tr("Its speeds"), _speeds(shop)))
    formulas = _formulas(paper)
    if formulas:
        unbroken = ", ".join(formula.replace(" ", _UNBROKEN) for formula in formulas)
        facts += [(tr("Formulas"), unbroken), (tr("Letters"), _letters(formulas, shop))]
    if _OF_FORCE & kinds and shop.request.units is LengthUnits.INCH:
        facts.append((tr("Inches"), decimal("1 in = 25.4 mm, 1 ft = 0.3048 m")))
    if Kind.READ_NOMOGRAM in kinds:
        facts.append((tr("To read"), tr("the power nomogram of this lathe")))
    if Kind.READ_CURVE in kinds:
        facts.append((tr("To read"), tr("the spindle curves of this lathe")))
    return tuple(facts)


def _formulas(paper: Paper) -> list[str]:
    """Return each formula that is worked with once, in the order of the questions."""
    found = dict.fromkeys(
        formula_text(line)
        for exercise in paper.exercises
        if exercise.kind not in _READ
        for line in exercise.working
    )
    return [decimal(formula) for formula in found if formula and "=" in formula]


def _letters(formulas: list[str], shop: Shop) -> str:
    """Return what the letters of some formulas mean, each with the unit it is put in with."""
    used = set(re.findall(r"[A-Za-z]+", " ".join(formulas)))
    units = class_units(shop.request.units)
    parts = []
    for letter, said in letters().items():
        if letter in used:
            unit = unit_of_letter(letter, units)
            told = f"{_UNBROKEN}({unit_label(unit)})" if unit else ""
            parts.append(f"{letter}{_UNBROKEN}{said}{told}")
    return ", ".join(parts)


def _speeds(shop: Shop) -> str:
    """Return the speeds that can be set: listed ones together, a range with its dial."""
    drive = shop.lathe.drive
    texts = []
    for single, group in groupby(drive.positions, key=lambda one: one.is_single_speed):
        positions = list(group)
        if single:
            speeds = sorted({p.slowest for p in positions if p.slowest <= drive.fastest_spindle})
            texts.append(
                tr("{speeds} rev/min", speeds=", ".join(write_speed(speed) for speed in speeds))
            )
            continue
        texts += [
            tr(
                "{place}: {slowest} to {fastest} rev/min, set in steps of {step}",
                place=position.name,
                slowest=write_speed(position.slowest),
                fastest=write_speed(min(position.fastest, drive.fastest_spindle)),
                step=decimal(f"{position.dial_step:g}"),
            )
            for position in positions
        ]
    return "; ".join(texts)
