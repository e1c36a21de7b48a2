"""The order of work: steps, parts in threading order, cut list; all in one view."""
