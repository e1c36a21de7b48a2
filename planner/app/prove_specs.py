"""The actions of the menu Prove."""

from planner.app.action_spec import ActionSpec

_RARE = "used once in a while; the menu is enough"

PROVE_SPECS = (
    ActionSpec(
        "next_unit",
        "&Begin the next unit",
        "Begin to prove the next unit of this plan",
        ("Ctrl+U",),
        "Prove",
    ),
    ActionSpec(
        "finish_unit",
        "&Finish the unit\u2026",
        "Keep the record of the unit: passed, failed or not finished",
        ("Ctrl+Shift+U",),
        "Prove",
    ),
    ActionSpec(
        "next_unread",
        "&Next unread",
        "Go to the next reading that is missing",
        ("U",),
        "Prove",
        "prove",
        rule_above=True,
    ),
    ActionSpec(
        "next_advised",
        "&Reading that tells most",
        "Go to the reading that tells the likely faults apart",
        ("J",),
        "Prove",
        "prove",
    ),
    ActionSpec(
        "wiggle",
        "&Wiggle",
        "Flex the lead end by end, and note whether it holds",
        ("W",),
        "Prove",
        "prove",
    ),
    ActionSpec(
        "listen",
        "&Listen",
        "Play tones through the lead, and note what is heard",
        ("H",),
        "Prove",
        "prove",
    ),
    ActionSpec(
        "test_tones",
        "Write the &tones as a file\u2026",
        "Write the test tones as a WAV file, to be played from anything",
        menu="Prove",
        no_key=_RARE,
    ),
    ActionSpec(
        "import_readings",
        "&Import readings\u2026",
        "Take readings from a file of a tester or a filled form",
        ("Ctrl+Shift+I",),
        "Prove",
        rule_above=True,
    ),
    ActionSpec(
        "empty_form",
        "&Empty form\u2026",
        "Write the readings to take as a form to fill in",
        menu="Prove",
        no_key=_RARE,
    ),
    ActionSpec(
        "attach",
        "&Attach a file\u2026",
        "Keep a photo or another file with the unit",
        menu="Prove",
        no_key=_RARE,
        rule_above=True,
    ),
    ActionSpec(
        "certificate",
        "&Certificate\u2026",
        "Write the pages of the chosen unit as PDF or SVG",
        ("Ctrl+Shift+C",),
        "Prove",
    ),
    ActionSpec(
        "unit_summary",
        "&Summary of all units\u2026",
        "Write a row for each unit for a spreadsheet",
        menu="Prove",
        no_key=_RARE,
    ),
)
