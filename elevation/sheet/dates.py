"""The date that a sheet carries."""

from __future__ import annotations

import os
from datetime import UTC, date, datetime


def sheet_date() -> str:
    """Today as ``2026-03-01``; the day of SOURCE_DATE_EPOCH (UTC) where that is set, so that files can be made again."""
    epoch = os.environ.get("SOURCE_DATE_EPOCH", "")
    try:
        return datetime.fromtimestamp(int(epoch), UTC).date().isoformat()
    except (ValueError, OverflowError, OSError):
        # Not set, or not a point in time.
        return date.today().isoformat()
