"""Questions to the builder: one ask object, and the dialogs it shows."""
