#!/usr/bin/python3
# SPDX-License-Identifier: MIT
"""guides.py: what the guides point to is there, and the trainers' page has the lessons that there are.
Closes with "N passed, N failed"."""

import json
import re
import sys
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
LINK = re.compile(r"\]\((?!https?:)([^)#]+)\)|src=\"([^\"]+)\"")
CODE_PATH = re.compile(r"`((?:src|web|tests|assets|shaders)/[\w./-]+)`")


def faults_of(page: Path) -> list[str]:
    """Links are relative to the page, paths in code to the project."""
    text = page.read_text()
    named = [(page.parent, a or b) for a, b in LINK.findall(text)]
    named += [(ROOT, path.rstrip(".")) for path in CODE_PATH.findall(text)]
    return [f"{page.relative_to(ROOT)}: {name} is not there" for folder, name in named
            if not (folder / name).exists() and not list(folder.glob(name + ".*"))]


def lesson_faults() -> list[str]:
    lessons = json.loads((ROOT / "assets/lessons.json").read_text())["lessons"]
    page = (ROOT / "assets/guide-trainers.md").read_text()
    told = [row.split("|")[1].strip() for row in page.split("\n") if row.startswith("| ")][1:]
    told = [title for title in told if not set(title) <= set("- ")]
    there = [lesson["title"] for lesson in lessons]
    return [] if told == there else [f"guide-trainers.md tells {told}, the lessons are {there}"]


def main() -> int:
    pages = sorted(ROOT.glob("*.md")) + sorted((ROOT / "assets").glob("*.md"))
    checks = [faults_of(page) for page in pages] + [lesson_faults()]
    for fault in sum(checks, []):
        print(fault)
    failed = sum(1 for faults in checks if faults)
    print(f"{len(checks) - failed} passed, {failed} failed")
    return 1 if failed else 0


if __name__ == "__main__":
    sys.exit(main())
