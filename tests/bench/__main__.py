"""Print one table of ratios, and write it as JSON where asked.

``python -m tests.bench [--short] [--json FILE]``. Nothing here passes or fails.
"""

from __future__ import annotations

import argparse
import sys
import tempfile
from pathlib import Path

import msgspec

from elevation.trade.tables import load_trade
from elevation.window.start import make_app
from tests.bench import cut_list, desk, engine, hitch, house, memory, papers, start
from tests.bench.timing import Row


def main() -> None:
    """Run every row and print the table."""
    reader = argparse.ArgumentParser(prog="python -m tests.bench")
    reader.add_argument("--short", action="store_true", help="fewer runs")
    reader.add_argument("--json", type=Path, help="also write the table to this file")
    given = reader.parse_args()
    runs, moves = (15, 24) if given.short else (60, desk.MOVES)
    make_app()
    trade = load_trade()
    rows: list[Row] = []
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name)
        rows += desk.drag(4, trade, folder, 1.5, moves)
        rows += desk.drag(40, trade, folder, 1.5, moves)
        rows.append(desk.zoom(trade, folder, runs))
        rows.append(desk.picture_weight(trade, folder, runs))
        rows.append(engine.scaling(trade, runs))
        rows.append(engine.weight(trade, runs))
        rows.append(papers.paper(trade, max(runs // 3, 5)))
        rows.append(start.start(5 if given.short else 15, folder / "compiled"))
        for count in (4, 40):
            rows += hitch.hitches(count, trade, folder, 200 if given.short else 2000)
        if sys.platform == "linux":
            rows.append(memory.memory(folder))
            rows += house.house(20 if given.short else house.ROOMS)
        rows.append(cut_list.cut_list(5 if given.short else cut_list.INSTANCES))
    print(f"{'row':<34}{'ours ms':>9}{'ref ms':>9}{'ratio':>8}{'p95':>8}{'at most':>9}")
    for row in rows:
        p95 = f"{row.p95:8.2f}" if row.p95 is not None else " " * 8
        print(f"{row.name:<34}{row.work_ms:9.2f}{row.reference_ms:9.2f}{row.ratio:8.2f}{p95}{row.at_most:9.1f}  {row.note}")
    if given.json is not None:
        table = [msgspec.structs.asdict(row) | {"ratio": row.ratio} for row in rows]
        given.json.write_bytes(msgspec.json.format(msgspec.json.encode(table), indent=2) + b"\n")


if __name__ == "__main__":
    main()
