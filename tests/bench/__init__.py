"""Benchmarks: ratios against a naive or reference form in the same run; no time is asserted."""
