"""The probe plans of looms of 24 to 129 contacts an end, against the gaps taken body by body."""

from itertools import combinations
from statistics import median
from time import perf_counter

import numpy as np

from planner.dryfit.site import site_of
from planner.geometry.segments import segment_distances
from planner.proving.probing import isolation_plans, probe_plan
from planner.wiring.graph import Wiring
from tests.dryfit.looms import loom

FRAME_MS = 16.7


def _ms(work, plan, rounds):
    times = []
    for _ in range(rounds):
        start = perf_counter()
        work(plan, Wiring(plan))
        times.append((perf_counter() - start) * 1000)
    return median(times)


def naive_gaps(plan, wiring):
    """Return the least gap of every two contacts of an end, body by body."""
    least = {}
    for end in plan.ends:
        bodies = site_of(plan, wiring, end.id).at(end.turn_deg)
        for one, other in combinations([it for it in bodies if it.kind != "core"], 2):
            ends = (np.array([it]) for it in (one.start, one.end, other.start, other.end))
            gap_mm = float(segment_distances(*ends)[0]) - one.radius_mm - other.radius_mm
            key = end.id, one.contact, other.contact
            least[key] = min(least.get(key, gap_mm), gap_mm)
    return least


def main():
    for pairs in (8, 20, 43):
        plan = loom(1, pairs)
        made = isolation_plans(plan, Wiring(plan))
        print(
            f"  {3 * pairs} contacts an end: {', '.join(f'{it.method} {it.count}' for it in made)}"
        )
        four_ms, whole_ms = _ms(isolation_plans, plan, 5), _ms(probe_plan, plan, 5)
        print(f"    all four: {four_ms:.1f} ms, {four_ms / FRAME_MS:.1f} of a frame")
        print(f"    continuity and pairs: {whole_ms:.1f} ms")
        if pairs < 43:
            naive_ms = _ms(naive_gaps, plan, 1)
            print(f"    all four against the gaps alone, body by body: {four_ms / naive_ms:.4f}")
