"""A job file: the job it means, and every fault at its line with its mend."""

import re
import tomllib
from pathlib import Path
from typing import Any

import jsonschema
import pytest

from chartgen.description.job_file import example_job_text, read_job
from chartgen.description.job_tables import JobFile
from chartgen.description.json_schema import json_schema
from chartgen.errors import DescriptionError
from chartgen.model.job import Bar, Coolant, Groove, Holding, Job, Piece, ToolChoice
from chartgen.model.lathe import BarSurface
from chartgen.pipeline import known_names

EXAMPLE = example_job_text().decode()
FAULTS = tomllib.loads(Path(__file__).with_name("job_faults.toml").read_text("utf-8"))["fault"]
JOBS = sorted((Path(__file__).parents[2] / "output_examples" / "jobs").glob("*.toml"))
SHORTEST = """[job]
name = "Peg"
material = "mild-steel"
[bar]
diameter = "1 in"
length = "10 in"
[piece]
diameter = "1 in"
length = "1 in"
"""


def read(text: str | bytes) -> Job:
    data = text.encode() if isinstance(text, str) else text
    return read_job(data, file="job.toml", known=known_names())


def faults(text: str | bytes) -> list[str]:
    with pytest.raises(DescriptionError) as caught:
        read(text)
    return str(caught.value).splitlines()


def line_of(words: str, text: str) -> int:
    return next(n for n, line in enumerate(text.splitlines(), 1) if line.startswith(words))


def uncommented(text: str) -> str:
    """Return the example with every key in it, those that it only shows too."""
    return re.sub(r"(?m)^# (?=\w+ = )", "", text)


def test_the_example_is_the_job_that_it_describes() -> None:
    assert read(EXAMPLE) == Job(
        name="Invented guide roller",
        revision="A",
        date="2026-11-25",
        material="aluminium-6082",
        quantity=4,
        bar=Bar(diameter=30.0, length=250.0),
        piece=Piece(
            diameter=28.0,
            length=24.0,
            bore=14.0,
            chamfer=0.5,
            groove=Groove(width=4.0, depth=1.5, from_face=10.0),
            tolerance="bore H8, rest 0.1 mm",
        ),
        holding=Holding(),
        coolant=Coolant.OIL,
        choice=ToolChoice(),
    )


def test_the_example_shows_every_key_and_what_it_only_shows_is_readable() -> None:
    job = read(uncommented(EXAMPLE))
    assert job.bar.run_out == 0.05
    assert job.holding.grip_length == 30.0
    assert job.choice == ToolChoice(
        blade="2.0 carbide", turning_tool="0.4 carbide", boring_bar="8 mm bar"
    )
    shown = tomllib.loads(uncommented(EXAMPLE))
    for name, key in JobFile.keys.items():
        assert shown[name].keys() == key.read.kind.keys.keys()
    assert shown["piece"]["groove"].keys() == {"width", "depth", "from_face"}


def test_what_a_file_leaves_out_is_as_plain_as_can_be() -> None:
    job = read(SHORTEST)
    assert job == Job(
        name="Peg",
        revision="",
        date="",
        material="mild-steel",
        quantity=1,
        bar=Bar(diameter=25.4, length=254.0, surface=BarSurface.BRIGHT, behind=0.0),
        piece=Piece(diameter=25.4, length=25.4),
        holding=Holding(),
        coolant=Coolant.DRY,
        choice=ToolChoice(),
    )


@pytest.mark.parametrize("file", JOBS, ids=lambda file: file.stem)
def test_the_invented_jobs_are_read(file: Path) -> None:
    assert read(file.read_bytes()).name.startswith("Invented ")


def test_there_are_a_solid_piece_a_bored_one_and_a_batch() -> None:
    solid, bored, batch = (
        read(next(file for file in JOBS if file.stem == stem).read_bytes())
        for stem in ("spacer", "ring", "bushes")
    )
    assert (solid.piece.bore, solid.quantity) == (0.0, 1)
    assert (bored.material, bored.piece.bore) == ("aluminium-bronze", 25.0)
    assert (batch.material, batch.quantity, batch.piece.bore) == ("acetal", 20, 10.0)


@pytest.mark.parametrize("fault", FAULTS, ids=lambda fault: fault["message"][:70])
def test_a_fault_names_line_key_and_mend(fault: dict[str, Any]) -> None:
    text = EXAMPLE
    for old, new in fault["change"]:
        assert old in text
        text = text.replace(old, new, 1)
    assert faults(text) == [f"job.toml:{line_of(fault['at'], text)}: {fault['message']}"]


def test_every_fault_of_a_file_is_told_at_once_in_the_order_of_the_lines() -> None:
    text = (
        EXAMPLE.replace("aluminium-6082", "aluminum-6082")
        .replace('"250 mm"', '"25 m"')
        .replace('"28 mm"', '"32 mm"')
        .replace('depth = "1.5 mm"', 'depth = "9.5 mm"')
    )
    found = faults(text)
    assert [words.split(": ")[1] for words in found] == [
        "job.material",
        "bar.length",
        "piece.groove.depth",
    ]


def test_contradictions_are_told_beside_one_another() -> None:
    text = EXAMPLE.replace('"28 mm"', '"32 mm"').replace('"24 mm"', '"260 mm"')
    assert [words.split(": ")[1] for words in faults(text)] == ["piece.diameter", "piece.length"]


@pytest.mark.parametrize(
    ("text", "message"),
    [
        (
            "",
            (
                "job.toml: is empty. A job file needs [job] with name and material, [bar] and "
                "[piece]; begin with a copy of the example."
            ),
        ),
        (
            "[bar]\ndiameter = 30 mm\n",
            (
                "job.toml:2: at column 15, there is more on the line than one key and its value. "
                'Put text in quotes, as in diameter = "2 mm", and each key on its own line.'
            ),
        ),
        ("[job\n", "job.toml:1: at column 5, a table's heading is not closed. End it with ]."),
        (
            b"\xff",
            (
                "job.toml:1: is not UTF-8 text: byte 1 of the file cannot be read. Save the "
                "file again with the encoding UTF-8."
            ),
        ),
    ],
)
def test_what_is_no_job_file_is_refused_in_words(text: str | bytes, message: str) -> None:
    assert faults(text) == [message]


# jsonschema is the oracle: an editor with the schema passes the example, and no slip.
def test_the_schema_passes_the_jobs_and_no_strange_key() -> None:
    schema = json_schema(JobFile)
    jsonschema.Draft202012Validator.check_schema(schema)
    for text in (EXAMPLE, *(file.read_text("utf-8") for file in JOBS)):
        job = tomllib.loads(text)
        job["job"]["date"] = str(job["job"]["date"])
        jsonschema.validate(job, schema)
        with pytest.raises(jsonschema.ValidationError):
            jsonschema.validate(job | {"hole": "3 mm"}, schema)
