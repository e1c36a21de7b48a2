"""The dry fit as drawn, for the window and the sheet alike: fitted face, side view, dial."""
