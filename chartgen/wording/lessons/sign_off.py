"""The sign-off card: what was shown at the machine and done there, and who says so."""

from collections.abc import Sequence

from chartgen.model.material import Material
from chartgen.model.shop import Shop
from chartgen.wording.cautions import cautions_of
from chartgen.wording.language import tr
from chartgen.wording.lessons.printed_class import PrintedSignOff


def printed_sign_off(shop: Shop, materials: Sequence[Material], rules: str) -> PrintedSignOff:
    """Return the card of one lathe; `rules` are the school's own words, or empty."""
    there = {caution.key for caution in cautions_of(shop, materials)}
    own = tuple(line.strip() for line in rules.splitlines() if line.strip())
    return PrintedSignOff(
        title=tr("Sign-off"),
        subtitle=tr("at this machine only"),
        rules=(
            *own,
            tr("Where this card and a rule of the school differ, the rule of the school holds."),
        ),
        points=tuple(text for key, text in _points().items() if key in there),
        fields=((tr("Student"), tr("Date")), (tr("Instructor"), tr("Date"))),
        notes=(
            tr(
                "The signatures say that these points were shown and done here, once. They are no "
                "permission to work alone: the school gives that, by its own rules."
            ),
        ),
    )


def _points() -> dict[str, str]:
    """Return what is shown and done, by the caution that it comes from."""
    return {
        "manual": tr("Stop found and tried; the manual is at hand"),
        "guard": tr("Guard closed before every start"),
        "eyes": tr("Eye protection on"),
        "entanglement": tr("No gloves or rings; hair and sleeves tied back"),
        "chuck-key": tr("Key out of the chuck, never let go in it"),
        "bar-sleeve": tr("Bar behind the spindle cut short, or sleeved and held"),
        "unmarked-chuck": tr("Greatest speed of the unmarked chuck named"),
        "set-up": tr("Blade square, on centre, near the chuck; carriage locked"),
        "power-feed": tr("Feed lever found; hand stays on it"),
        "dig-in": tr("Dig-in: spindle stopped first, then wound out"),
        "reaching": tr("Piece dropped into a tray, no hand near it"),
        "swarf": tr("Swarf cleared with hook or brush, spindle standing"),
        "magnesium-water": tr("Class D powder found; no water on magnesium"),
        "titanium-fire": tr("Class D powder found; no water on titanium"),
    }
