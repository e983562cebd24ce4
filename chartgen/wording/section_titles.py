"""The titles of a card's sections: what paper and terminal both say."""

from enum import Enum

from chartgen.wording.language import tr


class SectionTitle(Enum):
    """A section; the value is its title in English."""

    SIGNS = "What the signs mean"
    ASSUMED = "What this card assumes"
    CURVES = "How to read the curves"
    CHECKS = "Before the spindle turns"
    DIG_IN = "If it digs in"
    MIND = "Mind in this job"
    EDGES = "Look at the edges"
    BOXES = "Tick each finished piece"
    FIRST_PIECE = "First piece, measured before the second is made"
    NOTES = "Notes"
    CAUTIONS = "Cautions"

    @property
    def words(self) -> str:
        """The title in the language being spoken."""
        return tr(self.value)

    @property
    def continued(self) -> str:
        """The title where its section goes on in another column."""
        return tr("{title} (continued)", title=self.words)
