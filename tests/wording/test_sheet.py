"""The foot of a sheet: how to print, cut and laminate."""

from chartgen.wording.sheet import Flip, Lamination, Pouch, sheet_words, side_words


def words(lamination: Lamination, hole: float | None = None) -> str:
    return " ".join(
        sheet_words(
            paper="A4",
            flip=Flip.SHORT,
            lamination=lamination,
            pouch=Pouch(name="A6", film=(111.0, 154.0), edge=3.0),
            gap=6.0,
            radius=5.0,
            hole=hole,
        )
    )


def test_it_says_which_flip_which_pouch_and_to_cut_first() -> None:
    said = words(Lamination.SINGLY)
    assert said.startswith("A4, both sides, flip on the short edge. ")
    assert "Cut first, then laminate each in its own A6 pouch (111 x 154 mm)" in said
    assert "leave the 3.0 mm of film round the card, or the seal is lost." in said
    assert "radius 5 mm" in said
    assert "Hole" not in said


def test_together_the_film_is_cut_between_the_cards_if_the_laminators_manual_allows() -> None:
    said = words(Lamination.TOGETHER)
    assert "6 mm apart and 3 mm from its edge" in said
    assert "3 mm of film must stay round each card" in said
    assert "Only if the laminator's manual allows several pieces in one pouch." in said


def test_a_hole_is_named_with_what_keeps_it_sealed() -> None:
    assert "Hole: 5 mm at the cross" in words(Lamination.SINGLY, 5.0)
    assert "eyelet" in words(Lamination.SINGLY, 5.0)


def test_each_side_of_each_sheet_is_told() -> None:
    assert side_words(3, back=False) == "sheet 3, front"
    assert side_words(3, back=True) == "sheet 3, back"
