"""The cut list against a plain arc-flow model given to the solver as it is, both to the proven optimum."""

from __future__ import annotations

import random
from collections import Counter
from functools import partial
from itertools import pairwise

import highspy
import numpy as np

from elevation.planning.cutting.model import Piece, Stock
from elevation.planning.cutting.whole import cut
from tests.bench.timing import Row, once

INSTANCES = 25
PIECES = 200
LENGTHS = 12
BAR_IN = 120
GRAIN_MM = 25.4 / 16
LONGEST_S = 60.0


def lengths_of(seed: int) -> list[int]:
    """200 pieces of 12 lengths, in sixteenths of an inch, from 10 in to 60 in."""
    chance = random.Random(seed)
    sizes = chance.sample(range(10 * 16, 60 * 16 + 1), LENGTHS)
    return sizes + chance.choices(sizes, k=PIECES - LENGTHS)


def bars_of_cut(lengths: list[int]) -> int:
    """Bars that the program's own cut list buys; an error where it could not prove that fewer do not suffice."""
    pieces = [Piece(str(number), length * GRAIN_MM) for number, length in enumerate(lengths)]
    plan = cut(pieces, [Stock("bar", BAR_IN * 25.4)], 0.0, GRAIN_MM, seconds=LONGEST_S)
    if not plan.is_proven:
        raise RuntimeError(f"the cut list stopped at {plan.cost} bars, with no more than {plan.bound} proven")
    return len(plan.bars)


def bars_of_flow(lengths: list[int]) -> int:
    """Bars of the plain arc-flow model: every place along the bar, every length from every place, waste by single steps.

    J. M. Valerio de Carvalho, Annals of Operations Research 86 (1999), 629-659, without any of its reductions but the one
    that places are sums of lengths.
    """
    room, wanted = BAR_IN * 16, Counter(lengths)
    places = _sums(sorted(wanted), room)
    row_of = {place: row for row, place in enumerate(places)}
    sizes = sorted(wanted)
    arcs = [(a, a + size, number) for number, size in enumerate(sizes) for a in places if a + size in row_of]
    arcs += [(a, b, -1) for a, b in pairwise(places)]
    solver = highspy.Highs()  # type: ignore[no-untyped-call]
    for option, value in (("output_flag", False), ("threads", 1), ("random_seed", 1), ("time_limit", LONGEST_S)):
        solver.setOptionValue(option, value)
    solver.passModel(_model(arcs, row_of, [wanted[size] for size in sizes], room))
    solver.run()
    if solver.getModelStatus() != highspy.HighsModelStatus.kOptimal:
        raise RuntimeError("the plain model was not solved in time")
    return round(solver.getInfo().objective_function_value)


def _sums(sizes: list[int], room: int) -> list[int]:
    reached = {0}
    for place in range(room + 1):
        if place in reached:
            reached.update(place + size for size in sizes if place + size <= room)
    return sorted(reached | {room})


def _model(arcs: list[tuple[int, int, int]], row_of: dict[int, int], wanted: list[int], room: int) -> highspy.HighsLp:
    """One whole column an arc and one for the bars; a row a place (what comes in goes out), then a row a length."""
    first, inf = len(row_of), highspy.kHighsInf
    starts, index, value = [0], [], []
    for a, b, size in arcs:
        index += [row_of[a], row_of[b]] + ([first + size] if size >= 0 else [])
        value += [-1.0, 1.0] + ([1.0] if size >= 0 else [])
        starts.append(len(index))
    index += [row_of[0], row_of[room]]
    value += [1.0, -1.0]
    starts.append(len(index))
    model = highspy.HighsLp()
    model.num_col_, model.num_row_ = len(arcs) + 1, first + len(wanted)
    model.col_cost_ = np.array([0.0] * len(arcs) + [1.0])
    model.col_lower_, model.col_upper_ = np.zeros(len(arcs) + 1), np.full(len(arcs) + 1, inf)
    model.row_lower_ = np.array([0.0] * first + [float(count) for count in wanted])
    model.row_upper_ = np.array([0.0] * first + [inf] * len(wanted))
    model.a_matrix_.format_ = highspy.MatrixFormat.kColwise
    model.a_matrix_.start_ = np.array(starts, dtype=np.int32)
    model.a_matrix_.index_ = np.array(index, dtype=np.int32)
    model.a_matrix_.value_ = np.array(value)
    model.integrality_ = [highspy.HighsVarType.kInteger] * (len(arcs) + 1)
    return model


def cut_list(instances: int = INSTANCES) -> Row:
    """The sum of the times of both over the same tasks; both must need as many bars."""
    ours = theirs = 0.0
    bars = 0
    for seed in range(instances):
        lengths = lengths_of(seed)
        found: list[int] = []
        ours += once(partial(_keep, found, bars_of_cut, lengths))
        theirs += once(partial(_keep, found, bars_of_flow, lengths))
        if found[0] != found[1]:
            raise RuntimeError(f"task {seed}: the cut list needs {found[0]} bars, the plain model {found[1]}")
        bars += found[0]
    return Row("cut list", ours, theirs, 1.0, None, f"sums over {instances} tasks, {bars} bars each way, all proven")


def _keep(found: list[int], solve: object, lengths: list[int]) -> None:
    assert callable(solve)
    found.append(solve(lengths))
