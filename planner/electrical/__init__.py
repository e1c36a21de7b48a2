"""Resistance, balance, crosstalk and capacitance of a planned lead: figures, no findings."""
