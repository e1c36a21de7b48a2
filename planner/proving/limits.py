"""The most that a joined pair may show on a meter, and the least that one apart must show."""

from dataclasses import dataclass

_SOURCE = "IPC/WHMA-A-620 rev. A, as quoted in a secondary page"
FLAT_OHM, OVER_WIRE_OHM = 2.0, 1.0
# A two-wire meter shows its own leads too, and no better than its last digit (typical figures, from
# memory; a hand meter's own sheet goes before them).
METER_LEADS_OHM = 0.2
# The published rule asks 100 megohm at 200 to 1000 V dc of a bare lead (US Army SB 740-91-01). An
# ohmmeter can't do that, and no such voltage belongs on a lead with anything plugged in. This is
# what an ohmmeter tells (common practice, no source).
APART_OHM = 10e6


@dataclass(frozen=True, slots=True)
class LimitRule:
    """A rule by which a limit is found, in words, and where it comes from."""

    key: str
    words: str
    source: str


OVER_WIRE = LimitRule(
    "over-wire", "not above 1 ohm and the wire's own resistance together", _SOURCE
)
FLAT = LimitRule("flat", "not above 2 ohm, where the wire's own resistance is not known", _SOURCE)
APART = LimitRule(
    "apart",
    "above 10 megohm, or no reading, on the highest range",
    "common practice, no source; US Army SB 740-91-01 asks 100 megohm at 200 to 1000 V of a bare "
    "lead, which is no work for an ohmmeter",
)
RULES = {rule.key: rule for rule in (OVER_WIRE, FLAT, APART)}

# What the published limits can't tell on a short lead.
SHORT_LEADS = (
    "The wire of a short lead is below what a two-wire meter resolves: its own leads show about "
    f"{METER_LEADS_OHM} ohm. Hold the probes together first and take that off every reading."
)


def limit_of(ohm: float | None) -> tuple[float, LimitRule]:
    """Return the most that a path may show, ohm, its expected resistance given; and the rule."""
    if ohm is None:
        return FLAT_OHM, FLAT
    return OVER_WIRE_OHM + ohm, OVER_WIRE
