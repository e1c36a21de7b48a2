"""Threading against the exhaustive simulator and against trying all sides of all parts.

Ratios of times: below 1 the plan is faster. The simulator is left out above 7 parts, all sides
above 12, where they take minutes. All figures are invented.
"""

import itertools
from statistics import median
from time import perf_counter

import networkx as nx

from planner.dryfit.cable_tree import CableTree
from planner.dryfit.routes import goes_before, resting
from planner.dryfit.threading import thread
from planner.dryfit.threading_order import Going
from tests.dryfit.threaded import bench, goal, lead, part, use

COUNTS = (4, 6, 7, 9, 12, 37, 100)
SIMULATED_MOST, NAIVE_MOST = 7, 12


def crowd(count, *, crossed=False):
    """Return a Y with parts at all ends, as planned; crossed: the first two shut each other out."""
    parts = [part(f"p{at}", 5 + 0.01 * at, 9) for at in range(count)]
    uses = [use(f"p{at}", "ABC"[at % 3]) for at in range(count)]
    if crossed:
        uses[:2] = [use("p0", "A", "B"), use("p1", "Y", "A")]
    return lead("ABC", (4, 2, 2), (9.5, 9.5, 9.5), parts, uses)


def all_sides(plan):
    """Try the ways of all parts, one combination after another, until no ring is left; or None."""
    tree = CableTree(plan)
    parts = resting(plan, tree)
    for chosen in itertools.product(*(Going(tree, it, frozenset()).open for it in parts)):
        graph = nx.DiGraph()
        for at, way in enumerate(chosen):
            graph.add_edges_from((at, end) for end in way.before)
            graph.add_edges_from(
                (at, to) for to, it in enumerate(parts) if goes_before(parts[at], way, it)
            )
        if nx.is_directed_acyclic_graph(graph):
            return chosen
    return None


def timed_ms(work, rounds):
    """Return the median of times."""
    times = []
    for _ in range(rounds):
        start = perf_counter()
        work()
        times.append((perf_counter() - start) * 1000)
    return median(times)


def simulate(plan):
    """Search all states for the goal of every part."""
    return bench(plan).reaches(goal(plan, [it.id for it in plan.parts]))


def main():
    before = 0.0
    for count in COUNTS:
        plan, crossed = crowd(count), crowd(count, crossed=True)
        ours = timed_ms(lambda it=plan: thread(it), 15)
        late = timed_ms(lambda it=crossed: thread(it), 5)
        said = f"  {count:>3} parts: {ours:.2f} ms, with two crossed {late:.2f} ms"
        if count <= SIMULATED_MOST:
            said += f"; against all states {ours / timed_ms(lambda it=plan: simulate(it), 1):.5f}"
        if count <= NAIVE_MOST:
            naive = timed_ms(lambda it=crossed: all_sides(it), 1)
            said += f"; crossed against all sides {late / naive:.5f}"
        print(said + (f"; growth {ours / before:.1f}" if before else ""))
        before = ours


if __name__ == "__main__":
    main()
