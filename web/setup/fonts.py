#!/usr/bin/python3
# SPDX-License-Identifier: MIT
"""Cuts Inter (Debian's fonts-inter) down to the glyphs Shimlight shows.

fonts.py FOLDER writes inter_{regular,semibold,bold}.otf, which the canvas rasterizes. The canvas
knows no OpenType features, so the digits are the tabular ones to start with: columns of figures
line up, a value that changes does not shake. Outlines stay cubic (CFF): stb_truetype draws them,
and they pack better than their quadratic conversion (29 against 33 KB for the three, brotli).
"""

import sys
from pathlib import Path

from fontTools import subset
from fontTools.ttLib import TTFont

SOURCE = Path("/usr/share/fonts/opentype/inter")

# Basic Latin and Latin-1, then dashes, quotes, primes, dots, spaces and hyphens that do not break,
# fractions, sub- and superscript figures, operators, arrows and marks, the Greek of heat flow.
GLYPHS = (
    "".join(map(chr, [*range(0x20, 0x7F), *range(0xA0, 0x100)]))
    + "–—‘’“”′″…•\u2009\u200a\u202f\u2011"
    + "⅓⅛⅜⅝⅞⁄₀₁₂₃"
    + "−∂√∞≈≤≥∅"
    + "←↑→↓↔↕↗↘↩↪↺↻▲▶▼◀■□●○★✓"
    + "Δαεηλνρστφψ"
)


def tabular_digits(font: TTFont) -> dict[str, str]:
    """What the font's own `tnum` feature replaces, digits alone."""
    table = font["GSUB"].table
    records = [r for r in table.FeatureList.FeatureRecord if r.FeatureTag == "tnum"]
    digits = {font.getBestCmap()[ord(c)] for c in "0123456789"}
    found = {}
    for index in records[0].Feature.LookupListIndex:
        for part in table.LookupList.Lookup[index].SubTable:
            mapping = getattr(part, "ExtSubTable", part).mapping
            found.update({a: b for a, b in mapping.items() if a in digits})
    if len(found) != 10:
        raise SystemExit("the font has no tabular figures")
    return found


def cut(style: str) -> TTFont:
    font = TTFont(SOURCE / f"Inter-{style}.otf")
    figures = tabular_digits(font)
    for table in font["cmap"].tables:
        table.cmap = {code: figures.get(name, name) for code, name in table.cmap.items()}
    options = subset.Options()
    options.layout_features = []
    options.desubroutinize = True  # subroutines save bytes only where nothing packs after us
    options.drop_tables += ["GDEF", "GPOS", "GSUB"]
    options.hinting = False
    options.notdef_outline = True
    options.name_IDs = []
    cutter = subset.Subsetter(options)
    cutter.populate(text=GLYPHS)
    cutter.subset(font)
    # Whatever day it is built, the same bytes come out.
    font.recalcTimestamp = False
    return font


def main() -> None:
    folder = Path(sys.argv[1])
    folder.mkdir(parents=True, exist_ok=True)
    for style in ("Regular", "SemiBold", "Bold"):
        cut(style).save(folder / f"inter_{style.lower()}.otf")


if __name__ == "__main__":
    main()
