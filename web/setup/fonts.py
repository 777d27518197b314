#!/usr/bin/python3
# SPDX-License-Identifier: MIT
"""Cuts Inter (Debian's fonts-inter) down to the glyphs Shimlight shows.

fonts.py FOLDER writes inter_{regular,semibold,bold}.otf, which the canvas rasterizes. Each holds
what the lighter ones do not show well enough in its place: all glyphs in regular, Latin without
accents in semibold, figures in bold; the canvas falls back from one to the next. The canvas knows no OpenType features, so the digits are the tabular ones to start with: columns of figures line up,
a value that changes does not shake. Outlines stay cubic (CFF): stb_truetype draws them, and they
pack better than their quadratic conversion.
"""

import sys
from pathlib import Path

from fontTools import subset
from fontTools.cffLib import cffStandardStrings
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
BASIC = "".join(map(chr, range(0x20, 0x7F))) + "°±·×²³½¼¾–—‘’“”…\u2009\u202f−"
FIGURES = "0123456789 .,:/%+-–−°<>≈≤≥$CF\u2009\u202f"
STYLES = {"Regular": GLYPHS, "SemiBold": BASIC, "Bold": FIGURES}


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


def unnamed(font: TTFont) -> None:
    """Names of glyphs cost 2 KB; the names every CFF font knows by number cost nothing."""
    order = font.getGlyphOrder()
    new = {old: cffStandardStrings[i] for i, old in enumerate(order)}
    top = font["CFF "].cff.topDictIndex[0]
    strings = top.CharStrings.charStrings
    top.CharStrings.charStrings = {new[old]: at for old, at in strings.items()}
    top.charset = [new[old] for old in top.charset]
    for table in font["cmap"].tables:
        table.cmap = {code: new[name] for code, name in table.cmap.items()}
    metrics = font["hmtx"].metrics
    font["hmtx"].metrics = {new[old]: value for old, value in metrics.items()}
    font.setGlyphOrder([new[old] for old in order])


def cut(style: str, glyphs: str) -> TTFont:
    font = TTFont(SOURCE / f"Inter-{style}.otf")
    figures = tabular_digits(font)
    for table in font["cmap"].tables:
        table.cmap = {code: figures.get(name, name) for code, name in table.cmap.items()}
    options = subset.Options()
    options.layout_features = []
    options.desubroutinize = True  # subroutines save bytes only where nothing packs after us
    options.drop_tables += ["GDEF", "GPOS", "GSUB", "OS/2", "name", "post"]
    options.hinting = False
    options.notdef_outline = True
    options.name_IDs = []
    cutter = subset.Subsetter(options)
    cutter.populate(text=glyphs)
    cutter.subset(font)
    unnamed(font)
    # Whatever day it is built, the same bytes come out.
    font.recalcTimestamp = False
    return font


def main() -> None:
    folder = Path(sys.argv[1])
    folder.mkdir(parents=True, exist_ok=True)
    for style, glyphs in STYLES.items():
        cut(style, glyphs).save(folder / f"inter_{style.lower()}.otf")


if __name__ == "__main__":
    main()
