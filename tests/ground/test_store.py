"""A shelf: many texts kept as one."""

from __future__ import annotations

import pytest

from benchalong.ground.store import MemoryStore, Shelf


def test_what_was_put_back_is_found_and_what_nobody_asked_for_goes() -> None:
    store = MemoryStore()
    first = Shelf(store, "notes")
    first.put("one", "a text: with spaces \u2028 and ½")
    first.put("two", "2")
    first.put_back()
    second = Shelf(store, "notes")
    assert second.get("one") == "a text: with spaces \u2028 and ½"
    assert second.get("three") is None
    second.put_back()
    third = Shelf(store, "notes")
    assert (third.get("one"), third.get("two")) == ("a text: with spaces \u2028 and ½", None)
    assert Shelf(store, "other notes").get("one") is None


def test_a_shelf_that_holds_the_same_is_not_written_again() -> None:
    store = MemoryStore()
    shelf = Shelf(store, "notes")
    shelf.put("one", "1")
    shelf.put_back()
    store.put = None  # type: ignore[assignment, method-assign]
    again = Shelf(store, "notes")
    assert again.get("one") == "1"
    again.put_back()


@pytest.mark.parametrize(("key", "text"), [("two words", "x"), ("two\nlines", "x"), ("key", "two\nlines")])
def test_what_is_not_one_line_is_refused(key: str, text: str) -> None:
    with pytest.raises(ValueError, match="one line"):
        Shelf(MemoryStore(), "notes").put(key, text)


@pytest.mark.parametrize("damage", ["", "nonsense", "\n\n", " x", "one"])
def test_a_damaged_shelf_holds_nothing(damage: str) -> None:
    store = MemoryStore()
    store.put("shelf notes", damage)
    assert Shelf(store, "notes").get("one") is None
