"""Commands that ask about one cut."""

from pathlib import Path

import click

from chartgen.cli.options import (
    bore_option,
    diameter_option,
    json_option,
    material_option,
    print_json,
    read_shop_at,
    shop_argument,
    tool_option,
)


@click.command(name="try")
@shop_argument
@material_option
@tool_option
@diameter_option
@bore_option
@click.option("--speed", required=True, help='Spindle speed: "1000 rpm".')
@click.option("--feed", required=True, help='Feed: "0.05 mm/rev", "0.002 in/rev".')
@json_option
def try_cut(
    shop: Path | None,
    material: str,
    tool: str,
    diameter: str,
    bore: str | None,
    speed: str,
    feed: str,
    *,
    as_json: bool,
) -> None:
    """Say whether a cut is inside the window, and if not, what to change."""
    from chartgen import inquiry
    from chartgen.wording.answers import cut_answer

    described = read_shop_at(shop)
    request = inquiry.cut_request(
        described,
        material=material,
        tool=tool,
        diameter=diameter,
        bore=bore,
        speed=speed,
        feed=feed,
    )
    answer = inquiry.try_cut(described, request)
    if as_json:
        print_json(cut_answer(described, answer.cut, answer.windows, answer.advice))
    else:
        click.echo(f"{answer.cut.side.value.upper()}\n{answer.advice}")


@click.command()
@shop_argument
@material_option
@tool_option
@diameter_option
@bore_option
@json_option
def explain(
    shop: Path | None, material: str, tool: str, diameter: str, bore: str | None, *, as_json: bool
) -> None:
    """Show how the numbers of one cell come about, step by step, with every source."""
    from chartgen import inquiry
    from chartgen.renderers.explanation_text import render_explanation
    from chartgen.wording.answers import cut_answer, explanation_answer

    described = read_shop_at(shop)
    request = inquiry.cut_request(
        described, material=material, tool=tool, diameter=diameter, bore=bore
    )
    answer = inquiry.explain_cell(described, request)
    if as_json:
        numbers = cut_answer(described, answer.cut, answer.windows, answer.advice)
        print_json(numbers | explanation_answer(answer.explanation))
    else:
        click.echo(render_explanation(answer.explanation), nl=False)
