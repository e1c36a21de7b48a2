"""A small plan that rests on nothing shipped, so that its picture changes only with the sheet."""

from planner.checks.finding import Finding
from planner.model.cable import Cable
from planner.model.pinout import PinoutRecord
from planner.model.place import Place
from planner.model.plan import (
    Acceptance,
    Conductor,
    Definitions,
    End,
    Landing,
    Plan,
    Run,
    Section,
)
from planner.model.source import Source
from tests.drawing.samples import BRAID, connector, core, cup, lug

PLUG = connector(cup("T", -1.5, 1, 146), cup("R", 1.5, 1, 34), lug("S", 0, -2, 270), id="plug")
PINOUT = PinoutRecord(
    id="order",
    title="Sample order",
    fits=("plug",),
    use="test",
    drive="load",
    signals={"T": ("L+",), "R": ("L-",), "S": ("shield",)},
    source=Source(kind="measured", reference="a sample", date="2026"),
)
CABLE = Cable(
    id="cable",
    title="Two cores, braid",
    jacket_mm=3,
    cores=(core("RD"), core("WH", "BK")),
    shields=(BRAID,),
)
CAUTION = Finding(
    "gap-small",
    "caution",
    "T and S are 0.2 mm apart.",
    "They may touch.",
    "Sleeve T.",
    (Place("A"),),
)
STOP = Finding("bridge", "stop", "T and R meet.", "They short.", "Part them.", (Place("A"),))


def plain_plan(**changes):
    names = ("RD", "WHBK", "SH")
    landings = [
        Landing(end=end, conductor=name, contact=contact, sleeved=contact == "T")
        for end in ("A", "B")
        for name, contact in zip(names, ("T", "R", "S"), strict=True)
    ]
    fields = {
        "title": "Sample lead",
        "order": "SP-0001",
        "ends": [End(id=end, connector="plug", pinout="order") for end in ("A", "B")],
        "sections": [Section(id="line", near="A", far="B", cable="cable", length_mm=900)],
        "conductors": [
            Conductor(
                id=name,
                kind="shield" if name == "SH" else "core",
                runs=(Run(section="line", core=name),),
            )
            for name in names
        ],
        "landings": landings,
        "acceptances": [
            Acceptance(code="gap-small", places=CAUTION.place_keys, reason="Looked at", by="RO")
        ],
        "definitions": Definitions(connectors=(PLUG,), pinouts=(PINOUT,), cables=(CABLE,)),
    }
    return Plan.model_validate(fields | changes)
