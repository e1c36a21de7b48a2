"""What is said of a fit: what goes into what, what it needs, what there is, and the verdict."""

from typing import Literal

from planner.dryfit.wires import FitLine, told_apart

Gravity = Literal["stop", "caution", "note", "clear"]


def gravity(line: FitLine) -> Gravity:
    """Return how grave the answer is, as the findings weigh it."""
    fit = line.fit
    if fit.answer == "fits":
        return "clear"
    if fit.answer == "tight":
        return "caution" if line.packed else "note"
    return "caution" if line.what == "sleeve" or _is_thin(line) else "stop"


def _is_thin(line: FitLine) -> bool:
    """Tell whether it is a jacket that the clamp does not close on."""
    return (
        line.what == "jacket" and line.fit.answer == "fails" and line.fit.has_mm > line.fit.needs_mm
    )


def head_words(line: FitLine) -> str:
    """Say what goes into what: `RD, WH in the cup of S`, `5 leads in the barrel`."""
    wires = ", ".join(line.wires)
    many = f"{len(line.wires)} leads" if len(line.wires) > 1 else "1 lead"
    if line.what == "strands":
        return f"{wires} {'in' if line.packed else 'on'} the {line.into}"
    if line.what == "jacket":
        return "Jacket in the clamp"
    if line.what == "sleeve":
        return f"Sleeve over {wires} on {line.where.contact}"
    return f"{many} in the {line.into}"


def figure_words(line: FitLine) -> tuple[str, str]:
    """Say the need and what there is: `needs 1.31 mm`, `bore 1.4 mm`."""
    fit = line.fit
    needs, has = told_apart(fit.needs_mm, fit.has_mm)
    if fit.answer == "tight" and line.packed:
        least, needs, has = told_apart(fit.least_mm, fit.needs_mm, fit.has_mm)
        needs = f"{least} to {needs}" if least != needs else needs
    return f"{_verb(line)} {needs} mm", f"{_there(line)} {has} mm"


def _verb(line: FitLine) -> str:
    if line.what == "jacket":
        return "jacket"
    # Up to three wires the need is exact; for more there is a bound, and a bore that was found.
    if len(line.wires) <= 3 or line.fit.answer == "tight":
        return "needs"
    return "needs at least" if line.fit.answer == "fails" else "goes into"


def _there(line: FitLine) -> str:
    """Return the word before the figure that there is."""
    if line.what in {"jacket", "cores-in-clamp"}:
        return "grips from" if _is_thin(line) else "grips up to"
    if line.what == "sleeve" and line.fit.answer == "fails":
        return "largest that grips"
    return "bore" if line.packed else "width"


def verdict_words(line: FitLine) -> str:
    """Say the answer with what is to spare or too much: `fits, 0.09 mm to spare`."""
    fit = line.fit
    over, spare = (told_apart(abs(fit.has_mm - mm))[0] for mm in (fit.least_mm, fit.needs_mm))
    if fit.answer == "fails":
        return f"no, {over} mm too {'thin' if _is_thin(line) else 'thick'}"
    if fit.answer == "tight":
        return "not proved, tight" if line.packed else f"{spare} mm over the edge"
    return f"fits, {spare} mm to spare"


def fit_words(line: FitLine) -> str:
    """Say all of a fit in one line."""
    needs, has = figure_words(line)
    return f"{head_words(line)}: {verdict_words(line)} ({needs}, {has})"
