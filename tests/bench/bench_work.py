"""The order of work: sorting against networkx on the same graphs, and the whole list of a lead.

Graphs of leads with many ends, each end a chain of steps with some freedom, as the real lists are;
and the graphs of the demo leads. Ratios of time, each from the same run; no time is asserted. The
whole list is also timed with the dry fit known already, as it is when the list is shown.
Growth: the power of n by which the time rises from one size to the next.
"""

import math
import random
from statistics import median
from time import perf_counter

import networkx as nx

from planner.dryfit.precedence import ordered
from planner.dryfit.work import steps, usual_steps
from planner.wiring.graph import Wiring
from tests.dryfit.work.leads import DEMO, demo

SIZES = (50, 200, 800)
PER_END = 14
ROUNDS = 9


def graph(count, seed):
    """Return names in their usual order, and what each needs: most of them the one before."""
    luck = random.Random(seed)
    names = [f"step{place:04}" for place in range(count)]
    needs = {}
    for place, name in enumerate(names):
        start = place - place % PER_END
        here = names[start:place]
        needs[name] = tuple({names[0], *luck.sample(here, min(len(here), 3))} - {name})
    return names, needs


def by_networkx(names, needs, wish):
    """Return the smallest order as networkx finds it, the graph built anew as ours is."""
    place = {name: at for at, name in enumerate(wish or names)}
    found = nx.DiGraph([(need, name) for name in names for need in needs[name]])
    found.add_nodes_from(names)
    return tuple(nx.lexicographical_topological_sort(found, key=place.get))


def timed(work, *args):
    """Return what work gives and the median ms of several runs."""
    times = []
    for _ in range(ROUNDS):
        start = perf_counter()
        found = work(*args)
        times.append((perf_counter() - start) * 1000)
    return found, median(times)


def compare(label, names, needs, before=None):
    """Print the time of one graph beside that of networkx; return it."""
    wish = random.Random(1).sample(names, len(names))
    _, usual_ms = timed(ordered, names, needs, ())
    wished, wished_ms = timed(ordered, names, needs, wish)
    expected, nx_ms = timed(by_networkx, names, needs, wish)
    grows = ""
    if before is not None:
        power = math.log(usual_ms / before[1]) / math.log(len(names) / before[0])
        grows = f", growth {power:.1f}"
    print(
        f"{label}: {len(names)} steps, usual {usual_ms:.2f} ms, wished {wished_ms:.2f} ms, "
        f"networkx {nx_ms:.2f} ms, ratio {nx_ms / wished_ms:.1f}, "
        f"{'same order' if wished == expected else 'ANOTHER ORDER'}{grows}"
    )
    return len(names), usual_ms


def main() -> None:
    """Print all comparisons."""
    before = None
    for size in SIZES:
        before = compare("made up", *graph(size, size), before)
    for name in DEMO:
        plan = demo(name)
        wiring = Wiring(plan)
        found = usual_steps(plan, wiring)
        compare(name, [it.id for it in found], {it.id: it.needs for it in found})
        _, whole_ms = timed(steps, plan, wiring)
        print(f"{name}: whole list {whole_ms:.1f} ms with the dry fit known")


if __name__ == "__main__":
    main()
