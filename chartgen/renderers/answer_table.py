"""The empty table that a class's answers are typed into."""

import csv
import io
from collections.abc import Sequence

from chartgen.description.answer_file import AnyPaper, answer_headings
from chartgen.description.csv_table import PARTED_BY
from chartgen.model.shop import Language
from chartgen.renderers.table_text import harmless


def answers_text(language: Language, papers: Sequence[AnyPaper]) -> bytes:
    """Return the table to type answers into, as a spreadsheet of the language opens it.

    Where numbers have a comma, cells are parted by semicolons; the byte-order mark tells a
    spreadsheet that names are in UTF-8.
    """
    out = io.StringIO()
    writer = csv.writer(out, delimiter=PARTED_BY[language], lineterminator="\r\n")
    questions = max(len(paper.exercises) for paper in papers)
    writer.writerow(answer_headings(questions))
    for paper in papers:
        writer.writerow([paper.number, harmless(paper.name), *([""] * questions)])
    return out.getvalue().encode("utf-8-sig")
