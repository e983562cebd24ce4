"""An invented job as strings, for tests of paper: a bored ring of ten steps, twenty of it."""

from dataclasses import replace

from chartgen.wording.printed_job import (
    PrintedJob,
    PrintedSketch,
    PrintedStep,
    SketchBox,
    SketchDimension,
)
from chartgen.wording.signs import LegendEntry

# From the jaws outward: 6 mm free, a slot of 2, the ring of 12, 1 mm to face off.
SKETCH = PrintedSketch(
    boxes=(
        SketchBox(part="chuck", x1=-60.0, x2=-28.0, low=-62.5, high=62.5),
        SketchBox(part="jaws", x1=-28.0, x2=0.0, low=15.0, high=48.0),
        SketchBox(part="jaws", x1=-28.0, x2=0.0, low=-48.0, high=-15.0),
        SketchBox(part="bar", x1=-30.0, x2=21.0, low=-15.0, high=15.0),
        SketchBox(part="piece", x1=8.0, x2=20.0, low=-14.0, high=14.0),
        SketchBox(part="bore", x1=6.0, x2=20.0, low=-8.0, high=8.0),
        SketchBox(part="groove", x1=14.0, x2=16.0, low=12.5, high=14.0),
        SketchBox(part="groove", x1=14.0, x2=16.0, low=-14.0, high=-12.5),
        SketchBox(part="cut", x1=6.0, x2=8.0, low=-15.0, high=15.0),
        SketchBox(part="blade", x1=6.0, x2=8.0, low=-45.0, high=-15.6),
    ),
    dimensions=(
        SketchDimension(axis="along", start=-28.0, end=0.0, text="28 grip"),
        SketchDimension(axis="along", start=0.0, end=6.0, text="6"),
        SketchDimension(axis="along", start=6.0, end=8.0, text="2"),
        SketchDimension(axis="along", start=8.0, end=20.0, text="12"),
        SketchDimension(axis="along", start=0.0, end=21.0, text="21 overhang"),
        SketchDimension(axis="across", start=-8.0, end=8.0, text="Ø 16"),
        SketchDimension(axis="across", start=-14.0, end=14.0, text="Ø 28"),
        SketchDimension(axis="across", start=-15.0, end=15.0, text="Ø 30 bar"),
    ),
    labels=(
        (-40.0, 30.0, "chuck"),
        (-14.0, 30.0, "jaws"),
        (3.0, 12.0, "bar, 30 mm bright"),
        (7.0, 10.0, "slot of the blade"),
        (12.0, 10.0, "ring"),
        (15.0, 13.0, "groove 2 × 1.5"),
        (17.0, 6.0, "bore"),
        (20.6, 4.0, "faced off: 1 mm"),
    ),
    description=(
        "The set-up from the side. A bar of 30 mm stands 21 mm out of the jaws, held on 28 mm. "
        "From the jaws outward: 6 mm free, the slot of the 2 mm blade, the ring of 12 mm, and "
        "1 mm to face off. The ring measures 28 mm outside, 16 mm in the bore; its groove "
        "is 2 mm wide and 1.5 mm deep, 4 mm behind the finished face."
    ),
)

STEPS = (
    PrintedStep(
        number="1",
        what="Check, mark out",
        cells=("", "", "", "", "", ""),
        lines=(
            (
                "Bar: 30 mm bright mild steel, 320 mm long; sound, straight, no burr where the "
                "jaws grip."
            ),
            "Mark 28 mm for the grip and 21 mm for the overhang.",
        ),
        watch="a bent bar whips. If it rolls uneven on the bench, take another.",
    ),
    PrintedStep(
        number="2",
        what="Hold",
        cells=("", "", "", "", "", ""),
        lines=(
            (
                "In the three-jaw chuck on 28 mm, 21 mm out. Tighten at every key hole; take the "
                "key out."
            ),
            "Turn by hand once: nothing touches. Run-out at the overhang at most 0.10 mm.",
        ),
        watch="the key. It leaves the chuck in your hand, every time.",
    ),
    PrintedStep(
        number="3",
        what="Face",
        cells=("turning tool", "1080", "0.08", "0.50 × 2", "1.4", "start values"),
        lines=(
            (
                "Two passes of 0.50 mm from the outside to the centre, 1 mm in all. Tool on "
                "centre height."
            ),
            "Set the carriage zero here: all lengths count from this face.",
        ),
        watch="the pip in the middle: a tool below the centre leaves one, above it rubs.",
    ),
    PrintedStep(
        number="4",
        what="Turn to 28 mm, 15 mm long",
        cells=("turning tool", "1080", "0.10", "0.75 + 0.25", "1.1", "motor torque"),
        lines=("One pass of 0.75 mm, measure, one of 0.25 mm at 0.06 mm/rev.",),
        watch="the jaws. Stop the carriage 3 mm before them.",
    ),
    PrintedStep(
        number="5",
        what="Centre drill",
        cells=("A 2.5", "1620", "0.03", "4 deep", "3.0", "hand on the handle"),
        lines=("To 4 mm depth, with oil. Draw back once to clear the chips.",),
        watch="a squeal: stop, the point is dull or off centre.",
    ),
    PrintedStep(
        number="6",
        what="Drill right through, with pecks",
        cells=("drill 14.5", "420", "0.12", "18 deep", "2.4", "push of the tailstock"),
        lines=(
            "Pecks, from the face: 9, 14, 18 mm. Draw right out at each, brush the chips off, oil.",
            "The feed is that of the tailstock handle, 3 mm a turn.",
        ),
        watch=(
            "the drill chuck: if it turns in its taper, stop at once and push harder only "
            "after a look."
        ),
    ),
    PrintedStep(
        number="7",
        what="Bore to 16 mm",
        cells=("boring bar 10", "1620", "0.05", "0.50 + 0.25", "2.2", "the boring bar bends"),
        lines=(
            (
                "A pass of 0.50 mm, measure, a last one of 0.25 mm; let it run once more at the "
                "same setting."
            ),
            "The bar stands 22 mm out of its holder.",
        ),
        watch="the bottom of the stroke: mark 16 mm on the bar, there is bar behind the ring.",
    ),
    PrintedStep(
        number="8",
        what="Groove 2 mm wide, 1.5 mm deep, 4 mm behind the face",
        cells=("blade 2.0", "815", "0.04", "1.5 deep", "1.9", "the blade's window"),
        lines=("Straight in, 1.5 mm on the radius, one turn of the spindle at the bottom.",),
        watch="the slack of the cross-slide: take it up before the edge touches.",
    ),
    PrintedStep(
        number="9",
        what="Chamfer both edges",
        cells=("turning tool", "1080", "", "0.5 × 45°", "", ""),
        lines=("0.5 mm at 45 degrees, by hand, outside and bore.",),
        watch="",
    ),
    PrintedStep(
        number="10",
        what="Part off",
        cells=("blade 2.0", "815", "0.045", "7 deep", "1.7 !", "the blade's window"),
        lines=(
            (
                "Blade square to the bar and on centre, 18 mm out. Zero the cross-slide on the "
                "outside."
            ),
            "One even feed to the bore with oil; do not stop half-way and do not let it rub.",
            (
                "The ring comes free on the boring bar's side: let it drop into a tray, do not "
                "catch it."
            ),
        ),
        watch="the sound. A hum that rises: feed a little faster, not slower. A jam: see the back.",
    ),
    PrintedStep(
        number="11",
        what="Deburr, measure",
        cells=("", "", "", "", "", ""),
        lines=(
            (
                "Spindle stopped. Break the edge that was parted with a scraper; measure the "
                "three sizes."
            ),
            (
                "For the next ring: slacken, draw the bar out by 15 mm to its stop, tighten, go "
                "to step 3."
            ),
        ),
        watch="no emery held in the fingers round turning work.",
    ),
)

RING = PrintedJob(
    title="Bored ring",
    subtitle="mild steel, ISO P, 20 pieces",
    sketch=SKETCH,
    headings=(
        "",
        "step",
        "tool",
        "rev/min",
        "feed\nmm/rev",
        "cut\nmm",
        "s a turn",
        "bound by",
    ),
    right=frozenset({3, 4, 6}),
    steps=STEPS,
    facts=(
        ("Hold", "three-jaw chuck, 28 mm in the jaws, at least 22 N·m on the key"),
        ("Bar", "30 mm bright mild steel, 320 mm long, 21 mm out of the jaws"),
        ("Pieces of a bar", "18, with 15 mm used up by each and 50 mm left in the jaws"),
        ("Bars", "2 for 20 pieces"),
        ("Time", "about 11 min a piece, 9 min once a bar, 4 h in all"),
        ("Blade", "2.0 carbide, 18 mm out of its holder"),
    ),
    checklist=(
        "Chuck key out of the chuck",
        (
            "Nothing touches when the chuck is turned once by hand, tool at the nearest "
            "point to the jaws"
        ),
        "Jaws grip on 28 mm; bar 21 mm out, run-out at most 0.10 mm",
        "Blade square to the bar, on centre height, 18 mm out",
        "Gibs snug, carriage locked for the grooves and for parting",
        "Speed set for the first step: 1080 rev/min, and the belt guard closed",
        "Glasses on; sleeves, hair and rings tied back or off",
        "Oil and brush at hand, a tray under the work",
    ),
    dig_in=(
        "Stop the motor. Do not draw the blade back while the work still turns.",
        "Turn the chuck backward by hand until the blade is free, then wind it out.",
        (
            "Look at the edge: chipped or blue, change it. Look whether the work has slipped "
            "in the jaws."
        ),
        "Begin the slot again beside the old one, or saw the piece off.",
    ),
    notes=(
        (
            "The slot leaves a ring of its own width less at each piece: 2 mm of blade, 1 mm "
            "of facing."
        ),
        "Speeds are those of the belt steps of this lathe; the nearest lower one is meant.",
    ),
    wear=(),
    boxes=(),
    legend=(
        LegendEntry(
            "!",
            "tight",
            "Tight: a narrow window between rubbing and digging in. Keep to the numbers.",
            on_back=True,
        ),
    ),
    wear_marks=(),
    measures=(
        ("Outside diameter", "28.00 −0.05 mm"),
        ("Bore", "16.00 +0.05 mm"),
        ("Length", "12.0 ±0.1 mm"),
        ("Groove", "2 wide, 1.5 deep"),
    ),
)


def batch_of(pieces: int) -> PrintedJob:
    """Return the same job with a box a piece, and a mark each eight and fifteen of them."""
    marks = [(after, "A") for after in range(8, pieces + 1, 8)]
    marks += [(after, "B") for after in range(15, pieces + 1, 15)]
    wear = (
        "A: blade 2.0. Its edge is worn after 8 to 30 pieces: look at it after every 8.",
        "B: turning tool. Its edge is worn after 15 to 60 pieces: look at it after every 15.",
    )
    return replace(
        RING,
        boxes=tuple(str(number) for number in range(1, pieces + 1)),
        wear=wear,
        # The signs are those of the step table.
        legend=(),
        wear_marks=tuple(sorted(marks)),
    )
