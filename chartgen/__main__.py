"""Start the command line: `chartgen`, or `python -m chartgen`."""

import gc
import os
import sys
from contextlib import suppress


def main() -> None:
    """Run the command line, set up for a short life and a quick end.

    A run makes tens of thousands of objects that live to its end: sweeping for dead ones
    every 700 of them costs a tenth of a cold start and finds none, and taking them apart one
    by one at the end another sixth. Nothing here is linear algebra, so the threads that numpy
    would start for it only cost time.
    """
    gc.set_threshold(50_000)
    os.environ.setdefault("OPENBLAS_NUM_THREADS", "1")
    from chartgen.cli import main as run  # noqa: PLC0415 - only after both are set

    code: object = 0
    try:
        run()
    except SystemExit as leaving:
        code = leaving.code
    with suppress(OSError):
        # A reader that has gone away (a closed pipe) is no fault of the run.
        sys.stdout.flush()
        sys.stderr.flush()
    os._exit(code if isinstance(code, int) else 0)


if __name__ == "__main__":
    main()
