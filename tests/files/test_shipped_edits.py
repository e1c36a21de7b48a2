"""Editing any file that ships, as its author laid it out, keeps the rest of it."""

import pytest

from planner.files.definitions import definition_text, parse_definition
from planner.library.folder import definition_files
from planner.library.loading import shipped_folders
from planner.model.cable import Cable
from planner.model.connector import Connector

PATHS = [path for folder in shipped_folders() for path in definition_files(folder, [])]


def comments(text):
    return [line.partition("#")[2] for line in text.splitlines() if "#" in line]


@pytest.mark.parametrize("path", PATHS, ids=lambda path: path.stem)
def test_a_shipped_file_can_be_edited(path):
    text = path.read_text(encoding="utf-8")
    record = parse_definition(text, path)
    assert definition_text(record, text) == text
    changed = record.evolve(title="Another title", remarks="new\nremarks", revision=9)
    edited = definition_text(changed, text)
    assert parse_definition(edited, path) == changed
    assert comments(edited) == comments(text)


def shortened(record):
    if isinstance(record, Cable):
        return record.evolve(cores=record.cores[:1], shields=())
    if isinstance(record, Connector):
        return record.evolve(contacts=record.contacts[1:], basis=())
    return record


@pytest.mark.parametrize("path", PATHS, ids=lambda path: path.stem)
def test_contacts_and_cores_can_be_taken_out_of_a_shipped_file(path):
    text = path.read_text(encoding="utf-8")
    fewer = shortened(parse_definition(text, path))
    assert parse_definition(definition_text(fewer, text), path) == fewer
    back = parse_definition(text, path)
    assert parse_definition(definition_text(back, definition_text(fewer, text)), path) == back
