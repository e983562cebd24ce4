"""Start the command line: `chartgen`, or `python -m chartgen`."""

import gc
import os


def main() -> None:
    """Run the command line, set up for a short life.

    A run makes tens of thousands of objects that live to its end; sweeping for dead ones
    every 700 of them costs a tenth of a cold start and finds none. Nothing here is linear
    algebra, so the threads that numpy would start for it only cost time.
    """
    gc.set_threshold(50_000)
    os.environ.setdefault("OPENBLAS_NUM_THREADS", "1")
    from chartgen.cli import main as run  # noqa: PLC0415 - only after both are set

    run()


if __name__ == "__main__":
    main()
