"""Commands that say what there is: a shop as understood, the example, the data."""

from pathlib import Path

import click

from chartgen.cli.options import print_json, read_shop_at, shop_argument


@click.command()
@shop_argument
def check(shop: Path | None) -> None:
    """Read a shop file and say what is wrong with it, or what was understood."""
    from chartgen import inquiry, pipeline

    described = read_shop_at(shop)
    for line in inquiry.understood(described):
        click.echo(line)
    cards = pipeline.lay_out(
        pipeline.printed_cards(described), own_layouts=described.request.own_layouts
    )
    click.echo(f"{len(cards)} cards, all of which fit their layouts.")


@click.command()
@click.option("--job", is_flag=True, help="A job file instead of a shop file.")
@click.option("--class", "class_", is_flag=True, help="A class file instead of a shop file.")
def example(*, job: bool, class_: bool) -> None:
    """Print the built-in invented shop file, to copy and fill in."""
    if job and class_:
        raise click.UsageError("Ask for one file at a time: --job or --class.")
    if class_:
        from chartgen.description.class_file import example_class_text

        text = example_class_text()
    elif job:
        from chartgen.description.job_file import example_job_text

        text = example_job_text()
    else:
        from chartgen.description.shop_file import example_text

        text = example_text()
    click.echo(text.decode(), nl=False)


@click.command()
def materials() -> None:
    """List the materials, their main data and how far each is trusted."""
    from chartgen.reference.tables import load_material, material_keys
    from chartgen.renderers.listings import render_materials

    click.echo(render_materials([load_material(key) for key in material_keys()]), nl=False)


@click.command()
def sources() -> None:
    """List the publications behind the numbers."""
    from chartgen.reference.tables import load_bibliography
    from chartgen.renderers.listings import render_sources

    click.echo(render_sources(load_bibliography().values()), nl=False)


@click.command()
@click.argument("name", required=False)
@click.option("--schema", is_flag=True, help="The JSON Schema of a layout file, for an editor.")
def layouts(name: str | None, *, schema: bool) -> None:
    """List the layouts; with a NAME, print that one's file to start your own from."""
    from chartgen.errors import RequestError
    from chartgen.layout.layout_file import every_layout_name, layout_text, load_layout
    from chartgen.layout.layout_schema import layout_schema
    from chartgen.renderers.listings import render_layouts
    from chartgen.wording.nearest import nearest_name

    if schema:
        print_json(layout_schema())
    elif name is None:
        click.echo(render_layouts([load_layout(each) for each in every_layout_name()]), nl=False)
    elif name not in every_layout_name():
        raise RequestError(f"layout {name!r} is unknown.{nearest_name(name, every_layout_name())}")
    else:
        click.echo(layout_text(name), nl=False)
