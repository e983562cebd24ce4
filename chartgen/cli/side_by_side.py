"""Parts of a class made in several processes, handed over in their order, few at a time."""

import os
import signal
import sys
from collections import deque
from collections.abc import Iterator, Sequence
from itertools import islice

from chartgen.class_run import ClassFiles, ClassRun, Part
from chartgen.errors import ChartgenError

MOST_BY_ITSELF = 4
"""Processes taken without being asked for: each wants its share of memory."""
_AHEAD = 1
"""Parts begun beyond one a process, so that none waits for the disk."""

Files = list[tuple[str, bytes]]
_files: ClassFiles | None = None


def processes() -> int:
    """Return how many processes suit this machine."""
    cores = len(os.sched_getaffinity(0)) if sys.platform == "linux" else os.cpu_count() or 1
    return min(cores, MOST_BY_ITSELF)


def made(run: ClassRun, parts: Sequence[Part], jobs: int) -> Iterator[tuple[Part, Files]]:
    """Yield each part with its files, in the order of the parts; never many at once.

    Raises
    ------
    ChartgenError
        If a part cannot be made, or a process is ended from outside.
    """
    if jobs == 1 or len(parts) == 1:
        files = ClassFiles(run)
        for part in parts:
            yield part, list(files.files_of(part))
        return
    from concurrent.futures import Future, ProcessPoolExecutor
    from concurrent.futures.process import BrokenProcessPool
    from multiprocessing import get_context

    # A copy of this process has everything loaded; only Linux makes one safely.
    context = get_context("fork" if sys.platform == "linux" else "spawn")
    count = min(jobs, len(parts))
    pool = ProcessPoolExecutor(count, mp_context=context, initializer=_begin, initargs=(run,))
    waiting: deque[tuple[Part, Future[Files | str]]] = deque()
    ahead = iter(parts)
    try:
        waiting.extend((p, pool.submit(_make, p)) for p in islice(ahead, count + _AHEAD))
        while waiting:
            part, future = waiting.popleft()
            result = future.result()
            if isinstance(result, str):
                raise ChartgenError(result)
            yield part, result
            waiting.extend((p, pool.submit(_make, p)) for p in islice(ahead, 1))
    except BrokenProcessPool:
        raise ChartgenError(
            "one of the processes was ended from outside, as where memory runs short; the same "
            "command goes on from here, with --jobs 1 in a single process."
        ) from None
    finally:
        pool.shutdown(cancel_futures=True)


def _begin(run: ClassRun) -> None:
    global _files  # noqa: PLW0603 - made once in each process, not with each part
    _files = ClassFiles(run)
    # Ctrl-C reaches every process; the first one decides what becomes of it.
    signal.signal(signal.SIGINT, signal.SIG_IGN)
    signal.signal(signal.SIGTERM, signal.SIG_DFL)


def _make(part: Part) -> Files | str:
    """Return the files of a part, or why there are none: not every error survives the way."""
    if _files is None:
        raise RuntimeError("no class was handed over")
    try:
        return list(_files.files_of(part))
    except ChartgenError as error:
        return str(error)
