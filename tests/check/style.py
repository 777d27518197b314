#!/usr/bin/python3
# SPDX-License-Identifier: MIT
"""The habits of this project, checked over every file git knows or would take.

Prints one line a habit and closes with "N passed, N failed".
"""

import re
import subprocess
import sys
from pathlib import Path

from functions import functions_of

ROOT = Path(__file__).resolve().parents[2]
TOP_LEVEL = {
    ".ci", ".clang-format", ".gitignore", "CMakeLists.txt", "DEVELOPERS.md", "LICENSE", "README.md",
    "assets", "shaders", "src", "tests", "web",
}
MAX_FILE_LINES = 500
MAX_FUNCTION_LINES = 60
MAX_MEDIAN_FUNCTION_LINES = 8
MAX_P90_FUNCTION_LINES = 31

# A room may call the rooms above it in this list, never below. The view shows results and asks no
# questions in JSON, so the door lies beside it.
ROOMS = ["physics", "section", "opening", "assess", "house", "door", "view", "app"]
FORBIDDEN = {"view": {"door"}, "app": {"door"}}
# Who may know what: the browser, drawing, JSON.
HEADERS = [
    (re.compile(r"#include [<\"](?:emscripten|GLES)"), {"app"}, {"src/door/wasm.cpp"}),
    (re.compile(r"#include [<\"]imgui"), {"view", "app"}, set()),
    (re.compile(r"#include [<\"]nlohmann"), {"house", "door"}, set()),
]

CODE = (".cpp", ".hpp", ".vert", ".frag", ".glsl", ".js", ".mjs", ".py", ".sh", ".cmake", ".css")
SCRIPTS = {"web/run", "tests/run", ".ci/run", "CMakeLists.txt"}
# What has no place in any file: work left over, places of one machine, addresses of other hosts.
OUT_OF_PLACE = [
    ("work left over", re.compile(r"\b(?:TO[D]O|FIX[M]E|XX[X]|HA[C]K)\b")),
    ("a place of one machine", re.compile(r"(?<![\w.$}])/(?:home|root|tmp|work|mnt|Users)/")),
    ("an issue number", re.compile(r"\b[Ii]ssue #?\d+|(?<![\w&])#\d{1,4}\b(?![-\w])(?!\s*\{)")),
]
# In code no address of another host either; documents cite sources by theirs.
ADDRESS = re.compile(r"https?://(?!localhost|127\.0\.0\.1|host\b|www\.w3\.org/|\$)[\w.-]+")


def listed_files() -> list[str]:
    out = subprocess.check_output(
        ["git", "ls-files", "--cached", "--others", "--exclude-standard"], cwd=ROOT, text=True)
    return sorted({name for name in out.splitlines() if (ROOT / name).is_file()})


FILES = listed_files()
TEXTS = {
    name: (ROOT / name).read_text(encoding="utf-8")
    for name in FILES
    if name.endswith(CODE + (".md", ".json", ".html", ".csv", ".webmanifest", ".svg"))
    or name in SCRIPTS
}
SOURCES = {n: t for n, t in TEXTS.items() if n.endswith(CODE) or n in SCRIPTS}


def top_level() -> list[str]:
    return [f"{name} does not belong at the top" for name in
            sorted({name.split("/")[0] for name in FILES} - TOP_LEVEL)]


def licence_lines() -> list[str]:
    return [f"{name}: no SPDX line" for name, text in SOURCES.items()
            if "SPDX-License-Identifier: MIT" not in "\n".join(text.splitlines()[:2])]


def file_lengths() -> list[str]:
    counts = {n: t.count("\n") for n, t in SOURCES.items()}
    own = sorted(counts.values())
    print(f"     files {len(own)}, lines {sum(own)}: median {own[len(own) // 2]}, "
          f"p90 {own[len(own) * 9 // 10]}, longest {own[-1]} ({max(counts, key=counts.get)})")
    return [f"{n}: {c} lines" for n, c in counts.items() if c > MAX_FILE_LINES]


def function_lengths() -> list[str]:
    found = [(f.lines, f"{n}:{f.line} {f.name}") for n, t in SOURCES.items()
             for f in functions_of(n, t)]
    found.sort()
    lines = [f[0] for f in found]
    median, p90 = lines[len(lines) // 2], lines[len(lines) * 9 // 10]
    print(f"     functions {len(found)}: median {median}, p90 {p90}, longest {found[-1][0]} "
          f"({found[-1][1]})")
    wrong = [f"{where}: {length} lines" for length, where in found if length > MAX_FUNCTION_LINES]
    if median > MAX_MEDIAN_FUNCTION_LINES:
        wrong.append(f"median function {median} lines")
    if p90 > MAX_P90_FUNCTION_LINES:
        wrong.append(f"p90 function {p90} lines")
    return wrong


def measure_itself() -> list[str]:
    """The measure finds what it should in a sample with every shape of function."""
    body = "    work();\n" * 60
    sample = (
        "struct S { S() : a_{1}, b_(2) {} int a_; };\n"
        "int table[] = {1, 2};\nnamespace x {\n"
        "Result<int> T::long_one(int a,\n                int b) const {\n"
        f"    auto f = [&](int c) {{ return c; }}; // {{\n{body}}}\n"
        "void f() { if (a) { b('{', \"}\"); } }\n}\n"
    )
    got = {(f.name, f.lines) for f in functions_of("sample.cpp", sample)}
    want = {("S", 1), ("long_one", 64), ("f", 1)}
    script = "export function a(b) {\n  return b.map((c) => {\n    return c;\n  });\n}\n"
    got_script = {(f.name, f.lines) for f in functions_of("sample.js", script)}
    wrong = [f"sample: no {w}" for w in want - got]
    return wrong + [f"script: no {w}" for w in {("a", 5), ("=>", 3)} - got_script]


def room_of(name: str) -> str | None:
    parts = name.split("/")
    return parts[1] if parts[0] == "src" and len(parts) > 2 else None


def arrows() -> list[str]:
    wrong = []
    for name, text in SOURCES.items():
        room = room_of(name)
        if not room:
            continue
        if room not in ROOMS:
            wrong.append(f"{name}: {room} is no room")
            continue
        for other in re.findall(r'^\s*#include "(\w+)/', text, re.M):
            below = other in ROOMS and ROOMS.index(other) > ROOMS.index(room)
            if below or other in FORBIDDEN.get(room, set()):
                wrong.append(f"{name} includes {other}/")
        for header, rooms, files in HEADERS:
            if header.search(text) and room not in rooms and name not in files:
                wrong.append(f"{name}: {header.search(text).group(0)} has no place in {room}")
    return wrong


def out_of_place() -> list[str]:
    wrong = []
    for name, text in TEXTS.items():
        patterns = list(OUT_OF_PLACE)
        if name in SOURCES or name.endswith(".html"):
            patterns.append(("an address", ADDRESS))
        if name.endswith((".css", ".svg", ".html")):
            patterns = [p for p in patterns if p[0] != "an issue number"]  # colours look like them
        for what, pattern in patterns:
            for match in pattern.finditer(text):
                line = text.count("\n", 0, match.start()) + 1
                wrong.append(f"{name}:{line}: {what}: {match.group(0)}")
    return wrong


def formatted() -> list[str]:
    names = [n for n in SOURCES if n.endswith((".cpp", ".hpp"))]
    done = subprocess.run(["clang-format", "--dry-run", "--Werror", *names], cwd=ROOT,
                          stderr=subprocess.PIPE, text=True)
    if done.returncode == 0:
        return []
    return sorted({line.split(":")[0] for line in done.stderr.splitlines() if ": error:" in line})


def comment_share() -> float:
    """Told, not judged: what a comment is worth no count can tell."""
    names = [n for n in SOURCES if n.startswith("src/") and n.endswith((".cpp", ".hpp"))]
    lines = [line.strip() for n in names for line in SOURCES[n].splitlines() if line.strip()]
    return sum(line.startswith("//") for line in lines) / max(1, len(lines))


HABITS = [
    ("the top level holds what it should", top_level),
    ("every source names its licence", licence_lines),
    (f"no file over {MAX_FILE_LINES} lines", file_lengths),
    ("the measure of functions is right", measure_itself),
    (f"no function over {MAX_FUNCTION_LINES} lines", function_lengths),
    ("arrows between rooms point one way", arrows),
    ("nothing out of place", out_of_place),
    ("sources are formatted", formatted),
]


def main() -> int:
    failed = 0
    for title, habit in HABITS:
        wrong = habit()
        failed += bool(wrong)
        print("FAIL" if wrong else "ok  ", title)
        for one in wrong:
            print("       ", one)
    print(f"     whole-line comments in src: {100 * comment_share():.1f} %")
    print(f"{len(HABITS) - failed} passed, {failed} failed")
    return 1 if failed else 0


if __name__ == "__main__":
    sys.exit(main())
