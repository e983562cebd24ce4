"""Arguments and options that several commands share, and what they read."""

import json
from pathlib import Path
from typing import TYPE_CHECKING, Any

import click

from chartgen.cli.files import read_bytes

if TYPE_CHECKING:
    from chartgen.model.shop import Shop

shop_argument = click.argument("shop", required=False, type=click.Path(path_type=Path))
json_option = click.option("--json", "as_json", is_flag=True, help="Answer for a machine.")
material_option = click.option(
    "--material", required=True, help="Material key, as `chartgen materials` lists them."
)
tool_option = click.option("--tool", required=True, help="Blade by name or by letter.")
diameter_option = click.option("--diameter", required=True, help='Bar diameter: "25 mm", "1 in".')
bore_option = click.option("--bore", default=None, help="Bore of a tube; solid if left out.")


def read_shop_at(path: Path | None) -> "Shop":
    """Return the shop of a file, or the built-in example's where none is given."""
    from chartgen import pipeline

    if path is None:
        return pipeline.describe(None, pipeline.EXAMPLE_NAME)
    return pipeline.describe(read_bytes(path), str(path))


def print_json(answer: dict[str, Any]) -> None:
    """Print an answer as JSON."""
    click.echo(json.dumps(answer, indent=2, ensure_ascii=False))
