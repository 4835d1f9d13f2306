"""Why no window can open: found before Qt is asked."""

import os
import subprocess
import sys

import pytest

from elevation.commands.screen import FOR_QT, FOR_X11, missing_packages, why_no_window

EVERYTHING_LOADS = {"loads": lambda _library: True}


def test_without_any_display_it_says_so():
    why = why_no_window({}, **EVERYTHING_LOADS)
    assert why is not None
    assert "neither DISPLAY nor WAYLAND_DISPLAY" in why


def test_a_display_that_does_not_answer_is_named():
    why = why_no_window({"DISPLAY": ":99"}, **EVERYTHING_LOADS)
    assert why == "the display :99 does not answer"


def test_a_wayland_display_that_does_not_answer_is_named(tmp_path):
    why = why_no_window({"WAYLAND_DISPLAY": "wayland-7", "XDG_RUNTIME_DIR": str(tmp_path)}, **EVERYTHING_LOADS)
    assert why == "the display wayland-7 does not answer"


@pytest.mark.parametrize("library", [*FOR_QT, *FOR_X11])
def test_each_missing_library_is_named_by_its_package(library):
    why = why_no_window({"DISPLAY": ":99"}, loads=lambda name: name != library)
    assert why is not None
    assert f"apt-get install {(FOR_QT | FOR_X11)[library]})" in why


def test_the_offscreen_platform_needs_no_display_and_no_x11():
    def loads(name):
        return name in FOR_QT

    assert why_no_window({"QT_QPA_PLATFORM": "offscreen"}, loads=loads) is None


def test_a_library_that_cannot_be_loaded_is_missing():
    assert missing_packages({"libsurely-not-there.so.9": "libsurely"}) == ("libsurely",)


def _start(tmp_path, extra, *words):
    environ = {key: value for key, value in os.environ.items() if key not in {"DISPLAY", "WAYLAND_DISPLAY"}}
    environ.pop("QT_QPA_PLATFORM", None)
    return subprocess.run(
        [sys.executable, "-m", "elevation", *words],
        cwd=tmp_path,
        env=environ | extra,
        capture_output=True,
        text=True,
        timeout=60,
        check=False,
    )


@pytest.mark.parametrize("extra", [{}, {"DISPLAY": ":99"}])
def test_where_no_window_can_open_the_demo_is_drawn_and_one_sentence_says_so(tmp_path, extra):
    done = _start(tmp_path, extra)
    assert done.returncode == 0, done.stderr
    assert done.stderr == ""
    assert done.stdout.count("\n") == 1
    drawn = list(tmp_path.glob("*.svg"))
    assert len(drawn) == 1
    assert str(drawn[0]) in done.stdout
    again = _start(tmp_path, extra)
    assert again.returncode == 0
    assert len(list(tmp_path.glob("*.svg"))) == 2, "a second start overwrites nothing"


@pytest.mark.parametrize("words", [["--help"], ["--version"], ["check", "DEMO"]])
def test_help_version_and_check_never_import_qt(words, tmp_path):
    from elevation.commands.choosing import first_demo

    words = [str(first_demo()) if word == "DEMO" else word for word in words]
    code = (
        "import sys; from elevation.commands.main import main; code = main(sys.argv[1:]);"
        "assert code in (0, 1), code;"
        "bad = [m for m in sys.modules if m.split('.')[0] in ('PySide6', 'shiboken6', 'pyqtgraph')];"
        "assert not bad, bad"
    )
    done = subprocess.run([sys.executable, "-c", code, *words], capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stderr
