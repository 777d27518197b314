#!/usr/bin/python3
# SPDX-License-Identifier: MIT
"""split.py PROGRAM.wasm FIRST.wasm SECOND.wasm LESSONS.json cuts the program in two.

FIRST starts the page and draws the cut through wall and window; SECOND is what only the further
views need and comes once somebody begins to use the page. What goes where is read from the program:
the second part gets the functions below, and all that nothing else calls. Until it is there, calling
one of them is a fault (view/rest.hpp asks first).

The program must have its functions' names; both parts lose them. The lessons travel in the second
part, as a section of their own name.
"""

import json
import re
import subprocess
import sys
from pathlib import Path

sys.dont_write_bytecode = True
import far_strings  # noqa: E402

WASM_FEATURES = ["--enable-simd", "--enable-bulk-memory", "--enable-nontrapping-float-to-int",
                 "--enable-sign-ext", "--enable-mutable-globals"]
# As called by Screen and by what the page tells, each kept apart from its caller by SHIMLIGHT_REST.
REST = [f"shimlight::view::{name}(" for name in (
    "RoomView::draw", "Panes::draw", "AirView::draw", "Readings::draw", "Bill::draw",
    "SheetPage::draw", "Lesson::draw", "Lesson::card", "Lesson::free_bar", "Lesson::numbers",
    "Remedies::draw", "HousePage::draw", "Why::draw", "LeverCard::draw",
    "WordsCard::draw", "open_house", "open_link", "take_photo", "Conductor::opened_lessons")]
REST += [f"shimlight::app::{name}(" for name in (
    "serve_report", "take_shelf", "fault_of", "(anonymous namespace)::Program::show_house")]
REST += ["shimlight::house::to_json(shimlight::house::House"]
# Called through tables that only the rest reads: rows of what can hurt, of material, of the table for
# spreadsheets, of the house's bill. Told by what they take. Those that call nothing stay: small ones may
# have been merged with their like from anywhere.
POINTED = re.compile(r"house::(?:Job|SiteFacts|OpeningAnswer) const&|house::Telling"
                     r"|house::\(anonymous namespace\)::Row const&")
EDGE = re.compile(r'^\s*"(.*)" -> "(.*)"; // call')
NODE = re.compile(r'^\s*"(.*)" \[style="filled(.*)", fillcolor="(\w+)"\]')
ROUND = re.compile(r'^\s*"(.*)" \[style="filled, rounded"')


def readable(name: str) -> str:
    """Names come with brackets, commas and spaces as \\28 and the like."""
    return re.sub(r"\\([0-9a-f]{2})", lambda found: chr(int(found[1], 16)), name)


class Calls:
    """Who calls whom, and who may be called from outside or through a pointer."""

    def __init__(self, program: Path):
        graph = subprocess.run(
            ["wasm-opt", *WASM_FEATURES, "--print-call-graph", program, "-o", "/dev/null"],
            check=True, capture_output=True, text=True).stdout
        self.functions: set[str] = set()
        self.called: dict[str, set[str]] = {}
        self.entered: set[str] = set()
        self.pointed: set[str] = set()  # of them, through a table
        for line in graph.split("\n"):
            if edge := EDGE.match(line):
                self.called.setdefault(edge[1], set()).add(edge[2])
            elif pointed := ROUND.match(line):
                self.entered.add(pointed[1])
                self.pointed.add(pointed[1])
            elif node := NODE.match(line):
                if node[3] == "turquoise":
                    continue
                self.functions.add(node[1])
                if node[3] == "gray":
                    self.entered.add(node[1])

    def reached(self, start: set[str], without: set[str]) -> set[str]:
        found, waiting = set(), [name for name in start if name not in without]
        while waiting:
            name = waiting.pop()
            if name in found:
                continue
            found.add(name)
            waiting += [n for n in self.called.get(name, ()) if n not in without]
        return found


def second_part(calls: Calls) -> set[str]:
    entries = set()
    for wanted in REST:
        found = {name for name in calls.functions if readable(name).startswith(wanted)}
        if not found:
            raise SystemExit(f"the program has no {wanted}…): renamed, or merged into its caller?")
        entries |= found
    entries |= {name for name in calls.pointed
                if POINTED.search(readable(name)) and calls.called.get(name)}
    return calls.functions - calls.reached(calls.entered, without=entries)


def custom_section(name: str, content: bytes) -> bytes:
    body = far_strings.leb128(len(name)) + name.encode() + content
    return b"\0" + far_strings.leb128(len(body)) + body


def main() -> None:
    program, first, second, lessons = map(Path, sys.argv[1:5])
    calls = Calls(program)
    rest = second_part(calls)
    listing = second.with_suffix(".functions")
    listing.write_text("\n".join(sorted(rest)) + "\n")
    subprocess.run(
        ["wasm-split", *WASM_FEATURES, "--split", program, f"--split-funcs=@{listing}",
         "-o1", first, "-o2", second, "--import-namespace=first",
         "--placeholder-namespace=second"], check=True)
    far_strings.move(first, second, WASM_FEATURES)
    text = json.dumps(json.loads(lessons.read_text()), ensure_ascii=False, separators=(",", ":"))
    second.write_bytes(second.read_bytes() + custom_section("lessons", text.encode()))


if __name__ == "__main__":
    main()
