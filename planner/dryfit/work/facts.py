"""What the order of work is derived from, gathered from a plan once."""

from collections.abc import Iterable, Iterator
from functools import cached_property

from planner.dryfit.cable_tree import CableTree
from planner.dryfit.cut_lengths import Lengths
from planner.dryfit.fit import EndFit, fit_end
from planner.dryfit.threading import Route, thread
from planner.dryfit.work.alike import alike_ends
from planner.dryfit.work.queues import Queue, late_parts, queues_of
from planner.model.codes import told_apart
from planner.model.plan import Conductor, Plan, Run, Section
from planner.wiring.graph import Wiring


class WorkFacts:
    """A plan with its wiring, dry fits, lengths and threading, as the steps ask for them."""

    def __init__(self, plan: Plan, wiring: Wiring) -> None:
        self.plan, self.wiring = plan, wiring

    @cached_property
    def lengths(self) -> Lengths:
        """The lengths of the pieces."""
        return Lengths(self.plan)

    @cached_property
    def routes(self) -> tuple[Route, ...]:
        """The parts in threading order."""
        return thread(self.plan).routes

    @cached_property
    def groups(self) -> tuple[tuple[str, ...], ...]:
        """All ends in the plan's order, those together that share their steps."""
        return alike_ends(self.plan, self.routes)

    @cached_property
    def group_of(self) -> dict[str, tuple[str, ...]]:
        """The ends that share their steps with each end, itself among them."""
        return {end: group for group in self.groups for end in group}

    @cached_property
    def late(self) -> frozenset[str]:
        """The uses of parts that go on when a plug is soldered already."""
        return late_parts(self.routes, self.meets)

    @cached_property
    def queues(self) -> tuple[Queue, ...]:
        """What is threaded before the joints, in the order in which it is threaded."""
        early = (it for it in self.routes if not (it.part.opens or it.use.id in self.late))
        return queues_of(tuple(early), self.group_of)

    def meets(self, one: Route, other: Route) -> bool:
        """Tell whether two parts could be in each other's way as they are put on."""
        return self._goes_over(one, other) or self._goes_over(other, one)

    def _goes_over(self, one: Route, other: Route) -> bool:
        """Tell whether a part goes over the section where another rests; unknown, it may."""
        return not other.sections or other.sections[-1] in self._passed[one.use.id]

    @cached_property
    def _passed(self) -> dict[str, frozenset[str]]:
        """The sections that each part goes over, of all ends on the side that it comes from."""
        tree = CableTree(self.plan)
        return {
            it.use.id: frozenset(
                (*it.sections, *(name for end in it.ends for name in tree.path(end, it.at)))
            )
            for it in self.routes
        }

    def fit(self, end: str) -> EndFit | None:
        """Return the dry fit of an end, or None while nothing is landed there."""
        return fit_end(self.plan, self.wiring, end)

    def codes(self, end: str) -> dict[str, str]:
        """Return the codes of the conductors that come out of the cable at an end."""
        return self._codes(self.plan.conductors_at.get(end, ()))

    def section_codes(self, section: str) -> dict[str, str]:
        """Return the codes of the conductors in a section."""
        return self._codes(
            (it, run) for it in self.plan.conductors for run in it.runs if run.section == section
        )

    def _codes(self, pairs: Iterable[tuple[Conductor, Run]]) -> dict[str, str]:
        found = {it.id: part for it, run in pairs if (part := self.plan.part_of(run)) is not None}
        codes = told_apart(list(found.values()), shield="SHIELD")
        return dict(zip(found, codes, strict=True))

    def dead_ends(self, conductor: Conductor) -> Iterator[str]:
        """Yield the nodes where a conductor that lands once only stops without landing."""
        landed = [it.end for it in self.plan.landings if it.conductor == conductor.id]
        if len(landed) == 1:
            for node in self.stops_of(conductor):
                if node != landed[0]:
                    yield node

    def stops_of(self, conductor: Conductor) -> Iterator[str]:
        """Yield the ends and splits where a conductor stops."""
        nodes = [node for it in self.sections_of(conductor) for node in (it.near, it.far)]
        for node in dict.fromkeys(nodes):
            if nodes.count(node) == 1:
                yield node

    def sections_of(self, conductor: Conductor) -> list[Section]:
        """Return the sections that a conductor runs through."""
        known = self.plan.section_by_id
        return [known[run.section] for run in conductor.runs if run.section in known]

    def spliced(self, split: str) -> bool:
        """Tell whether cores of different cables are joined at a split."""
        return any(it.spliced for it in self.lengths.openings if it.split == split)
