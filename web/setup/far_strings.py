# SPDX-License-Identifier: MIT
"""Words that only the second part of the program says go with it.

wasm-split cuts functions and leaves all data in the first part. A text ended by a zero moves when a
function of the second part names its address, and no function of the first part names any address in
it or shortly before it, nor any aligned word of data does. Where it stood the first part has zeros; the second
part writes it there when it comes. What is reached through tables stays.
"""

import bisect
import re
import struct
import subprocess
from pathlib import Path

SHORTEST = 6  # bytes; an entry costs some itself
BEFORE = 64  # bytes in front of a text that nobody of the first part may name either
TEXT = re.compile(rb"[\x09\x0a\x20-\x7e\x80-\xf4]{%d,}\0" % SHORTEST)
NUMBER = re.compile(r"i(?:32|64)\.const (\d+)|offset=(\d+)")
CUSTOM, CODE, DATA = 0, 10, 11
SOURCES = Path(__file__).resolve().parents[2] / "src"
FAR_FILES = ("assess/find_out_rows.cpp", "assess/proof.cpp", "assess/part_reading.cpp", "house/cautions.cpp",
             "house/materials.cpp", "house/observations.cpp", "house/order.cpp",
             "view/why_cards.cpp", "view/why_pages.cpp", "view/why_formula.cpp", "view/house_bill*.cpp",
             "view/survey.cpp", "view/sheet*.cpp", "view/report*.cpp", "view/remedies_help.cpp")
LITERAL = r'"(?:[^"\\\n]|\\.)*"'
ESCAPES = {"n": "\n", "t": "\t"}


def leb128(number: int) -> bytes:
    low, rest = number & 0x7F, number >> 7
    return bytes([low | 0x80]) + leb128(rest) if rest else bytes([low])


def signed_leb128(number: int) -> bytes:
    low, rest = number & 0x7F, number >> 7
    done = rest == 0 and not low & 0x40
    return bytes([low]) if done else bytes([low | 0x80]) + signed_leb128(rest)


def read_leb128(content: bytes, at: int) -> tuple[int, int]:
    value = shift = 0
    while True:
        byte = content[at]
        at += 1
        value |= (byte & 0x7F) << shift
        shift += 7
        if not byte & 0x80:
            return value, at


def sections(content: bytes) -> list[tuple[int, bytes]]:
    at, found = 8, []
    while at < len(content):
        kind = content[at]
        size, at = read_leb128(content, at + 1)
        found.append((kind, content[at:at + size]))
        at += size
    return found


def module(parts: list[tuple[int, bytes]]) -> bytes:
    return b"\0asm\1\0\0\0" + b"".join(bytes([k]) + leb128(len(c)) + c for k, c in parts)


def segments(data: bytes) -> list[tuple[int, bytes]]:
    """Address and content of each piece of data."""
    count, at = read_leb128(data, 0)
    found = []
    for _ in range(count):
        if data[at:at + 2] != b"\0\x41":
            raise SystemExit("data of a kind that is not known here")
        address, at = read_leb128(data, at + 2)
        size, at = read_leb128(data, at + 1)
        found.append((address, data[at:at + size]))
        at += size
    return found


def data_section(pieces: list[tuple[int, bytes]]) -> bytes:
    return leb128(len(pieces)) + b"".join(
        b"\0\x41" + signed_leb128(address) + b"\x0b" + leb128(len(content)) + content
        for address, content in pieces)


def named(program: Path, features: list[str]) -> list[int]:
    """All numbers that could be addresses in a part's functions, ascending."""
    text = subprocess.run(["wasm-dis", *features, program], check=True, capture_output=True,
                          text=True).stdout
    return sorted({int(found[1] or found[2]) for found in NUMBER.finditer(text)})


def any_within(ascending: list[int], begin: int, end: int) -> bool:
    at = bisect.bisect_left(ascending, begin)
    return at < len(ascending) and ascending[at] < end


def pointers(pieces: list[tuple[int, bytes]]) -> list[int]:
    words = set()
    for address, content in pieces:
        for at in range(-address % 4, len(content) - 3, 4):
            words.add(struct.unpack_from("<I", content, at)[0])
    return sorted(words)


def literals(source: Path) -> set[bytes]:
    """The texts of a source file, neighbours joined as the compiler does."""
    code = re.sub(r"^\s*//.*$|^\s*#.*$", "", source.read_text(), flags=re.M)
    texts = set()
    for found in re.finditer(rf"{LITERAL}(?:\s*{LITERAL})*", code):
        text = "".join(part[1:-1] for part in re.findall(LITERAL, found[0]))
        text = re.sub(r"\\(.)", lambda mark: ESCAPES.get(mark[1], mark[1]), text)
        texts.add(text.encode() + b"\0")
    return texts


def texts_of_far_files() -> set[bytes]:
    """Those that no other file has."""
    far = {path for name in FAR_FILES for path in SOURCES.glob(name)}
    near = set().union(*(literals(path) for path in SOURCES.rglob("*.?pp") if path not in far))
    return set().union(*map(literals, far)) - near


def far_texts(pieces: list[tuple[int, bytes]], first: list[int],
              second: list[int]) -> list[tuple[int, bytes]]:
    told, of_far_files = pointers(pieces), texts_of_far_files()

    def goes(begin: int, text: bytes) -> bool:
        end = begin + len(text)
        if any_within(first, begin - BEFORE, end):
            return False
        if text in of_far_files:  # a table may begin it, nothing may end in it
            return not any_within(told, begin + 1, end)
        return any_within(second, begin, end) and not any_within(told, begin, end)

    return [(address + found.start(), found[0]) for address, content in pieces
            for found in TEXT.finditer(content) if goes(address + found.start(), found[0])]


def without(pieces: list[tuple[int, bytes]], texts: list[tuple[int, bytes]]) -> list[tuple[int, bytes]]:
    kept = []
    for address, content in pieces:
        changed = bytearray(content)
        for at, text in texts:
            if address <= at < address + len(content):
                changed[at - address:at - address + len(text)] = bytes(len(text))
        kept.append((address, bytes(changed)))
    return kept


def move(first: Path, second: Path, features: list[str]) -> None:
    near, far = sections(first.read_bytes()), sections(second.read_bytes())
    if any(kind == DATA for kind, _ in far):
        raise SystemExit("the second part has data of its own already")
    pieces = segments(next(content for kind, content in near if kind == DATA))
    texts = far_texts(pieces, named(first, features), named(second, features))
    kept = data_section(without(pieces, texts))
    first.write_bytes(module([(k, kept if k == DATA else c) for k, c in near]))
    after_code = 1 + next(i for i, (kind, _) in enumerate(far) if kind == CODE)
    far.insert(after_code, (DATA, data_section(texts)))
    second.write_bytes(module(far))
    print(f"words that come with the second part: {sum(len(text) for _, text in texts)} bytes")
