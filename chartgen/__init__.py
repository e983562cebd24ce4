"""chartgen: parting-off cards for one particular lathe.

The package reads as one run, a folder a stage; imports only go down this list.

cli         the commands; the only place that prints or exits; files written whole or not at all
class_run   a class: sheets, cards and keys of its students, batch by batch
marking_run a key and a file of answers -> the marks of a class
pipeline    the whole run on one page
card_kinds  which cards a shop asks for, each kind with what it is made of
carrying    what a card carries of its making: the shop file, and which card of it this is
inquiry     one cell asked about: try, explain, check
reprint     a printed card's file -> the card again; whether it still holds
sheet_run   several cards on sheets of paper
renderers   pages and tables -> PDF, terminal text, CSV, JSON
layout      page sizes, pouches, boxes; the files in layouts/ -> placed text
wording     numbers -> text, once: marks, legends, cautions, explanations
charts      a question answered over a grid of materials, blades and diameters
learning    the owner's readings -> measured values, or why not yet
lessons     exercises for a class, with their answers and the mistakes they invite
planning    a job and a shop -> the steps of making it, in order, with their numbers
limits      where the described machine meets the formulas: the window, the choice
description shop and job files -> model, all faults at once
reference   published data, a source on every number
model       what is described: lathe, motor, blades, materials
physics     pure formulas on floats and arrays
units       text with a unit -> float; the only place that may ask pint
sources     where a number comes from and how far it is trusted
quantities  the unit of a number, written once
errors      what can be wrong, said so that it can be mended
"""

__version__ = "0.1.0"
