"""A folder that is saved into: revisions, history, conflicts, documents. Invented data."""

import errno
import os

import pytest

from planner.files.definitions import definition_text, parse_definition, read_definition
from planner.files.folders import library_folder
from planner.library.history import History
from planner.library.loading import load_library
from planner.library.lock import FolderLock
from planner.library.store import NEW, Conflict, NotWritable, Store
from planner.model.base import MOST_REVISION
from planner.model.source import Confirmation
from planner.problem import InputError
from tests.files.samples import CONNECTOR, PINOUT, records
from tests.library.benches import ID, letter


def test_a_new_definition_is_saved_and_loaded(store, saved, pinout):
    assert saved.path == store.folder / "pinouts" / f"{ID}.toml"
    assert read_definition(saved.path) == pinout
    assert load_library([store.folder]).pinout(ID) == pinout
    assert store.find("pinout", ID) == saved
    assert store.find("connector", ID) is None


def test_each_save_is_a_revision_and_the_older_ones_are_kept(store, saved, pinout):
    second = store.save(pinout.evolve(title="Second"), saved.digest, who="Okoro")
    third = store.save(second.record.evolve(title="Third"), second.digest, who="Okoro")
    assert third.record.revision == 3
    kept = store.history("pinout", ID)
    assert [it.record() for it in kept] == [saved.record, second.record, third.record]
    assert all(it.taken_up for it in kept)
    assert load_library([store.folder]).pinout(ID) == third.record
    assert load_library([store.folder]).problems == ()


def test_the_log_says_who_did_what_and_why(store, saved):
    store.retitle("pinout", ID, title="Other", who="Okoro")
    store.retire("pinout", ID, reason="the part says otherwise", who="Okoro")
    told = [(it.revision, it.who, it.what, it.why) for it in store.changes("pinout", ID)]
    assert told == [
        (1, "Tilney", "saved", "from the letter"),
        (2, "Okoro", "retitled", ""),
        (3, "Okoro", "retired", "the part says otherwise"),
    ]
    changes = store.changes("pinout", ID)
    assert [it.before for it in changes] == [NEW, changes[0].after, changes[1].after]


def test_saving_what_is_there_already_makes_no_revision(store, saved):
    assert store.save(saved.record, saved.digest, who="Okoro") == saved
    assert len(store.history("pinout", ID)) == 1


def test_the_second_of_two_owners_is_shown_what_differs(store, saved, pinout):
    theirs = store.save(pinout.evolve(use="cue desk"), saved.digest, who="Okoro")
    ours = pinout.evolve(use="pit", title="Ours")
    with pytest.raises(Conflict) as caught:
        store.save(ours, saved.digest, who="Tilney")
    conflict = caught.value
    assert (conflict.theirs, conflict.ours) == (theirs, ours)
    assert [(it.key, it.first, it.second) for it in conflict.difference] == [
        ("title", "Ours", pinout.title),
        ("use", "pit", "cue desk"),
    ]
    assert [it.key for it in conflict.they_changed] == ["use"]
    assert [it.key for it in conflict.we_changed] == ["title", "use"]
    assert (conflict.begun, conflict.change.who) == (pinout, "Okoro")
    assert "changed meanwhile by Okoro" in str(conflict)
    assert store.find("pinout", ID) == theirs
    merged = store.save(ours, conflict.theirs.digest, who="Tilney")
    assert (merged.record.revision, merged.record.use) == (3, "pit")


def test_a_new_one_does_not_overwrite_one_that_is_there(store, saved, pinout):
    with pytest.raises(Conflict):
        store.save(pinout.evolve(title="Mine"), NEW, who="Okoro")


def test_a_definition_that_was_deleted_meanwhile_is_a_conflict_too(store, saved, pinout):
    saved.path.unlink()
    with pytest.raises(Conflict, match="deleted meanwhile") as caught:
        store.save(pinout.evolve(title="Mine"), saved.digest, who="Okoro")
    assert caught.value.theirs is None
    assert store.save(pinout, NEW, who="Okoro").record == pinout


def test_a_file_made_by_hand_keeps_its_place_and_comments(store):
    path = store.folder / "letters" / "mine.toml"
    path.parent.mkdir()
    path.write_text(CONNECTOR, encoding="utf-8")
    found = store.find("connector", "bench-three")
    new = store.save(found.record.evolve(size="2.5"), found.digest, who="Okoro")
    assert new.path == path
    text = path.read_text(encoding="utf-8")
    assert text.startswith("# taken from a letter\n")
    assert "# the ring's lug is short" in text
    assert store.history("connector", "bench-three")[0].path.read_text() == CONNECTOR


def test_an_edit_by_hand_is_kept_before_it_is_replaced(store, saved):
    by_hand = saved.text.replace("headphone", "pit headphone")
    saved.path.write_text(by_hand, encoding="utf-8")
    now = store.find("pinout", ID)
    store.save(now.record.evolve(title="Next"), now.digest, who="Okoro")
    assert by_hand in [it.path.read_text() for it in store.history("pinout", ID)]


def test_two_ids_that_differ_in_case_are_two_files(store, saved, pinout, monkeypatch):
    """On a drive that tells no case apart the usual name is taken by the other."""
    monkeypatch.setattr(os.path, "lexists", lambda _path: True)
    other = store.save(pinout.evolve(id=ID.upper(), title="Other"), NEW, who="Okoro")
    assert other.path.name.startswith(f"{ID.upper()}~")
    assert store.find("pinout", ID.upper()) == other


def test_two_ids_that_differ_in_case_show_each_its_own_revisions(store, saved, pinout, monkeypatch):
    """The folder of a history has one name for both on a drive that tells no case apart."""
    monkeypatch.setattr("planner.library.history.file_stem", str.lower)
    other = store.save(pinout.evolve(id=ID.upper(), title="Other"), NEW, who="Okoro")
    by_hand = other.text.replace("Other", "By hand")
    other.path.write_text(by_hand, encoding="utf-8")
    now = store.find("pinout", other.record.id)
    store.save(now.record.evolve(title="Next"), now.digest, who="Okoro")
    not_noted = pinout.evolve(id=ID.upper(), title="Cut short")
    History(store.folder, "pinout", ID).keep(definition_text(not_noted), 3)
    assert [it.record() for it in store.history("pinout", ID)] == [saved.record]
    titles = [it.record().title for it in store.history("pinout", other.record.id)]
    assert sorted(titles) == ["By hand", "Cut short", "Next", "Other"]


@pytest.mark.parametrize("name", ["con", "NUL", "com1.x", "aux", "a."])
def test_an_id_that_is_no_name_of_a_file_on_windows_gets_one(store, pinout, name):
    """Names of devices, and a dot at the end: from memory of Microsoft's page on names of files."""
    path = store.save(pinout.evolve(id=name), NEW, who="Tilney").path
    assert path.name.startswith(f"{name}~")
    assert store.find("pinout", name).record.id == name
    assert len(store.history("pinout", name)) == 1
    assert load_library([store.folder]).pinout(name) is not None


def test_what_could_not_be_read_back_is_not_saved(store, saved, pinout):
    with pytest.raises(InputError, match=r"U\+202E"):
        store.save(pinout.evolve(title="turned\u202eround"), saved.digest, who="Okoro")
    assert store.find("pinout", ID) == saved
    assert len(store.history("pinout", ID)) == 1


def test_the_highest_revision_can_still_be_saved_over(store, pinout):
    highest = store.save(pinout.evolve(revision=MOST_REVISION), NEW, who="Tilney")
    store.save(pinout.evolve(title="Next"), highest.digest, who="Okoro")
    assert [it.revision for it in store.history("pinout", ID)] == [MOST_REVISION] * 2


def test_a_broken_file_of_an_odd_name_is_not_passed_over(store, pinout):
    path = store.save(pinout.evolve(id="con"), NEW, who="Tilney").path
    path.write_text("id = con", encoding="utf-8")
    with pytest.raises(InputError):
        store.save(pinout.evolve(id="con"), NEW, who="Okoro")


def test_a_broken_file_is_not_overwritten(store, saved, pinout):
    saved.path.write_text("<<<<<<< ours\n" + saved.text, encoding="utf-8")
    with pytest.raises(InputError, match="malformed TOML"):
        store.save(pinout, saved.digest, who="Okoro")
    assert saved.path.read_text().startswith("<<<<<<<")


def test_a_cable_is_not_retired(store, tmp_path):
    store.save(records(tmp_path)["cable"], NEW, who="Tilney")
    with pytest.raises(InputError, match="a cable can't be retired"):
        store.retire("cable", "bench-two", reason="gone", who="Tilney")


def test_a_confirmation_lifts_the_record_that_is_read_back(store, saved):
    sure = saved.record.evolve(
        confirmations=(Confirmation(who="Okoro", how="on the part, by meter"),)
    )
    store.save(sure, saved.digest, who="Okoro")
    assert load_library([store.folder]).pinout(ID).trust == "confirmed"


def test_only_the_users_own_folder_is_made(pinout, tmp_path):
    assert Store(library_folder()).save(pinout, NEW, who="Tilney").path.is_file()
    with pytest.raises(InputError, match="can't be reached"):
        Store(tmp_path / "drive").save(pinout, NEW, who="Tilney")
    assert not (tmp_path / "drive").exists()


@pytest.mark.parametrize("call", ["os.open", "tempfile.mkstemp"])
def test_a_folder_that_can_only_be_read_says_so_and_names_the_users_own(
    store, pinout, monkeypatch, call
):
    def refused(*_args, **_more):
        raise OSError(errno.EROFS, "Read-only file system")

    monkeypatch.setattr(call, refused)
    with pytest.raises(NotWritable, match="read-only file system") as caught:
        store.save(pinout, NEW, who="Tilney")
    assert caught.value.instead == library_folder()


def test_a_link_out_of_the_folder_is_not_written_through(store, pinout, tmp_path):
    outside = tmp_path / "outside.toml"
    outside.write_text(PINOUT, encoding="utf-8")
    (store.folder / "pinouts").mkdir()
    (store.folder / "pinouts" / f"{ID}.toml").symlink_to(outside)
    new = store.save(pinout.evolve(title="Mine"), NEW, who="Tilney")
    assert new.path.name.startswith(f"{ID}~")
    assert outside.read_text(encoding="utf-8") == PINOUT


def _save_with_its_letter(store, pinout, tmp_path):
    store.save(pinout, NEW, who="Tilney")
    store.add_document(letter(tmp_path))


@pytest.mark.parametrize(
    "link",
    ["history", "documents", ".lock", "pinouts", f"history/pinout/{ID}/changes.jsonl"],
)
def test_nothing_is_written_through_a_link_that_a_stranger_left(store, pinout, tmp_path, link):
    """Such as one to a file of the user's own that the next line of the log would spoil."""
    outside = tmp_path / "outside"
    outside.write_text("mine") if link.endswith("jsonl") else outside.mkdir()
    place = store.folder / link
    place.parent.mkdir(parents=True, exist_ok=True)
    place.symlink_to(outside)
    with pytest.raises(InputError, match="leads out of the folder by a link"):
        _save_with_its_letter(store, pinout, tmp_path)
    left = [outside.read_text()] if outside.is_file() else list(outside.iterdir())
    assert left in ([], ["mine"])


def test_a_save_that_was_cut_short_leaves_a_revision_that_nothing_took_up(
    store, saved, pinout, monkeypatch
):
    def killed(*_args):
        raise KeyboardInterrupt

    with monkeypatch.context() as patch:
        patch.setattr(Store, "_replace", killed)
        with pytest.raises(KeyboardInterrupt):
            store.save(pinout.evolve(title="Cut short"), saved.digest, who="Okoro")
    assert store.find("pinout", ID) == saved
    after = store.save(pinout.evolve(title="Next"), saved.digest, who="Okoro")
    kept = {it.record().title: it.taken_up for it in store.history("pinout", ID)}
    assert kept == {saved.record.title: True, "Cut short": False, "Next": True}
    assert after.record.revision == 2


def test_a_torn_line_of_the_log_is_passed_over(store, saved, pinout):
    log = store.folder / "history" / "pinout" / ID / "changes.jsonl"
    with log.open("a", encoding="utf-8") as stream:
        stream.write('{"id": "bench-')
    store.save(pinout.evolve(title="Next"), saved.digest, who="Okoro")
    assert [it.revision for it in store.changes("pinout", ID)] == [1, 2]


@pytest.mark.parametrize(
    "who", ["\u202eTilney", "Til\u2028ney", "Til\x85ney", "Til\x00ney", "Til\udcffney"]
)
def test_a_name_that_no_text_may_hold_does_not_hide_the_log(store, saved, pinout, who):
    store.save(pinout.evolve(title="Next"), saved.digest, who=who)
    assert [it.revision for it in store.changes("pinout", ID)] == [1, 2]
    assert store.changes("pinout", ID)[1].who.isprintable()


def test_bytes_that_are_no_text_do_not_hide_the_log(store, saved, pinout):
    with (store.folder / "history" / "pinout" / ID / "changes.jsonl").open("ab") as stream:
        stream.write(b"\xff\xfe\n[1, 2]\n")
    store.save(pinout.evolve(title="Next"), saved.digest, who="Okoro")
    assert [it.revision for it in store.changes("pinout", ID)] == [1, 2]


def test_a_kept_revision_that_was_changed_is_told(store, saved):
    kept = store.history("pinout", ID)[0]
    kept.path.write_text(saved.text.replace("headphone", "line"), encoding="utf-8")
    with pytest.raises(InputError, match="not what was kept"):
        kept.record()


def test_left_overs_of_killed_saves_are_cleared(store, saved, pinout):
    left = saved.path.with_name(f".{ID}.toml.x1y2.part")
    left.write_text("half", encoding="utf-8")
    store.save(pinout.evolve(title="Next"), saved.digest, who="Okoro")
    assert not left.exists()
    assert parse_definition(saved.path.read_text(), saved.path).title == "Next"


def test_even_a_turn_that_was_taken_over_wrongly_loses_no_revision(
    store, saved, pinout, monkeypatch
):
    """The holder sleeps between its last look and the replacement; another saves meanwhile."""
    replace = Store._replace

    def asleep(self, new, _lock):
        monkeypatch.setattr(Store, "_replace", replace)
        other = Store(store.folder, stale_s=-1)
        other.save(pinout.evolve(title="Other"), saved.digest, who="Okoro")
        monkeypatch.setattr(FolderLock, "check", lambda self: None)
        replace(self, new, _lock)

    monkeypatch.setattr(Store, "_replace", asleep)
    late = store.save(pinout.evolve(title="Late"), saved.digest, who="Tilney")
    kept = store.history("pinout", ID)
    assert {it.record().title for it in kept} == {pinout.title, "Other", "Late"}
    assert {it.record().title for it in kept if not it.taken_up} == {"Other"}
    assert store.find("pinout", ID) == late


def test_a_holder_whose_turn_was_taken_over_replaces_nothing(store, saved, pinout, monkeypatch):
    replace = Store._replace

    def asleep(self, new, lock):
        monkeypatch.setattr(Store, "_replace", replace)
        other = Store(store.folder, stale_s=-1)
        other.save(pinout.evolve(title="Other"), saved.digest, who="Okoro")
        replace(self, new, lock)

    monkeypatch.setattr(Store, "_replace", asleep)
    with pytest.raises(InputError, match="held too long"):
        store.save(pinout.evolve(title="Late"), saved.digest, who="Tilney")
    assert store.find("pinout", ID).record.title == "Other"
