"""Parcels to take in, with an invented letter."""

import hashlib

from planner.library.parcel import parcel_bytes, parse_parcel
from planner.model.source import Document
from tests.files.samples import records

LETTER = b"%PDF-1.4 an invented letter: tip right, ring left"


def letter(data=LETTER, name="letter 1996.pdf"):
    return Document(
        digest=hashlib.sha256(data).hexdigest(), name=name, media="application/pdf", remark="both"
    )


def documented(tmp_path):
    return records(tmp_path)["pinout"].evolve(documents=(letter(),))


def packed(*definitions):
    return parcel_bytes(definitions, lambda _document: LETTER)


def parcel_of(path, *definitions):
    return parse_parcel(packed(*definitions).decode(), path)
