"""What some contacts of a draft rest on, where that is another word than the record's own."""

from planner.intake.pinout_draft import PinoutDraft
from planner.model.connector import Connector
from planner.model.source import Statement
from planner.problem import EditRefused, did_you_mean


def contacts_from(text: str, connector: Connector) -> tuple[str, ...]:
    """Read contacts as a person writes them: `R1, tip` or `4 5`; EditRefused for no such one."""
    names = {it.spoken.casefold(): it.id for it in connector.contacts}
    names |= {it.id.casefold(): it.id for it in connector.contacts}
    pieces = [each.strip() for each in text.casefold().replace(";", ",").split(",")]
    words = [word for it in pieces for word in ((it,) if it in names else it.split())]
    if not words:
        raise EditRefused("no contact is named", "Write which contacts it is about: R1, R2.")
    for word in words:
        if word not in names:
            raise EditRefused(
                f"{connector.title} has no contact {word!r}", did_you_mean(word, connector.by_id)
            )
    return tuple(dict.fromkeys(names[word] for word in words))


def state(draft: PinoutDraft, statement: Statement) -> PinoutDraft:
    """Say on whose word some contacts rest; what was said of them before is taken out."""
    unsaid = [name for name in statement.contacts if name not in draft.signals]
    if unsaid:
        raise EditRefused(
            f"nobody has said yet what {unsaid[0]} carries", "Write its signal first."
        )
    return draft.evolve(statements=(*_without(draft, set(statement.contacts)), statement))


def unstate(draft: PinoutDraft, contacts: tuple[str, ...]) -> PinoutDraft:
    """Let contacts rest on the record's own source again."""
    return draft.evolve(statements=_without(draft, set(contacts)))


def _without(draft: PinoutDraft, contacts: set[str]) -> tuple[Statement, ...]:
    cut = (
        it.evolve(contacts=tuple(name for name in it.contacts if name not in contacts))
        if set(it.contacts) - contacts
        else None
        for it in draft.statements
    )
    return tuple(filter(None, cut))
