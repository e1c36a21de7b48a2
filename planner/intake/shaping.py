"""Draw a connector step by step: each act takes a draft and returns another, or refuses."""

import math
from collections.abc import Collection, Iterable, Sequence
from typing import Any

from pydantic import ValidationError

from planner.geometry.placing import Grid, Ring
from planner.geometry.views import half_turn_deg
from planner.intake.connector_draft import FIRST_TERMINAL, ConnectorDraft
from planner.model.connector import Contact, Terminal
from planner.problem import EditRefused
from planner.units import rounded

# A hundredth of what can be measured with a calliper.
DIGITS = 4
MOST_CONTACTS = 256
Point = tuple[float, float]


class ShapeRefused(EditRefused):
    """What was asked for can't be drawn."""


def next_number(draft: ConnectorDraft) -> str:
    """Return the lowest number that no contact has."""
    taken = {it.id for it in draft.contacts}
    return next(str(at) for at in range(1, MOST_CONTACTS + 2) if str(at) not in taken)


def add_contact(draft: ConnectorDraft, place: Point, number: str = "") -> ConnectorDraft:
    """Put one more contact at a place, with the terminal of the last one."""
    number = number or next_number(draft)
    _refuse_taken(draft, number)
    if len(draft.contacts) >= MOST_CONTACTS:
        raise ShapeRefused(f"there are {MOST_CONTACTS} contacts", "Take one away first.")
    pattern = draft.contacts[-1].terminal if draft.contacts else FIRST_TERMINAL
    contact = _contact(number, pattern, place, _outward_deg(place))
    return draft.evolve(contacts=(*draft.contacts, contact))


def take_away(draft: ConnectorDraft, names: Collection[str]) -> ConnectorDraft:
    """Take contacts away."""
    return draft.evolve(contacts=tuple(it for it in draft.contacts if it.id not in names))


def move(draft: ConnectorDraft, places: dict[str, Point]) -> ConnectorDraft:
    """Put contacts at other places, mm as looked at."""
    return _changed(draft, places, lambda it: _at(it.terminal, places[it.id]))


def nudge(draft: ConnectorDraft, names: Collection[str], by_mm: Point) -> ConnectorDraft:
    """Move contacts by so much to the right and up."""
    return _changed(
        draft,
        names,
        lambda it: _at(it.terminal, (it.terminal.x_mm + by_mm[0], it.terminal.y_mm + by_mm[1])),
    )


def renumber(draft: ConnectorDraft, name: str, number: str) -> ConnectorDraft:
    """Give a contact another number; a moulded mark that was the same goes with it."""
    if name == number:
        return draft
    _refuse_taken(draft, number)
    return draft.evolve(
        contacts=tuple(_numbered(it, number) if it.id == name else it for it in draft.contacts)
    )


def exchange_numbers(draft: ConnectorDraft, one: str, other: str) -> ConnectorDraft:
    """Let two contacts exchange their numbers."""
    swap = {one: other, other: one}
    return draft.evolve(
        contacts=tuple(_numbered(it, swap.get(it.id, it.id)) for it in draft.contacts)
    )


def set_names(draft: ConnectorDraft, name: str, *, spoken: str, moulded: str) -> ConnectorDraft:
    """Say how a contact is spoken of, and what is moulded beside it."""
    return draft.evolve(
        contacts=tuple(
            _evolved(it, name=spoken, moulded=moulded) if it.id == name else it
            for it in draft.contacts
        )
    )


def set_terminals(
    draft: ConnectorDraft,
    names: Collection[str],
    **figures: Any,  # noqa: ANN401 - fields of Terminal
) -> ConnectorDraft:
    """Give contacts another kind of terminal or other sizes; a new kind keeps the width it had."""
    return _changed(draft, names, lambda it: _terminal(it.terminal, figures))


def open_outwards(draft: ConnectorDraft, names: Collection[str]) -> ConnectorDraft:
    """Turn terminals so that each faces away from the plug's axis."""
    return _changed(
        draft,
        names,
        lambda it: it.terminal.evolve(
            opening_deg=_outward_deg((it.terminal.x_mm, it.terminal.y_mm))
        ),
    )


def place_by_rule(
    draft: ConnectorDraft, rule: Ring | Grid, numbers: Sequence[str] = ()
) -> ConnectorDraft:
    """Place contacts by a ring or rows; those with these numbers move, the others are made new.

    Without numbers they are 1, 2, 3 and so on in the order of the rule.
    """
    try:
        places = rule.places()
    except ValueError as error:
        raise ShapeRefused(str(error), "Give each row a contact.") from None
    numbers = tuple(numbers) or tuple(str(at) for at in range(1, len(places) + 1))
    if len(numbers) != len(places) or len(set(numbers)) != len(numbers):
        raise ShapeRefused(
            f"{len(places)} places and {len(set(numbers))} different numbers",
            "Write each number once, one for each place.",
        )
    for number, place in zip(numbers, places, strict=True):
        there = draft.contact(number)
        draft = add_contact(draft, place, number) if there is None else move(draft, {number: place})
    return open_outwards(draft, numbers)


def _changed(draft: ConnectorDraft, names: Iterable[str], change: Any) -> ConnectorDraft:  # noqa: ANN401 - a function of a contact
    wanted = set(names)
    return draft.evolve(
        contacts=tuple(
            _evolved(it, terminal=change(it)) if it.id in wanted else it for it in draft.contacts
        )
    )


def _refuse_taken(draft: ConnectorDraft, number: str) -> None:
    if number.lower() in {it.id.lower() for it in draft.contacts}:
        raise ShapeRefused(
            f"there is a contact {number} already", "Take a free number, or exchange the two."
        )


def _evolved(contact: Contact, **changes: Any) -> Contact:  # noqa: ANN401 - any field
    try:
        return contact.evolve(**changes)
    except ValidationError as error:
        raise ShapeRefused(_first(error), "Correct the figure.") from None


def _first(error: ValidationError) -> str:
    found = error.errors()[0]
    place = ".".join(str(it) for it in found["loc"]) or "the contact"
    return f"{place}: {found['msg']} (given {found['input']!r})"


def _terminal(terminal: Terminal, figures: dict[str, Any]) -> Terminal:
    figures = {
        key: rounded(it, DIGITS) if isinstance(it, float) else it for key, it in figures.items()
    }
    kind = figures.get("kind", terminal.kind)
    if kind != terminal.kind:
        across = terminal.across_mm
        sizes = (
            {"bore_mm": across, "width_mm": 0}
            if kind == "cup"
            else {
                "width_mm": across,
                "bore_mm": 0,
            }
        )
        figures = sizes | figures
    try:
        return terminal.evolve(**figures)
    except ValidationError as error:
        raise ShapeRefused(_first(error), "Correct the figure.") from None


def _contact(number: str, pattern: Terminal, place: Point, opening_deg: float) -> Contact:
    try:
        terminal = _at(pattern, place).evolve(opening_deg=opening_deg)
        return Contact(id=number, moulded=number, terminal=terminal)
    except ValidationError as error:
        raise ShapeRefused(_first(error), "Correct the number or the place.") from None


def _numbered(contact: Contact, number: str) -> Contact:
    moulded = number if contact.moulded == contact.id else contact.moulded
    return _evolved(contact, id=number, moulded=moulded)


def _at(terminal: Terminal, place: Point) -> Terminal:
    x_mm, y_mm = (rounded(it, DIGITS) for it in place)
    try:
        return terminal.evolve(x_mm=x_mm, y_mm=y_mm)
    except ValidationError as error:
        raise ShapeRefused(_first(error), "Keep it within 100 mm of the axis.") from None


def _outward_deg(place: Point) -> float:
    x_mm, y_mm = place
    if math.hypot(x_mm, y_mm) < 1e-9:
        return 90.0
    return rounded(half_turn_deg(math.degrees(math.atan2(y_mm, x_mm))), DIGITS)
