"""Values as TOML to be read by hand; an edited file keeps its comments and order."""

from collections.abc import MutableMapping
from typing import Any

import tomlkit
from tomlkit.items import AoT, Array, Item

from planner.files.toml_lists import Table, are_told_apart, item_name, order_of, relisted

# A core's size may stand in a file under another key; a new figure takes its place.
_SAME_FIGURE = {"strand_mm": ("awg", "area_mm2")}


def edited_text(earlier: str, before: dict[str, Any], after: dict[str, Any]) -> str:
    """Return `earlier` changed only where `after` differs from `before`, the values it holds.

    Items that stay in a list of tables keep their comments when others come or go.
    """
    document = tomlkit.parse(earlier)
    orders = {
        key: order_of(old, after.get(key, []))
        for key, old in before.items()
        if _is_tables(old) and isinstance(document.get(key), AoT) and _lists_differ(old, after, key)
    }
    between = after | {key: _updated(before[key], after.get(key, [])) for key in orders}
    _bring_up(document, before, between)
    text = tomlkit.dumps(document)
    for key, order in orders.items():
        moved = relisted(text, key, order, lambda item, key=key: new_text({key: [item]}))  # type: ignore[misc] # bound for the loop
        if moved is None:
            document = tomlkit.parse(text)
            _bring_up(document, {key: between[key]}, {key: after[key]} if key in after else {})
            moved = tomlkit.dumps(document)
        text = moved
    return text


def _lists_differ(old: list[Table], after: dict[str, Any], key: str) -> bool:
    """Tell whether items come, go or move, each with a name of its own."""
    new = after.get(key, [])
    return not _same_items(old, new) and are_told_apart(old) and are_told_apart(new)


def _updated(old: list[Table], new: list[Table]) -> list[Table]:
    """Return the old list with the new values of those items that stay."""
    staying = {item_name(item): item for item in new}
    return [staying.get(item_name(item), item) for item in old]


def new_text(values: dict[str, Any]) -> str:
    """Return values as TOML: plain ones first, then tables, then lists of tables."""
    document = tomlkit.document()
    for key, value in sorted(values.items(), key=lambda pair: _rank(pair[1])):
        document.add(key, _top_item(value))
    return tomlkit.dumps(document)


def _rank(value: object) -> int:
    """Order a file's top: plain values first, then tables, then lists of tables."""
    if _is_tables(value):
        return 2
    return 1 if isinstance(value, dict) else 0


def _is_tables(value: object) -> bool:
    return isinstance(value, list) and bool(value) and isinstance(value[0], dict)


def _top_item(value: Any) -> Item:  # noqa: ANN401 - any file value
    if _is_tables(value):
        tables = tomlkit.aot()
        for item in value:
            tables.append(_table(item))
        return tables
    return _table(value) if isinstance(value, dict) else _item(value)


def _table(values: dict[str, Any]) -> Item:
    table = tomlkit.table()
    for key, value in values.items():
        table.add(key, _item(value))
    return table


def _item(value: Any) -> Item:  # noqa: ANN401 - any file value
    if isinstance(value, dict):
        inline = tomlkit.inline_table()
        for key, inner in value.items():
            inline.add(key, _item(inner))
        return inline
    if _is_tables(value):
        array = tomlkit.array()
        for inner in value:
            array.append(_item(inner))
        return array.multiline(True)
    if isinstance(value, str) and "\n" in value:
        return tomlkit.string(value, multiline=True)
    item: Item = tomlkit.item(value)
    return item


def _bring_up(
    target: MutableMapping[str, Any], before: dict[str, Any], after: dict[str, Any]
) -> None:
    """Change in `target` only what differs, so that everything else stays as written."""
    for key in [key for key in before if key not in after]:
        _drop(target, key)
    for key, value in after.items():
        old = before.get(key)
        if old == value:
            continue
        if isinstance(old, dict) and isinstance(value, dict) and key in target:
            _bring_up(target[key], old, value)
        elif _same_items(old, value) and key in target:
            for inner, was, is_now in zip(target[key], old or (), value, strict=True):
                _bring_up(inner, was, is_now)
        else:
            _put(target, key, value)


def _drop(target: MutableMapping[str, Any], key: str) -> None:
    for name in (key, *_SAME_FIGURE.get(key, ())):
        target.pop(name, None)


def _put(target: MutableMapping[str, Any], key: str, value: Any) -> None:  # noqa: ANN401 - any value
    for name in _SAME_FIGURE.get(key, ()):
        target.pop(name, None)
    # A list in brackets stays one: [[tables]] in its place would swallow the keys after it.
    at_top = isinstance(target, tomlkit.TOMLDocument) and not isinstance(target.get(key), Array)
    target[key] = _top_item(value) if at_top else _item(value)


def _same_items(old: object, new: object) -> bool:
    if not (_is_tables(old) and _is_tables(new)):
        return False
    assert isinstance(old, list)
    assert isinstance(new, list)
    return [item_name(item) for item in old] == [item_name(item) for item in new]
