#!/usr/bin/python3
# SPDX-License-Identifier: MIT
"""sheets.py FOLDER reads the tables that write_sheets left there with Python's csv module.

Every table must come apart into its columns, hold the texts of its house and its sums, and hold no
cell that a spreadsheet could take for a formula. Even numbers have commas, odd ones semicolons.
"""

import csv
import io
import json
import re
import sys
import unicodedata
from pathlib import Path

SIGNS = "=+-@\u2212"


def bare(text: str) -> str:
    """Without the apostrophes that disarm; what ends a line is a space."""
    return re.sub(r"[\x00-\x1f\x7f]", " ", text).replace("'", "")


def formula(cell: str) -> bool:
    """Full-width forms count as what they stand for; blanks of any kind are skipped."""
    plain = unicodedata.normalize("NFKC", cell)
    plain = re.sub(r"^[\s\u200b\ufeff\u202f]+", "", plain)
    return bool(plain) and plain[0] in SIGNS and not re.fullmatch(r"-?\d+", plain)


def wrongly(text: str, separator: str) -> list[str]:
    """As a spreadsheet comes to cells that expects this separator and ignores quotes."""
    return [cell.replace('"', "") for line in text.splitlines() for cell in line.split(separator)]


def faults(path: Path) -> list[str]:
    house = json.loads(path.with_suffix(".json").read_text(encoding="utf-8"))
    raw = path.read_bytes()
    text = raw.decode("utf-8-sig")
    separator = ";" if int(path.stem) % 2 else ","
    try:
        rows = list(csv.DictReader(io.StringIO(text, newline=""), delimiter=separator, strict=True,
                                   restkey="too many", restval="too few"))
    except csv.Error as fault:
        return [str(fault)]
    found = [] if raw.startswith(b"\xef\xbb\xbf") else ["no byte order mark"]
    if len(rows) != len(house["openings"]) + 1:
        return [f"{len(rows)} rows"]
    for row, opening in zip(rows, house["openings"]):
        remedies, chosen = opening["remedies"], opening["chosen"]
        for head, wanted in (("opening", opening["name"]), ("complaint", opening["complaint"]),
                             ("remedy", remedies[chosen]["name"] if chosen >= 0 else "")):
            if bare(row[head]) != bare(wanted):
                found.append(f"{head}: {row[head]!r} for {wanted!r}")
        top = opening["site"].get("tape", {}).get("width_top_m")
        if row["width top mm"] != ("" if top is None else str(int(top * 1000 + 0.5))):
            found.append(f"width top mm {row['width top mm']!r} for {top}")
    for row in rows:
        found += [f"a cell {cell!r}" for cell in row.values() if "too" in str(cell)[:3]]
        found += [f"a formula {cell!r}" for cell in row.values() if formula(cell)]
    for head in ("work minutes", "labor", "material", "together"):
        added = sum(int(row[head]) for row in rows[:-1])
        if abs(added - int(rows[-1][head])) > len(rows):
            found.append(f"{head}: {rows[-1][head]}, added {added}")
    for other in {",", ";", "\t", "|"} - {separator}:
        found += [f"split at {other!r} a formula {cell!r}" for cell in wrongly(text, other)
                  if formula(cell)]
    return found


def main() -> int:
    failed = 0
    tables = sorted(Path(sys.argv[1]).glob("*.csv"), key=lambda path: int(path.stem))
    for path in tables:
        found = faults(path)
        failed += bool(found)
        for fault in found[:5]:
            print(f"{path.name}: {fault}")
    print(f"{len(tables) - failed} passed, {failed} failed")
    return 1 if failed or not tables else 0


if __name__ == "__main__":
    sys.exit(main())
