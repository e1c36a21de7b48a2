"""A diagnosis as the JSON object that machines read."""

from planner.proving.diagnosing import Diagnosis, Explanation, Fault, HighJoint
from planner.proving.reading import Contact
from planner.units import rounded


def diagnosis_values(plan: str, readings: str, found: Diagnosis) -> dict[str, object]:
    """Return the object that docs/formats/diagnosis.md describes."""
    return {
        "plan": plan,
        "readings": readings,
        "verdict": found.verdict,
        "cost": found.cost,
        "proved": found.proved,
        "explanations": [_explanation(it) for it in found.explanations],
        "more": found.more,
        "counted": found.counted,
        "high_joints": [_high_joint(it) for it in found.high_joints],
        "contradictions": [
            {"pairs": [_pair(pair) for pair in it.pairs], "words": it.words}
            for it in found.contradictions
        ],
        "next": None
        if found.next_probe is None
        else {"pair": _pair(found.next_probe.pair), "words": found.next_probe.words},
        "look": found.look,
        "unseen": list(found.unseen),
        "remarks": list(found.remarks),
        "unread": {"continuity": found.unread_continuity, "isolation": found.unread_isolation},
    }


def _explanation(it: Explanation) -> dict[str, object]:
    return {
        "cost": it.cost,
        "likelihood": rounded(it.likelihood, 4),
        "faults": [_fault(fault) for fault in it.faults],
    }


def _fault(it: Fault) -> dict[str, object]:
    return {
        "kind": it.kind,
        "end": it.end,
        "ends": list(it.ends),
        "contacts": [_contact(contact) for contact in it.contacts],
        "words": it.words,
        "look": it.look,
    }


def _high_joint(it: HighJoint) -> dict[str, object]:
    return {
        "pair": _pair((it.one, it.other)),
        "ohm": rounded(it.ohm),
        "expected_ohm": None if it.expected_ohm is None else rounded(it.expected_ohm),
        "sigmas": rounded(it.sigmas, 1),
        **_fault(it.fault),
    }


def _contact(contact: Contact) -> dict[str, str]:
    return {"end": contact[0], "contact": contact[1]}


def _pair(pair: tuple[Contact, Contact]) -> list[dict[str, str]]:
    return [_contact(contact) for contact in pair]
