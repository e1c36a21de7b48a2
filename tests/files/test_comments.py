"""Comments made by hand stay with what they are about when items come, go and move."""

import re
from pathlib import Path

from hypothesis import given, settings
from hypothesis import strategies as st

from planner.files.definitions import definition_text, parse_definition
from tests.files.samples import CONNECTOR, PINOUT
from tests.files.strategies import CABLES, CONNECTORS, PINOUTS

HERE = Path("bench.toml")


def test_the_comment_of_a_contact_that_goes_goes_and_the_others_stay():
    record = parse_definition(CONNECTOR, HERE)
    tip, _ring, sleeve = record.contacts
    between = sleeve.evolve(id="R2", name="ring 2")
    text = definition_text(record.evolve(contacts=(tip, between, sleeve)), CONNECTOR)
    assert "# taken from a letter" in text
    assert "short" not in text
    assert [line for line in text.splitlines() if line.startswith("id = ")] == [
        'id = "bench-three"  # ours',
        'id = "T"',
        'id = "R2"',
        'id = "S"',
    ]
    assert "takes=2 }" in text  # as it was typed


def test_a_confirmation_is_added_below_those_that_are_there():
    confirmed = PINOUT + (
        '\n# first, on the bench\n[[confirmations]]\nwho = "Tilney"  # by hand\nhow = "by meter"\n'
    )
    record = parse_definition(confirmed, HERE)
    second = {"who": "Okoro", "how": "by meter"}
    more = record.evolve(confirmations=(*record.confirmations, second))
    text = definition_text(more, confirmed)
    assert '# first, on the bench\n[[confirmations]]\nwho = "Tilney"  # by hand\n' in text
    assert text.index("Tilney") < text.index("Okoro")
    assert parse_definition(text, HERE) == more


def test_a_header_inside_a_text_is_not_taken_for_one():
    remarks = 'one\n[[contacts]]\nid = "X"\n'
    record = parse_definition(CONNECTOR, HERE).evolve(remarks=remarks)
    text = definition_text(record, CONNECTOR)
    fewer = record.evolve(contacts=record.contacts[:2])
    assert parse_definition(definition_text(fewer, text), HERE) == fewer


def test_tables_that_are_mixed_with_others_are_read_back_right():
    ring = "[[contacts]]" + CONNECTOR.split("[[contacts]]")[2]
    mixed = CONNECTOR.replace(ring, "").replace("[shell]", f"{ring}[shell]")
    record = parse_definition(mixed, HERE)
    assert [it.id for it in record.contacts] == ["R", "T", "S"]
    fewer = record.evolve(contacts=record.contacts[1:])
    assert parse_definition(definition_text(fewer, mixed), HERE) == fewer


def commented(text, key):
    """Put a comment above each table of a list, and one behind its header, named by its number."""
    numbers = iter(range(100))

    def told(_match):
        number = next(numbers)
        return f"# above {number}\n[[{key}]]  # at {number}"

    return re.sub(rf"^\[\[{key}\]\]$", told, text, flags=re.MULTILINE)


def shuffled(draw, items, others):
    kept = [it for it in draw(st.permutations(items)) if draw(st.booleans())]
    names = {it.id.lower() for it in kept}
    return (*kept, *(it for it in others if it.id.lower() not in names))


@settings(max_examples=40, deadline=None)
@given(st.data(), CONNECTORS | CABLES, CONNECTORS, CABLES)
def test_comments_go_with_their_items(data, record, connector, cable):
    key, others = ("cores", cable) if hasattr(record, "cores") else ("contacts", connector)
    items = getattr(record, key)
    plain = definition_text(record)
    text = commented(plain, key)
    if parse_definition(text, HERE) != record:
        return  # a remark that looks like a table was commented
    wanted = shuffled(data.draw, items, getattr(others, key)) or items[:1]
    if key == "cores":
        record = record.evolve(shields=())
    changed = record.evolve(**{key: wanted})
    result = definition_text(changed, text)
    assert parse_definition(result, HERE) == changed
    told = [int(number) for number in re.findall(r"^# above (\d+)$", result, re.MULTILINE)]
    at = [int(number) for number in re.findall(r"\]\]  # at (\d+)$", result, re.MULTILINE)]
    assert told == at == [items.index(it) for it in wanted if it in items]


@settings(max_examples=30, deadline=None)
@given(PINOUTS, PINOUTS)
def test_a_source_card_in_place_of_another_is_read_back_the_same(before, after):
    assert parse_definition(definition_text(after, definition_text(before)), HERE) == after
