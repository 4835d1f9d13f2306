"""The desktop: main window, canvas, forms, findings, curves.

PySide6 replaces ``__import__`` and looks at every module that comes after it, so the engine is imported first:
that alone takes a tenth of a second off the start.
"""

import elevation.planning.remedies
import elevation.room.file
import elevation.room.first
import elevation.session.session
import elevation.sheet.annotation
import elevation.sheet.drawing
import elevation.sheet.tape_order
import elevation.trade  # noqa: F401
