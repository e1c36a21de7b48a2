"""All electrical figures of the nine-ended loom, against networkx for its resistances alone."""

from statistics import median
from time import perf_counter

import networkx as nx

from planner.data import data_dir
from planner.electrical.balance import balances
from planner.electrical.crosstalk import crosstalks
from planner.electrical.loops import loops
from planner.electrical.resistance import run_ohm
from planner.electrical.summary import electrical_summary
from planner.files.plans import read_plan
from planner.model.plan import Run
from planner.wiring.graph import Wiring
from tests.electrical.leads import plain_network, plain_ohm

FRAME_MS = 16.7


def _ms(work, rounds):
    times = []
    for _ in range(rounds):
        start = perf_counter()
        work()
        times.append((perf_counter() - start) * 1000)
    return median(times)


def naive_loops(plan, wanted):
    """Return each loop's resistance by networkx: the graph built once, each way solved anew."""

    def ohm(section, core):
        return run_ohm(plan, Run(section=section.id, core=core))

    graph, node = plain_network(plan, ohm)
    return [
        sum(
            plain_ohm(graph, node[loop.source, near], node[loop.load, far])
            for near, far in (loop.plus, loop.minus)
        )
        for loop in wanted
    ]


def _rules(plan):
    wiring = Wiring(plan)
    return balances(plan, wiring), crosstalks(plan, wiring)


def main():
    plan = read_plan(data_dir("resources") / "demo" / "recording-rack-loom.json")
    wanted = loops(plan, Wiring(plan))
    nx.resistance_distance(nx.path_graph(3), 0, 2)  # its imports
    wiring_ms = _ms(lambda: Wiring(plan).signals, 50)
    rules_ms = _ms(lambda: _rules(plan), 50) - wiring_ms
    summary_ms = _ms(lambda: electrical_summary(plan, Wiring(plan)), 50)
    naive_ms = _ms(lambda: naive_loops(plan, wanted), 10)
    print(
        f"  figures that the checks need: {rules_ms:.2f} ms, {rules_ms / FRAME_MS:.3f} of a frame"
    )
    print(f"  all figures against networkx for the loops alone: {summary_ms / naive_ms:.3f}")
