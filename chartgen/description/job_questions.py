"""What is asked of a person who begins a job file: the questions, in their order."""

from collections.abc import Callable, Mapping
from types import MappingProxyType
from typing import Final, NamedTuple, TypeAlias

from chartgen.description.problems import KeyPath
from chartgen.description.tables import NOTHING

Answers: TypeAlias = Mapping[str, str]
NO_ANSWERS: Final[Answers] = MappingProxyType({})
# Answered with yes or no; every other answer stands in the file as text or as a number.
SWITCHES: Final = frozenset({"holding.live_centre", "holding.stop"})


def _never(_answers: Answers) -> bool:
    return False


class Question(NamedTuple):
    """One question: `key` as it stands in the file, dotted, as in "bar.diameter".

    A blank answer takes `default`; where that is blank too, the key is left out, or else
    `is_needed` has to be answered. `why` says what a wrong answer would do. `skip` tells from
    the answers before whether to ask at all. `note` stands beside the key in the file.
    """

    key: str
    words: str
    default: str
    why: str
    note: str
    is_needed: bool = False
    skip: Callable[[Answers], bool] = _never

    @property
    def path(self) -> KeyPath:
        """The key as a path."""
        return tuple(self.key.split("."))


def _has_no_groove(answers: Answers) -> bool:
    return not given("piece.groove.width", answers)


def _has_no_bore(answers: Answers) -> bool:
    return not given("piece.bore", answers)


QUESTIONS: Final = (
    Question(
        "job.name",
        "What is the piece called?",
        "",
        "The card is found by this name.",
        "printed on the card",
        is_needed=True,
    ),
    Question(
        "job.revision",
        "Which revision is it?",
        "A",
        "Two cards of one name are told apart by it.",
        "change it when you change the file",
    ),
    Question(
        "job.date",
        "Which date shall stand on the card? Blank for none.",
        "",
        "The program never asks the clock.",
        "printed too; the program never asks the clock",
    ),
    Question(
        "job.material",
        "What is the bar made of?",
        "mild-steel",
        "Speeds and forces follow from it: another material may need a third of the speed.",
        "one of those that `chartgen materials` lists",
        is_needed=True,
    ),
    Question(
        "job.quantity",
        "How many pieces?",
        "1",
        "Bars and times are counted by it.",
        "how many are wanted",
    ),
    Question(
        "job.coolant",
        "What do you put on the cut: oil, emulsion or dry?",
        "dry",
        "The card would tell you to cut as you do not.",
        '"oil", "emulsion" or "dry"',
    ),
    Question(
        "bar.diameter",
        "How thick is the bar?",
        "",
        "Spindle speed, torque and grip follow from it.",
        "measured, not as it was sold",
        is_needed=True,
    ),
    Question(
        "bar.length",
        "How long is the bar?",
        "",
        "It decides how many pieces the bar gives and what stands out of the chuck.",
        "of one bar",
        is_needed=True,
    ),
    Question(
        "bar.surface",
        "What is its surface: bright, ground or black?",
        "bright",
        "Jaws hold a black bar otherwise than a bright one.",
        'or "ground", "black": what the jaws close on',
    ),
    Question(
        "bar.run_out",
        "How far does a dial gauge on it move in one turn? Blank if not measured.",
        "",
        "A bar that runs out by more than is turned off stays black on one side.",
        "how far a dial gauge on the bar moves in one turn",
    ),
    Question(
        "bar.behind",
        "How much bar may stand out behind the spindle, held by nothing?",
        "0 mm",
        "A bar that stands out far whips round and bends, at full speed beside you.",
        "behind the spindle, held by nothing",
    ),
    Question(
        "piece.diameter",
        "Which outside diameter shall the piece have?",
        "",
        "What is turned off is the difference to the bar.",
        "the outside when finished",
        is_needed=True,
    ),
    Question(
        "piece.length",
        "How long shall the piece be?",
        "",
        "It decides how far the bar stands out of the jaws.",
        "when finished",
        is_needed=True,
    ),
    Question(
        "piece.bore",
        "Which bore right through? Blank for none.",
        "",
        "Drill and boring bar follow from it, and how deep the blade has to cut.",
        "right through",
    ),
    Question(
        "piece.chamfer",
        "Which chamfer on its outer edges? Blank for none.",
        "",
        "It takes away from both ends.",
        "on its outer edges, at 45 degrees",
    ),
    Question(
        "piece.tolerance",
        "Which tolerance, in words? Blank for none.",
        "",
        "It is printed as it stands.",
        "in words, printed as it stands",
    ),
    Question(
        "piece.groove.width",
        "How wide is the groove in its outside? Blank for none.",
        "",
        "A blade has to go in.",
        "of the slot that is left",
    ),
    Question(
        "piece.groove.depth",
        "How deep is the groove, off the radius?",
        "",
        "A depth off the diameter would be twice as deep.",
        "off the radius",
        is_needed=True,
        skip=_has_no_groove,
    ),
    Question(
        "piece.groove.from_face",
        "How far is it from the finished front face to the near side of the groove?",
        "",
        "The groove would stand in another place.",
        "from the finished front face to its near side",
        is_needed=True,
        skip=_has_no_groove,
    ),
    Question(
        "holding.live_centre",
        "Does the tailstock hold the free end with a live centre: yes or no?",
        "no",
        "Without it a long bar is pushed away and climbs over the tool.",
        "true: the tailstock holds the free end",
    ),
    Question(
        "holding.stop",
        "Does the bar rest against something in the chuck that takes a drill's push: yes or no?",
        "no",
        "Without it a drill may push the bar back through the jaws, so it is fed more gently.",
        "true: it rests against something that takes a drill's push",
    ),
    Question(
        "holding.grip_length",
        "How much bar lies inside the jaws? Blank to let the program say.",
        "",
        "A bar held by its end only is levered out of the chuck.",
        "how much bar lies inside the jaws",
    ),
    Question(
        "tools.blade",
        "Which blade, by name or letter? Blank to let the program choose.",
        "",
        "The numbers of the card hold for one blade.",
        "by its name in the shop file, or its letter",
    ),
    Question(
        "tools.turning_tool",
        "Which turning tool? Blank to let the program choose.",
        "",
        "The numbers of the card hold for one tool.",
        "by its name in the shop file",
    ),
    Question(
        "tools.boring_bar",
        "Which boring bar? Blank to let the program choose.",
        "",
        "A bar too thick does not enter, one too thin bends.",
        "by its name in the shop file",
        skip=_has_no_bore,
    ),
)


def given(key: str, answers: Answers) -> str:
    """Return what an answer comes to: what was typed, or the default; blank for nothing."""
    question = next(one for one in QUESTIONS if one.key == key)
    typed = answers.get(key, "").strip()
    may_be_nothing = not question.is_needed and key not in SWITCHES
    if may_be_nothing and typed.lower() in NOTHING and (typed or not question.default):
        return ""
    return typed or question.default
