"""What is asked about each caution: the caution itself is the right answer.

The wrong answers are what beginners do, so that each is worth a word when the quiz is talked
over; none of them may be taken for advice out of its question.
"""

from dataclasses import dataclass

from chartgen.wording.language import tr


@dataclass(frozen=True, slots=True, kw_only=True)
class Asked:
    """A question about one caution: two wrong answers beside it, or whether a sentence is true."""

    text: str
    wrong: tuple[str, ...] = ()
    truth: bool | None = None


def asked_of_every_lathe() -> dict[str, Asked]:
    """Return the questions that any lathe calls for, by the key of their caution."""
    return {
        "chuck-key": Asked(
            text=tr("The work is tight in the chuck. What about the chuck key?"),
            wrong=(
                tr(
                    "Leave it in the chuck while the speed is set, so that it is at hand. "
                    "Take it out before the cut."
                ),
                tr("Start slowly with the key in. It drops out by itself."),
            ),
        ),
        "entanglement": Asked(
            text=tr("What may be on your hands, arms and head?"),
            wrong=(
                tr("Thin gloves against sharp swarf. Sleeves may hang loose at low speed."),
                tr("Rings and a long scarf, as long as the guard is down."),
            ),
        ),
        "reaching": Asked(
            text=tr("The piece is about to come free. What do your hands do?"),
            wrong=(
                tr(
                    "One hand goes under the piece, so that it does not fall into the swarf "
                    "and get scratched."
                ),
                tr("Hold the piece with pliers while the chuck still turns."),
            ),
        ),
        "guard": Asked(
            text=tr("True or false? For one quick cut the chuck guard may stay up."), truth=False
        ),
        "eyes": Asked(
            text=tr("Why is eye protection worn at a lathe, and when?"),
            wrong=(
                tr("It is worn at high speed only. Slow swarf does not fly."),
                tr("It is worn by whoever turns the handle. Who looks on needs none."),
            ),
        ),
        "dig-in": Asked(
            text=tr("The blade digs in and the spindle labours. What comes first?"),
            wrong=(
                tr("Wind the blade out first. Then stop the spindle."),
                tr(
                    "Push the blade on firmly until the cut is through. Stop the spindle "
                    "only after that."
                ),
            ),
        ),
        "stopping": Asked(
            text=tr("The motor is off and the chuck still turns. What do you do?"),
            wrong=(
                tr("Brake it gently with the flat of the hand."),
                tr("Hold a rag against it until it stands still. Then open the guard."),
            ),
        ),
        "swarf": Asked(
            text=tr(
                "True or false? Swarf is cleared with a hook or a brush, and only when the "
                "spindle stands."
            ),
            truth=True,
        ),
        "manual": Asked(
            text=tr("What comes before the first cut at a lathe you do not know?"),
            wrong=(
                tr("Start slowly and find out in the cut which lever does what."),
                tr("Nothing special. All lathes stop the same way."),
            ),
        ),
        "set-up": Asked(
            text=tr("How is a parting cut set up?"),
            wrong=(
                tr(
                    "Part far from the chuck, where there is room to see. Leave the carriage "
                    "free, so that it can give."
                ),
                tr("Set the blade above centre and a little askew, so that it clears."),
            ),
        ),
        "line-of-flight": Asked(
            text=tr("Where do you stand when the cut is nearly through?"),
            wrong=(
                tr(
                    "In line with the chuck, where you can look straight into the slot and "
                    "see the last mm go."
                ),
                tr("Bent over the work, ready to take the piece."),
            ),
        ),
        "grip": Asked(
            text=tr("True or false? A light grip on the last few mm of bar is enough to part it."),
            truth=False,
        ),
        "never-between-centres": Asked(
            text=tr(
                "True or false? Work held between two centres may be parted with a thin blade."
            ),
            truth=False,
        ),
        "emery": Asked(
            text=tr("Turning work is to be polished with emery cloth. How?"),
            wrong=(
                tr("Wrap the cloth once round the work and pull at both ends."),
                tr(
                    "Hold the cloth between two fingers of each hand, press lightly, and "
                    "take it away if it gets hot."
                ),
            ),
        ),
    }


def asked_of_some() -> dict[str, Asked]:
    """Return the questions that only some lathes or materials call for, the gravest first."""
    return {
        "magnesium-water": Asked(
            text=tr("Magnesium chips burn in the tray. What do you do?"),
            wrong=(
                tr("Pour water on them at once, as much as there is."),
                tr("Use the foam extinguisher from the wall."),
            ),
        ),
        "bar-sleeve": Asked(
            text=tr("A long bar stands out of the far end of the spindle. What about it?"),
            wrong=(
                tr(
                    "Nothing. The chuck holds it, nobody stands at that end, and a long bar "
                    "runs the more smoothly."
                ),
                tr("Run faster, so that it turns round more evenly."),
            ),
        ),
        "titanium-fire": Asked(
            text=tr("Titanium swarf burns. What do you do?"),
            wrong=(
                tr("Pour water on it at once, as much as there is."),
                tr("Blow it out with the air jet."),
            ),
        ),
        "beryllium-dust": Asked(
            text=tr("How is an alloy with beryllium worked?"),
            wrong=(
                tr("Like brass. Polish it dry, and blow the dust off."),
                tr("With emery cloth only, since it is soft."),
            ),
        ),
        "fluoroplastic-fumes": Asked(
            text=tr("True or false? PTFE that smokes in the cut is harmless."), truth=False
        ),
        "unmarked-chuck": Asked(
            text=tr("This chuck bears no top speed. How fast may it turn?"),
            wrong=(
                tr("As fast as the lathe goes. An unmarked chuck bears any speed."),
                tr("Twice the card's limit, as long as it does not shake."),
            ),
        ),
        "power-feed": Asked(
            text=tr("True or false? Power feed stops by itself when the blade digs in."),
            truth=False,
        ),
        "stringy-swarf": Asked(
            text=tr("Long swarf winds round the work. What do you do?"),
            wrong=(
                tr(
                    "Pull it off with a gloved hand while the work turns slowly, so that it "
                    "cannot reach the chuck."
                ),
                tr("Let it wind up. It breaks off by itself in the end."),
            ),
        ),
        "oil-smoke": Asked(
            text=tr("The oil on the cut begins to smoke. What do you do?"),
            wrong=(
                tr(
                    "Carry on. Smoke shows that the oil does its work, and it ends by itself "
                    "once the cut is warm."
                ),
                tr("Go faster, so that the cut is over sooner."),
            ),
        ),
        "lead": Asked(
            text=tr("True or false? After work with an alloy that holds lead, hands are washed."),
            truth=True,
        ),
        "iron-dust": Asked(
            text=tr("True or false? Dust of cast iron is best blown off with the air jet."),
            truth=False,
        ),
    }
