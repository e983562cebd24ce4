"""The set-up seen from above, as boxes and dimensions in true millimetres, and in words.

The axis is the line of the bar; what lies below it on paper is the operator's side, where the
blade comes from.
"""

from chartgen.model.shop import LengthUnits
from chartgen.planning.operations import Operation
from chartgen.planning.plan import JobPlan
from chartgen.quantities import Millimetres
from chartgen.wording.job.amounts import across, bare, length, length_up, size
from chartgen.wording.language import tr
from chartgen.wording.printed_job import PrintedSketch, SketchBox, SketchDimension

# Drawn only to be recognised: nobody measures a chuck on the card.
_CHUCK_DEPTH_SHARE = 0.45
_JAW_OUT: Millimetres[float] = 0.0
_JAW_WIDTH_SHARE = 0.16
_MOST_BLADE: Millimetres[float] = 40.0


def printed_sketch(plan: JobPlan) -> PrintedSketch:
    """Return the set-up of a plan: chuck, bar, piece, cut, bore, blade and their dimensions."""
    units, job, up = plan.shop.request.units, plan.job, plan.set_up
    bar, piece, bore = job.bar.diameter / 2.0, job.piece.diameter / 2.0, job.piece.bore / 2.0
    near, far = up.jaw_distance, up.jaw_distance + up.kerf
    end = far + job.piece.length
    # Of several pieces in a sawn blank the outermost is drawn; the next stand behind its cut.
    shift = up.overhang - up.facing - end
    near, far, end = near + shift, far + shift, end + shift
    parting = next((step.parting for step in plan.steps if step.parting), None)
    chuck = plan.shop.lathe.chuck.size / 2.0
    boxes = [
        SketchBox(
            part="chuck",
            x1=-up.grip_length - _CHUCK_DEPTH_SHARE * 2.0 * chuck * 0.5,
            x2=-0.35 * up.grip_length,
            low=-chuck,
            high=chuck,
        ),
        SketchBox(
            part="jaws",
            x1=-up.grip_length,
            x2=_JAW_OUT,
            low=bar,
            high=bar + _JAW_WIDTH_SHARE * 2.0 * chuck,
        ),
        SketchBox(
            part="jaws",
            x1=-up.grip_length,
            x2=_JAW_OUT,
            low=-bar - _JAW_WIDTH_SHARE * 2.0 * chuck,
            high=-bar,
        ),
        SketchBox(part="bar", x1=-up.grip_length, x2=end + up.facing, low=-bar, high=bar),
        SketchBox(part="piece", x1=far, x2=end, low=-piece, high=piece),
        SketchBox(part="cut", x1=near, x2=far, low=-piece, high=piece),
    ]
    if bore:
        boxes.append(SketchBox(part="bore", x1=near, x2=end + up.facing, low=-bore, high=bore))
    if job.piece.groove is not None:
        x2 = end - job.piece.groove.from_face
        low = piece - job.piece.groove.depth
        for low_side, high_side in ((low, piece), (-piece, -low)):
            boxes.append(
                SketchBox(
                    part="groove",
                    x1=x2 - job.piece.groove.width,
                    x2=x2,
                    low=low_side,
                    high=high_side,
                )
            )
    if parting is not None:
        out = min(parting.blade.projection, _MOST_BLADE)
        boxes.append(SketchBox(part="blade", x1=near, x2=far, low=-piece - out, high=-piece))
    if any(step.operation is Operation.SUPPORT for step in plan.steps):
        boxes.append(
            SketchBox(
                part="centre", x1=end + up.facing, x2=end + up.facing + bar, low=-bar, high=bar
            )
        )
    along = [
        SketchDimension(axis="along", start=0.0, end=near, text=length_up(near, units).split()[0]),
        SketchDimension(axis="along", start=near, end=far, text=bare(up.kerf, units)),
        SketchDimension(axis="along", start=far, end=end, text=bare(job.piece.length, units)),
        SketchDimension(
            axis="along",
            start=0.0,
            end=end + up.facing,
            text=tr("{length} out", length=length_up(up.overhang, units)),
        ),
    ]
    across_axis = [SketchDimension(axis="across", start=-bar, end=bar, text=across(2 * bar, units))]
    if piece < bar:
        text = across(2 * piece, units)
        across_axis.append(SketchDimension(axis="across", start=-piece, end=piece, text=text))
    if bore:
        text = tr("bore {diameter}", diameter=across(2 * bore, units))
        across_axis.append(SketchDimension(axis="across", start=-bore, end=bore, text=text))
    return PrintedSketch(
        boxes=tuple(boxes),
        dimensions=(*along, *across_axis),
        labels=(),
        description=_in_words(plan, units),
    )


def _in_words(plan: JobPlan, units: LengthUnits) -> str:
    job, up = plan.job, plan.set_up
    piece = size(job.piece.diameter, job.piece.length, units)
    if job.piece.bore:
        piece = tr("{piece}, bore {bore}", piece=piece, bore=across(job.piece.bore, units))
    return tr(
        "Set-up seen from above, to scale: bar {bar}, {grip} in the jaws, {overhang} out. From the "
        "jaws: {clear} clear, the cut {kerf}, the piece {piece}, {facing} to face off.",
        bar=across(job.bar.diameter, units),
        grip=length(up.grip_length, units),
        overhang=length_up(up.overhang, units),
        clear=length(up.jaw_distance, units),
        kerf=length(up.kerf, units),
        piece=piece,
        facing=length(up.facing, units),
    )
