"""Pictures that were looked at once and are kept: what is painted now must be the same, pixel by pixel.

The bundled type without hinting and Qt's own raster painter make them the same on every machine with one version of Qt.
After a change that is meant, look at what changed and renew them::

    RENEW_PICTURES=1 QT_QPA_PLATFORM=offscreen .venv/bin/pytest tests/painters/test_golden.py tests/window/test_golden.py
"""

from __future__ import annotations

import io
import os
from pathlib import Path

import numpy as np
from PIL import Image

FOLDER = Path(__file__).parent / "pictures"
TOLERANCE = 12
"""No channel (0 to 255) of any pixel may differ by more: a stroke a tenth of a millimetre wider does."""


def opened(png: bytes | Path) -> np.ndarray:
    """A picture as rows x columns x 3 bytes."""
    with Image.open(io.BytesIO(png) if isinstance(png, bytes) else png) as image:
        return np.asarray(image.convert("RGB"))


def differing(now: np.ndarray, kept: np.ndarray) -> int:
    """How many pixels differ; all of them where the sizes do."""
    if now.shape != kept.shape:
        return int(now.shape[0] * now.shape[1])
    return int((np.abs(now.astype(int) - kept.astype(int)).max(axis=2) > TOLERANCE).sum())


def check(name: str, png: bytes, folder: Path) -> None:
    """Compare with the kept picture of that name, or keep it where it is asked to be renewed.

    Parameters
    ----------
    name : str
    png : bytes
    folder : Path
        Where the new picture is left to be looked at if it differs.
    """
    path = FOLDER / f"{name}.png"
    now = opened(png)
    if os.environ.get("RENEW_PICTURES"):
        FOLDER.mkdir(exist_ok=True)
        Image.fromarray(now).save(path, optimize=True)
        return
    kept = opened(path)
    count = differing(now, kept)
    if count:
        seen = folder / f"{name}.png"
        Image.fromarray(now).save(seen)
        raise AssertionError(
            f"{count} pixels of “{name}” differ from {path}: look at {seen}, and see golden.py to renew it"
        )
