"""A job as terminal text: every string of the card, unwrapped, in columns."""

from dataclasses import replace

from chartgen.model.shop import Shop
from chartgen.reference.tables import load_material
from chartgen.renderers.job_text import render_batch, render_job
from chartgen.wording.card import PrintedCard, make_card
from chartgen.wording.job_answer import job_answer
from chartgen.wording.printed_job import PrintedJob, PrintedSketch, PrintedStep
from chartgen.wording.signs import LegendEntry

LONG = "The chip must come off in short curls; stop where it does not, and feed a little more. " * 3
BODY = PrintedJob(
    title="Invented collar",
    subtitle="3 pieces of mild steel",
    sketch=PrintedSketch(boxes=(), dimensions=(), labels=(), description="The bar, 40 mm out."),
    headings=("", "step", "rev/\nmin", "mm/rev"),
    right=frozenset({0, 2, 3}),
    steps=(
        PrintedStep(number="1", what="hold", cells=("", ""), lines=("Close it.",), watch=""),
        PrintedStep(number="2", what="turn", cells=("900", "0.1"), lines=(), watch=LONG.strip()),
        PrintedStep(number="10", what="part off", cells=("1200", "0.05"), lines=(), watch=""),
    ),
    facts=(("Hold", "30 mm in the jaws"), ("Time", "12 min")),
    checklist=("Key out of the chuck.",),
    dig_in=("Stop the spindle.",),
    notes=("Long chips.",),
    wear=(),
    boxes=(),
    legend=(LegendEntry(sign="!", sentence="A sign.", short="sign"),),
)


def card_of(
    shop: Shop, body: PrintedJob, layout: str = "set-up-card-a5"
) -> PrintedCard[PrintedJob]:
    return make_card(shop, body, (load_material("c45"),), shop.blades, layout, body.title)


def test_the_steps_stand_in_columns_under_their_headings(example: Shop) -> None:
    lines = render_job(card_of(example, BODY)).splitlines()
    start = lines.index("    step      rev/ min  mm/rev")
    assert lines[start + 1 : start + 5] == [
        "--  --------  --------  ------",
        " 1  hold",
        " 2  turn           900     0.1",
        "10  part off      1200    0.05",
    ]


def test_a_long_line_is_left_whole(example: Shop) -> None:
    assert f"    Watch: {LONG.strip()}\n" in render_job(card_of(example, BODY))


def test_what_a_card_has_not_leaves_no_title_behind(example: Shop) -> None:
    full = render_job(card_of(example, replace(BODY, wear=("After 5.",), boxes=("1", "2"))))
    assert "Look at the edges\nAfter 5.\n\n[ ] 1  [ ] 2\n" in full
    bare = render_job(
        card_of(example, replace(BODY, checklist=(), dig_in=(), notes=(), legend=(), facts=()))
    )
    for title in ("Before the start", "If it digs in", "Mind in this job", "Look at the edges"):
        assert title not in bare
    assert "\n\n\n" not in bare


def test_boxes_stand_in_tens(example: Shop) -> None:
    body = replace(BODY, boxes=tuple(str(n) for n in range(1, 13)))
    lines = render_job(card_of(example, body)).splitlines()
    tens = [line for line in lines if line.startswith("[ ] ") and "Key" not in line]
    assert [line.count("[ ]") for line in tens] == [10, 2]


def test_the_batch_says_only_what_the_set_up_does_not(example: Shop) -> None:
    body = replace(
        BODY,
        facts=(("Hold", "30 mm in the jaws"), ("Batch", "3 pieces")),
        checklist=("Key out of the chuck.", "Measure the first piece."),
        wear=("Parting blade: after 2 pieces.",),
        boxes=("1", "2", "3"),
    )
    set_up, batch = card_of(example, BODY), card_of(example, body, "batch-card-a5")
    text = render_batch(batch, set_up)
    assert "Batch  3 pieces\n" in text
    assert "[ ] Measure the first piece.\n" in text
    assert "[ ] 1  [ ] 2  [ ] 3\n" in text
    assert text.endswith(f"check {batch.check_code}\n")
    for said in ("30 mm in the jaws", "Key out", "Long chips", set_up.deference):
        assert said not in text


def test_a_machine_finds_each_cell_under_its_heading(example: Shop) -> None:
    told = job_answer(card_of(example, BODY))
    assert told["steps"][1] == {
        "number": "2",
        "step": "turn",
        "numbers": {"rev/ min": "900", "mm/rev": "0.1"},
        "lines": [],
        "watch": LONG.strip(),
    }
    assert told["facts"] == {"Hold": "30 mm in the jaws", "Time": "12 min"}
    assert told["legend"] == {"!": "A sign."}
