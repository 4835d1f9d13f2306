"""``python -m tests.fuzz``: mutated rooms and tables, each of which must be read or refused in one sentence."""

from __future__ import annotations

import argparse
import sys
from pathlib import Path

from tests.fuzz.runner import run

parser = argparse.ArgumentParser(prog="python -m tests.fuzz", description=__doc__)
parser.add_argument("--rooms", type=int, default=1000)
parser.add_argument("--tables", type=int, default=200)
parser.add_argument("--seed", type=int, default=1)
parser.add_argument("--keep", type=Path, help="folder for the first file of each fault")
parser.add_argument("--drive", type=float, default=1.0, help="share of the readable files that are drawn as well")
given = parser.parse_args()
tally = run(given.rooms, given.tables, given.seed, given.keep, given.drive)
print("\n".join(tally.lines()))
sys.exit(1 if tally.faults else 0)
