"""Prove the built lead: what to expect, how to probe, what readings mean, what is kept."""
