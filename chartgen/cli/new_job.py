"""Asking for a job, question by question, and writing the file of the answers."""

from pathlib import Path

import click

from chartgen.cli.files import write_whole
from chartgen.errors import RequestError

_MEND = "choose another place for it, or make room, then run again"


def ask_for_job(path: Path) -> None:
    """Ask what is wanted and write it; whatever ends the asking leaves no file.

    Raises
    ------
    RequestError
        If there is such a file already: nobody's file is written over.
    """
    from chartgen.description.job_file import read_job
    from chartgen.description.new_job import QUESTIONS, fault_of, new_job_text
    from chartgen.pipeline import known_names

    _refuse_existing(path)
    known = known_names()
    answers: dict[str, str] = {}
    for question in QUESTIONS:
        if question.skip(answers):
            continue
        answer = _asked(question.words, question.default)
        while fault := fault_of(question, answer, known=known, before=answers):
            click.echo(fault, err=True)
            answer = _asked(question.words, question.default)
        answers[question.key] = answer
    content = new_job_text(answers).encode()
    # What is written has to be sound; a fault would be ours, and must not leave a file.
    read_job(content, file=str(path), known=known)
    # Somebody may have taken the name while the questions were answered.
    _refuse_existing(path)
    write_whole(path, content, mend=_MEND)
    click.echo(f"{path}: written; `chartgen job {path} --shop SHOP` prints its card.")


def _asked(words: str, default: str) -> str:
    answer: str = click.prompt(words, default=default, show_default=bool(default))
    return answer.strip()


def _refuse_existing(path: Path) -> None:
    # A link to nowhere is somebody's too.
    if path.exists() or path.is_symlink():
        raise RequestError(f"{path}: is there already and is left as it is; name another file.")
