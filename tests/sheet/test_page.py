"""The pages of the sheet, on every demo plan and on random ones."""

import random

import pytest

from planner.checks.finding import Finding
from planner.drawing.primitives import Circle, Rect, Text
from planner.edits.shapes import one_to_many, one_to_one, one_to_two
from planner.model.place import Place
from planner.model.plan import Acceptance, Cap, Landing, Link, Plan
from planner.sheet.lead_page import lead_leaves
from planner.sheet.leaf import Making
from planner.sheet.lettering import BODY, SMALL
from planner.sheet.page import Page, sheet_pages
from planner.sheet.paper import MM, PAPERS
from planner.sheet.proving import proving_leaves
from tests.sheet.collisions import barred, outside, overlapping, struck
from tests.sheet.samples import DEMOS, demo_at, demo_pages, findings_of, library, with_parts

NAMES = [path.stem for path in DEMOS]
EACH_PAPER = pytest.mark.parametrize("paper", ["a4", "letter"])
STOP = Finding(
    "bridge", "stop", "L+ and R+ are joined.", "They short.", "Part them.", (Place("A"),)
)


def random_plan(seed):
    """A plan of any shape, its landings made without sense; seeded, so that a failure can recur."""
    draw = random.Random(seed)
    shape = draw.choice([one_to_one, one_to_two, lambda **k: one_to_many(draw.randint(2, 9), **k)])
    words = ["Saltmarsh", "lead for the pit", "x" * 90, "L\u00f6tstelle", "", "a < b & c"]
    plan = shape(
        title=" ".join(draw.choices(words, k=3)), order=draw.choice(["", "SP-1", "q" * 60])
    )
    known = library()
    ends = {}
    for end in plan.ends:
        connector = draw.choice(known.connectors())
        pinouts = known.pinouts_for(connector.id)
        ends[end.id] = (connector.id, draw.choice(pinouts).id if pinouts else "")
    plan = with_parts(plan, ends, draw.choice(known.cables()).id)
    return spoiled(plan, draw)


def spoiled(plan, draw):
    landings, caps, links = [], [], []
    for end in plan.ends:
        contacts = [contact.id for contact in plan.connector_of(end.id).contacts]
        for conductor, _ in plan.conductors_at[end.id]:
            fate = draw.random()
            if fate < 0.7:
                landing = Landing(
                    end=end.id,
                    conductor=conductor.id,
                    contact=draw.choice(contacts),
                    sleeved=draw.random() < 0.3,
                )
                landings.append(landing)
            elif fate < 0.8:
                caps.append(Cap(end=end.id, conductor=conductor.id))
        if draw.random() < 0.2 and len(contacts) > 1:
            links.append(Link(end=end.id, contacts=tuple(draw.sample(contacts, 2))))
    turned = tuple(end.evolve(turn_deg=draw.choice([0, 20, -75, 180])) for end in plan.ends)
    return plan.evolve(ends=turned, landings=tuple(landings), caps=tuple(caps), links=tuple(links))


def dated_pages(name, paper="a4", language="en"):
    return demo_pages(name, paper=paper, language=language, date="25 Nov 2026")


def faults(pages):
    return [
        (number, found)
        for number, page in enumerate(pages, start=1)
        for found in (*overlapping(page.items), *outside(page), *struck(page.items), *barred(page))
    ]


@EACH_PAPER
@pytest.mark.parametrize("name", NAMES)
@pytest.mark.parametrize("language", ["en", "de"])
def test_nothing_collides_and_no_words_are_cut_short_on_a_demo_sheet(name, paper, language):
    pages = dated_pages(name, paper, language)
    assert faults(pages) == []
    assert cut_short(pages) == []


@EACH_PAPER
@pytest.mark.parametrize("name", NAMES)
@pytest.mark.parametrize("language", ["en", "de"])
def test_no_words_of_a_run_are_cut_short(name, paper, language):
    plan = demo_at(name)
    making = Making(plan, findings_of(plan), paper, "25 Nov 2026", language, 3)
    leaves = [*lead_leaves(making)[0], *proving_leaves(making)]
    items = tuple(item for leaf in leaves for item in leaf.body)
    assert cut_short([Page(items, 0, 0)]) == []


def test_text_planted_on_any_text_of_a_page_is_found():
    for page in dated_pages("cue-desk-headphone-lead"):
        first = next(item for item in page.items if isinstance(item, Text) and item.text)
        last = [item for item in page.items if isinstance(item, Text) and item.text][-1]
        for victim in (first, last):
            planted = type(page)((*page.items, victim), page.width, page.height)
            assert (victim.text, victim.text) in overlapping(planted.items)


def test_there_are_demo_plans():
    assert len(DEMOS) >= 6


# Beyond the first ones: a cable thicker than its plug, short cores, unlike legs, very many pairs.
SEEDS = pytest.mark.parametrize("seed", [*range(24), 53, 101, 106, 118])


@SEEDS
@pytest.mark.parametrize("stopped", [True, False])
def test_no_text_collides_on_a_random_sheet(seed, stopped):
    plan = random_plan(seed)
    found = tuple(one for one in findings_of(plan) if stopped or one.weight != "stop")
    assert faults(sheet_pages(plan, found)) == []


def test_a_cable_thicker_than_its_plug_stays_in_the_frame():
    pages = sheet_pages(random_plan(53), ())
    jackets = [
        item
        for page in pages
        for item in page.items
        if isinstance(item, Circle) and item.owner == "jacket"
    ]
    assert len(jackets) > 4
    for jacket in jackets:
        x, y = jacket.centre
        assert x - jacket.radius >= PAPERS["a4"].left
        assert y - jacket.radius >= PAPERS["a4"].body_top


def test_an_empty_plan_has_a_sheet():
    assert faults(sheet_pages(Plan(), ())) == []


def said(pages):
    return [item.text for page in pages for item in page.items if isinstance(item, Text)]


def cut_short(pages):
    return [word for word in said(pages) if word[1:].endswith("\u2026")]


def tabs(pages):
    """The word that stands white on black at the upper left of each page."""
    return [said([page])[0] for page in pages]


def test_the_lead_comes_first_then_a_page_an_end_then_proving_and_sources():
    assert list(dict.fromkeys(tabs(demo_pages("balanced", ())))) == [
        "LEAD",
        "END A",
        "END B",
        "PROVE",
        "SOURCES",
    ]


def test_a_split_that_is_only_closed_is_in_the_steps_of_the_end_before():
    pages = demo_pages("cue-desk-headphone", ())
    assert "SPLIT" not in tabs(pages)
    last = [page for page in pages if said([page])[0] == "END R"][-1]
    assert any("over the split" in word for word in said([last]))
    assert "SPLIT" in tabs(demo_pages("stereo", ()))


def test_who_says_so_is_on_the_first_pages_where_that_takes_no_further_one():
    titles = {"Pinouts: who says so", "Cautions and notes"}
    for name in NAMES:
        pages = dated_pages(name)
        leads = [page for page in pages if said([page])[0] == "LEAD"]
        told = any(titles & set(said([page])) for page in leads)
        assert told != ("SOURCES" in tabs(pages))


def test_with_a_stop_nothing_is_proved():
    pages = demo_pages("balanced", (STOP,))
    assert "PROVE" not in tabs(pages)
    assert "Cut and pick" not in said(pages)


def test_nothing_at_the_bench_is_smaller_than_the_floor():
    for page in demo_pages("loom", ()):
        letters = [item for item in page.items if isinstance(item, Text)]
        body = [item for item in letters if 3000 < item.at[1] < page.height - 1100]
        assert {item.text for item in body if item.size < BODY} == set()
        assert min(item.size for item in letters) == SMALL


def test_every_contact_signal_and_code_is_on_the_sheet():
    plan = demo_at("loom")
    words = said(demo_pages("loom", ()))
    for end in plan.ends:
        for contact in plan.connector_of(end.id).contacts:
            assert contact.id in words
    cable = plan.cable_of(plan.sections[0].id)
    assert {core.code for core in cable.cores} <= set(words)
    assert {core.colour_words for core in cable.cores} <= set(words)
    assert {"1+", "8\u2212", "SOLDER SIDE", "Seen from the"} <= set(words)


def test_each_page_says_order_revision_digest_and_page():
    plan = demo_at("loom")
    pages = demo_pages("loom", ())
    for number, page in enumerate(pages, start=1):
        words = said([page])
        assert {plan.order, str(plan.revision), f"{number} of {len(pages)}"} <= set(words)
        assert any(word.endswith(f"page {number} of {len(pages)}") for word in words)


def test_the_date_is_printed_only_if_asked_for():
    assert "Date" not in said(demo_pages("balanced", ())[:1])
    for page in dated_pages("stage-left-balanced-line"):
        assert {"Date", "25 Nov 2026"} <= set(said([page]))


def test_the_digest_changes_with_the_plan():
    plan = demo_at("balanced")
    one, other = demo_pages("balanced", ()), sheet_pages(plan.evolve(remarks="Mind the gap"), ())
    digests = [said(pages)[said(pages).index("Digest") + 1] for pages in (one, other)]
    assert digests[0] != digests[1]
    assert all(len(digest) == 9 for digest in digests)


def boxes(pages):
    return [
        item
        for page in pages
        for item in page.items
        if isinstance(item, Rect) and item.width == item.height == 470
    ]


def test_a_clear_plan_has_a_box_for_each_joint():
    plan = demo_at("balanced")
    pages = [page for page in demo_pages("balanced", ()) if said([page])[0].startswith("END")]
    assert len(boxes(pages)) >= len(plan.landings)


@EACH_PAPER
def test_a_stop_withholds_boxes_and_says_so_on_every_page(paper):
    pages = demo_pages("loom", (STOP,), paper=paper)
    assert boxes(pages) == []
    for page in pages:
        words = said([page])
        assert "NOT CLEAR TO SOLDER" in words
        assert "NOT CLEAR TO SOLDER. 1 stop" in words
        assert not any("Check bar" in word for word in words)
    assert {"L+ and R+ are joined.", "Why: They short.", "Mend: Part them."} <= set(said(pages))


@EACH_PAPER
def test_the_band_lies_at_minus_20_degrees_and_reaches_both_edges(paper):
    page = demo_pages("balanced", (STOP,), paper=paper)[0]
    (band,) = [i for i in page.items if isinstance(i, Text) and i.text == "NOT CLEAR TO SOLDER"]
    assert (band.turn_deg, band.size) == (-20, 1376)
    stripes = [i.points for i in page.items if getattr(i, "points", ()) and i.points[0][0] == 0]
    assert len(stripes) == 2
    for points in stripes:
        assert {x for x, _ in points} == {0, page.width}
        assert all(0 < y < page.height for _, y in points)


def test_every_end_page_has_a_check_bar_of_100_mm():
    for page in demo_pages("balanced", ()):
        rects = [item for item in page.items if isinstance(item, Rect)]
        bar = [item for item in rects if item.owner.startswith("check-bar/")]
        frames = [item for item in bar if item.owner == "check-bar/frame"]
        cells = [item for item in bar if item not in frames]
        if said([page])[0].startswith("END"):
            assert [cell.width for cell in cells] == [10 * MM] * 5
            (frame,) = frames
            assert frame.width + frame.style.width == pytest.approx(100 * MM)
            assert frame.corner[0] - frame.style.width / 2 == pytest.approx(cells[0].corner[0])
        else:
            assert bar == []
        assert any("Print at 100 %. Do not fit to the page." in word for word in said([page]))


def test_an_accepted_caution_prints_its_reason_and_an_open_one_its_mend():
    plan = demo_at("balanced")
    caution = Finding("gap-small", "caution", "They are close.", "Why", "Sleeve it", (Place("A"),))
    words = " ".join(said(sheet_pages(plan, (caution,))))
    assert "Mend: Sleeve it" in words
    assert "1 caution open" in words
    accepted = Acceptance(code="gap-small", places=caution.place_keys, reason="I looked", by="RO")
    words = " ".join(said(sheet_pages(plan.evolve(acceptances=(accepted,)), (caution,))))
    assert "\u201cI looked\u201d RO" in words
    assert "1 caution accepted" in words
    assert "Mend: Sleeve it" not in words


def test_an_unconfirmed_pinout_says_so():
    words = " ".join(said(demo_pages("intercom", ())))
    assert "NOT CONFIRMED" in words
    assert "NOT CONFIRMED" not in " ".join(said(demo_pages("balanced", ())))


def test_an_unknown_paper_is_refused():
    with pytest.raises(KeyError):
        sheet_pages(Plan(), (), paper="a5")


def test_many_findings_go_on_over_pages_without_collisions():
    places = [Place("A", contact=str(number)) for number in range(60)]
    text = "A sentence of some length that has to be broken into more than one line of the panel."
    found = tuple(Finding("gap-small", "caution", text, text, text, (place,)) for place in places)
    pages = sheet_pages(demo_at("balanced"), found)
    assert faults(pages) == []
    assert said(pages).count(text) == 0
    assert sum(word == "gap-small, end A" for word in said(pages)) == 60
