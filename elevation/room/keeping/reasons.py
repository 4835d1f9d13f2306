"""Why the machine would not read or write a file, in words for people."""

from __future__ import annotations

import errno

from elevation.errors import said

_REASONS = {
    errno.ENOSPC: said("no space left on device"),
    errno.EROFS: said("read-only file system"),
    errno.ENAMETOOLONG: said("file name too long"),
    errno.EIO: said("input/output error"),
    errno.ELOOP: said("too many levels of symbolic links"),
    errno.ENOTDIR: said("not a directory"),
}


def reason_of(error: Exception) -> str:
    """The reason of an ``OSError`` as the machine words it, translatable where it is a usual one."""
    if isinstance(error, OSError) and error.errno in _REASONS:
        return _REASONS[error.errno]
    text = error.strerror if isinstance(error, OSError) and error.strerror else str(error)
    return text.lower()
