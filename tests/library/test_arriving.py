"""Taking in a parcel: what differs is shown first, and only what is asked for is changed."""

import pytest

from planner.library.arriving import preview, take_in
from planner.library.collection import Library
from planner.library.loading import load_library
from planner.library.store import NEW, Conflict, Store
from tests.files.samples import records
from tests.library.parcels import LETTER, documented, letter, parcel_of

ID = "bench-three-phones"


@pytest.fixture
def store(tmp_path):
    folder = tmp_path / "shared"
    folder.mkdir()
    return Store(folder)


@pytest.fixture
def parcel(tmp_path):
    return parcel_of(tmp_path, documented(tmp_path), records(tmp_path)["connector"])


def loaded(store):
    return load_library([store.folder])


def states(parcel, library):
    return [(it.definition.id, it.state) for it in preview(parcel, library)]


def test_what_is_new_is_saved_with_its_documents(store, parcel):
    assert states(parcel, Library()) == [(ID, "new"), ("bench-three", "new")]
    saved = take_in(parcel, Library(), store, who="Tilney")
    assert tuple(it.record for it in saved) == parcel.definitions
    assert store.papers.read(letter()) == LETTER
    assert store.changes("pinout", ID)[0].what == "taken in"
    assert states(parcel, loaded(store)) == [(ID, "same"), ("bench-three", "same")]


@pytest.mark.parametrize(("kind", "rung"), [("hearsay", "hearsay"), ("letter", "documented")])
def test_a_sender_s_word_for_the_rung_of_trust_does_not_count(store, tmp_path, kind, rung):
    source = documented(tmp_path).source.evolve(kind=kind)
    stated = documented(tmp_path).evolve(source=source, trust="confirmed-by-two")
    assert stated.confirmed
    parcel = parcel_of(tmp_path, stated)
    assert preview(parcel, Library())[0].definition.trust == rung
    assert take_in(parcel, Library(), store, who="Tilney")[0].record.trust == rung
    assert loaded(store).pinout(ID).confirmed is False


def test_what_is_there_already_is_not_saved_again(store, parcel):
    take_in(parcel, Library(), store, who="Tilney")
    assert take_in(parcel, loaded(store), store, who="Tilney", answers={ID: "next"}) == ()


@pytest.fixture
def ours(store, parcel):
    """The same record as it is known here: with another use, and without the letter."""
    record = parcel.definitions[0].evolve(use="cue desk", documents=())
    return store.save(record, NEW, who="Okoro").record


def test_what_differs_is_told_and_left(store, parcel, ours):
    arrival = preview(parcel, loaded(store))[0]
    assert (arrival.state, arrival.here) == ("differs", ours)
    assert ("use", "cue desk", "headphone") in [
        (it.key, it.first, it.second) for it in arrival.changes
    ]
    take_in(parcel, loaded(store), store, who="Tilney")
    assert loaded(store).pinout(ID) == ours


def test_theirs_can_be_the_next_revision(store, parcel, ours):
    take_in(parcel, loaded(store), store, who="Tilney", answers={ID: "next"})
    now = loaded(store).pinout(ID)
    assert (now.use, now.revision) == ("headphone", 2)
    assert [it.record() for it in store.history("pinout", ID)] == [ours, now]


def test_both_can_stand_side_by_side(store, parcel, ours):
    take_in(parcel, loaded(store), store, who="Tilney", answers={ID: "beside"})
    library = loaded(store)
    assert library.pinout(ID) == ours
    assert library.pinout(f"{ID}-2").evolve(id=ID) == parcel.definitions[0]


def test_theirs_in_place_of_one_that_ships_is_a_later_revision(store, tmp_path):
    """The shipped file can't be changed: the folder's definition counts in its place."""
    shipped = load_library().pinouts()[0]
    other = parcel_of(tmp_path, shipped.evolve(title="Other"))
    (saved,) = take_in(other, load_library(), store, who="W", answers={shipped.id: "next"})
    assert saved.record.revision == shipped.revision + 1
    assert loaded(store).pinout(shipped.id).title == "Other"


def test_what_changed_since_it_was_shown_is_not_replaced(store, parcel, ours):
    library = loaded(store)
    now = store.find("pinout", ID)
    later = store.save(ours.evolve(title="Later"), now.digest, who="Okoro")
    with pytest.raises(Conflict) as caught:
        take_in(parcel, library, store, who="Tilney", answers={ID: "next"})
    assert caught.value.theirs == later
    assert [it.key for it in caught.value.they_changed] == ["title"]
    assert store.find("pinout", ID) == later


def test_what_came_there_since_it_was_shown_as_new_is_not_replaced(store, parcel):
    store.save(parcel.definitions[1].evolve(title="Came since"), NEW, who="Okoro")
    with pytest.raises(Conflict, match="changed meanwhile by Okoro"):
        take_in(parcel, Library(), store, who="Tilney")
    assert store.find("connector", "bench-three").record.title == "Came since"


def test_a_long_id_has_room_for_the_number_beside_it(store, tmp_path):
    record = records(tmp_path)["pinout"].evolve(id="x" * 64)
    library = Library(pinouts=[record])
    theirs = parcel_of(tmp_path, record.evolve(title="Theirs"))
    (saved,) = take_in(theirs, library, store, who="W", answers={record.id: "beside"})
    assert saved.record.id == "x" * 58 + "-2"
