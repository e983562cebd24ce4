"""A card of a job as PDF: made again, asked whether it holds, refused where it was altered."""

import json
import re
from collections.abc import Callable
from pathlib import Path

import pikepdf
import pytest

from chartgen import pipeline

Inside = Callable[..., tuple[int, str, str]]
Written = Callable[..., str]
POWER = 'power = "750 W"'


def test_each_is_made_again_from_its_file_alone_byte_for_byte(
    inside: Inside, job_cards: list[Path], tmp_path: Path
) -> None:
    assert len(job_cards) == 2
    (tmp_path / "job.toml").unlink()
    for card in job_cards:
        code, out, err = inside("make", str(card), "--out", "again")
        assert (code, err) == (0, "")
        assert out == f"{Path('again') / card.name}\n"
        assert (tmp_path / out.strip()).read_bytes() == card.read_bytes()


def test_it_carries_the_two_files_as_they_were(
    inside: Inside, job_file: Written, shop_file: Written, tmp_path: Path
) -> None:
    out = inside("job", job_file(), "--shop", shop_file(), "--out", "cards")[1]
    for line in (line for line in out.splitlines() if line.endswith(".pdf")):
        with pikepdf.open(tmp_path / line) as pdf:
            carried = {
                name: pdf.attachments[name].get_file().read_bytes() for name in pdf.attachments
            }
        assert set(carried) == {"card.toml", "shop.toml", "job.toml"}
        for name in ("shop.toml", "job.toml"):
            assert carried[name] == (tmp_path / name).read_bytes()
        assert b'kind = "job"' in carried["card.toml"]


def test_it_stands_for_its_job_and_its_shop(
    inside: Inside, job_file: Written, shop_file: Written
) -> None:
    shop = shop_file((POWER, 'power = "550 W"'))
    words = ("job", job_file(), "--shop", shop)
    said = inside(*words)[1]
    out = inside(*words, "--out", "cards")[1]
    card = out.splitlines()[-1]
    assert inside("job", card)[1] == said
    # Another shop may be named beside it.
    other = shop_file(name="other.toml")
    assert inside("job", card, "--shop", other)[1] == inside("job", "job.toml")[1]
    # For every other command it stands for the shop.
    assert inside("compare", card, other) == inside("compare", shop, other)
    assert inside("check", card) == inside("check", shop)


def test_beside_its_own_shop_it_is_current_whatever_else_that_prints(
    inside: Inside, job_cards: list[Path], shop_file: Written
) -> None:
    layouts = re.compile(r"^materials = \[.*?\]", re.MULTILINE | re.DOTALL)
    shop = Path(shop_file())
    fewer = layouts.sub('materials = ["ptfe"]', shop.read_text("utf-8"))
    assert fewer != shop.read_text("utf-8")
    shop.write_text(fewer, "utf-8")
    for card in job_cards:
        code, out, err = inside("stale", str(card), str(shop))
        assert (code, err) == (0, "")
        assert out.splitlines()[0] == f"{card}: Current: same check code"
        told, now = re.findall(r"\w{4}-\w{4}", out.splitlines()[1])
        assert told == now


def test_beside_a_new_motor_the_moved_steps_are_told(
    inside: Inside, job_cards: list[Path], job_file: Written, shop_file: Written
) -> None:
    shop = shop_file((POWER, 'power = "250 W"'))
    card = job_cards[0]
    code, out, _ = inside("stale", str(card), shop)
    assert code == 0
    match = re.search(r"Stale: take down and print again \((.*)\)$", out.splitlines()[0])
    assert match
    moved = re.findall(r"^Step (\d+), (.+)$", out, re.MULTILINE)
    assert match[1].startswith(f"{len(moved)} of ")
    assert "lathe.motor.power" in out
    answer = json.loads(inside("stale", str(card), shop, "--json")[1])
    assert answer["state"] == "stale"
    titles = [group["title"] for group in answer["steps"]]
    assert [f"Step {number}, {what}" for number, what in moved] == [
        title for title in titles if title.startswith("Step ")
    ]
    # What is told as moved is what the two cards say.
    before, after = (
        {step["number"]: step for step in json.loads(said)["cards"][0]["steps"]}
        for said in (
            inside("job", job_file(), "--json")[1],
            inside("job", job_file(), "--shop", shop, "--json")[1],
        )
    )
    facts = [
        (group["title"].split(",")[0].removeprefix("Step "), fact)
        for group in answer["steps"]
        if group["title"].startswith("Step ")
        for fact in group["facts"]
        if fact["name"] in next(iter(after.values()))["numbers"]
    ]
    assert facts
    for number, fact in facts:
        assert after[number]["numbers"][fact["name"]] == fact["after"].replace("–", "")
    if before.keys() == after.keys():
        for number, fact in facts:
            assert before[number]["numbers"][fact["name"]] == fact["before"].replace("–", "")


def test_numbers_that_hold_are_said_to_hold(
    inside: Inside, job_cards: list[Path], shop_file: Written
) -> None:
    shop = Path(shop_file())
    text = shop.read_text("utf-8")
    later = re.sub(r'^revision = "\w+"', 'revision = "Z"', text, flags=re.MULTILINE)
    assert later != text
    shop.write_text(later, "utf-8")
    out = inside("stale", str(job_cards[0]), str(shop))[1]
    assert out.splitlines()[0].endswith("Numbers hold; the card still tells the old assumptions")


def test_a_shop_that_cannot_make_the_job_any_more_is_told_why(
    inside: Inside, job_file: Written, shop_file: Written
) -> None:
    shop = pipeline.describe(None, pipeline.EXAMPLE_NAME)
    blade = shop.blades[0].name
    name = job_file(('# blade = "2.0 carbide"', f'blade = "{blade}"'))
    out = inside("job", name, "--out", "cards")[1]
    card = next(line for line in out.splitlines() if line.endswith(".pdf"))
    sold = shop_file((f'name = "{blade}"', 'name = "another"'))
    code, out, err = inside("stale", card, sold)
    assert (code, err) == (0, "")
    assert out.startswith(f"{card}: No longer printed: take down (tools.blade: ")
    answer = json.loads(inside("stale", card, sold, "--json")[1])
    assert answer["state"] == "gone"
    assert answer["steps"] == answer["moved"] == []


def test_it_is_made_again_as_it_was_and_takes_no_options(
    inside: Inside, job_cards: list[Path]
) -> None:
    code, _, err = inside("make", str(job_cards[0]), "--layout", "centre-card-a6")
    assert code == 2
    assert "leave out --material, --layout, --sheet and --png" in err


def test_nothing_is_learned_into_it(inside: Inside, job_cards: list[Path]) -> None:
    code, _, err = inside("learn", str(job_cards[0]))
    assert code == 2
    assert "is a card, and what follows from readings is written into a shop file" in err


ALTERED: dict[str, tuple[str, bytes, bytes]] = {
    "the piece": ("job.toml", rb'length = "24 mm"', b'length = "23 mm"'),
    "a tool the shop has not": ("job.toml", rb"# blade = .*", b'blade = "9 mm diamond"'),
    "a job that is none": ("job.toml", rb"\[job\]", b"[jobs]"),
    "no TOML": ("job.toml", rb"^", b"= ="),
    "the motor": ("shop.toml", rb'power = "750 W"', b'power = "550 W"'),
    "the code": ("card.toml", rb"check = .*", b'check = "0000-0000"'),
    "the number": ("card.toml", rb"number = 1", b"number = 9"),
    "the layout": ("card.toml", rb"layout = .*", b'layout = "../../secret"'),
    "the layout of another card": ("card.toml", rb"layout = .*", b'layout = "lathe-chart-a5"'),
    "the file's name": ("card.toml", rb"file = .*", b'file = "../../evil"'),
    "a card of the shop": ("card.toml", rb'kind = "job"', b'kind = "card"'),
    "a card of a change": ("card.toml", rb'kind = "job"', b'kind = "change"'),
    "a kind that is none": ("card.toml", rb'kind = "job"', b'kind = "/etc/passwd"'),
}


@pytest.mark.parametrize("place", ALTERED.values(), ids=ALTERED.keys())
def test_one_that_was_altered_is_refused_by_every_command_and_nothing_is_written(
    inside: Inside,
    job_cards: list[Path],
    shop_file: Written,
    tmp_path: Path,
    place: tuple[str, bytes, bytes],
) -> None:
    name, old, new = place
    with pikepdf.open(job_cards[0]) as pdf:
        content = pdf.attachments[name].get_file().read_bytes()
        changed = re.sub(old, new, content, count=1)
        assert changed != content
        # With a checksum that fits: only what the file says can give it away.
        pdf.attachments[name] = pikepdf.AttachedFileSpec(pdf, changed, filename=name)
        pdf.save(tmp_path / "altered.pdf")
    shop = shop_file()
    before = sorted(tmp_path.rglob("*"))
    for words in (
        ("make", "altered.pdf", "--out", "new"),
        ("stale", "altered.pdf", shop),
        ("job", "altered.pdf", "--out", "new"),
        ("job", "job.toml", "--shop", "altered.pdf"),
        ("check", "altered.pdf"),
    ):
        code, out, err = inside(*words)
        assert (code, out) == (2, "")
        assert err.startswith("altered.pdf: what it carries was altered, or is damaged")
    assert sorted(tmp_path.rglob("*")) == before


def test_one_that_lost_its_job_is_refused(
    inside: Inside, job_cards: list[Path], tmp_path: Path
) -> None:
    with pikepdf.open(job_cards[0]) as pdf:
        del pdf.attachments["job.toml"]
        pdf.save(tmp_path / "altered.pdf")
    code, _, err = inside("make", "altered.pdf")
    assert code == 2
    assert err.startswith("altered.pdf: what it carries was altered, or is damaged")
