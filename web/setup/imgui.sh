#!/bin/bash
# SPDX-License-Identifier: MIT
# Gets the Dear ImGui source into FOLDER (first argument, build/imgui by default) from Debian's own
# source package: Debian 12's libimgui-dev is too old, its successor carries 1.90.1. The machine's
# APT mirror is asked for it through a private list, so that the system's own lists stay as they
# are. The SHA-256 below decides whether the source is taken. Nothing is fetched when it is there.
set -euo pipefail

readonly root=$(cd "$(dirname "$0")/../.." && pwd)
readonly target=$(realpath -m "${1:-$root/build/imgui}")
readonly version=1.90.1+ds-1
readonly suite=trixie
readonly tarball=imgui_1.90.1+ds.orig.tar.xz
readonly sha256=ecce377df0f90b292f15dcbd83d438bddc162b2388c881132bde18c787572a1c
readonly apt=$target.apt # a scratch folder beside the target, removed when done

if [ -f "$target/.complete" ] && [ "$(cat "$target/.complete")" = "$sha256" ]; then
    exit 0
fi

say() { echo "imgui: $*" >&2; }

# The mirrors of this machine's binary packages, the main archive's before security's. APT itself
# reads its lists, old style or new.
mirrors() {
    apt-get indextargets --format '$(REPO_URI) $(RELEASE)' 'Created-By: Packages' |
        sort -u | awk '$2 !~ /security|updates|backports/ { print $1 } ' | sort -u
}

# apt_private MIRROR TRUSTED COMMAND…: apt-get that knows one source list and keeps its own state.
# The configuration of proxies and certificates stays the machine's.
apt_private() {
    local mirror=$1 trusted=$2
    shift 2
    mkdir -p "$apt/lists/partial" "$apt/cache/archives/partial"
    printf 'Types: deb-src\nURIs: %s\nSuites: %s\nComponents: main\n%s\n' \
        "$mirror" "$suite" "$trusted" >"$apt/source.sources"
    apt-get -q -o "Dir::Etc::SourceList=$apt/source.sources" -o Dir::Etc::SourceParts=/dev/null \
        -o "Dir::State::Lists=$apt/lists" -o "Dir::Cache=$apt/cache" \
        -o APT::Sandbox::User=root -o Acquire::Languages=none -o Acquire::Retries=2 "$@"
}

# An older Debian 12 may not hold the newer suite's signing key. The checksum guards the content
# then, so that the signature may be passed over.
fetch_from() {
    local mirror=$1 trusted
    for trusted in "Signed-By: /usr/share/keyrings/debian-archive-keyring.gpg" "Trusted: yes"; do
        rm -rf "$apt/lists"
        if apt_private "$mirror" "$trusted" update >"$apt/log" 2>&1 &&
            (cd "$apt" && apt_private "$mirror" "$trusted" source --download-only \
                "imgui=$version" >>"$apt/log" 2>&1) && [ -f "$apt/$tarball" ]; then
            return 0
        fi
    done
    sed 's/^/imgui: /' "$apt/log" >&2
    return 1
}

fetch() {
    local mirror
    for mirror in $(mirrors); do
        say "source package imgui $version from this machine's package mirror"
        fetch_from "$mirror" && return 0
    done
    say "no mirror of this machine has imgui $version ($suite)"
    return 1
}

rm -rf "$apt" && mkdir -p "$apt"
fetch
echo "$sha256  $apt/$tarball" | sha256sum --check --quiet - || {
    say "the source is not the one expected; nothing was taken"
    exit 1
}
rm -rf "$target" && mkdir -p "$target"
tar -xf "$apt/$tarball" -C "$target" --strip-components=1
echo "$sha256" >"$target/.complete"
rm -rf "$apt"
