"""What a bench has at hand: the id of a record, a letter. Invented data."""

ID = "bench-three-phones"


def letter(folder, data=b"%PDF-1.4 an invented letter"):
    path = folder / "letter of 1996.pdf"
    path.write_bytes(data)
    return path
