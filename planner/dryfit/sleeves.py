"""Which joints of an end to sleeve, and what gets a dab of compound or a liner instead."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from functools import cached_property, lru_cache
from typing import Literal

from planner.dryfit.bodies import SLEEVE_WALL_MM, Capsule, Lead
from planner.dryfit.fit import EndFit
from planner.dryfit.gaps import Gap
from planner.dryfit.identity import ById
from planner.dryfit.sleeve_sizes import SleeveUse, joint_sleeve, tail_sleeve
from planner.dryfit.sleeve_words import put_words, why_not
from planner.geometry.covering import smallest_cover
from planner.model.plan import Plan
from planner.model.workmanship import Workmanship
from planner.units import number

# No contact has a name with a space.
SHELL = "the shell"
Spot = tuple[str, str, str]  # contact, other contact or the shell, why


@dataclass(frozen=True, slots=True)
class SleevePlan:
    """What the joints of an end need.

    `sleeves` and `dabs` are to be added, `on` are the sleeves that the builder has chosen already.
    A dab is on the first contact of its triple, towards the second. `uncured` is what nothing of
    this kind mends. `proved`: no smaller set of sleeved joints does it; else `found`.
    """

    sleeves: tuple[SleeveUse, ...] = ()
    dabs: tuple[Spot, ...] = ()
    liner: bool = False
    uncured: tuple[Spot, ...] = ()
    on: tuple[SleeveUse, ...] = ()
    verdict: Literal["proved", "found"] = "proved"

    @property
    def joints(self) -> tuple[str, ...]:
        """The contacts whose joints get a sleeve."""
        return tuple(dict.fromkeys(use.contact for use in self.sleeves))

    @property
    def mends(self) -> int:
        """How many things there are to do or to tell: sleeved joints, dabs, liner, uncured."""
        return len(self.joints) + len(self.dabs) + self.liner + len(self.uncured)


def sleeves_for(plan: Plan, fit: EndFit) -> SleevePlan:
    """Return the least set of joints to sleeve at an end, and what a sleeve does not cure.

    At risk are the pairs of bare bodies whose gap is of the class touch or sleeve. One joint of
    each pair is sleeved: a smallest vertex cover. A pair that no sleeve cures gets a dab. Joints
    near the shell get a liner together where that saves a sleeve or a dab.
    """
    return _sleeves(ById(fit), plan.workmanship)


@lru_cache(maxsize=64)
def _sleeves(fit: ById[EndFit], rules: Workmanship) -> SleevePlan:
    return _Risks(rules, fit.record).plan()


def sleeves_on(fit: EndFit, rules: Workmanship) -> tuple[SleeveUse, ...]:
    """Return the sleeves that are chosen already at an end, one for each joint or tail."""
    found = []
    for leads in joints_of(fit).values():
        sleeved = [lead for lead in leads if lead.landing.sleeved]
        found += [tail_sleeve(lead) for lead in sleeved if lead.is_shield]
        if any(not lead.is_shield for lead in sleeved):
            found.append(joint_sleeve(leads, rules))
    return tuple(found)


def mend_of(sleeves: SleevePlan, gap: Gap) -> SleeveUse | Spot | None:
    """Return the sleeve, or the dab, of a sleeve plan that mends a gap; None if neither does."""
    spots = {_spot(gap.first), _spot(gap.second)}
    for spot in (*sleeves.dabs, *sleeves.uncured):
        if set(spot[:2]) == spots:
            return spot if spot in sleeves.dabs else None
    return next((use for use in sleeves.sleeves if use.contact in spots), None)


def mend_words(sleeves: SleevePlan, gap: Gap, named: Callable[[str], str] = str) -> str:
    """Say in a sentence what of the sleeve plan mends a gap, or nothing if nothing there does.

    `named` says a contact.
    """
    mend = mend_of(sleeves, gap)
    if isinstance(mend, SleeveUse):
        return put_words(mend, named)
    if mend is not None:
        return f"Put a dab of insulating compound on {named(mend[0])}: {mend[2]}."
    lined = sleeves.liner and "shell" in {gap.first.kind, gap.second.kind}
    return "Put a liner into the shell." if lined else ""


def joints_of(fit: EndFit) -> dict[str, tuple[Lead, ...]]:
    """Return the leads in each contact, by contact, in the order of the leads."""
    joints: dict[str, tuple[Lead, ...]] = {}
    for lead in fit.leads:
        contact = lead.landing.contact
        joints[contact] = (*joints.get(contact, ()), lead)
    return joints


def _spot(body: Capsule) -> str:
    return body.contact or SHELL


@dataclass(frozen=True, slots=True)
class _Risk:
    """The gaps between two spots, the smallest first; at least the first spot is a joint."""

    one: str
    other: str
    gaps: tuple[Gap, ...]


class _Risks:
    """The risk graph of an end: joints, and the pairs of them that come too near."""

    def __init__(self, rules: Workmanship, fit: EndFit) -> None:
        self.rules = rules
        self.fit = fit
        self.joints = joints_of(fit)

    def plan(self) -> SleevePlan:
        """Solve with sleeves alone and with a liner, and take what needs less."""
        alone = self._solved([*self.risks])
        near_shell = [risk for risk in self.risks if risk.other == SHELL]
        if len(near_shell) < 2:
            return alone
        lined = self._solved([risk for risk in self.risks if risk.other != SHELL], liner=True)
        return lined if lined.mends < alone.mends else alone

    @cached_property
    def risks(self) -> tuple[_Risk, ...]:
        """The pairs at risk, by contact."""
        found: dict[tuple[str, str], list[Gap]] = {}
        for gap in self.fit.gaps:
            if gap.grade in {"touch", "sleeve"} and gap.first.bare and gap.second.bare:
                pair = self._pair(_spot(gap.first), _spot(gap.second))
                if pair is not None:
                    found.setdefault(pair, []).append(gap)
        return tuple(
            _Risk(*pair, tuple(sorted(found[pair], key=lambda gap: gap.gap_mm)))
            for pair in sorted(found)
        )

    def _pair(self, one: str, other: str) -> tuple[str, str] | None:
        """Return the pair with its joints first; None where there is none, or it is one spot."""
        joints = sorted({one, other} & set(self.joints))
        if one == other or not joints:
            return None
        rest = sorted({one, other} - set(joints))
        first, second = (*joints, *rest)
        return first, second

    @cached_property
    def uses(self) -> dict[str, tuple[SleeveUse, ...]]:
        """What it takes to sleeve each joint at risk: its own sleeve, sleeves on its tails."""
        bodies: dict[str, list[Capsule]] = {}
        for risk in self.risks:
            for gap in risk.gaps:
                for body in (gap.first, gap.second):
                    bodies.setdefault(body.contact, []).append(body)
        return {it: self._uses(it, bodies[it]) for it in self.joints if it in bodies}

    def _uses(self, contact: str, bodies: Sequence[Capsule]) -> tuple[SleeveUse, ...]:
        leads = self.joints[contact]
        tails = {body.conductor for body in bodies if body.kind == "tail"}
        over_joint = any(body.kind != "tail" for body in bodies)
        only_tail = all(lead.is_shield for lead in leads)
        uses = [joint_sleeve(leads, self.rules)] if over_joint else []
        if not (over_joint and only_tail):
            uses += [tail_sleeve(lead) for lead in leads if lead.landing.conductor in tails]
        return tuple(uses)

    def _able(self, contact: str) -> bool:
        return contact in self.uses and all(use.fits for use in self.uses[contact])

    def _solved(self, risks: Sequence[_Risk], *, liner: bool = False) -> SleevePlan:
        by_sleeve = [risk for risk in risks if self._sides(risk) and self._goes_between(risk)]
        rest = [risk for risk in risks if risk not in by_sleeve]
        chosen, verdict = self._covering([(risk, self._sides(risk)) for risk in by_sleeve])
        by_dab = [risk for risk in rest if self._room_mm(risk) > 0]
        dabbed, _ = self._covering([(risk, self._near(risk)) for risk in by_dab], avoid=chosen)
        return SleevePlan(
            sleeves=tuple(use for contact in chosen for use in self.uses[contact]),
            dabs=tuple(self._dab(risk, dabbed) for risk in by_dab),
            liner=liner,
            uncured=tuple(self._spot_of(risk) for risk in rest if risk not in by_dab),
            on=sleeves_on(self.fit, self.rules),
            verdict=verdict,
        )

    def _near(self, risk: _Risk) -> tuple[str, ...]:
        return tuple(contact for contact in (risk.one, risk.other) if contact in self.joints)

    def _sides(self, risk: _Risk) -> tuple[str, ...]:
        return tuple(contact for contact in self._near(risk) if self._able(contact))

    def _room_mm(self, risk: _Risk) -> float:
        """Return the room between two bodies as drawn: leads were thought thicker."""
        gap, tolerance = risk.gaps[0], self.rules.tolerance_mm
        leads = sum(body.kind in {"strands", "tail"} for body in (gap.first, gap.second))
        return round(gap.gap_mm + leads * tolerance, 3)

    def _goes_between(self, risk: _Risk) -> bool:
        return self._room_mm(risk) >= SLEEVE_WALL_MM

    def _covering(
        self, wanted: Sequence[tuple[_Risk, tuple[str, ...]]], avoid: Sequence[str] = ()
    ) -> tuple[tuple[str, ...], Literal["proved", "found"]]:
        """Return the fewest contacts with one of the sides of each risk.

        Of equally few: those not to `avoid`, then those with most room to park, then those that
        are soldered later, since a parked sleeve is in the way of what comes after it.
        """
        if not wanted:
            return (), "proved"
        names = list(self.joints)
        place = {contact: index for index, contact in enumerate(names)}
        pairs = [(place[sides[0]], place[sides[-1]]) for _, sides in wanted]
        ranked = sorted(names, key=lambda contact: (contact in avoid, *self._rank(contact)))
        cover = smallest_cover(pairs, [place[contact] for contact in ranked])
        return tuple(names[index] for index in cover.chosen), cover.verdict

    def _rank(self, contact: str) -> tuple[int, int, float]:
        """Rank by room to park, then by turn: as the builder wants it, else the deepest first.

        The best order itself is too dear here, where every edit comes by.
        """
        uses, wanted = self.uses.get(contact, ()), self.fit.wanted
        spare = min((use.park_has_mm - use.park_needs_mm for use in uses), default=0.0)
        turn = wanted.index(contact) if contact in wanted else len(wanted)
        return -round(spare), -turn, -self.joints[contact][0].mouth[2]

    def _dab(self, risk: _Risk, dabbed: Sequence[str]) -> Spot:
        one, other, why = self._spot_of(risk)
        return (one, other, why) if one in dabbed else (other, one, why)

    def _spot_of(self, risk: _Risk) -> Spot:
        return risk.one, risk.other, self._why(risk)

    def _why(self, risk: _Risk) -> str:
        room = self._room_mm(risk)
        if room <= 0:
            return "metal lies on metal as it is laid out, move one"
        whys = [why_not(use) for contact in self._near(risk) for use in self.uses[contact]]
        if not self._sides(risk):
            return ", and ".join(why for why in whys if why)
        return f"a sleeve's wall of {number(SLEEVE_WALL_MM)} mm does not go into {number(room)} mm"
