"""Whether a file still says what it said when it was read."""

from __future__ import annotations

from pathlib import Path


def fingerprint(path: Path | str) -> str | None:
    """A text that changes when the file's bytes change; None where it cannot be read.

    Bytes, not times: a copy back of the same bytes is no change, and two writes within a clock tick are.
    """
    try:
        return of_bytes(Path(path).read_bytes())
    except (OSError, ValueError):
        return None


def of_bytes(data: bytes) -> str:
    """The fingerprint of a file that holds ``data``."""
    import hashlib  # Loaded with the first file of one's own: a demo room is shown without it.

    return hashlib.sha256(data).hexdigest()


def has_changed(path: Path | str, before: str | None) -> bool:
    """Whether the file at ``path`` now differs from the fingerprint taken before (or came or went)."""
    return fingerprint(path) != before
