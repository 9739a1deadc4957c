"""The speed of everything, each figure beside its yardstick of the same run: ``python -m tests.bench [--sizes ...]``.

Sizes are ``shipped`` or a number of made-up taxa. ``--json`` prints the figures as one object. Bases, compiled forms
and bytecode are kept in ``--work`` between runs, so that a second run makes none of them again.
"""

from __future__ import annotations

import argparse
import json
import math
import os
import pty
import select
import shutil
import signal
import statistics
import subprocess
import sys
import time
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from assistant.graph.locate import shipped_ontology
from tests.bench.made_up_base import make_base

ROOT = Path(__file__).resolve().parents[2]
RUN = "from assistant.cli.main import run; run()"
READY = b"tell>"
SIZES = ("shipped", "1000", "10000")
BUDGETS: dict[str, tuple[float, float, float]] = {
    "cold contrast, over interpreter start (ms)": (80, 90, 110),
    "cold identify, over interpreter start (ms)": (160, 180, 220),
    "prompt ready, over interpreter start (ms)": (250, 260, 280),
    "warm turn, median (ms)": (8, 10, 25),
    "warm turn, 95th percentile (ms)": (25, 30, 60),
    "answer, rank, next question (ms)": (1, 2, 5),
    "build of the compiled form (s)": (3, 6, 45),
    "memory of the build (MB)": (2000, 2000, 2000),
    "rebuild after one genus changed (s)": (0.5, 0.6, 2),
    "memory of a warm conversation (MB)": (90, 120, 250),
    "edit of one statement (ms)": (50, 60, 100),
}
"""Budgets for a quiet machine on which an interpreter starts in 7.5 ms, by size: shipped, 1,000, 10,000 taxa."""
QUIET_START = 7.5


@dataclass(frozen=True, slots=True)
class Figure:
    """A measured figure, its yardstick of the same run, and the budget."""

    row: str
    size: str
    value: float
    yardstick: str
    beside: float | None
    budget: float | None


class Bench:
    """One run: where things are kept, and the figures so far."""

    def __init__(self, work: Path, runs: int, cpu: bool = False) -> None:
        self.work = work
        self.cpu = cpu
        self.runs = runs
        self.figures: list[Figure] = []
        self.start = 0.0
        self.env = {
            **os.environ,
            "TELLFIN_CACHE": str(work / "cache"),
            "PYTHONPATH": str(ROOT),
            "TERM": "xterm",
            "PYTHONPYCACHEPREFIX": str(work / "bytecode"),
            "HOME": str(work / "home"),
        }
        self.env["OPENBLAS_NUM_THREADS"] = "1"
        for name in ("PYTHONDONTWRITEBYTECODE", "TELLFIN_BASE", "PYTHONUNBUFFERED", "BENCH_CPU"):
            self.env.pop(name, None)
        if cpu:
            self.env["BENCH_CPU"] = "1"

    def add(self, row: str, size: str, value: float, yardstick: str = "", beside: float | None = None) -> None:
        """Note a figure and show it at once on the error stream."""
        at = {"shipped": 0, "1000": 1, "10000": 2}.get(size)
        budget = BUDGETS[row][at] if at is not None and row in BUDGETS else None
        self.figures.append(Figure(row, size, value, yardstick, beside, budget))
        print(f"  {row}, {size}: {value:.2f}", file=sys.stderr)

    def base_of(self, size: str) -> Path:
        """The folder of a base, made where it is missing; the shipped one is copied, since a bench changes it."""
        folder = self.work / "bases" / size
        if size != "shipped":
            return make_base(folder, int(size))
        shutil.rmtree(folder, ignore_errors=True)
        return shutil.copytree(shipped_ontology(), folder)

    def process(self, *args: str) -> float:
        """Median wall time (ms) of a Python process, after one that fills the caches."""
        taken = []
        for number in range(self.runs + 1):
            start = time.perf_counter()
            child = subprocess.Popen(
                [sys.executable, *args], env=self.env, stdin=subprocess.DEVNULL, stdout=subprocess.DEVNULL
            )
            _, status, used = os.wait4(child.pid, 0)
            child.returncode = os.waitstatus_to_exitcode(status)
            if child.returncode:
                raise subprocess.CalledProcessError(child.returncode, args)
            spent = used.ru_utime + used.ru_stime if self.cpu else time.perf_counter() - start
            taken += [spent * 1e3] if number else []
        return statistics.median(taken)

    def worker(self, what: str, folder: Path) -> dict[str, Any]:
        """Figures measured in a process of their own."""
        done = subprocess.run(
            [sys.executable, "-m", "tests.bench.worker", what, str(folder), str(self.work / "cache")],
            env=self.env,
            cwd=ROOT,
            capture_output=True,
            text=True,
            check=True,
        )
        found: dict[str, Any] = json.loads(done.stdout.splitlines()[-1])
        return found

    def prompt(self, folder: Path) -> float:
        """Median time (ms) until a prompt on a terminal waits for its first line."""
        taken = [prompt_ready(self.env, folder, self.cpu) for _ in range(self.runs + 1)][1:]
        return statistics.median(taken)

    def size(self, size: str) -> None:
        """All rows for one base."""
        folder = self.base_of(size)
        built = self.worker("build", folder)
        parsed = self.worker("parse", folder)["seconds"] if size != "10000" else None
        self.add("build of the compiled form (s)", size, built["seconds"], "rdflib parse of the same files", parsed)
        self.add("memory of the build (MB)", size, built["resident"])
        self.add(
            "rebuild after one genus changed (s)",
            size,
            self.worker("rebuild", folder)["seconds"],
            "full build",
            built["seconds"],
        )
        lines = self.worker("lines", folder)
        asked = ("-c", RUN, "ask", "--base", str(folder))
        self.add(
            "cold contrast, over interpreter start (ms)",
            size,
            self.process(*asked, lines["contrast"]) - self.start,
            "interpreter start",
            self.start,
        )
        self.add(
            "cold identify, over interpreter start (ms)",
            size,
            self.process(*asked, lines["identify"]) - self.start,
            "import of numpy + rapidfuzz",
            self.process("-c", "import numpy, rapidfuzz") - self.start,
        )
        self.add(
            "prompt ready, over interpreter start (ms)",
            size,
            self.prompt(folder) - self.start,
            "import of prompt_toolkit",
            self.process("-c", "import prompt_toolkit") - self.start,
        )
        warm, score = self.worker("warm", folder), self.worker("score", folder)
        self.add("warm turn, median (ms)", size, warm["median"])
        self.add("warm turn, 95th percentile (ms)", size, warm["95th"])
        self.add("answer, rank, next question (ms)", size, score["median"])
        self.add("of that, answer and rank (ms)", size, score["rank"], "CategoricalNB.predict_proba",
                 score["classifier"])
        self.add("memory of a warm conversation (MB)", size, warm["resident"])
        checked = self.worker("check", folder)["seconds"] * 1e3 if size != "10000" else None
        self.add("edit of one statement (ms)", size, self.worker("edit", folder)["median"],
                 "full validation, shapes by pyshacl on the shipped base only", checked)


def prompt_ready(env: dict[str, str], folder: Path, cpu: bool) -> float:
    """Milliseconds from the start of a process on a terminal of its own until it shows its mark, NaN if never."""
    start = time.perf_counter()
    child, terminal = pty.fork()
    if child == 0:
        os.execve(sys.executable, [sys.executable, "-c", RUN, "--base", str(folder)], env)
    seen, taken = b"", math.nan
    while time.perf_counter() - start < 30:
        if select.select([terminal], [], [], 0.5)[0]:
            try:
                seen += os.read(terminal, 4096)
            except OSError:
                break
            if b"\x1b[6n" in seen:
                os.write(terminal, b"\x1b[1;1R")
                seen = seen.replace(b"\x1b[6n", b"")
            if READY in seen:
                taken = (time.perf_counter() - start) * 1e3
                break
    os.kill(child, signal.SIGKILL)
    used = os.wait4(child, 0)[2]
    os.close(terminal)
    return (used.ru_utime + used.ru_stime) * 1e3 if cpu and not math.isnan(taken) else taken


def exponent(figures: list[Figure], row: str) -> float | None:
    """The fitted power of growth with the number of made-up taxa; None for fewer than two sizes."""
    points = [(math.log(int(f.size)), math.log(f.value)) for f in figures if f.row == row and f.size.isdigit()]
    if len(points) < 2:
        return None
    x, y = (sum(p[i] for p in points) / len(points) for i in (0, 1))
    return sum((a - x) * (b - y) for a, b in points) / sum((a - x) ** 2 for a, _ in points)


def table(bench: Bench) -> str:
    """The figures as a table, with budgets scaled to how fast this machine starts an interpreter now."""
    scale = bench.start / QUIET_START
    lines = [
        f"interpreter start {bench.start:.1f} ms ({scale:.2f} of a quiet {QUIET_START} ms); medians of "
        f"{'processor' if bench.cpu else 'wall'} time",
        f"{'what':45}{'base':>9}{'measured':>11}{'budget':>9}{'of it':>8}  yardstick",
    ]
    for f in bench.figures:
        slower = 1.0 if "MB" in f.row else scale
        share = f"{f.value / (f.budget * slower):.0%}" if f.budget else ""
        beside = f"{f.yardstick}: {f.beside:.2f}" if f.beside is not None else ""
        lines.append(f"{f.row:45}{f.size:>9}{f.value:11.2f}{f.budget or 0:9.1f}{share:>8}  {beside}")
    for row in ("warm turn, median (ms)", "answer, rank, next question (ms)"):
        if (power := exponent(bench.figures, row)) is not None:
            lines.append(f"growth of '{row}' with the number of taxa: power {power:.2f}")
    return "\n".join(lines)


def main() -> None:
    """Measure and print."""
    parser = argparse.ArgumentParser(prog="python -m tests.bench", description=__doc__.splitlines()[0])
    parser.add_argument("--sizes", nargs="+", default=list(SIZES), help="shipped, or numbers of made-up taxa")
    parser.add_argument("--runs", type=int, default=9, help="cold processes a figure is the median of")
    parser.add_argument(
        "--work", type=Path, default=Path("/tmp/tellfin-bench"), help="folder for what is made on the way"
    )
    parser.add_argument(
        "--cpu", action="store_true", help="time of the processor instead of wall time, for a busy machine"
    )
    parser.add_argument("--json", action="store_true", help="print the figures as JSON")
    args = parser.parse_args()
    bench = Bench(args.work, args.runs, args.cpu)
    bench.start = bench.process("-c", "pass")
    for size in args.sizes:
        bench.size(size)
        bench.start = statistics.median((bench.start, bench.process("-c", "pass")))
    if args.json:
        rows = [{name: getattr(f, name) for name in Figure.__slots__} for f in bench.figures]
        print(json.dumps({"interpreter start": bench.start, "figures": rows}, indent=1))
    else:
        print(table(bench))


if __name__ == "__main__":
    main()
