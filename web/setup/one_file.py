#!/usr/bin/python3
# SPDX-License-Identifier: MIT
"""one_file.py SITE FILE.html writes the page in SITE as a single file, for a disk or an attachment.

Style and scripts stand in the page, the two parts of the program as packed text (program.js unpacks
them). What needs a host stays out: the service worker, the manifest, the calculation door.
"""

import base64
import gzip
import hashlib
import re
import sys
from pathlib import Path

sys.dont_write_bytecode = True
import bundle  # noqa: E402

LATER = re.compile(r'\bimport\("\./([\w.]+)"\)')
LEFT_OUT = re.compile(r'<(?:link rel="(?:manifest|apple-touch-icon|preload|icon|stylesheet)"|script src)'
                      r'[^>]*>(?:</script>)?\n?')
POLICY = re.compile(r'(http-equiv="Content-Security-Policy" content=")[^"]*')


def scripts(site: Path) -> str:
    """The page's script and, made when they are asked for, those that it imports later."""
    page = (site / "loader.js").read_text()
    waiting, texts = LATER.findall(page), {}
    while waiting:
        name = waiting.pop()
        if name in texts:
            continue
        texts[name] = (site / name).read_text()
        waiting += LATER.findall(texts[name])
    text = re.sub(r"^export ", "", now_and_here(page), flags=re.M)
    for name, source in texts.items():
        body = bundle.IMPORT.sub(
            lambda found: "" if found[2] == "loader.js"  # whose names are seen here
            else f"const {{{found[1]}}} = {bundle.holder(found[2])}();\n", now_and_here(source))
        held = f"made_{name.split('.')[0]}"
        text += (f"let {held};\nfunction {bundle.holder(name)}() {{\n"
                 f"return {held} ??= {bundle.closed(body)};\n}}\n")
    return text


def now_and_here(source: str) -> str:
    return LATER.sub(lambda found: f"Promise.resolve().then({bundle.holder(found[1])})", source)


def inline(tag: str, text: str) -> tuple[str, str]:
    """The element, and what the policy must allow: exactly this text."""
    safe = text.replace("</script", "<\\/script")
    mark = base64.b64encode(hashlib.sha256(safe.encode()).digest()).decode()
    return f"<{tag}>{safe}</{tag.split()[0]}>\n", f"'sha256-{mark}'"


def carried(site: Path, name: str) -> str:
    packed = base64.b64encode(gzip.compress((site / name).read_bytes(), 9, mtime=0)).decode()
    return f'<script type="text/plain" id="file:{name}">{packed}</script>\n'


def one_file(site: Path) -> str:
    page = LEFT_OUT.sub("", (site / "index.html").read_text())
    style, style_mark = inline("style", (site / "style.css").read_text()
                               + (site / "report.css").read_text())
    modules, modules_mark = inline("script type=\"module\"", scripts(site))
    icon = base64.b64encode((site / "icons/shimlight.svg").read_bytes()).decode()
    policy = (f"default-src 'none'; script-src {modules_mark} 'wasm-unsafe-eval'; "
              f"style-src {style_mark}; img-src data: blob:; base-uri 'none'; form-action 'none'")
    page = POLICY.sub(lambda found: found[1] + policy, page)
    head = f'<link rel="icon" type="image/svg+xml" href="data:image/svg+xml;base64,{icon}">\n{style}'
    files = "".join(carried(site, name) for name in ("shimlight.wasm", "shimlight-rest.wasm"))
    page = page.replace("</head>", head + "</head>", 1)
    return page.replace("</body>", files + modules + "</body>", 1)


def main() -> None:
    site, target = map(Path, sys.argv[1:3])
    target.write_text(one_file(site))


if __name__ == "__main__":
    main()
