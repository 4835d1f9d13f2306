"""SetOut and findings to display lists: the elevation, its schedule, the measuring sheet."""
