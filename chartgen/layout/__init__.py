"""Where each part of a card stands: page sizes, pouches, legibility, boxes; no drawing.

pages        page and pouch sizes
legibility   how large text must be for the distance it is read at
layout_file  the files in layouts/ -> Layout
placed       what a page holds: texts, rules, drawings, in mm from its top left corner
typesetting  widths and wrapping, with a measure the renderer lends
blocks       one file a kind of block: heading, table, legend, cautions...
compose      a card and a layout -> pages
pictograms   the drawn signs; primitives are what they are made of
"""
