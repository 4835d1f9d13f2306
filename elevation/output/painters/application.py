"""A Qt application for painting without a window."""

from __future__ import annotations

import os
import sys

from PySide6.QtGui import QGuiApplication

_kept: list[QGuiApplication] = []


def ensure_application() -> None:
    """Make sure fonts and images can be used; where no application runs, one without a display is made."""
    if QGuiApplication.instance() is not None:
        return
    if sys.platform.startswith("linux"):
        os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")
    # Qt deletes an application that nobody holds.
    _kept.append(QGuiApplication(["elevation"]))
