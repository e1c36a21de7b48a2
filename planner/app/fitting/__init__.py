"""The dry fit in the window: one end, large, to be turned, ordered and sleeved."""
