"""Safe keeping on disk: whole files or none, recovery after a crash, one writer a file."""
