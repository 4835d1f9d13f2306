"""Linear and whole-number programmes, solved by HiGHS. The one module that knows the solver."""

from __future__ import annotations

from collections.abc import Callable, Sequence

import numpy as np
from msgspec import Struct
from numpy.typing import NDArray

NO_END = float("inf")


class Programme(Struct, frozen=True):
    """Least ``costs`` of columns that are never negative, each row between its ``low`` and ``high``.

    ``entries`` are (row, column, value), in any order, each place at most once.
    """

    costs: Sequence[float]
    low: Sequence[float]
    high: Sequence[float]
    entries: Sequence[tuple[int, int, float]]


class Solved(Struct, frozen=True):
    """The columns, the price of each row (of the relaxation), and the bound on the cost of any solution."""

    columns: tuple[float, ...]
    prices: tuple[float, ...]
    cost: float
    bound: float


def minimise(
    programme: Programme,
    *,
    is_whole: bool,
    seconds: float | None = None,
    enough: float | None = None,
    is_cancelled: Callable[[], bool] = lambda: False,
) -> Solved | None:
    """Solve it.

    Parameters
    ----------
    programme : Programme
    is_whole : bool
        Whole columns only; else they may be parts, and rows have prices.
    seconds : float, optional
        At most so long; the best found by then is returned.
    enough : float, optional
        A solution of that cost is taken without looking for a cheaper one.
    is_cancelled : callable
        Asked while whole columns are looked for.

    Returns
    -------
    Solved or None
        None where nothing was found.
    """
    # Loaded where it is needed: it takes longer than everything that a check of a room loads.
    import highspy

    columns, rows = len(programme.costs), len(programme.low)
    model = highspy.HighsLp()
    model.num_col_, model.num_row_ = columns, rows
    model.col_cost_ = np.asarray(programme.costs, dtype=float)
    model.col_lower_ = np.zeros(columns)
    model.col_upper_ = np.full(columns, highspy.kHighsInf)
    model.row_lower_ = np.asarray(programme.low, dtype=float)
    model.row_upper_ = np.asarray(programme.high, dtype=float)
    start, index, value = _by_column(programme.entries, columns)
    model.a_matrix_.format_ = highspy.MatrixFormat.kColwise
    model.a_matrix_.start_, model.a_matrix_.index_, model.a_matrix_.value_ = start, index, value
    if is_whole:
        model.integrality_ = [highspy.HighsVarType.kInteger] * columns

    solver = highspy.Highs()  # type: ignore[no-untyped-call]
    solver.setOptionValue("output_flag", False)
    # One thread and one seed: the same task has the same answer.
    solver.setOptionValue("threads", 1)
    solver.setOptionValue("random_seed", 1)
    if seconds is not None:
        solver.setOptionValue("time_limit", seconds)
    if enough is not None:
        solver.setOptionValue("objective_target", enough)
    if is_whole:
        solver.cbMipInterrupt.subscribe(lambda event: event.interrupt(is_cancelled()))
    solver.passModel(model)
    solver.run()
    found = solver.getSolution()
    info = solver.getInfo()
    is_best = solver.getModelStatus() == highspy.HighsModelStatus.kOptimal
    # The solver gives up on its own only where its time ends.
    if not found.value_valid or not (is_whole or is_best):  # pragma: no cover
        return None
    values = tuple(float(one) for one in found.col_value)
    prices = tuple(float(one) for one in found.row_dual)
    cost = float(info.objective_function_value)
    return Solved(values, prices, cost, float(info.mip_dual_bound) if is_whole else cost)


def _by_column(
    entries: Sequence[tuple[int, int, float]], columns: int
) -> tuple[NDArray[np.int32], NDArray[np.int32], NDArray[np.float64]]:
    table = np.array(entries, dtype=float).reshape(-1, 3)
    table = table[np.lexsort((table[:, 0], table[:, 1]))]
    start = np.searchsorted(table[:, 1], np.arange(columns + 1))
    return start.astype(np.int32), table[:, 0].astype(np.int32), table[:, 2].copy()
