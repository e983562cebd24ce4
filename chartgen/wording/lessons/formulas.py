"""The formulas of worked solutions, by the key of a line of working."""

from dataclasses import dataclass
from typing import Final

from chartgen.lessons.class_units import INCH_MIN, ClassUnits
from chartgen.lessons.exercise import Given, Working
from chartgen.quantities import MM_MIN, N_M, N_MM2, NEWTON, RPM, SECOND, WATT, Unit
from chartgen.wording.language import tr
from chartgen.wording.lessons.amounts import stated_for_work
from chartgen.wording.lessons.options import limit_words
from chartgen.wording.steps.step import Step

_NOT_NUMBERS: Final = frozenset({"position", "duration"})
"""Given by their place in a list: the question names them."""
_FLOORS: Final = frozenset({"edge-floor", "skin-floor"})
_INCH_UNITS: Final = frozenset({"in", "in/rev", "in/min", "ft/min"})
_DEFINITION: Final = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Formula:
    """A formula with its title; `inch` is how it stands for inches and feet.

    `source` is a key of the bibliography, empty where the formula only says what a word means.
    """

    title: str
    metric: str
    inch: str = ""
    source: str = _DEFINITION


def formula_text(working: Working) -> str:
    """Return the formula of a line of working in its units; empty where none is needed."""
    formula = _formulas()[working.key]
    labels = {working.unit.label, *(value.unit.label for value in working.values)}
    return (formula.inch if _INCH_UNITS & labels else "") or formula.metric


def step_of(working: Working) -> Step:
    """Return one line of working with title, formula, values, result and source.

    Raises
    ------
    KeyError
        If no formula goes by its key.
    """
    formula = _formulas()[working.key]
    return Step(
        title=formula.title,
        formula=formula_text(working),
        values=", ".join(
            f"{_symbol(value.key)} = {stated_for_work(value)}"
            for value in working.values
            if value.key not in _NOT_NUMBERS
        ),
        result=_result(working),
        source=formula.source,
    )


def line_of(step: Step) -> str:
    """Return a step as a line of a key."""
    source = f" [{step.source}]" if step.source else ""
    found = f" → {step.result}" if step.result else ""
    worked = "; ".join(part for part in (step.formula, step.values) if part)
    return f"{step.title}: {worked}{found}{source}"


def _result(working: Working) -> str:
    """Return what a line comes to; nothing where it only sets two numbers side by side."""
    if working.key == "under-floor":
        return ""
    return stated_for_work(Given(key="", value=working.result, unit=working.unit))


def letters() -> dict[str, str]:
    """Return what each letter of the formulas stands for."""
    return {
        "n": tr("spindle speed"),
        "v": tr("surface speed"),
        "D": tr("diameter"),
        "f": tr("feed"),
        "vf": tr("pace of the slide"),
        "p": tr("way of the tool in a turn of the handle"),
        "d": tr("what the dial counts in a turn"),
        "t": tr("time"),
        "F": tr("force"),
        "kc": tr("specific cutting force"),
        "b": tr("width of the slot"),
        "P": tr("power"),
        "T": tr("torque"),
        "L": tr("length of the bar"),
        "l": tr("length of a piece"),
        "a": tr("faced off"),
        "r": tr("what stays in and before the jaws"),
        "s": tr("bar used up by a piece"),
        "N": tr("pieces"),
    }


def unit_of_letter(letter: str, units: ClassUnits) -> Unit | None:
    """Return the unit that a letter is put into the formulas with; None for a count."""
    pace = MM_MIN if units.mm == 1.0 else INCH_MIN
    return {
        "n": RPM,
        "v": units.speed,
        "f": units.feed,
        "vf": pace,
        "t": SECOND,
        "F": NEWTON,
        "kc": N_MM2,
        "P": WATT,
        "T": N_M,
        "N": None,
    }.get(letter, units.length)


_SYMBOLS: Final = {
    "surface-speed": "v",
    "diameter": "D",
    "spindle-speed": "n",
    "feed": "f",
    "feed-rate": "vf",
    "travel-per-turn": "p",
    "dial-per-turn": "d",
    "time": "t",
    "width": "b",
    "kerf": "b",
    "force-per-area": "kc",
    "force": "F",
    "torque": "T",
    "bar-length": "L",
    "piece-length": "l",
    "facing": "a",
    "held": "r",
    "pitch": "s",
}


def _symbol(key: str) -> str:
    if key in _FLOORS:
        return tr("needed")
    return _SYMBOLS[key] if key in _SYMBOLS else limit_words(key)


def _formulas() -> dict[str, Formula]:
    return {
        "spindle-speed": Formula(
            title=tr("Spindle speed"), metric="n = 1000 v / (π D)", inch="n = 12 v / (π D)"
        ),
        "nearest-step": Formula(title=tr("The speed of the lathe nearest to it"), metric=""),
        "surface-speed": Formula(
            title=tr("Surface speed"), metric="v = π D n / 1000", inch="v = π D n / 12"
        ),
        "feed-rate": Formula(title=tr("Pace of the slide"), metric="vf = f n"),
        "travel-per-turn": Formula(
            title=tr("The dial counts the diameter, the tool goes half of it"), metric="p = d / 2"
        ),
        "seconds-per-turn": Formula(title=tr("A turn of the handle"), metric="t = 60 p / vf"),
        "time-to-centre": Formula(
            title=tr("Time over the radius"), metric="t = 60 D / (2 vf)", source="TG-6"
        ),
        "cutting-force": Formula(
            title=tr("Cutting force"), metric="F = kc b f", inch="F = 645 kc b f", source="HSMD"
        ),
        "cutting-power": Formula(
            title=tr("Power at the edge"), metric="P = F v / 60", inch="P = F v / 197"
        ),
        "torque-needed": Formula(
            title=tr("Torque the cut needs"), metric="T = F D / 2000", inch="T = F D / 78.7"
        ),
        "torque-available": Formula(title=tr("Torque the drive gives"), metric=""),
        "torque-read": Formula(title=tr("Read off the curve"), metric=""),
        "lowest-ceiling": Formula(title=tr("The lowest of the feeds"), metric=""),
        "under-floor": Formula(title=tr("The feed is under what is needed"), metric=""),
        "pitch": Formula(title=tr("Bar used up by a piece"), metric="s = l + b + a"),
        "pieces": Formula(title=tr("Whole pieces"), metric="N = (L - r) / s"),
    }
