"""What a drag makes anew, counted: never timed."""

from __future__ import annotations

import gc

import pytest
from PySide6.QtCore import QCoreApplication, Qt
from PySide6.QtGui import QImage, QPainter

from elevation.output.painters.replay import Replay
from elevation.setting_out import whole
from elevation.sheet.records import Group
from tests.bench.rooms import windows

FIRST = ("w1", "s1", "t1")


@pytest.fixture
def dragged(make_window, mouse_on, monkeypatch):
    """A window on eight dressed windows, a handle of the first one held and moved once; and how to move it on."""

    # Nothing is remembered of equal rooms that other tests set out.
    monkeypatch.setattr(whole, "_keepers", {})

    def begin(axis: str):
        window = make_window(windows(8))
        handle = next(one for one in window.canvas.handles() if one.axis == axis and one.ref[:3] == FIRST)
        hand = mouse_on(window)
        hand.press(*handle.at)

        def move(step: int) -> None:
            by_mm = 60.0 + 30.0 * step
            x, y = handle.at
            hand.move(x + by_mm, y) if handle.along == "x" else hand.move(x, y + by_mm)
            QCoreApplication.processEvents()
            window.canvas.repaint()

        move(0)
        move(1)
        return window, move, hand

    return begin


def shown(window) -> dict[tuple[str, tuple[str, ...]], Group]:
    groups = window.canvas.picture.groups(window.canvas.viewport, window.canvas.seen())
    return {(group.layer, group.ref): group for group in groups}


@pytest.mark.parametrize("axis", ["rod-height", "rod-right", "lead", "hem"])
def test_a_frame_sets_out_once_and_draws_one_treatment(dragged, axis):
    window, move, hand = dragged(axis)
    pipeline, picture = window.session.pipeline, window.canvas.picture
    for step in range(2, 6):
        before, room = shown(window), window.session.room
        runs, calls, drawn = dict(pipeline.handle_keeper.runs), pipeline.set_out.calls, picture.kept.drawn
        compiled = picture.replay.compiled
        move(step)
        changed = window.session.room != room
        assert pipeline.set_out.calls - calls == changed
        assert picture.kept.drawn - drawn == changed
        made = {ref for ref, count in pipeline.handle_keeper.runs.items() if count != runs.get(ref, 0)}
        assert made <= {FIRST}
        after = shown(window)
        anew = {key for key, group in after.items() if before.get(key) is not group}
        assert picture.replay.compiled - compiled <= len(anew)
        # Heights share columns of figures, and rods that come near each other take lines of their own.
        if axis == "lead":
            assert {ref[:3] for _, ref in anew} <= {FIRST, ("w1",)}, sorted(anew)
    hand.release()


def test_a_move_within_a_graduation_makes_nothing(dragged):
    window, _, hand = dragged("rod-right")
    session, picture = window.session, window.canvas.picture
    room, calls, compiled = session.room, session.pipeline.set_out.calls, picture.replay.compiled
    place = window.canvas._pointer
    hand.move(*window.canvas.viewport.to_wall(place[0], place[1] + 3.0))
    QCoreApplication.processEvents()
    assert session.room is room
    assert session.pipeline.set_out.calls == calls
    assert picture.replay.compiled == compiled
    hand.release()


@pytest.mark.parametrize("axis", ["rod-height", "rod-right", "lead"])
def test_what_is_kept_as_pixels_is_painted_as_before(dragged, axis):
    window, move, hand = dragged(axis)
    canvas = window.canvas
    for step in range(2, 5):
        move(step)
    standing = canvas.picture._standing
    assert standing is not None
    groups = canvas.picture.groups(canvas.viewport, canvas.seen())
    images = []
    for paint in (
        lambda p: standing.paint(groups, p, Replay()),
        lambda p: Replay().paint(groups, p, canvas.viewport.placing),
    ):
        image = QImage(canvas.size(), QImage.Format.Format_RGB32)
        image.fill(0xFFFDFBF7)
        painter = QPainter(image)
        paint(painter)
        painter.end()
        images.append(bytes(image.constBits()))
    # Layers are rounded to eight bits once more than groups that are painted straight away.
    assert max(abs(one - other) for one, other in zip(*images, strict=True)) <= 3
    move(5)
    painted = standing.painted
    canvas.repaint()
    # What stands behind and before the moved thing is kept; cloth that moves has the most records of all.
    assert 0 < standing.painted - painted < sum(len(group.records) for group in groups) * 0.6
    hand.release()


def test_proportions_out_of_sight_wait_until_the_hand_lets_go(dragged):
    window, move, hand = dragged("rod-height")
    panel = window.proportions
    sight = panel.visibleRegion().boundingRect()
    seen = [sight.intersects(row.geometry()) for row in panel.rows]
    assert False in seen
    before = [row.name.text() + row.figures.text() for row in panel.rows]
    for step in range(2, 5):
        move(step)
    during = [row.name.text() + row.figures.text() for row in panel.rows]
    # All eight rods are told of in the last row, far below.
    assert during[-1] == before[-1]
    shown_now = window.session.set_out().proportions
    assert all(row.shows[0] is one for row, one, is_seen in zip(panel.rows, shown_now, seen, strict=False) if is_seen)
    hand.release()
    QCoreApplication.processEvents()
    assert [row.shows[0] for row in panel.rows[: len(shown_now)]] == list(window.session.set_out().proportions)
    assert panel.rows[len(shown_now) - 1].bar._parts != ()


def test_proportions_that_are_scrolled_into_sight_catch_up(dragged):
    window, move, hand = dragged("rod-height")
    panel = window.proportions
    move(3)
    last = len(window.session.set_out().proportions) - 1
    assert panel.rows[last].shows[0] != window.session.set_out().proportions[last]
    area = next(drawer.area for drawer in window.drawers if drawer.content is panel)
    area.verticalScrollBar().setValue(area.verticalScrollBar().maximum())
    QCoreApplication.processEvents()
    assert panel.rows[last].shows[0] == window.session.set_out().proportions[last]
    hand.release()


@pytest.mark.parametrize("end", ["release", "esc", "closed"])
def test_the_collector_rests_while_a_handle_moves_and_goes_on_however_that_ends(dragged, qtbot, end):
    assert gc.isenabled()
    window, move, hand = dragged("rod-height")
    assert not gc.isenabled()
    move(2)
    assert not gc.isenabled()
    if end == "release":
        hand.release()
    elif end == "esc":
        qtbot.keyClick(window.canvas, Qt.Key.Key_Escape)
    else:
        window.close()
    assert gc.isenabled()


@pytest.mark.parametrize("axis", ["rod-height", "rod-right", "lead"])
def test_a_drag_makes_no_garbage_that_only_the_collector_finds(dragged, axis):
    _, move, hand = dragged(axis)
    gc.collect()
    for step in range(2, 22):
        move(step)
    assert gc.collect() == 0
    hand.release()


def test_a_click_and_a_collector_that_is_off_are_left_alone(make_window, mouse_on):
    window = make_window(windows(2))
    handle = next(one for one in window.canvas.handles() if one.axis == "rod-height")
    hand = mouse_on(window)
    hand.press(*handle.at)
    assert gc.isenabled()
    hand.release()
    gc.disable()
    try:
        hand.press(*handle.at)
        hand.move(handle.at[0], handle.at[1] + 90.0)
        hand.release()
        assert not gc.isenabled()
    finally:
        gc.enable()
