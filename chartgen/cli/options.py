"""Arguments and options that several commands share, and what they read."""

import json
from pathlib import Path
from typing import TYPE_CHECKING, Any

import click

from chartgen.cli.files import read_bytes

if TYPE_CHECKING:
    from chartgen.model.shop import Shop

PDF_BEGINNING = b"%PDF-"
"""How a PDF begins: told here, so that its reader loads only for one."""

shop_argument = click.argument("shop", required=False, type=click.Path(path_type=Path))
json_option = click.option("--json", "as_json", is_flag=True, help="Answer for a machine.")
material_option = click.option(
    "--material", required=True, help="Material key, as `chartgen materials` lists them."
)
tool_option = click.option("--tool", required=True, help="Blade by name or by letter.")
diameter_option = click.option("--diameter", required=True, help='Bar diameter: "25 mm", "1 in".')
bore_option = click.option("--bore", default=None, help="Bore of a tube; solid if left out.")


def read_shop_at(path: Path | None) -> "Shop":
    """Return the shop of a file or a card with its owner's layouts, or the built-in example's."""
    from chartgen import pipeline

    if path is None:
        return pipeline.describe(None, pipeline.EXAMPLE_NAME)
    shop, _ = read_described(path)
    return shop


def read_described(path: Path) -> tuple["Shop", bytes]:
    """Return the shop of a file, or the one a card carries, and the bytes that describe it."""
    content = read_bytes(path)
    if content.startswith(PDF_BEGINNING):
        from chartgen.reprint import open_printed

        printed = open_printed(content, file=str(path))
        return printed.shop, printed.inputs.shop_file
    from chartgen import pipeline

    described = pipeline.describe(content, str(path))
    return with_own_layouts(described, folder=path.parent), content


def with_own_layouts(shop: "Shop", *, folder: Path = Path()) -> "Shop":
    """Return the shop with the layouts read that it asks for by path, from a folder."""
    from chartgen.layout import own_layouts

    paths = [name for name in shop.request.layouts if own_layouts.is_path(name)]
    if not paths:
        return shop
    mend = "check its path; `chartgen layouts` lists those there are"
    files = {name: (str(folder / name), read_bytes(folder / name, mend=mend)) for name in paths}
    return own_layouts.with_own_layouts(shop, files)


def print_json(answer: dict[str, Any]) -> None:
    """Print an answer as JSON."""
    click.echo(json.dumps(answer, indent=2, ensure_ascii=False))
