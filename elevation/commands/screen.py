"""Whether a window can be opened here, found before Qt would abort the process."""

from __future__ import annotations

import ctypes
import os
import sys
from collections.abc import Callable, Mapping

# Library file -> Debian package that holds it. The first group Qt needs for anything at all,
# the second for a window on X11.
FOR_QT = {
    "libEGL.so.1": "libegl1",
    "libGL.so.1": "libgl1",
    "libxkbcommon.so.0": "libxkbcommon0",
    "libfontconfig.so.1": "libfontconfig1",
    "libdbus-1.so.3": "libdbus-1-3",
}
FOR_X11 = {
    "libxkbcommon-x11.so.0": "libxkbcommon-x11-0",
    "libxcb-cursor.so.0": "libxcb-cursor0",
    "libxcb-icccm.so.4": "libxcb-icccm4",
    "libxcb-image.so.0": "libxcb-image0",
    "libxcb-keysyms.so.1": "libxcb-keysyms1",
    "libxcb-randr.so.0": "libxcb-randr0",
    "libxcb-render-util.so.0": "libxcb-render-util0",
    "libxcb-shape.so.0": "libxcb-shape0",
    "libxcb-xkb.so.1": "libxcb-xkb1",
}


def _loads(library: str) -> bool:
    try:
        ctypes.CDLL(library)
    except OSError:
        return False
    return True


def missing_packages(libraries: Mapping[str, str], loads: Callable[[str], bool] = _loads) -> tuple[str, ...]:
    """The packages of those ``libraries`` (file -> package) that cannot be loaded; ``loads`` is for tests."""
    return tuple(package for library, package in libraries.items() if not loads(library))


def _x11_answers(name: str) -> bool:
    # libxcb knows every way a display may be named and authorised; asking it is surer than a socket of ours.
    try:
        xcb = ctypes.CDLL("libxcb.so.1")
    except OSError:
        return False
    xcb.xcb_connect.restype = ctypes.c_void_p
    xcb.xcb_connect.argtypes = [ctypes.c_char_p, ctypes.c_void_p]
    xcb.xcb_connection_has_error.argtypes = [ctypes.c_void_p]
    xcb.xcb_disconnect.argtypes = [ctypes.c_void_p]
    connection = xcb.xcb_connect(name.encode(), None)
    answers = bool(xcb.xcb_connection_has_error(connection) == 0)
    xcb.xcb_disconnect(connection)
    return answers


def _wayland_answers(name: str, environ: Mapping[str, str]) -> bool:
    import socket  # Only where Wayland is asked: it takes longer to load than everything else here.

    path = name if name.startswith("/") else os.path.join(environ.get("XDG_RUNTIME_DIR", "/nonexistent"), name)  # noqa: PTH118
    try:
        with socket.socket(socket.AF_UNIX) as probe:
            probe.settimeout(2)
            probe.connect(path)
    except OSError:
        return False
    return True


def why_no_window(environ: Mapping[str, str] | None = None, loads: Callable[[str], bool] = _loads) -> str | None:
    """A clause that says why no window can open ("no display was found ..."), or None where one can.

    ``environ`` (default: the process's) and ``loads`` are given by tests.
    """
    environ = os.environ if environ is None else environ
    if not sys.platform.startswith("linux"):
        return None
    platform = environ.get("QT_QPA_PLATFORM", "").split(":")[0]
    headless = platform in {"offscreen", "minimal", "vnc"}
    display, wayland = environ.get("DISPLAY", ""), environ.get("WAYLAND_DISPLAY", "")
    if not headless and not display and not wayland:
        return "no display was found (neither DISPLAY nor WAYLAND_DISPLAY is set)"
    needed = dict(FOR_QT)
    if not headless and not wayland:
        needed |= FOR_X11
    packages = missing_packages(needed, loads)
    if packages:
        return f"Qt's system libraries are missing (on Debian: apt-get install {' '.join(packages)})"
    if headless:
        return None
    if wayland and _wayland_answers(wayland, environ):
        return None
    if display and _x11_answers(display):
        return None
    return f"the display {display or wayland} does not answer"
