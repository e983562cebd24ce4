"""`chartgen job`: what it prints and writes, and what it says of jobs it cannot plan."""

import json
from collections.abc import Callable
from pathlib import Path

import pytest

from chartgen import pipeline
from chartgen.description.job_file import example_job_text
from chartgen.wording.card import PrintedCard
from chartgen.wording.printed_job import PrintedJob

Inside = Callable[..., tuple[int, str, str]]
Written = Callable[..., str]


def cards_of(job: str) -> list[PrintedCard[PrintedJob]]:
    shop = pipeline.describe(None, pipeline.EXAMPLE_NAME)
    wanted = pipeline.describe_job(Path(job).read_bytes(), job, shop)
    return pipeline.printed_job_cards(shop, wanted)


def test_the_text_says_every_string_of_the_set_up_card(inside: Inside, job_file: Written) -> None:
    code, out, err = inside("job", job_file())
    assert (code, err) == (0, "")
    card = cards_of("job.toml")[0]
    job = card.chart
    strings = [
        job.title,
        job.subtitle,
        card.lathe,
        job.sketch.description,
        *(cell for row in job.rows for cell in row),
        *(line for step in job.steps for line in (*step.lines, step.watch)),
        *(part for fact in job.facts for part in fact),
        *job.checklist,
        *job.dig_in,
        *job.notes,
        *(entry.sentence for entry in job.legend),
        *(caution.text for caution in card.cautions),
        *card.assumptions,
        card.force_band,
        card.deference,
        card.identity,
        card.check_code,
    ]
    assert len(strings) > 30
    assert [string for string in strings if string not in out] == []


def test_the_steps_stand_in_the_table_in_their_order(inside: Inside, job_file: Written) -> None:
    out = inside("job", job_file())[1]
    table = out.splitlines()
    rule = next(i for i, line in enumerate(table) if line and set(line) == {"-", " "})
    for row, line in zip(cards_of("job.toml")[0].chart.rows, table[rule + 1 :], strict=False):
        assert line.split() == " ".join(row).split()


def test_of_the_batch_only_what_the_set_up_does_not_say_follows(
    inside: Inside, job_file: Written
) -> None:
    out = inside("job", job_file())[1]
    set_up, batch = cards_of("job.toml")
    assert out.endswith(f"check {batch.check_code}\n")
    assert all(f"[ ] {box}" in out for box in batch.chart.boxes)
    assert all(line in out for line in batch.chart.wear)
    assert out.count(set_up.deference) == 1
    assert all(out.count(f"[ ] {line}\n") == 1 for line in set_up.chart.checklist)


def test_one_piece_alone_has_no_batch_card(inside: Inside, job_file: Written) -> None:
    name = job_file(("quantity = 4 ", "quantity = 1 "))
    out = inside("job", name, "--out", "cards")[1]
    assert [line for line in out.splitlines() if line.endswith(".pdf")] == [
        str(Path("cards") / f"{cards_of(name)[0].file_stem}.pdf")
    ]


def test_nothing_is_written_unasked(inside: Inside, job_file: Written, tmp_path: Path) -> None:
    inside("job", job_file())
    assert [path.name for path in tmp_path.iterdir()] == ["job.toml"]


def test_with_a_folder_the_cards_are_written_and_named(
    inside: Inside, job_file: Written, tmp_path: Path
) -> None:
    plain = inside("job", job_file())[1]
    code, out, err = inside("job", job_file(), "--out", "a/b")
    assert (code, err) == (0, "")
    names = [f"{card.file_stem}.pdf" for card in cards_of("job.toml")]
    assert out == plain + "".join(f"{Path('a/b') / name}\n" for name in names)
    for name in names:
        assert (tmp_path / "a/b" / name).read_bytes().startswith(b"%PDF-")


def test_the_same_job_gives_the_same_bytes(job_cards: list[Path], inside: Inside) -> None:
    before = [card.read_bytes() for card in job_cards]
    inside("job", "job.toml", "--out", "printed")
    assert [card.read_bytes() for card in job_cards] == before


def test_pictures_stand_beside_their_card(
    inside: Inside, job_file: Written, tmp_path: Path
) -> None:
    pytest.importorskip("pypdfium2")
    out = inside("job", job_file(), "--out", "cards", "--png")[1]
    named = [line for line in out.splitlines() if line.startswith("cards")]
    assert {Path(name).suffix for name in named} == {".pdf", ".png"}
    pictures = [name for name in named if name.endswith(".png")]
    assert all((tmp_path / name).read_bytes().startswith(b"\x89PNG") for name in pictures)


def test_a_machine_gets_the_strings_of_both_cards_and_nothing_else(
    inside: Inside, job_file: Written
) -> None:
    plain = inside("job", job_file(), "--json")[1]
    code, out, err = inside("job", job_file(), "--json", "--out", "cards")
    cards = cards_of("job.toml")
    assert (code, out) == (0, plain)
    assert err == "".join(f"{Path('cards') / card.file_stem}.pdf\n" for card in cards)
    for card, told in zip(cards, json.loads(out)["cards"], strict=True):
        job = card.chart
        assert told["check"] == card.check_code
        assert told["facts"] == dict(job.facts)
        assert [step["step"] for step in told["steps"]] == [step.what for step in job.steps]
        assert [tuple(step["numbers"].values()) for step in told["steps"]] == [
            step.cells for step in job.steps
        ]
        assert told["checklist"] == list(job.checklist)
        assert [each["text"] for each in told["cautions"]] == [c.text for c in card.cautions]


def test_the_example_is_a_job_that_can_be_planned(inside: Inside, tmp_path: Path) -> None:
    code, out, _ = inside("example", "--job")
    assert (code, out.encode()) == (0, example_job_text())
    (tmp_path / "mine.toml").write_text(out, "utf-8")
    assert inside("job", "mine.toml")[0] == 0


def test_the_shop_may_be_a_file_or_any_card_of_it(
    inside: Inside, job_file: Written, shop_file: Written
) -> None:
    shop = shop_file(('power = "750 W"', 'power = "550 W"'))
    code, out, _ = inside("job", job_file(), "--shop", shop)
    assert code == 0
    assert out != inside("job", "job.toml")[1]
    card = inside(
        "make", shop, "--layout", "centre-card-a6", "--material", "c45", "--out", "cards"
    )[1].strip()
    assert inside("job", "job.toml", "--shop", card)[1] == out


def test_what_looks_implausible_in_the_shop_is_said(
    inside: Inside, job_file: Written, shop_file: Written
) -> None:
    shop = shop_file(('travel_per_turn = "2 mm"', 'travel_per_turn = "9 mm"'))
    said = inside("job", job_file(), "--shop", shop)[2]
    assert said
    assert said == inside("make", shop, "--material", "c45", "--layout", "centre-card-a6")[2]


REFUSED = {
    "no job": ((), "`chartgen example --job` prints one to start from"),
    "no such file": (("none.toml",), "none.toml: there is no such file; check the name, or run"),
    "a folder": (("jobs",), "jobs: is a folder; name the file in it."),
    "no TOML": (("notes.txt",), "notes.txt:1: "),
    "an empty file": (("empty.toml",), "empty.toml: is empty."),
    "pictures of nothing": (("job.toml", "--png"), "add --out FOLDER"),
    "asking and printing": (("new.toml", "--new", "--json"), "--new only asks"),
    "asking for a shop's card": (("new.toml", "--new", "--shop", "s.toml"), "--new only asks"),
    "a shop file for a job": (("shop.toml",), "shop.toml"),
    "no such shop": (("job.toml", "--shop", "none.toml"), "none.toml: there is no such file"),
}


@pytest.mark.parametrize(("words", "said"), REFUSED.values(), ids=REFUSED.keys())
def test_what_cannot_be_done_is_said_with_its_mend_and_nothing_is_written(
    inside: Inside,
    job_file: Written,
    shop_file: Written,
    tmp_path: Path,
    words: tuple[str, ...],
    said: str,
) -> None:
    job_file()
    shop_file()
    (tmp_path / "jobs").mkdir()
    (tmp_path / "notes.txt").write_text("saw off a bar\n", "utf-8")
    (tmp_path / "empty.toml").write_text("", "utf-8")
    before = sorted(tmp_path.iterdir())
    code, out, err = inside("job", *words)
    assert (code, out) == (2, "")
    assert said in err
    assert sorted(tmp_path.iterdir()) == before


def test_every_fault_of_a_job_is_told_at_its_line(inside: Inside, job_file: Written) -> None:
    name = job_file(("aluminium-6082", "unobtainium"), ('diameter = "30 mm"', 'diameter = "30 h"'))
    code, out, err = inside("job", name, "--out", "cards")
    assert (code, out) == (2, "")
    text = Path(name).read_text("utf-8").splitlines()
    lines = [int(line.split(":")[1]) for line in err.splitlines()]
    assert [text[line - 1].split(" =")[0] for line in lines] == ["material", "diameter"]
    assert not Path("cards").exists()


def test_a_job_that_the_shop_has_no_tool_for_is_told_at_the_jobs_line(
    inside: Inside, job_file: Written
) -> None:
    name = job_file(('# blade = "2.0 carbide"', 'blade = "9 mm diamond"'))
    code, out, err = inside("job", name)
    assert (code, out) == (2, "")
    text = Path(name).read_text("utf-8").splitlines()
    (line,) = (int(fault.split(":")[1]) for fault in err.splitlines())
    assert text[line - 1].startswith("blade = ")
    assert err.startswith(f"{name}:{line}: tools.blade: ")


def test_a_card_of_a_shop_is_no_job(inside: Inside) -> None:
    card = inside("make", "--layout", "centre-card-a6", "--material", "c45")[1].strip()
    code, out, err = inside("job", card)
    assert (code, out) == (2, "")
    assert f"{card}: is a card, but of no job; name a job file, or a card that" in err
