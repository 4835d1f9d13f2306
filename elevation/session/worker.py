"""One worker thread for what may take longer than a frame: autosave, exports, cut lists, proposals.

Jobs get frozen values only, so no lock guards the room. Of each kind of job only the newest waits; an older one
that has not begun is forgotten, and one that is running is told by its event to stop.
"""

from __future__ import annotations

from collections.abc import Callable
from threading import Condition, Event, Thread

from msgspec import Struct

Job = Callable[[Event], object]
"""``(cancelled) -> result``; a long job looks at the event now and then and may return early."""


class Done(Struct, frozen=True):
    """What became of a job: its kind and generation, and its result or the exception that ended it."""

    kind: str
    generation: int
    result: object = None
    error: BaseException | None = None


class _Waiting:
    """A job that waits or runs, with the event that tells it to stop."""

    def __init__(self, kind: str, generation: int, job: Job, on_done: Callable[[Done], None] | None) -> None:
        self.kind = kind
        self.generation = generation
        self.job = job
        self.on_done = on_done
        self.cancelled = Event()


class Worker:
    """A thread that runs the newest job of each kind.

    ``on_done`` callbacks are called on the worker's thread; a window passes them on to its own.
    """

    def __init__(self) -> None:
        self._condition = Condition()
        self._waiting: dict[str, _Waiting] = {}
        self._running: _Waiting | None = None
        self._generation = 0
        self._is_closed = False
        self._thread: Thread | None = None

    def submit(self, kind: str, job: Job, on_done: Callable[[Done], None] | None = None) -> int:
        """Queue ``job``; an older job of the same ``kind`` is forgotten or told to stop.

        Returns
        -------
        int
            The job's generation, which its ``Done`` carries; results with an older one are stale.
        """
        with self._condition:
            self._generation += 1
            if self._running is not None and self._running.kind == kind:
                self._running.cancelled.set()
            # Taken out first so that the newest stands last and kinds are served in order of asking.
            self._waiting.pop(kind, None)
            self._waiting[kind] = _Waiting(kind, self._generation, job, on_done)
            if self._thread is None:
                # Started with the first job: opening a session costs no thread.
                self._thread = Thread(target=self._run, name="elevation-worker", daemon=True)
                self._thread.start()
            self._condition.notify_all()
            return self._generation

    def cancel(self, kind: str) -> None:
        """Forget the waiting job of ``kind`` and tell the running one to stop."""
        with self._condition:
            self._waiting.pop(kind, None)
            if self._running is not None and self._running.kind == kind:
                self._running.cancelled.set()
            self._condition.notify_all()

    def settle(self, kind: str) -> None:
        """Forget the waiting job of ``kind`` and wait until none of it runs; jobs of other kinds go on."""
        with self._condition:
            self._waiting.pop(kind, None)
            self._condition.notify_all()
            self._condition.wait_for(lambda: self._running is None or self._running.kind != kind)

    def wait(self, timeout_s: float | None = None) -> bool:
        """Wait until nothing waits or runs; False when ``timeout_s`` passed first."""
        with self._condition:
            return self._condition.wait_for(lambda: not self._waiting and self._running is None, timeout_s)

    def close(self) -> None:
        """Finish what waits, then end the thread; later jobs are not run."""
        with self._condition:
            self._is_closed = True
            self._condition.notify_all()
            thread = self._thread
        if thread is not None:
            thread.join()

    def _next(self) -> _Waiting | None:
        with self._condition:
            self._condition.wait_for(lambda: bool(self._waiting) or self._is_closed)
            if not self._waiting:
                return None
            self._running = self._waiting.pop(next(iter(self._waiting)))
            return self._running

    def _run(self) -> None:
        while (waiting := self._next()) is not None:
            try:
                done = Done(waiting.kind, waiting.generation, waiting.job(waiting.cancelled))
            except Exception as error:  # whatever ends a job belongs to who asked for it
                done = Done(waiting.kind, waiting.generation, error=error)
            try:
                if waiting.on_done is not None and not waiting.cancelled.is_set():
                    waiting.on_done(done)
            finally:
                with self._condition:
                    self._running = None
                    self._condition.notify_all()
