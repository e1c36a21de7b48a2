"""The verdict of a unit in words, with the mark that goes with them."""

from typing import TYPE_CHECKING

from planner.app.answer import counted

if TYPE_CHECKING:
    from planner.drawing.marks import MarkKind
    from planner.proving.diagnosing import Diagnosis, Explanation


def verdict_words(made: "Diagnosis") -> "tuple[MarkKind, str, str]":
    """Return the mark, the verdict, and what it rests on or wants."""
    if made.verdict == "sound":
        return "clear", "Sound", "All that is to be joined is, and nothing else."
    left = _left(made)
    if made.verdict == "incomplete" and not made.contradictions:
        return "nothing", "Not shown yet", left
    if made.verdict == "incomplete":
        return "caution", "Read again", "Some readings can\u2019t all be right."
    faults = counted(made.cost or len(made.high_joints), "fault")
    told = f"{faults} {'explains' if made.cost == 1 else 'explain'} all readings."
    return "stop", "Faulty", " ".join(part for part in (told, left) if part)


def _left(made: "Diagnosis") -> str:
    parts = [
        f"{counted(number, 'pair')} of {kind}"
        for number, kind in (
            (made.unread_continuity, "continuity"),
            (made.unread_isolation, "isolation"),
        )
        if number
    ]
    return f"Still to read: {' and '.join(parts)}." if parts else ""


def explanation_head(made: "Diagnosis", place: int) -> str:
    """Say how likely an explanation is beside its rivals."""
    found: Explanation = made.explanations[place]
    if len(made.explanations) == 1 and not made.more:
        return "The one smallest explanation" if made.proved else "An explanation"
    share = round(found.likelihood * 100)
    first = "Likeliest" if place == 0 else f"Or {place + 1}"
    return f"{first}, {share} %" if share else first


def reason_words(made: "Diagnosis | None") -> str:
    """Return the reason that is proposed for a unit that failed."""
    if made is None or not made.faults:
        return ""
    return "; ".join(fault.words for fault in made.faults)
