"""Channels that a shared return couples by more than the stated limit."""

from collections.abc import Iterator

from planner.checks.context import Context
from planner.checks.registry import Found, rule
from planner.checks.wording import channels_text
from planner.electrical.crosstalk import Crosstalk, crosstalks
from planner.model.place import Place
from planner.model.signals import sort_key
from planner.units import number, ohm_text
from planner.wording import listed


@rule(
    code="return-crosstalk",
    title="Shared return couples the channels",
    why="The current of one channel drops a voltage over the return that both share, and the "
    "other channel hears it: 20 log10(Rret / (Rret + Rload)) for a return shared all the way.",
    weight="note",
)
def shared_returns(context: Context) -> Iterator[Found]:
    """Find each two channels that a return couples, with the worse of both directions."""
    worst: dict[tuple[str, ...], Crosstalk] = {}
    for each in crosstalks(context.plan, context.wiring):
        pair = _channels(each)
        if each.over and (pair not in worst or _db(each) > _db(worst[pair])):
            worst[pair] = each
    for pair, each in worst.items():
        yield Found(
            what=_what(context, each),
            mend="Take a return of its own for each channel, or a thicker or shorter shared one, "
            "or set another limit.",
            where=tuple(sorted(Place(conductor=conductor) for conductor in each.shared)),
            title=f"{number(_db(each), 1)} dB between {channels_text(pair)}",
        )


def _channels(each: Crosstalk) -> tuple[str, ...]:
    channels = {each.driven.channel, each.heard.channel}
    return tuple(sorted(channels, key=lambda channel: sort_key(f"{channel}+")))


def _db(each: Crosstalk) -> float:
    """Return the figure in steps that hide the last bits of a float, for a lasting order."""
    return round(each.db if each.db is not None else -999.0, 6)


def _what(context: Context, each: Crosstalk) -> str:
    assumed = context.plan.assumed
    names = listed(context.words.conductor(conductor) for conductor in each.shared)
    ohm = f", {ohm_text(each.shared_ohm)} of it in common" if each.shared_ohm else ""
    return (
        f"The {channels_text(_channels(each))} share a return ({names}{ohm} at "
        f"{number(assumed.temperature_c, 1)} \u00b0C). Into {ohm_text(assumed.load_ohm)} that is "
        f"{number(_db(each), 1)} dB from one to the other, and the limit is "
        f"{number(assumed.crosstalk_limit_db, 1)} dB."
    )
