"""What can be dragged, nudged or typed, what it may stick to, and the edit that results."""
