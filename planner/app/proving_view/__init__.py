"""Prove: what to probe, what the meter showed, what is wrong and where, and the units proved."""
