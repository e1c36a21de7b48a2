"""Channels of one kind whose loops differ in resistance by more than the stated limit."""

from collections.abc import Iterator

from planner.checks.context import Context
from planner.checks.registry import Found, rule
from planner.checks.wording import channels_text, headline
from planner.electrical.balance import Balance, balances
from planner.electrical.loops import Loop
from planner.model.place import Place
from planner.units import number, ohm_text, significant


@rule(
    code="channel-unbalanced",
    title="Channels differ in resistance",
    why="The channel with more resistance is a little softer, the more so the lower the load is.",
    weight="note",
)
def unlike_channels(context: Context) -> Iterator[Found]:
    """Compare the loops of stereo sides, and of numbered channels."""
    for balance in balances(context.plan, context.wiring):
        if balance.over:
            name = channels_text([balance.high.channel])
            yield Found(
                what=_what(context, balance),
                mend="Give both the same length, size and number of cores, or set another limit.",
                where=_places(balance.high),
                title=f"{headline(name)} has {significant(balance.percent, 2)} % more resistance",
            )


def _what(context: Context, balance: Balance) -> str:
    assumed = context.plan.assumed
    high, low = (channels_text([loop.channel]) for loop in (balance.high, balance.low))
    return (
        f"The loop of the {high} has {ohm_text(balance.high_ohm)}, of the {low} "
        f"{ohm_text(balance.low_ohm)} at {number(assumed.temperature_c, 1)} \u00b0C: "
        f"{significant(balance.percent, 2)} % more, and the limit is "
        f"{number(assumed.balance_limit_percent)} %. Into {ohm_text(assumed.load_ohm)} "
        f"it is {significant(balance.level_db, 2)} dB softer."
    )


def _places(loop: Loop) -> tuple[Place, ...]:
    contacts = (loop.plus[1], loop.minus[1])
    return tuple(sorted({Place(end=loop.load, contact=contact) for contact in contacts}))
