"""The table of a class file: who is taught, at which lathes, in which materials."""

from chartgen.description.choices import NameIn, OneOf
from chartgen.description.fields import Count, DateText, Words
from chartgen.description.lists import Distinct
from chartgen.description.problems import ComplaintError, Quoted
from chartgen.description.tables import ListOf, Place, Table, TableOf, optional, required
from chartgen.model.course import Level
from chartgen.model.shop import Language, LengthUnits

MOST_STUDENTS = 100_000
LONGEST_RULES = 600
LONGEST_PATH = 240


class Rules(Words):
    """The school's own words, over as many lines as they need."""

    def __call__(self, value: object, place: Place) -> str:
        """Return the words as one paragraph."""
        return super().__call__(" ".join(value.split()) if isinstance(value, str) else value, place)


class FilePath(Words):
    """The path of a file, from the folder of the file that names it."""

    def __call__(self, value: object, _place: Place) -> str:
        """Return the path as it stands."""
        if not isinstance(value, str):
            raise ComplaintError("must be text.", Quoted(value))
        if not value.strip() or not value.isprintable():
            problem = "is blank or has signs that no file's name has."
            raise ComplaintError(problem, "Write the path of the file from this one's folder.")
        if len(value) > self.longest:
            problem = f"has {len(value)} letters."
            raise ComplaintError(problem, f"Use at most {self.longest}; move the file nearer.")
        return value.strip()


class ClassTable(Table):
    """[class]: what it is called, who is in it, what is asked of them."""

    __slots__ = ()
    name = required(Words())
    revision = optional(Words(), default="")
    date = optional(DateText(longest=20), default="")
    seed = optional(Count(bounds=(0, 2**53)), default=1)
    level = required(OneOf(Level))
    language = optional(OneOf(Language), default=Language.ENGLISH)
    units = optional(OneOf(LengthUnits), default=LengthUnits.METRIC)
    students = optional(Count(bounds=(1, MOST_STUDENTS)), default=None)
    roster = optional(FilePath(longest=LONGEST_PATH), default=None)
    lathes = required(Distinct(ListOf(FilePath(longest=LONGEST_PATH))))
    materials = required(Distinct(ListOf(NameIn("materials"))))
    exercises = optional(Count(bounds=(1, 13)), default=8)
    rules = optional(Rules(longest=LONGEST_RULES, or_blank=True), default="")


class ClassFile(Table):
    """The whole file."""

    __slots__ = ()


# A word of Python cannot name an attribute, and the heading in the file is [class].
CLASS = required(TableOf(ClassTable))
CLASS.name = "class"
ClassFile.keys = {CLASS.name: CLASS}
