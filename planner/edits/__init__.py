"""Edits: pure functions from plan to plan; each refuses with EditRefused or succeeds whole."""
