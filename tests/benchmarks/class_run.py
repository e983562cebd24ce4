"""How a class goes: a class of forty cold, a district of thousands in flat memory.

Each run is a process of its own, so that its start counts and its peak of memory is its own:
the largest resident set of the process and of those it starts (getrusage), in MB of 10^6 bytes.
Run it on a quiet machine; the figures are of one run.
"""

import resource
import subprocess
import sys
import tempfile
from pathlib import Path
from time import perf_counter

EXAMPLE = Path(__file__).parents[2] / "output_examples" / "class"
CLASS = """[class]
name = "Invented district"
level = "{level}"
exercises = 8
students = {students}
lathes = ["knob-lathe.toml", "belt-lathe.toml"]
materials = ["mild-steel", "aluminium-6082"]
"""
CORES, COLD_RUNS, WANTED_COLD = 2, 5, 6.0
_CHILD = """
import resource, subprocess, sys
done = subprocess.run([sys.executable, "-m", "chartgen", *sys.argv[1:]], stdout=subprocess.DEVNULL)
print(resource.getrusage(resource.RUSAGE_CHILDREN).ru_maxrss)
sys.exit(done.returncode)
"""


def made(folder: Path, students: int, *, jobs: int, level: str = "second") -> tuple[float, float]:
    """Return seconds and peak memory [MB] of a class made from nothing."""
    for lathe in EXAMPLE.glob("*-lathe.toml"):
        (folder / lathe.name).write_bytes(lathe.read_bytes())
    file = folder / "class.toml"
    file.write_text(CLASS.format(level=level, students=students), "utf-8")
    words = ["class", str(file), "--out", str(folder / "made"), "--jobs", str(jobs)]
    started = perf_counter()
    said = subprocess.run(
        [sys.executable, "-c", _CHILD, *words], check=True, capture_output=True, text=True
    ).stdout
    kilobytes = 1.0 if sys.platform == "linux" else 1 / 1024
    return perf_counter() - started, int(said) * kilobytes * 1.024e-3


def main() -> None:
    """Print the figures."""
    times = []
    for _ in range(COLD_RUNS):
        with tempfile.TemporaryDirectory() as folder:
            times.append(made(Path(folder), 40, jobs=CORES)[0])
    times.sort()
    print(
        f"40 students x 8, {CORES} processes: {times[len(times) // 2]:.2f} s cold "
        f"({times[0]:.2f} to {times[-1]:.2f}), wanted at most {WANTED_COLD:g}"
    )
    for students in (500, 5000):
        for jobs in (1, CORES):
            with tempfile.TemporaryDirectory() as folder:
                seconds, memory = made(Path(folder), students, jobs=jobs)
            print(
                f"{students} students x 8, {jobs} at work: {seconds:.0f} s, "
                f"peak {memory:.0f} MB a process"
            )
    own = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss * 1.024e-3
    print(f"this process itself: {own:.0f} MB")


main()
