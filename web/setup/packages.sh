# SPDX-License-Identifier: MIT
# Sourced by web/run and tests/run: Debian packages by name, only those that are missing.

installed() {
    dpkg-query -W -f='${db:Status-Status}' "$1" 2>/dev/null | grep -qx installed
}

# need_packages NAME…  A name "command=package" counts as there when the command is: node and its
# tools may have come from elsewhere.
need_packages() {
    local want missing=()
    for want in "$@"; do
        if [[ $want == *=* ]]; then
            command -v "${want%%=*}" >/dev/null || missing+=("${want#*=}")
        else
            installed "$want" || missing+=("$want")
        fi
    done
    [ ${#missing[@]} -eq 0 ] && return 0
    echo "Installing: ${missing[*]}" >&2
    local as_root=()
    if [ "$(id -u)" -ne 0 ]; then
        command -v sudo >/dev/null || {
            echo "This needs root or sudo, or these packages installed: ${missing[*]}" >&2
            return 1
        }
        as_root=(sudo)
    fi
    "${as_root[@]}" apt-get -q update >&2 || return 1
    "${as_root[@]}" env DEBIAN_FRONTEND=noninteractive \
        apt-get -q -y --no-install-recommends install "${missing[@]}" >&2
}
