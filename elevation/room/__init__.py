"""What was measured and decided: frozen data, named edits, the room file, safe keeping on disk."""
