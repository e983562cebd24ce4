"""A job beside the shop that is to make it: what the shop lacks, at the job file's lines."""

from collections.abc import Callable
from dataclasses import replace
from pathlib import Path

import pytest

from chartgen.description.job_beside_shop import by_names_of, faults_beside
from chartgen.description.job_file import example_job_text, read_job
from chartgen.model.lathe import ChuckKind
from chartgen.model.shop import Shop
from chartgen.pipeline import known_names

EXAMPLE = example_job_text().decode()
JOBS = sorted((Path(__file__).parents[2] / "output_examples" / "jobs").glob("*.toml"))

ShopOf = Callable[..., Shop]
Change = Callable[[Shop], Shop]


def faults(shop: Shop, *changes: tuple[str, str]) -> list[str]:
    text = EXAMPLE
    for old, new in changes:
        assert old in text
        text = text.replace(old, new, 1)
    job = read_job(text.encode(), file="job.toml", known=known_names())
    found = faults_beside(job, shop, text=text.encode(), file="job.toml")
    lines = text.splitlines()
    for fault in found:
        name = fault.key.rpartition(".")[2]
        assert lines[fault.line - 1].startswith(f"{name} = ")
    return [f"{fault.key}: {fault.problem} {fault.mend}" for fault in found]


def tools(**values: object) -> Change:
    return lambda shop: replace(shop, tools=replace(shop.tools, **values))  # type: ignore[arg-type]


def lathe(**values: object) -> Change:
    return lambda shop: replace(shop, lathe=replace(shop.lathe, **values))  # type: ignore[arg-type]


def drills(**values: object) -> Change:
    def change(shop: Shop) -> Shop:
        assert shop.tools.drills is not None
        return tools(drills=replace(shop.tools.drills, **values))(shop)  # type: ignore[arg-type]

    return change


def same(shop: Shop) -> Shop:
    return shop


def test_the_example_shop_can_make_the_example_job(example: Shop) -> None:
    assert faults(example) == []


@pytest.mark.parametrize("file", JOBS, ids=lambda file: file.stem)
def test_the_example_shop_can_make_the_invented_jobs(example: Shop, file: Path) -> None:
    text = file.read_bytes()
    job = read_job(text, file=file.name, known=known_names())
    assert faults_beside(job, example, text=text, file=file.name) == []


@pytest.mark.parametrize(
    ("change", "old", "new", "message"),
    [
        (
            same,
            '# blade = "2.0 carbide"',
            'blade = "D"',
            (
                "tools.blade: 'D' is no blade of the shop file. There are A '2.0 carbide', B "
                "'3.0 carbide', C '1.6 HSS'; leave it out to let the program choose."
            ),
        ),
        (
            same,
            '# turning_tool = "0.4 carbide"',
            'turning_tool = "0.8 carbide"',
            (
                "tools.turning_tool: '0.8 carbide' is no [[turning_tool]] of the shop file. "
                "There are '0.4 carbide', 'HSS knife'; leave it out to let the program choose."
            ),
        ),
        (
            same,
            '# boring_bar = "8 mm bar"',
            'boring_bar = "9 mm bar"',
            (
                "tools.boring_bar: '9 mm bar' is no [[boring_bar]] of the shop file. There are "
                "'8 mm bar', '12 mm bar'; leave it out to let the program choose."
            ),
        ),
        (
            same,
            'diameter = "30 mm"',
            'diameter = "126 mm"',
            (
                "bar.diameter: is 126 mm, larger than the chuck of 125 mm. Take a thinner bar "
                "or a larger chuck; check size under [lathe.chuck]."
            ),
        ),
        (
            lathe(swing=29.0),
            'diameter = "30 mm"',
            'diameter = "30 mm"',
            (
                "bar.diameter: is 30 mm, but only 29 mm turn over the cross-slide. Take a "
                "thinner bar, or check swing under [lathe] of the shop file."
            ),
        ),
        (
            same,
            'behind = "0 mm"',
            'behind = "100 mm"',
            (
                "bar.behind: is 100 mm, but a bar of 30 mm does not go through the spindle, "
                "whose bore is 26 mm. Leave it out, and saw the bar so that it stands in the "
                "chuck."
            ),
        ),
        (
            tools(turning=()),
            "",
            "",
            (
                "piece.diameter: is 28 mm and has to be turned from 30 mm, but the shop file "
                "has no turning tool. Add a [[turning_tool]] to the shop file, or take a bar "
                "of the finished diameter."
            ),
        ),
        (
            tools(turning=()),
            'diameter = "28 mm"',
            'diameter = "30 mm"',
            (
                "piece.chamfer: needs a turning tool, and the shop file has none. Add a "
                "[[turning_tool]] to the shop file, or leave the chamfer out."
            ),
        ),
        (
            tools(drills=None),
            "",
            "",
            (
                "piece.bore: is 14 mm, and there is no drill to begin it. Add [drills] to the "
                "shop file: a hole in a solid bar begins with one."
            ),
        ),
        (
            tools(tailstock=None),
            "",
            "",
            (
                "piece.bore: is 14 mm, and there is no drill to begin it. Add [tailstock] to "
                "the shop file: it is what pushes a drill."
            ),
        ),
        (
            drills(diameters=(20.0,)),
            "",
            "",
            (
                "piece.bore: is 14 mm, and there is no drill to begin it. Its drill chuck "
                "holds up to 16 mm: add smaller drills to the shop file."
            ),
        ),
        (
            tools(boring=()),
            "",
            "",
            (
                "piece.bore: is 14 mm: no drill has this size (the nearest: 14.5, 13 mm), and "
                "there is no boring bar. Change the bore to the size of a drill, or add a "
                "drill or a [[boring_bar]] to the shop file."
            ),
        ),
        (
            drills(diameters=(6.0, 13.0)),
            'bore = "14 mm"',
            'bore = "10.5 mm"',
            (
                "piece.bore: is 10.5 mm: no drill has this size (the nearest: 13, 6 mm), and "
                "'8 mm bar' enters 10 mm, and there is no drill from that size to under 10.5 "
                "mm. '12 mm bar' enters 14 mm, which leaves nothing of 10.5 to bore. Change "
                "the bore to the size of a drill, or add a drill or a [[boring_bar]] to the "
                "shop file."
            ),
        ),
        (
            same,
            'length = "24 mm"',
            'length = "36 mm"',
            (
                "piece.bore: is 14 mm: no drill has this size (the nearest: 14.5, 13 mm), and "
                "'8 mm bar' reaches 35 mm, less than the piece of 36 mm. '12 mm bar' enters 14 "
                "mm, which leaves nothing of 14 to bore. Change the bore to the size of a "
                "drill, or add a drill or a [[boring_bar]] to the shop file."
            ),
        ),
        (
            same,
            '# boring_bar = "8 mm bar"',
            'boring_bar = "12 mm bar"',
            (
                "tools.boring_bar: enters 14 mm, which leaves nothing of 14 to bore. Choose "
                "another, or leave it out."
            ),
        ),
        (
            same,
            'width = "4 mm"',
            'width = "1.5 mm"',
            (
                "piece.groove.width: is 1.5 mm, narrower than every blade: the narrowest cuts "
                "1.5875 mm. Make it wider, or add a narrower [[blade]] to the shop file."
            ),
        ),
        (
            lambda shop: tools(tailstock=replace(shop.tools.tailstock, live_centre=False))(shop),
            "live_centre = false",
            "live_centre = true",
            (
                "holding.live_centre: asks for a live centre, and the shop file has none. "
                "Write live_centre = true under [tailstock] of the shop file if there is one, "
                "or false here."
            ),
        ),
        (
            drills(centre_drill=None),
            "live_centre = false",
            "live_centre = true",
            (
                "holding.live_centre: needs a centre hole, and the shop file has no centre "
                'drill. Write centre_drill = "2.5 mm" under [drills] of the shop file, or '
                "false here."
            ),
        ),
    ],
)
def test_what_a_shop_lacks_is_told_with_its_mend(
    example: Shop, change: Change, old: str, new: str, message: str
) -> None:
    assert faults(change(example), (old, new)) == [message]


def test_a_piece_without_a_bore_needs_no_tailstock(example: Shop) -> None:
    assert faults(tools(tailstock=None)(example), ('bore = "14 mm"', "")) == []


def test_a_shop_without_boring_bars_cannot_be_asked_for_one(example: Shop) -> None:
    asked = ('# boring_bar = "8 mm bar"', 'boring_bar = "8 mm bar"')
    none = tools(boring=())(example)
    (told,) = faults(none, asked, ('bore = "14 mm"', 'bore = "12 mm"'))
    assert told == (
        "tools.boring_bar: '8 mm bar' is no [[boring_bar]] of the shop file. The shop file has "
        "none: add a [[boring_bar]] there, or leave this line out."
    )


def test_a_collet_is_not_measured_like_a_chuck(example: Shop) -> None:
    collet = replace(example.lathe.chuck, size=20.0, kind=ChuckKind.COLLET)
    assert faults(lathe(chuck=collet)(example)) == []
    scroll = replace(collet, kind=ChuckKind.SCROLL)
    assert len(faults(lathe(chuck=scroll)(example))) == 1


def test_a_bore_of_a_drills_size_needs_no_boring_bar(example: Shop) -> None:
    assert faults(tools(boring=())(example), ('bore = "14 mm"', 'bore = "12 mm"')) == []


def test_a_shop_file_without_tools_is_told_all_that_the_job_needs(shop_of: ShopOf) -> None:
    bare = shop_of("750 W inverter")
    found = faults(bare, ("live_centre = false", "live_centre = true"))
    assert [words.partition(":")[0] for words in found] == [
        "piece.diameter",
        "piece.bore",
        "holding.live_centre",
    ]


@pytest.mark.parametrize(
    ("word", "name"), [("B", "3.0 carbide"), ("1.6 HSS", "1.6 HSS"), ("Z", "Z")]
)
def test_a_blade_may_be_called_by_its_letter(example: Shop, word: str, name: str) -> None:
    text = EXAMPLE.replace('# blade = "2.0 carbide"', f'blade = "{word}"').encode()
    job = read_job(text, file="job.toml", known=known_names())
    assert by_names_of(job, example).choice.blade == name
    nothing = read_job(EXAMPLE.encode(), file="job.toml", known=known_names())
    assert by_names_of(nothing, example) == nothing
