"""Random records of each kind, with figures as a person writes them: whole millionths."""

from hypothesis import strategies as st

from planner.model.cable import COLOUR_WORDS, Cable, Core, Shield
from planner.model.connector import Barrel, Clamp, Connector, Contact, FigureBasis, Shell, Terminal
from planner.model.part import Part
from planner.model.pinout import PinoutRecord
from planner.model.plan import Definitions, Plan
from planner.model.source import SUFFIXES, Confirmation, Document, Retired, Source, Statement

IDENTS = st.from_regex(r"[A-Za-z0-9][A-Za-z0-9._-]{0,15}", fullmatch=True)
PRINTED = st.characters(codec="utf-8", exclude_categories=("Cc", "Cf", "Cs", "Cn", "Zl", "Zp"))
LINES = st.text(PRINTED, max_size=30).map(str.strip)
TITLES = LINES.filter(bool)
PARAGRAPHS = st.lists(LINES, max_size=3).map(lambda lines: "\n".join(lines).strip())


def figures(least, most):
    """Numbers between two bounds, on a grid of a millionth."""
    return st.integers(round(least * 1e6), round(most * 1e6)).map(lambda whole: whole / 1e6)


TERMINALS = st.builds(
    Terminal,
    kind=st.sampled_from(["cup", "lug", "post"]),
    x_mm=figures(-100, 100),
    y_mm=figures(-100, 100),
    z_mm=figures(-100, 100),
    bore_mm=figures(0.1, 20),
    width_mm=figures(0.1, 30),
    depth_mm=figures(0.1, 50),
    opening_deg=figures(-180, 179.9),
    takes=st.integers(1, 12),
)
CONTACTS = st.builds(Contact, id=IDENTS, name=LINES, moulded=LINES, terminal=TERMINALS)
CONNECTORS = st.builds(
    Connector,
    id=IDENTS,
    revision=st.integers(1, 99),
    title=TITLES,
    family=IDENTS,
    gender=st.sampled_from(["male", "female"]),
    size=LINES,
    maker=LINES,
    remarks=PARAGRAPHS,
    drawn_from=st.sampled_from(["solder", "mating", "unstated"]),
    mating=st.sampled_from(["through", "concentric"]),
    shell=st.builds(
        Shell,
        shape=st.sampled_from(["round", "d"]),
        bore_mm=figures(1, 100),
        width_mm=figures(1, 200),
        height_mm=figures(1, 200),
    ),
    clamp=st.builds(Clamp, min_mm=figures(0.1, 2), max_mm=figures(2, 9)),
    barrel=st.builds(
        Barrel, outside_mm=figures(1, 99), bore_mm=figures(1, 99), length_mm=figures(1, 99)
    ),
    contacts=st.lists(
        CONTACTS, min_size=1, max_size=5, unique_by=lambda contact: contact.id.lower()
    ).map(tuple),
    basis=st.lists(
        st.builds(
            FigureBasis,
            figures=st.sampled_from(["numbering", "positions", "clamp"]),
            kind=st.sampled_from(["standard", "computed", "measured", "memory"]),
            reference=LINES,
        ),
        max_size=2,
    ).map(tuple),
    documents=st.deferred(lambda: DOCUMENTS),
    retired=st.deferred(lambda: RETIRED),
)

SIGNALS = st.lists(st.sampled_from(["L+", "L-", "R+", "mic-", "8+", "shield"]), max_size=3)
KINDS = st.sampled_from(["standard", "drawing", "letter", "measured", "hearsay", "memory"])
SOURCES = st.builds(Source, kind=KINDS, reference=LINES, date=LINES, recorded_by=LINES)
FILE_NAMES = st.builds("{}.{}".format, IDENTS, st.sampled_from(["pdf", "txt"]))
DOCUMENTS = st.lists(
    st.builds(
        Document,
        digest=st.from_regex(r"[0-9a-f]{64}", fullmatch=True),
        name=FILE_NAMES,
        media=st.sampled_from(sorted(SUFFIXES)),
        remark=LINES,
    ),
    max_size=2,
    unique_by=lambda document: document.digest,
).map(tuple)
CONFIRMATIONS = st.lists(st.builds(Confirmation, who=TITLES, date=LINES, how=TITLES), max_size=3)
RETIRED = st.none() | st.builds(Retired, reason=TITLES, by=LINES, date=LINES)


@st.composite
def statements(draw, contacts, digests):
    """What some of the contacts rest on, shown by one of the documents or by none."""
    known = st.builds(
        Statement,
        contacts=st.lists(st.sampled_from(contacts), min_size=1, max_size=2).map(tuple),
        kind=KINDS,
        reference=LINES,
        document=st.sampled_from(["", *digests]),
    )
    return tuple(draw(st.lists(known, max_size=2)))


@st.composite
def pinouts(draw):
    """Pinout records with all that a source card holds."""
    signals = draw(st.dictionaries(IDENTS, SIGNALS.map(tuple), min_size=1, max_size=5))
    documents = draw(DOCUMENTS)
    confirmations = tuple(draw(CONFIRMATIONS))
    stated = ["hearsay", "documented", *([] if confirmations else ["confirmed"])]
    return PinoutRecord(
        id=draw(IDENTS),
        title=draw(TITLES),
        fits=tuple(draw(st.lists(IDENTS, min_size=1, max_size=3))),
        use=draw(TITLES),
        drive=draw(st.sampled_from(["load", "single-ended", "driven-balanced", "line"])),
        signals=signals,
        source=draw(SOURCES),
        trust=draw(st.sampled_from(stated)),
        remarks=draw(PARAGRAPHS),
        documents=documents,
        statements=draw(statements(list(signals), [each.digest for each in documents])),
        confirmations=confirmations,
        retired=draw(RETIRED),
    )


PINOUTS = pinouts()

COLOURS = st.sampled_from(sorted(COLOUR_WORDS))
CORES = st.builds(
    Core,
    id=IDENTS.map(lambda text: f"c-{text}"[:60]),
    colours=st.lists(COLOURS, min_size=1, max_size=2).map(tuple),
    strands=st.integers(1, 60),
    strand_mm=figures(0.01, 0.2),
    insulation_mm=figures(5, 9),
    metal=st.sampled_from(["copper", "tinned", "silver"]),
    x_mm=figures(-9, 9),
    y_mm=figures(-9, 9),
    group=LINES,
)


@st.composite
def cables(draw):
    """Cables whose shields are around cores that they have."""
    cores = draw(st.lists(CORES, min_size=1, max_size=5, unique_by=lambda core: core.id))
    around = st.lists(st.sampled_from([core.id for core in cores]), max_size=2).map(tuple)
    kinds = st.sampled_from(["braid", "foil", "spiral"])
    shield = st.builds(Shield, id=st.just("SH"), kind=kinds, around=around, tail_mm=figures(0.1, 3))
    return Cable(
        id=draw(IDENTS),
        title=draw(TITLES),
        maker=draw(LINES),
        jacket_mm=draw(figures(1, 30)),
        jacket_colour=draw(COLOURS),
        cores=tuple(cores),
        shields=tuple(draw(st.lists(shield, max_size=1))),
        remarks=draw(PARAGRAPHS),
    )


CABLES = cables()
PARTS = st.builds(
    Part,
    id=IDENTS,
    title=TITLES,
    kind=st.sampled_from(["boot", "liner", "heat-shrink"]),
    maker=LINES,
    bore_mm=figures(0.1, 99),
    recovered_mm=figures(0, 50),
    outside_mm=figures(0.1, 99),
    length_mm=figures(0.1, 99),
    opens=st.booleans(),
    remarks=PARAGRAPHS,
)
DEFINITIONS = st.one_of(CONNECTORS, PINOUTS, CABLES, PARTS)


def _by_id(strategy):
    return st.lists(strategy, max_size=2, unique_by=lambda record: record.id).map(tuple)


PLANS = st.builds(
    Plan,
    title=LINES,
    order=LINES,
    revision=st.integers(1, 99),
    remarks=PARAGRAPHS,
    definitions=st.builds(
        Definitions,
        connectors=_by_id(CONNECTORS),
        pinouts=_by_id(PINOUTS),
        cables=_by_id(CABLES),
        parts=_by_id(PARTS),
    ),
)
