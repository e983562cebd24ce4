"""The key of a class and the record of its folder: as they were written, or refused in words."""

import json

import pytest

from chartgen.description.class_record import (
    ClassRecord,
    of_other_inputs,
    read_record,
    record_text,
)
from chartgen.description.key_file import key_text, read_key
from chartgen.errors import DescriptionError

KEY = {"course": {"name": "Zoë's"}, "papers": [{"number": 1, "answers": [0.1, 1e-9, 12.5]}]}
RECORD = ClassRecord(
    name="Zoë's", check="0000-0000", done={"cards": {"cards.pdf": 12}, "x/key": {"x/key.pdf": 3}}
)


def test_a_key_is_read_as_it_was_written() -> None:
    assert read_key(key_text(KEY), file="key.json") == KEY
    assert key_text(KEY) == key_text(json.loads(json.dumps(KEY)))


def test_a_key_saved_by_another_program_with_the_same_content_is_the_same_key() -> None:
    spaced = json.dumps(json.loads(key_text(KEY)), indent=4).encode()
    assert read_key(spaced, file="key.json") == KEY


@pytest.mark.parametrize(
    ("old", "new", "words"),
    [
        (b"12.5", b"12.6", "was changed after it was written"),
        (b'"chartgen_key":1', b'"chartgen_key":2', "was written by a newer program"),
        (b'"chartgen_key":1', b'"chartgen_key":"x"', "is no key of a class"),
        (b'"chartgen_key":1', b'"key_of":1', "is no key of a class"),
        (b'"key":{', b'"other":{', "was changed after it was written"),
        (b"{", b"", "is no key of a class"),
        ("ë".encode(), b"\xeb", "is no key of a class"),
    ],
)
def test_a_key_that_is_not_as_it_was_written_is_refused(old: bytes, new: bytes, words: str) -> None:
    text = key_text(KEY)
    assert old in text
    with pytest.raises(DescriptionError, match=words) as caught:
        read_key(text.replace(old, new, 1), file="key.json")
    assert caught.value.faults[0].mend


def test_a_record_is_read_as_it_was_written() -> None:
    read = read_record(record_text(RECORD), file="class.json")
    assert read == RECORD
    assert read.files == ("cards.pdf", "x/key.pdf")


@pytest.mark.parametrize(
    "name", ["../cards.pdf", "/cards.pdf", "x/../cards.pdf", "", "..", "a/b/c.pdf", "x\\y.pdf"]
)
def test_a_record_that_lists_files_outside_its_folder_is_refused(name: str) -> None:
    text = record_text(ClassRecord(name="", check="", done={"cards": {name: 1}}))
    with pytest.raises(DescriptionError, match="--again"):
        read_record(text, file="class.json")


@pytest.mark.parametrize(
    "text", [b"", b"[]", b"{}", b'{"chartgen_class": 2}', b"\xff", b"[" * 9999]
)
def test_another_file_in_the_place_of_a_record_is_refused(text: bytes) -> None:
    with pytest.raises(DescriptionError, match="does not say what is in this folder"):
        read_record(text, file="class.json")


def test_other_inputs_are_told_with_both_codes() -> None:
    assert str(of_other_inputs(RECORD, "1111-1111", file="class.json")) == (
        'class.json: this folder holds the class "Zoë\'s" made from other inputs (check '
        "0000-0000, now 1111-1111). Add --again to make all anew, or choose another folder with "
        "--out."
    )
