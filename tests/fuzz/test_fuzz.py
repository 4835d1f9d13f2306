"""A small part of ``python -m tests.fuzz``, and whether that would see what it looks for."""

from __future__ import annotations

import json
import random
import subprocess
import sys
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from elevation.errors import BadInput
from elevation.places import demo_rooms
from elevation.room.file import dump_room, load_bytes
from elevation.room.lent import trade_of
from elevation.room.validate import check_rows
from elevation.trade.tables import load_trade
from tests.fuzz.drive import drive, one_sentence
from tests.fuzz.mutate import Pool, mutate_bytes, mutate_room, mutate_table
from tests.fuzz.mutate_rows import Carried
from tests.strategies import rooms

ROOT = Path(__file__).resolve().parents[2]
TRADE = load_trade()
DEMOS = [path.read_bytes() for path in sorted(demo_rooms().glob("*.room.json"))]

_SEES = """
import sys, tempfile, random
from pathlib import Path
from tests.fuzz import runner

def hostile(path, trade):
    if sys.argv[1] == "opens": open("/etc/hostname").close()
    if sys.argv[1] == "runs": __import__("os").system("true")
    if sys.argv[1] == "fetches": __import__("socket").socket().close()
    if sys.argv[1] == "raises": raise KeyError("id")
    if sys.argv[1] == "hangs":
        while True: pass
    if sys.argv[1] == "grows": bytearray(b"x") * 200_000_000
    if sys.argv[1] == "talks": return runner_one("two\\nlines")
    return "refused"

from tests.fuzz.drive import one_sentence
runner_one = lambda text: one_sentence(text, "lines")
runner.read = hostile
runner.MOST_READ_S = 2.0 if sys.argv[1] == "grows" else 0.05
runner.MOST_MB = 250.0
with tempfile.TemporaryDirectory() as folder:
    made = runner.Runner(Path(folder))
    made.room("bytes", b"{}", random.Random(1))
print(sorted(made.tally.faults))
sys.exit(bool(made.tally.faults))
"""


@pytest.mark.slow
@pytest.mark.parametrize(
    ("does", "named"),
    [
        ("nothing", "[]"),
        ("opens", "AssertionError"),
        ("runs", "AssertionError"),
        ("fetches", "AssertionError"),
        ("raises", "KeyError"),
        ("hangs", "TooLong"),
        ("talks", "AssertionError"),
        ("grows", "MemoryError"),
    ],
)
def test_the_runner_sees_what_it_looks_for(does: str, named: str) -> None:
    done = subprocess.run([sys.executable, "-c", _SEES, does], cwd=ROOT, capture_output=True, text=True, check=False)
    assert done.returncode == (does != "nothing"), done.stderr
    assert named in done.stdout


@pytest.mark.slow
def test_mutated_files_are_read_or_refused() -> None:
    command = [sys.executable, "-m", "tests.fuzz", "--rooms", "1000", "--tables", "300", "--seed", "3"]
    done = subprocess.run(command, cwd=ROOT, capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stdout + done.stderr
    print(done.stdout)


@pytest.mark.slow
@settings(max_examples=150)
@given(rooms().map(dump_room) | st.sampled_from(DEMOS), st.integers(1, 4), st.randoms(use_true_random=False))
def test_any_mutation_of_any_room_is_read_or_refused(data: bytes, changes: int, rng: random.Random) -> None:
    pool = Pool([json.loads(DEMOS[0])])
    made = mutate_room(data, pool, rng, changes) if rng.random() < 0.8 else mutate_bytes(data, DEMOS[0], rng, changes)
    try:
        room = load_bytes(made, "my.room.json")
        check_rows(room, trade_of(room, TRADE), "my.room.json")
    except BadInput as error:
        one_sentence(str(error), "my.room.json")
        return
    drive(room, TRADE, rng, every=True)


def test_the_same_seed_makes_the_same_file() -> None:
    pool = Pool([json.loads(data) for data in DEMOS])
    carried = Carried(TRADE)
    table = "id,name\na,b\nc,d\n"
    for make in (
        lambda rng: mutate_room(DEMOS[1], pool, rng, 3),
        lambda rng: mutate_bytes(DEMOS[1], DEMOS[2], rng, 3),
        lambda rng: mutate_table(table, rng, 3),
        lambda rng: carried.mutate(DEMOS[1], rng, 3),
    ):
        assert make(random.Random(5)) == make(random.Random(5))
        assert len({make(random.Random(seed)) for seed in range(20)}) > 10


def test_rows_that_are_sent_unchanged_are_read_and_named() -> None:
    # What the mutator changes nothing of is a good room; else all that it makes would be refused at the first cell.
    carried = Carried(TRADE)
    named = 0
    for seed in range(12):
        made = json.loads(carried.mutate(DEMOS[seed % len(DEMOS)], random.Random(seed), 0))
        rows = made["rows"]
        if sum(len(sent) for sent in rows.values()) > 100:
            continue
        room = load_bytes(json.dumps(made).encode(), "sent.room.json")
        check_rows(room, trade_of(room, TRADE), "sent.room.json")
        named += any(f'"{key}"' in json.dumps(made["walls"]) for sent in rows.values() for key in sent)
    assert named >= 4
