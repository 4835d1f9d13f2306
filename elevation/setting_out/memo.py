"""Two small keepers that let a drag recompute only what changed."""

from __future__ import annotations

from collections.abc import Callable
from typing import Generic, ParamSpec, TypeVar

P = ParamSpec("P")
R = TypeVar("R")
V = TypeVar("V")


class Memo(Generic[P, R]):
    """A function that remembers its last two calls and compares arguments with ``is``.

    Two, so that going back and forth between a candidate and the committed room costs nothing.

    Parameters
    ----------
    function : callable
        Called with positional arguments only; it must depend on nothing else.

    Attributes
    ----------
    calls : int
        How often the function really ran.
    """

    __slots__ = ("_function", "_kept", "calls")

    def __init__(self, function: Callable[P, R]) -> None:
        self._function = function
        self._kept: tuple[tuple[tuple[object, ...], R], ...] = ()
        self.calls = 0

    def __call__(self, *args: P.args, **kwargs: P.kwargs) -> R:
        """The function's value, remembered where every argument is one of the last two calls'."""
        kept = self._kept
        for known, value in kept:
            if len(known) != len(args):
                continue
            for a, b in zip(known, args):  # noqa: B905 - this runs for every part of a wall on every frame
                if a is not b:
                    break
            else:
                return value
        value = self._function(*args, **kwargs)
        self.calls += 1
        # One assignment: a reader in another thread sees the old pair or the new one, never half of each.
        self._kept = ((args, value), *kept[:1])
        return value


class Same(Generic[V]):
    """Hands back the value it had before where the new one is equal to it, so that identity tells what changed."""

    __slots__ = ("_kept",)

    def __init__(self) -> None:
        self._kept: tuple[V, ...] = ()

    def keep(self, value: V) -> V:
        """The equal one of the last two values, else ``value``, which is kept."""
        kept = self._kept
        for known in kept:
            if known is value or known == value:
                return known
        self._kept = (value, *kept[:1])
        return value
