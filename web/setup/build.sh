# SPDX-License-Identifier: MIT
# Sourced by web/run and tests/run, from the project's folder: the web build, step by step.

readonly web_packages=(cmake ninja-build emscripten node=nodejs nlohmann-json3-dev fonts-inter
    python3 python3-fonttools tar xz-utils)

# build_web: the page in build/web, as one file in build/shimlight.html, the door for Node in build/door, objects in build/wasm.
build_web() {
    local launcher=()
    command -v ccache >/dev/null && launcher=(-DCMAKE_CXX_COMPILER_LAUNCHER=ccache)
    web/setup/imgui.sh build/imgui || return 1
    if [ ! -f build/wasm/build.ninja ]; then
        emcmake cmake -S . -B build/wasm -G Ninja "${launcher[@]}" \
            -DSHIMLIGHT_IMGUI_DIR="$PWD/build/imgui" -DSHIMLIGHT_SITE_DIR="$PWD/build/web" \
            -DSHIMLIGHT_DOOR_DIR="$PWD/build/door" || return 1
    fi
    cmake --build build/wasm --parallel "$(nproc)"
}
