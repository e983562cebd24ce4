"""Run the command line with `python -m chartgen`."""

from chartgen.cli import main

main()
