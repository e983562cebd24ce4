"""A job beside the shop that has to make it: what the shop lacks, at the job file's lines.

Nothing here is computed from forces; the plan does that. These are the faults of a file:
a tool that does not exist, a bar that does not go in.
"""

from collections.abc import Iterable
from dataclasses import replace
from typing import Final

from chartgen.description.job_file import JOB_FORM
from chartgen.description.problems import Problems
from chartgen.description.toml_text import decoded
from chartgen.errors import Fault
from chartgen.model.blade_letters import blade_called, letter_of
from chartgen.model.job import Job, Piece
from chartgen.model.lathe import ChuckKind
from chartgen.model.shop import Shop
from chartgen.model.tooling import BoringBar, Tools
from chartgen.quantities import Millimetres

_BAR: Final = ("bar", "diameter")
_BORE: Final = ("piece", "bore")
_CENTRE: Final = ("holding", "live_centre")


def faults_beside(job: Job, shop: Shop, *, text: bytes, file: str) -> list[Fault]:
    """Return what keeps a shop from making a job, in the order of the job file's lines.

    Parameters
    ----------
    job
        The job that `text` describes.
    shop
        The shop that is to make it.
    text
        The job file as it lies on the disk; `file` is its name.
    """
    problems = Problems()
    _names(job, shop, problems)
    _room(job, shop, problems)
    _turning(job, shop, problems)
    _bore(job, shop, problems)
    _groove(job, shop, problems)
    _centre(job, shop, problems)
    if not problems.found:
        return []
    from chartgen.description.complaints import faults_of  # noqa: PLC0415 - words for a fault

    source = decoded(text, file=file)
    return faults_of(problems.found, file=file, text=source, form=JOB_FORM)


def by_names_of(job: Job, shop: Shop) -> Job:
    """Return the job with its blade called by name, where it was called by its letter."""
    if job.choice.blade is None:
        return job
    blade = blade_called(shop.blades, job.choice.blade)
    if blade is None:
        return job
    return replace(job, choice=replace(job.choice, blade=blade.name))


def _names(job: Job, shop: Shop, problems: Problems) -> None:
    """Note each tool that is called by a name which the shop does not have."""
    blade = job.choice.blade
    if blade is not None and blade_called(shop.blades, blade) is None:
        blades = [f"{letter_of(shop.blades, one.name)} '{one.name}'" for one in shop.blades]
        mend = f"There are {', '.join(blades)}; leave it out to let the program choose."
        problems.add(("tools", "blade"), f"'{blade}' is no blade of the shop file.", mend)
    turning = [tool.name for tool in shop.tools.turning]
    boring = [bar.name for bar in shop.tools.boring]
    _name("turning_tool", job.choice.turning_tool, turning, problems)
    _name("boring_bar", job.choice.boring_bar, boring, problems)


def _name(key: str, word: str | None, names: Iterable[str], problems: Problems) -> None:
    if word is None or word in names:
        return
    problem = f"'{word}' is no [[{key}]] of the shop file."
    listed = ", ".join(f"'{name}'" for name in names)
    mend = (
        f"There are {listed}; leave it out to let the program choose."
        if listed
        else f"The shop file has none: add a [[{key}]] there, or leave this line out."
    )
    problems.add(("tools", key), problem, mend)


def _room(job: Job, shop: Shop, problems: Problems) -> None:
    """Note a bar that does not go into the chuck or does not turn over the cross-slide."""
    bar, chuck, swing = job.bar.diameter, shop.lathe.chuck, shop.lathe.swing
    if bar > chuck.size and chuck.kind is not ChuckKind.COLLET:
        problems.add(
            _BAR,
            f"is {bar:g} mm, larger than the chuck of {chuck.size:g} mm.",
            "Take a thinner bar or a larger chuck; check size under [lathe.chuck].",
        )
    if swing is not None and bar > swing:
        problems.add(
            _BAR,
            f"is {bar:g} mm, but only {swing:g} mm turn over the cross-slide.",
            "Take a thinner bar, or check swing under [lathe] of the shop file.",
        )
    behind, through = job.bar.behind, shop.lathe.spindle_bore
    if behind > 0.0 and through is not None and bar > through:
        problems.add(
            ("bar", "behind"),
            f"is {behind:g} mm, but a bar of {bar:g} mm does not go through the spindle, whose "
            f"bore is {through:g} mm.",
            "Leave it out, and saw the bar so that it stands in the chuck.",
        )


def _turning(job: Job, shop: Shop, problems: Problems) -> None:
    """Note work for a turning tool where the shop has none."""
    if shop.tools.turning:
        return
    add = "Add a [[turning_tool]] to the shop file"
    if job.piece.diameter < job.bar.diameter:
        problems.add(
            ("piece", "diameter"),
            f"is {job.piece.diameter:g} mm and has to be turned from {job.bar.diameter:g} mm, "
            "but the shop file has no turning tool.",
            f"{add}, or take a bar of the finished diameter.",
        )
    elif job.piece.chamfer > 0.0:
        problems.add(
            ("piece", "chamfer"),
            "needs a turning tool, and the shop file has none.",
            f"{add}, or leave the chamfer out.",
        )


def _bore(job: Job, shop: Shop, problems: Problems) -> None:
    """Note a bore that neither drill nor boring bar can make."""
    bore, tools = job.piece.bore, shop.tools
    if bore == 0.0:
        return
    drills = _drills_held(tools)
    if not drills:
        problems.add(
            _BORE,
            f"is {bore:g} mm, and there is no drill to begin it.",
            _how_to_drill(tools),
        )
        return
    named = next((one for one in tools.boring if one.name == job.choice.boring_bar), None)
    if named is not None:
        if why := _why_not(named, job.piece, drills):
            problems.add(("tools", "boring_bar"), why, "Choose another, or leave it out.")
        return
    if bore in drills or not all(_why_not(one, job.piece, drills) for one in tools.boring):
        return
    sizes = ", ".join(f"{drill:g}" for drill in sorted(drills, key=lambda one: abs(one - bore))[:2])
    reasons = [f"'{one.name}' {_why_not(one, job.piece, drills)}" for one in tools.boring]
    problems.add(
        _BORE,
        f"is {bore:g} mm: no drill has this size (the nearest: {sizes} mm), and "
        f"{' '.join(reasons) if reasons else 'there is no boring bar.'}",
        "Change the bore to the size of a drill, or add a drill or a [[boring_bar]] to the shop "
        "file.",
    )


def _drills_held(tools: Tools) -> tuple[Millimetres[float], ...]:
    """Return the drills that the tailstock's chuck holds."""
    if tools.drills is None or tools.tailstock is None:
        return ()
    largest = tools.tailstock.largest_drill
    return tuple(drill for drill in tools.drills.diameters if drill <= largest)


def _how_to_drill(tools: Tools) -> str:
    if tools.drills is None:
        return "Add [drills] to the shop file: a hole in a solid bar begins with one."
    if tools.tailstock is None:
        return "Add [tailstock] to the shop file: it is what pushes a drill."
    held = tools.tailstock.largest_drill
    return f"Its drill chuck holds up to {held:g} mm: add smaller drills to the shop file."


def _why_not(bar: BoringBar, piece: Piece, drills: Iterable[Millimetres[float]]) -> str:
    """Return why a boring bar cannot make the bore, empty where it can.

    It needs a drilled hole that it enters and that still leaves something to bore, and it has
    to come out at the far end.
    """
    if bar.smallest_bore >= piece.bore:
        return f"enters {bar.smallest_bore:g} mm, which leaves nothing of {piece.bore:g} to bore."
    if not any(bar.smallest_bore <= drill < piece.bore for drill in drills):
        return (
            f"enters {bar.smallest_bore:g} mm, and there is no drill from that size to under "
            f"{piece.bore:g} mm."
        )
    if bar.reach < piece.length:
        return f"reaches {bar.reach:g} mm, less than the piece of {piece.length:g} mm."
    return ""


def _groove(job: Job, shop: Shop, problems: Problems) -> None:
    """Note a groove that is narrower than every blade."""
    groove = job.piece.groove
    narrowest = min(blade.insert_width for blade in shop.blades)
    if groove is not None and groove.width < narrowest:
        problems.add(
            ("piece", "groove", "width"),
            f"is {groove.width:g} mm, narrower than every blade: the narrowest cuts "
            f"{narrowest:g} mm.",
            "Make it wider, or add a narrower [[blade]] to the shop file.",
        )


def _centre(job: Job, shop: Shop, problems: Problems) -> None:
    """Note a live centre that is not there, or that has no hole to run in."""
    if not job.holding.live_centre:
        return
    tailstock, drills = shop.tools.tailstock, shop.tools.drills
    if tailstock is None or not tailstock.live_centre:
        problems.add(
            _CENTRE,
            "asks for a live centre, and the shop file has none.",
            "Write live_centre = true under [tailstock] of the shop file if there is one, or "
            "false here.",
        )
    elif drills is None or drills.centre_drill is None:
        problems.add(
            _CENTRE,
            "needs a centre hole, and the shop file has no centre drill.",
            'Write centre_drill = "2.5 mm" under [drills] of the shop file, or false here.',
        )
