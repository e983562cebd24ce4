"""Which file a fault is told of: its tables, what its example says, a line that shows how."""

from collections.abc import Callable
from typing import NamedTuple

from chartgen.description.example import example_value
from chartgen.description.problems import KeyPath
from chartgen.description.schema import ShopFile
from chartgen.description.tables import Table


class Form(NamedTuple):
    """A kind of TOML file. `line` is one of its lines, for mends that stand for any key."""

    root: type[Table]
    example_value: Callable[[KeyPath], object]
    line: str


SHOP_FORM = Form(ShopFile, example_value, 'power = "550 W"')
