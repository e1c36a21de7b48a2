"""The prepared tables of the face against the font files they are made from."""

import json

from planner.data import data_dir
from tests.drawing.make_font_tables import tables


def test_the_tables_are_what_the_font_files_give():
    folder = data_dir("resources") / "fonts"
    made = tables()
    kept = {name: json.loads((folder / name).read_text(encoding="utf-8")) for name in made}
    assert kept == made


def test_the_fonts_licence_lies_beside_them():
    text = (data_dir("resources") / "fonts" / "OFL.txt").read_text(encoding="utf-8")
    assert "SIL Open Font License, Version 1.1" in text
    assert "The Inter Project Authors" in text
