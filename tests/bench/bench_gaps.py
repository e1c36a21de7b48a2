"""Gaps of an end by boxes against every pair of bodies, and after an edit of one lead.

Ends with cups in rows and a core on each. Ratios of times in ms from the same run; no time is
asserted. `boxes` finds the near pairs of bodies that are there; `whole` makes the bodies first, and
`edited` finds those of the leads there that are as they were. `turned` is the smallest gap at one
more turn of the plug, of which a dial takes hundreds. Growth: the power of n by which a time rises
from one size to the next.
"""

import math
from itertools import cycle
from time import perf_counter

import numpy as np

from planner.dryfit.scene import Scene, contact_party, lead_party, least_in, near_in
from planner.dryfit.seats import Seats
from planner.edits.landings import land
from tests.dryfit.rows import every_gap, nets_of, rows_plan, site_at_b

SIZES = (5, 8, 12, 25, 37, 64, 128, 256)
MOST_FOR_ALL_PAIRS = 128
# The connector's own bare gap: what is farther apart is not measured.
REACH_MM = 1.37


def timed(work, rounds=15):
    """Return the least ms of some runs, and the last result."""
    times = []
    for _ in range(rounds):
        start = perf_counter()
        found = work()
        times.append((perf_counter() - start) * 1000)
        if sum(times) > 3000:
            break
    return min(times), found


def measured(count):
    """Return the ms of each way, and how many pairs within reach the two ways disagree on."""
    plan = rows_plan(count)
    site = site_at_b(plan)
    scene, turns = site.scene(0.0), cycle(np.linspace(0, 360, 77).tolist())
    found = {}
    found["boxes"], near = timed(lambda: near_in(Scene(scene.parties), REACH_MM))
    found["whole"], _ = timed(lambda: smallest(site, anew=True))
    edits = iter(edited_sites(plan))
    smallest(site)
    found["edited"], _ = timed(lambda: smallest(next(edits)), 10)
    found["turned"], _ = timed(lambda: Seats(site).gap_mm(next(turns)))
    if count > MOST_FOR_ALL_PAIRS:
        return found, None
    bodies, nets = site.at(0.0), nets_of(site)
    found["all pairs"], gaps = timed(lambda: every_gap(bodies, nets), 3)
    wanted = {pair: gap for pair, gap in gaps.items() if gap <= REACH_MM}
    pairs = zip(near.first.tolist(), near.second.tolist(), strict=True)
    ours = dict(zip(pairs, near.gap.tolist(), strict=True))
    return found, len(wanted.items() ^ ours.items())


def smallest(site, *, anew=False):
    """Return the smallest gap of an end; `anew` with no bodies kept from before."""
    if anew:
        lead_party.cache_clear()
        contact_party.cache_clear()
    return least_in(near_in(site.scene(0.0), REACH_MM), site.nets_by_spot)


def edited_sites(plan):
    """Return sites in which one core goes to another cup each time, as a builder moves them."""
    others = [contact.id for contact in plan.connector_of("B").contacts[1:]]
    return [
        site_at_b(land(plan, end="B", conductor="w0", contact=others[k % len(others)]))
        for k in range(10)
    ]


def main():
    """Print a line for each size."""
    last = None
    for count in SIZES:
        found, mismatches = measured(count)
        line = f"  n {count:3}: " + "".join(f"{k} {v:7.2f} ms  " for k, v in found.items())
        if mismatches is not None:
            line += f"ratio {found['boxes'] / found['all pairs']:.3f}  mismatches {mismatches}  "
        line += f"edited/whole {found['edited'] / found['whole']:.2f}"
        if last is not None:
            step = math.log(count / last[0])
            rise = {k: math.log(found[k] / last[1][k]) / step for k in found if k in last[1]}
            line += "  growth " + ", ".join(f"{k} {v:.1f}" for k, v in rise.items())
        print(line)
        last = count, found


if __name__ == "__main__":
    main()
