"""The steps at an end, or at ends that are alike: from the look at the parts to the closed plug."""

from collections.abc import Iterator
from functools import cached_property
from itertools import groupby

from planner.dryfit.cut_lengths import SPARE_CORE_MM
from planner.dryfit.fit import EndFit
from planner.dryfit.parking import FROM_IRON_MM
from planner.dryfit.sleeve_sizes import SleeveUse
from planner.dryfit.sleeves import sleeves_on
from planner.dryfit.threading import Route
from planner.dryfit.work.closing import close_steps, put_on
from planner.dryfit.work.facts import WorkFacts
from planner.dryfit.work.metering import meter_steps
from planner.dryfit.work.starting import LEAD_CUT, MARK, wants_own_shell
from planner.dryfit.work.step import Heat, Step, bold_list, by_figure, discs, span
from planner.model.cable import Core, Shield
from planner.units import number


def end_steps(facts: WorkFacts, group: tuple[str, ...]) -> Iterator[Step]:
    """Yield the steps at ends that are alike; where something is not known yet, that it is not."""
    end = group[0]
    fit = facts.fit(end)
    if fit is None:
        yield _missing(facts, group)
        return
    at = AtEnd(facts, group, fit)
    yield from at.cold()
    yield from at.hot()
    yield from at.insulated()
    yield from meter_steps(facts, group, at.made)
    yield from close_steps(facts, group, at.made)


def _missing(facts: WorkFacts, group: tuple[str, ...]) -> Step:
    plan, end = facts.plan, group[0]
    section = plan.section_at.get(end)
    if plan.connector_of(end) is None:
        kind = "no_plug"
    elif section is None or plan.cable_of(section.id) is None:
        kind = "no_cable"
    else:
        kind = "nothing_landed"
    values = (("ends", span(group)),)
    return Step(f"{end}/{kind}", kind, end, end, values=values, needs=(LEAD_CUT,), ends=group)


class AtEnd:
    """The steps at one end, and at those that are made like it."""

    def __init__(self, facts: WorkFacts, group: tuple[str, ...], fit: EndFit) -> None:
        self.facts, self.group, self.fit, self.end = facts, group, fit, group[0]
        self.plan = facts.plan
        self.codes = facts.codes(self.end)
        self.order = {contact: place for place, contact in enumerate(fit.order, start=1)}
        self.joints: list[str] = []

    def _step(
        self,
        act: str,
        kind: str,
        heat: Heat,
        needs: tuple[str, ...],
        *,
        soldered: tuple[str, ...] = (),
        **values: str,
    ) -> Step:
        return Step(
            self._id(act),
            kind,
            self.end,
            self.end,
            heat,
            tuple(values.items()),
            needs,
            self.group,
            soldered,
        )

    def _id(self, act: str) -> str:
        return f"{self.end}/{act}"

    def _ids(self, *acts: str) -> tuple[str, ...]:
        return tuple(self._id(act) for act in acts)

    @cached_property
    def threaded(self) -> tuple[str, ...]:
        """The steps that put on what must be on before these ends are soldered."""
        routes = [it for it in self.facts.routes if self._waits(it)]
        return (MARK, *dict.fromkeys(put_on(self.facts, routes)), self._id("thread/own"))

    def _waits(self, route: Route) -> bool:
        """Tell whether a part has to be on the cable while these ends are soldered."""
        here = {*self.group}
        if route.use.id in self.facts.late:
            return bool({*route.before_joint_of} & here)
        return bool({*route.before_joint_of, route.comes_from, route.at} & here)

    @property
    def made(self) -> tuple[str, ...]:
        """The steps after which all joints are made and insulated."""
        return (*self.joints, *self._ids("look", "push", "push_tail", "dab", "cap", "shield_back"))

    # -- cold

    def cold(self) -> Iterator[Step]:
        """Yield what is done before the iron is picked up."""
        yield self._ready()
        yield from self._jacket()
        yield from self._shields()
        yield from self._tail_sleeves()
        yield self._step(
            "strip",
            "strip",
            "cold",
            (*self._ids("jacket", "untwist", "shield_back"), *self._tail_ids),
        )

    def _ready(self) -> Step:
        tags = [
            tag
            for queue in self.facts.queues
            for tag, row in zip(queue.tags, queue.rows, strict=True)
            if any(self._waits(route) for route in row)
        ]
        own = wants_own_shell(self.facts, self.end)
        kinds = ("ready_also", "ready") if tags else ("ready_own", "ready_none")
        return self._step(
            "ready",
            kinds[not own],
            "cold",
            self.threaded,
            tags=bold_list(tags),
            away=number(FROM_IRON_MM),
            ends=span(self.group),
        )

    def _jacket(self) -> Iterator[Step]:
        cuts = [self.facts.lengths.ends[end] for end in self.group]
        off = number(max(cut.jacket_off_mm for cut in cuts))
        if cuts[0].fanned:
            yield self._step("untwist", "untwist", "cold", self._ids("ready"), mm=off)
            return
        if cuts[0].trim_mm:
            trim = number(cuts[0].trim_mm)
            yield self._step("square", "square", "cold", self._ids("ready"), mm=trim)
        kind = "jacket_shield" if self._shields_here else "jacket"
        yield self._step("jacket", kind, "cold", self._ids("ready", "square"), mm=off)

    @cached_property
    def _shields_here(self) -> dict[str, Shield]:
        return {
            conductor.id: part
            for conductor, run in self.plan.conductors_at[self.end]
            if isinstance(part := self.plan.part_of(run), Shield)
        }

    @cached_property
    def _tails(self) -> dict[str, Shield]:
        landed = {lead.landing.conductor for lead in self.fit.leads}
        return {name: part for name, part in self._shields_here.items() if name in landed}

    def _shields(self) -> Iterator[Step]:
        back = [self.codes[name] for name in self._shields_here if name not in self._tails]
        needs = self._ids("jacket")
        if back:
            kind = "shields_back" if self._tails or len(back) > 1 else "shield_back"
            yield self._step("shield_back", kind, "cold", needs, shields=bold_list(back))
        for made in dict.fromkeys(part.kind for part in self._tails.values()):
            codes = [self.codes[name] for name, part in self._tails.items() if part.kind == made]
            kind = f"tail_{made}" if len(codes) == 1 else f"tails_{made}"
            yield self._step(f"tail/{made}", kind, "cold", needs, shields=bold_list(codes))

    @cached_property
    def _tail_ids(self) -> tuple[str, ...]:
        kinds = dict.fromkeys(part.kind for part in self._tails.values())
        return tuple(self._id(f"tail/{kind}") for kind in kinds)

    @cached_property
    def _sleeves(self) -> tuple[SleeveUse, ...]:
        return sleeves_on(self.fit, self.plan.workmanship)

    def _of(self, covers: str) -> list[SleeveUse]:
        return [use for use in self._sleeves if use.covers == covers]

    def _told(self, uses: list[SleeveUse]) -> str:
        return by_figure({self.codes[use.conductor]: use.length_mm for use in uses}, " mm")

    def _tail_sleeves(self) -> Iterator[Step]:
        uses = self._of("tail")
        if uses:
            kind = "tail_sleeve" if len(uses) == 1 else "tail_sleeves"
            told = self._told(uses)
            yield self._step("tail_sleeve", kind, "cold", self._tail_ids, sleeves=told)

    # -- hot

    def hot(self) -> Iterator[Step]:
        """Yield what is done with the iron, to the last joint."""
        yield self._tin()
        yield from self._park()
        yield from self._links()
        yield self._step("hold", "hold", "hot", self._ids("ready"))
        yield from self._solder()
        rule = self.plan.workmanship.insulation_gap.replace("-", "_")
        yield self._step("look", f"look_{rule}", "hot", tuple(self.joints))

    def _tin(self) -> Step:
        cores = {
            self.codes[lead.landing.conductor]: lead.part.strands
            for lead in self.fit.leads
            if isinstance(lead.part, Core)
        }
        needs = (*self._ids("strip"), *self._tail_ids)
        if not cores:
            return self._step("tin", "tin_tails", "hot", needs)
        kind = ("tin", "tin_all", "tin_many")[min(len(self._tails), 2)]
        return self._step("tin", kind, "hot", needs, strands=by_figure(cores))

    def _park(self) -> Iterator[Step]:
        uses = self._of("joint")
        if uses:
            told = self._told(uses)
            needs = self._ids("strip", "tin")
            yield self._step("park", "park", "hot", needs, sleeves=told)

    def _links(self) -> Iterator[Step]:
        for link in self.plan.links:
            if link.end == self.end:
                told = " + ".join(f"*{contact}*" for contact in link.contacts)
                act = f"link/{'+'.join(link.contacts)}"
                yield self._step(act, "link", "hot", self._ids("ready"), contacts=told)

    def _solder(self) -> Iterator[Step]:
        links = [f"link/{'+'.join(it.contacts)}" for it in self.plan.links if it.end == self.end]
        before = self._ids("ready", "tin", "tail_sleeve", "park", "hold", *links)
        clampings = groupby(self.fit.access, key=lambda access: access.clamping)
        for place, (_, accesses) in enumerate(clampings, start=1):
            contacts = tuple(access.contact for access in accesses)
            joints = discs(self.order[contact] for contact in contacts)
            kind = self._solder_kind(place, len(contacts))
            needs = (*self.threaded, *before, *self.joints[-1:])
            act = f"solder/{place}"
            yield self._step(act, kind, "hot", needs, soldered=contacts, joints=joints)
            self.joints.append(self._id(act))

    @staticmethod
    def _solder_kind(clamping: int, joints: int) -> str:
        if clamping > 1:
            return "solder_turned"
        return "solder" if joints > 1 else "solder_one"

    # -- insulate

    def insulated(self) -> Iterator[Step]:
        """Yield what covers joints and spare cores."""
        for covers, act in (("joint", "push"), ("tail", "push_tail")):
            uses = self._of(covers)
            if uses:
                joints = discs(self.order[use.contact] for use in uses)
                needs = (*self.joints, *self._ids("look"))
                yield self._step(act, act, "hot", needs, joints=joints)
        dabbed = {it.landing.contact for it in self.fit.leads if it.landing.dabbed}
        if dabbed:
            joints = discs(self.order[contact] for contact in dabbed)
            needs = (*self.joints, *self._ids("look"))
            yield self._step("dab", "dab", "close", needs, joints=joints)
        spare = [self.codes[name] for name, _ in self.facts.lengths.spares(self.end)]
        if spare:
            cores, mm = bold_list(spare), number(SPARE_CORE_MM)
            yield self._step("cap", "cap", "hot", self._ids("strip"), cores=cores, mm=mm)
