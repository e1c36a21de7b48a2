"""Two processes edit one shared record for many rounds and are killed in between: nothing is lost.

`CUPWRIGHT_ROUNDS=400 pytest tests/library/test_two_benches.py` runs the long form.
"""

import json
import multiprocessing
import os
import random
import signal
from pathlib import Path

import pytest

from planner.library.store import NEW, Conflict, Store
from tests.files.samples import records

ID = "bench-three-phones"
ROUNDS = int(os.environ.get("CUPWRIGHT_ROUNDS", "20"))
FORKED = multiprocessing.get_context("fork")


def bench(folder: Path, name: str, told: Path) -> None:
    """Count one's own saves up in the remarks for ever; tell each that was acknowledged."""
    store = Store(folder, wait_s=60)
    with told.open("a", encoding="ascii", buffering=1) as stream:
        while True:
            now = store.find("pinout", ID)
            counts = json.loads(now.record.remarks)
            mine = counts.get(name, 0) + 1
            record = now.record.evolve(remarks=json.dumps(counts | {name: mine}))
            try:
                saved = store.save(record, now.digest, who=name)
            except Conflict:
                stream.write("conflict\n")
                continue
            stream.write(f"{mine} {saved.digest}\n")


@pytest.mark.skipif(os.name != "posix", reason="processes are forked and killed")
def test_no_save_is_lost_and_no_file_is_torn(tmp_path):
    folder = tmp_path / "shared"
    folder.mkdir()
    store = Store(folder)
    store.save(records(tmp_path)["pinout"].evolve(remarks="{}"), NEW, who="owner")
    told = {name: tmp_path / f"{name}.txt" for name in ("near", "far")}
    _run_and_kill(folder, told, random.Random(1996))

    kept = store.history("pinout", ID)
    counts = json.loads(store.find("pinout", ID).record.remarks)
    texts = {it.digest: it for it in kept}
    for name, path in told.items():
        lines = [line.split() for line in path.read_text().split("\n")[:-1]]
        acknowledged = [line for line in lines if line != ["conflict"]]
        # The last save may have been done and killed before it was told.
        assert counts[name] >= max(int(line[0]) for line in acknowledged)
        assert counts[name] <= len({line[0] for line in acknowledged}) + ROUNDS
        assert all(texts[line[1][:16]].taken_up for line in acknowledged)
    _every_revision_is_whole(kept)
    assert store.retitle("pinout", ID, title="After it all", who="owner").record.revision > 2


def _run_and_kill(folder, told, chance):
    """Start both, and each round kill one somewhere in its work and start it again."""
    benches = {name: _started(folder, name, path) for name, path in told.items()}
    try:
        for _round in range(ROUNDS):
            name = chance.choice(sorted(benches))
            benches[name].join(chance.uniform(0.02, 0.08))
            assert benches[name].exitcode is None
            os.kill(benches[name].pid, signal.SIGKILL)
            benches[name].join()
            benches[name] = _started(folder, name, told[name])
    finally:
        for process in benches.values():
            process.kill()
            process.join()


def _started(folder, name, told):
    process = FORKED.Process(target=bench, args=(folder, name, told), daemon=True)
    process.start()
    return process


def _every_revision_is_whole(kept):
    taken = [it for it in kept if it.taken_up]
    assert [it.revision for it in taken] == list(range(1, len(taken) + 1))
    sums = [sum(json.loads(it.record().remarks).values()) for it in taken]
    assert sums == list(range(len(taken)))
    assert [it.change.revision for it in taken] == [it.revision for it in taken]
    for it in kept:
        assert it.record().id == ID
