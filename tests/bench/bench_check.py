"""From an edit to findings on the nine-ended loom, and a check against parsing its JSON."""

import json
from functools import partial
from itertools import cycle
from statistics import median, quantiles
from time import perf_counter

import networkx as nx

from planner.data import data_dir
from planner.dryfit import fit as dryfit
from planner.edits.landings import land, lift
from planner.files.plans import read_plan
from planner.library.loading import load_library
from planner.services.checking import check_plan
from planner.wiring.graph import Wiring

FRAME_MS = 16.7
ROUNDS = 120


class PlainWiring(Wiring):
    """The naive form: a networkx graph built anew, its component searched at every question."""

    def net_of(self, node):
        graph = nx.Graph()
        graph.add_nodes_from(self._beside)
        graph.add_edges_from((one, other) for one, other, _ in self._joins())
        return frozenset(nx.node_connected_component(graph, node)) if node in graph else frozenset()


def _edits(plan):
    """Lift a core and land it again, all through the lead, as a builder's edits would."""
    for landing in cycle(plan.landings):
        place = {"end": landing.end, "conductor": landing.conductor}
        yield partial(lift, **place)
        yield partial(land, contact=landing.contact, **place)


def _timed(work):
    start = perf_counter()
    result = work()
    return result, (perf_counter() - start) * 1000


def edit_to_findings_ms(plan, pinouts, wiring=Wiring, rounds=ROUNDS, *, cold=False):
    """Return the times in ms of edit, wiring and findings, one for each edit."""
    times = []
    edits = _edits(plan)
    for _ in range(rounds):
        if cold:
            dryfit._fit.cache_clear()
        edit = next(edits)

        def work(edit=edit, plan=plan):
            later = edit(plan)
            return later, check_plan(later, pinouts, wiring(later))

        (plan, _), spent = _timed(work)
        times.append(spent)
    return times


def main():
    path = data_dir("resources") / "demo" / "recording-rack-loom.json"
    text, plan = path.read_text(encoding="utf-8"), read_plan(path)
    pinouts = load_library().pinouts()
    check_plan(plan, pinouts)  # imports and caches, as in an open window
    warm = edit_to_findings_ms(plan, pinouts)
    naive = edit_to_findings_ms(plan, pinouts, PlainWiring, 10, cold=True)
    p95 = quantiles(warm, n=20)[-1]
    print(f"  edit to findings: median {median(warm):.2f} ms, p95 {p95:.2f} ms")
    print(f"  p95 against one frame of {FRAME_MS} ms: {p95 / FRAME_MS:.2f}")
    print(f"  median against a rebuild with plain networkx: {median(warm) / median(naive):.3f}")
    parse = median(_timed(lambda: json.loads(text))[1] for _ in range(50))
    read = median(_timed(lambda: read_plan(path))[1] for _ in range(20))
    check = median(_timed(lambda: check_plan(plan, pinouts))[1] for _ in range(50))
    print(f"  check against json.loads of its text: {check / parse:.2f}")
    print(f"  check against reading and validating the plan: {check / read:.2f}")
