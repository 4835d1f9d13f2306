"""The worker: one thread, the newest job of a kind, generations, and an event to stop."""

from __future__ import annotations

import threading

import pytest

from elevation.session.worker import Done, Worker

WAIT_S = 10.0


@pytest.fixture
def worker():
    made = Worker()
    yield made
    made.close()


class Gate:
    """A job that waits until it is let go."""

    def __init__(self) -> None:
        self.begun = threading.Event()
        self.go = threading.Event()
        self.saw_cancel = False

    def __call__(self, cancelled: threading.Event) -> str:
        self.begun.set()
        self.go.wait(WAIT_S)
        self.saw_cancel = cancelled.is_set()
        return "gate"


def test_no_thread_before_the_first_job() -> None:
    before = threading.active_count()
    made = Worker()
    assert made.wait(WAIT_S)
    assert threading.active_count() == before
    made.close()


def test_results_carry_their_generation(worker: Worker) -> None:
    done: list[Done] = []
    first = worker.submit("sum", lambda _cancelled: 1 + 1, done.append)
    assert worker.wait(WAIT_S)
    second = worker.submit("sum", lambda _cancelled: 2 + 2, done.append)
    assert worker.wait(WAIT_S)
    assert second > first
    assert done == [Done("sum", first, 2), Done("sum", second, 4)]


def test_of_those_that_wait_only_the_newest_runs(worker: Worker) -> None:
    gate, ran = Gate(), []
    worker.submit("gate", gate)
    assert gate.begun.wait(WAIT_S)
    for number in range(5):
        worker.submit("save", lambda _cancelled, number=number: ran.append(number))
    gate.go.set()
    assert worker.wait(WAIT_S)
    assert ran == [4]


def test_another_kind_does_not_push_out_what_waits(worker: Worker) -> None:
    gate, ran = Gate(), []
    worker.submit("gate", gate)
    assert gate.begun.wait(WAIT_S)
    worker.submit("autosave", lambda _cancelled: ran.append("autosave"))
    worker.submit("export", lambda _cancelled: ran.append("export"))
    gate.go.set()
    assert worker.wait(WAIT_S)
    assert ran == ["autosave", "export"]


@pytest.mark.parametrize("by", ["newer", "cancel"])
def test_a_running_job_is_told_to_stop_and_its_result_is_not_delivered(worker: Worker, by: str) -> None:
    gate, done = Gate(), []
    worker.submit("gate", gate, done.append)
    assert gate.begun.wait(WAIT_S)
    if by == "newer":
        worker.submit("gate", lambda _cancelled: "newer", done.append)
    else:
        worker.cancel("gate")
    gate.go.set()
    assert worker.wait(WAIT_S)
    assert gate.saw_cancel
    assert [one.result for one in done] == (["newer"] if by == "newer" else [])


def test_an_exception_is_a_result_and_the_thread_lives_on(worker: Worker) -> None:
    done: list[Done] = []
    error = ValueError("too long")

    def fails(_cancelled: threading.Event) -> None:
        raise error

    generation = worker.submit("plan", fails, done.append)
    assert worker.wait(WAIT_S)
    assert done == [Done("plan", generation, None, error)]
    worker.submit("plan", lambda _cancelled: "fine", done.append)
    assert worker.wait(WAIT_S)
    assert done[-1].result == "fine"


def test_closing_finishes_what_waits_and_ends_the_thread() -> None:
    made, ran = Worker(), []
    made.submit("a", lambda _cancelled: ran.append("a"))
    made.submit("b", lambda _cancelled: ran.append("b"))
    made.close()
    assert ran == ["a", "b"]
    assert not [thread for thread in threading.enumerate() if thread.name == "elevation-worker"]


def test_waiting_gives_up_after_a_while(worker: Worker) -> None:
    gate = Gate()
    worker.submit("gate", gate)
    assert not worker.wait(0.01)
    gate.go.set()
