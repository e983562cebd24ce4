"""What is offered for a name that is unknown."""

from chartgen.wording.nearest import nearest_name


def test_a_near_name_is_offered() -> None:
    known = ["mild-steel", "c45", "brass"]
    assert nearest_name("mildsteel", known) == " Did you mean 'mild-steel'?"


def test_several_near_names_are_offered_the_nearest_first() -> None:
    known = ["titanium-6al-4v", "titanium-pure", "grey-iron-200", "titanic"]
    assert (
        nearest_name("titanium", known)
        == " Did you mean 'titanic' or 'titanium-pure' or 'titanium-6al-4v'?"
    )


def test_a_few_names_are_all_listed_where_none_is_near() -> None:
    assert nearest_name("zzzzz", ["c45", "brass"]) == " Known are: c45, brass."


def test_many_names_are_not_listed() -> None:
    assert nearest_name("zzzzz", [f"material-{n}" for n in range(13)]) == ""
