"""Which parts go on the cable in one go: those of one end, or the same ones at ends made alike."""

from collections import Counter
from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from itertools import groupby

from planner.dryfit.threading import Route
from planner.dryfit.work.step import span

Groups = Mapping[str, tuple[str, ...]]
Meets = Callable[[Route, Route], bool]


@dataclass(frozen=True, slots=True)
class Queue:
    """Parts that go on one after another: each of `rows` is one part at every one of `ends`."""

    id: str
    ends: tuple[str, ...]
    rows: tuple[tuple[Route, ...], ...]

    @property
    def routes(self) -> tuple[Route, ...]:
        """All parts of the queue."""
        return tuple(route for row in self.rows for route in row)

    @property
    def tags(self) -> tuple[str, ...]:
        """The tag of each row: of one part, or of the first and the last."""
        return tuple(row_tag(row) for row in self.rows)


def row_tag(row: Sequence[Route]) -> str:
    """Return the tag of the same part at several ends: the first and the last."""
    return span(route.tag for route in row)


def late_parts(routes: Sequence[Route], meets: Meets) -> frozenset[str]:
    """Return the uses of parts that go on when a plug is soldered already.

    That is so as planned, or since such a part has to go on before them. What opens is laid round
    the cable, and does not wait for anything.
    """
    late: list[Route] = []
    for route in routes:
        if not route.part.opens and (route.after_joint or any(meets(route, it) for it in late)):
            late.append(route)
    return frozenset(route.use.id for route in late)


def queues_of(routes: Sequence[Route], group_of: Groups) -> tuple[Queue, ...]:
    """Return parts in threading order as queues, those of one end while no other end breaks in.

    Ends that share their steps share a queue, if the queue of each is unbroken.
    """
    runs = [tuple(run) for _, run in groupby(routes, key=lambda route: route.comes_from)]
    by_end: dict[str, list[tuple[Route, ...]]] = {}
    for run in runs:
        by_end.setdefault(run[0].comes_from, []).append(run)
    return tuple(_queues(runs, by_end, group_of))


def _queues(
    runs: Sequence[tuple[Route, ...]],
    by_end: Mapping[str, Sequence[tuple[Route, ...]]],
    group_of: Groups,
) -> Iterator[Queue]:
    seen: Counter[str] = Counter()
    for run in runs:
        end = run[0].comes_from
        group = group_of.get(end, (end,))
        seen[end] += 1
        if len(group) > 1 and all(len(by_end.get(it, ())) == 1 for it in group):
            if end == group[0]:
                rows = zip(*(by_end[it][0] for it in group), strict=True)
                yield Queue(f"{end}/thread", group, tuple(rows))
            continue
        name = f"{end}/thread" if seen[end] == 1 else f"{end}/thread/{seen[end]}"
        yield Queue(name, (end,), tuple((route,) for route in run))
