"""From an identified sample to signals by contact: what is known, and what is still to be asked."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from planner.model.signals import CHANNELS, Signal, sort_key
from planner.problem import InputError, Problem, did_you_mean
from planner.proving.identifying.answer import Contacts, Driver, Identified
from planner.proving.identifying.sample import SampleReadings
from planner.proving.identifying.telling import CELL_CAUTION, joined
from planner.units import number, significant
from planner.wording import listed

ONE_CHANNEL = "one"  # the answer for a connector with one channel, bound where it is used
RETURN, NOTHING = "return", "nothing"
_SHELL_STEPS = ("Look at the drawing, or at where the screen of a lead for it is soldered.",)


@dataclass(frozen=True, slots=True)
class Question:
    """What is to be found out: its key, its words, the answers (value and words), and how.

    `steps` walk through the test, `caution` goes before them where there is one.
    """

    key: str
    words: str
    choices: tuple[tuple[str, str], ...]
    steps: tuple[str, ...]
    caution: str = ""

    def allows(self, answer: str) -> bool:
        """Tell whether a value is one of the answers."""
        return any(answer == value for value, _words in self.choices)


@dataclass(frozen=True, slots=True)
class Proposal:
    """What each contact is, in words, and the questions that turn it into signals.

    `obstacles` say why no record can be made of this; without any, the questions are all there is.
    """

    known: dict[str, str]
    questions: tuple[Question, ...]
    obstacles: tuple[str, ...] = ()


def as_signals(identified: Identified) -> Proposal:
    """Return what is known of each contact and what is still to be asked."""
    return Proposal(
        {name: _known(identified, name) for name in identified.contacts},
        tuple(_questions(identified)),
        tuple(_obstacles(identified)),
    )


def answered(identified: Identified, answers: Mapping[str, str]) -> dict[str, tuple[Signal, ...]]:
    """Return the signals of each contact, fit for a pinout record, from answers by question.

    InputError lists the answers that are missing, not among the choices, or clash.
    """
    problems = [*_wrong(identified, answers)]
    if problems:
        raise InputError(problems)
    carried: dict[str, set[Signal]] = {name: set() for name in identified.contacts}
    for at, driver in enumerate(identified.drivers, start=1):
        channel = answers[f"ear-{at}"].replace(ONE_CHANNEL, "")
        _carry(carried, driver, channel, plus_is_hot=answers[f"plus-{at}"] == driver.hot[0])
    if identified.microphone is not None:
        plus = answers.get("plus-microphone", identified.microphone.hot[0])
        hot = plus == identified.microphone.hot[0]
        _carry(carried, identified.microphone, "mic", plus_is_hot=hot)
    for name in _asked_parts(identified):
        part = answers[f"part-{name}"]
        if part != RETURN:
            carried[name] = set() if part == NOTHING else {part}
    return {name: tuple(sorted(carried[name], key=sort_key)) for name in carried}


def basis_line(
    sample: SampleReadings, identified: Identified, answers: Mapping[str, str] | None = None
) -> str:
    """Say in one line what a measured source rests on; the answers are what no meter tells."""
    meter = sample.meter.name or "a meter"
    return (
        f"{len(sample.seen)} pairs of {len(sample.contacts)} contacts read with {meter} "
        f"(±{number(sample.meter.percent)} % ±{number(sample.meter.offset_ohm)} Ω); "
        f"next best understanding worse by {number(min(identified.margin, 999), 0)} (chi-square)"
        + ("; the ears and plus as answered, not measured" if answers else "")
    )


def _carry(
    carried: dict[str, set[Signal]], driver: Driver, channel: str, *, plus_is_hot: bool
) -> None:
    legs = ("+", "-") if plus_is_hot else ("-", "+")
    for names, leg in zip((driver.hot, driver.cold), legs, strict=True):
        for name in names:
            carried[name].add(channel + leg)


def _known(identified: Identified, name: str) -> str:
    parts = [
        f"driver {at}, {significant(driver.ohm, 2)} Ω"
        for at, driver in enumerate(identified.drivers, start=1)
        if name in driver.contacts
    ]
    microphone = identified.microphone
    if microphone is not None and name in microphone.contacts:
        parts.append("microphone")
    if any(name in common.contacts for common in identified.returns):
        parts = [f"common return of {listed(parts)}"]
    shell = next((it for it in identified.shell if it.contact == name), None)
    if shell is not None:
        beside = f", joined to {listed(shell.joined_to)}" if shell.joined_to else ""
        parts = [f"shell{' (floating)' if shell.floating else beside}"]
    return "; ".join(parts) or "nothing"


def _questions(identified: Identified) -> Iterator[Question]:
    for at, driver in enumerate(identified.drivers, start=1):
        yield from _driver_questions(identified, at, driver)
    microphone = identified.microphone
    if microphone is not None and not _shares(identified, microphone):
        words = f"Which leg of the microphone {_where(microphone)} is plus?"
        steps = ("Look at its drawing; the plus of an electret takes the bias.",)
        yield Question("plus-microphone", words, _legs(microphone), steps)
    for name in _asked_parts(identified):
        yield _part_question(identified, name)


def _driver_questions(identified: Identified, at: int, driver: Driver) -> Iterator[Question]:
    hot, cold = joined(driver.hot), joined(driver.cold)
    where = _where(driver)
    words = f"Which channel is the driver {where}?"
    steps = (*_TOUCH, f"Touch {hot} and {cold} with the two wires. Which ear clicks?", _BY_TONE)
    yield Question(f"ear-{at}", words, _channels(identified), steps, CELL_CAUTION)
    words = f"Which leg of the driver {where} is plus?"
    steps = (
        *_TOUCH,
        f"Touch the cell's plus to {hot} and its minus to {cold}, and watch the cone.",
        f"It moves outward: {hot} is plus. It moves inward: {cold} is plus.",
    )
    yield Question(f"plus-{at}", words, _legs(driver), steps, CELL_CAUTION)


# Common practice, no source.
_TOUCH = (
    "Unplug the sample from everything and lay the meter aside.",
    "Take one 1.5 V cell and two thin wires; touch for an instant only, then let go.",
)
_BY_TONE = (
    "Or play the tone for the left channel alone, very low, through a lead that is proved, and "
    "note which ear it comes from."
)


def _where(driver: Driver) -> str:
    return f"between {joined(driver.hot)} and {joined(driver.cold)}"


def _channels(identified: Identified) -> tuple[tuple[str, str], ...]:
    known = [("L", "left"), ("R", "right"), *((each, f"channel {each}") for each in "12345678")]
    if identified.microphone is None:
        known.append(("mic", "it is a dynamic microphone"))
        if len(identified.drivers) == 1:
            known.append((ONE_CHANNEL, "the only one: the end where it is used says which"))
    return tuple(known)


def _legs(driver: Driver) -> tuple[tuple[str, str], ...]:
    return tuple((names[0], joined(names)) for names in (driver.hot, driver.cold) if names)


def _shares(identified: Identified, driver: Driver) -> bool:
    return any(common.contacts == driver.cold for common in identified.returns)


def _asked_parts(identified: Identified) -> list[str]:
    """Return the contacts that may be a screen: shells, and further ones on a return."""
    shells = [it.contact for it in identified.shell]
    wide = [name for it in identified.returns if len(it.contacts) > 1 for name in it.contacts]
    return [name for name in identified.contacts if name in {*shells, *wide}]


def _part_question(identified: Identified, name: str) -> Question:
    group = _group(identified, name)
    hangs = any(name in it.contacts for it in identified.found.elements)
    same = ((RETURN, f"the same as {listed([it for it in group if it != name]) or 'measured'}"),)
    choices = (
        *(same if hangs else ()),
        ("shield", "the shield"),
        ("chassis", "the chassis"),
        *(() if hangs else ((NOTHING, "nothing"),)),
    )
    return Question(f"part-{name}", f"What does {name} carry?", choices, _SHELL_STEPS)


def _group(identified: Identified, name: str) -> Contacts:
    return next((group for group in identified.groups if name in group), (name,))


def _obstacles(identified: Identified) -> Iterator[str]:
    if identified.verdict in {"contradictory", "too-little"}:
        yield "The readings do not say yet what hangs on the contacts."
    if any(not driver.cold for driver in identified.drivers):
        yield "A return is brought out nowhere: a record can't say what its drivers come back to."
    if not identified.drivers and identified.microphone is None:
        yield "Nothing was found that carries a signal."


def _wrong(identified: Identified, answers: Mapping[str, str]) -> Iterator[Problem]:
    proposal = as_signals(identified)
    for obstacle in proposal.obstacles:
        yield Problem(obstacle.rstrip("."), "sample", "Read more pairs, or read them again.")
    known = {question.key: question for question in proposal.questions}
    for key in answers:
        if key not in known:
            yield Problem(f"nothing is asked called {key!r}", key, did_you_mean(key, known))
    for question in proposal.questions:
        answer = answers.get(question.key)
        values = [value for value, _words in question.choices]
        if answer is None:
            yield Problem(f"not answered: {question.words}", question.key, " ".join(question.steps))
        elif not question.allows(answer):
            what = f"{answer[:40]!r} is no answer to: {question.words}"
            yield Problem(what, question.key, did_you_mean(answer, values))
    yield from _clashes(identified, answers)


def _clashes(identified: Identified, answers: Mapping[str, str]) -> Iterator[Problem]:
    taken: dict[str, str] = {}
    for at in range(1, len(identified.drivers) + 1):
        channel = answers.get(f"ear-{at}", "")
        if channel in taken:
            what = f"two drivers are said to be {channel}"
            yield Problem(what, f"ear-{at}", f"Change this or {taken[channel]}.")
        if channel in CHANNELS:
            taken[channel] = f"ear-{at}"
    for common in identified.returns:
        parts = [answers.get(f"part-{name}", RETURN) for name in common.contacts]
        if RETURN not in parts:
            what = f"none of {listed(common.contacts)} is left to carry the return"
            mend = "Let one of them carry the same as measured."
            yield Problem(what, f"part-{common.contacts[0]}", mend)
