"""Hostile files: mutated rooms and tables, each of which must be read or refused in one sentence."""
