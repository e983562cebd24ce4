"""How a fault of a layout file is mended: by the keys and lines of a shipped one.

Loaded for the first layout file that has a fault.
"""

from chartgen.description.forms import Form
from chartgen.layout.layout_file import example_value
from chartgen.layout.layout_schema import LayoutTable

LAYOUT_FORM = Form(LayoutTable, example_value, 'page = "A5 landscape"')
