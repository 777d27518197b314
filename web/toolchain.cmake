# SPDX-License-Identifier: MIT
# What the web build asks of the compiler, for every room.

# Debian's acorn lives where other distributions' node does not look; without it no optimised link.
set(CMAKE_CXX_LINKER_LAUNCHER ${CMAKE_COMMAND} -E env NODE_PATH=/usr/share/nodejs)

# Sizes count: first visits come over a phone network. The solver is the one part to be fast in,
# without what does little with cells. emcc 3.1.6 given -Oz and then -O2 does neither, its functions
# stay apart; -O2 and then -Oz is -Oz.
set(CMAKE_CXX_FLAGS_RELEASE "-DNDEBUG")
set(in_section $<STREQUAL:$<TARGET_PROPERTY:NAME>,section>)
add_compile_options("$<$<CONFIG:Release>:$<IF:${in_section},-O2;-fno-unroll-loops;-msimd128,-Oz>>")
foreach(name attempt cavity cavity_states cells contour estimate flux_lines gmres grid heat_flow isotherms
    painting_change recovery refinement size_field solve stream surface validation)
  set_source_files_properties(src/section/${name}.cpp PROPERTIES
    COMPILE_OPTIONS $<$<CONFIG:Release>:-Oz>)
endforeach()
add_compile_options(-fno-exceptions -fno-rtti)
# What every browser with SIMD has too: smaller and faster copies and conversions.
set(wasm_features -mbulk-memory -mnontrapping-fptoint -msign-ext)
add_compile_options(${wasm_features})
add_link_options(${wasm_features})

# Optimised once more as a whole, with the system's libraries made for it: 3 % smaller, 10 % faster.
add_compile_options(-flto)
add_link_options(-flto)
add_compile_definitions(JSON_NOEXCEPTION)

# The JSON headers alone: the rest of the system's headers belong to another machine.
find_path(SHIMLIGHT_JSON_DIR nlohmann/json.hpp PATHS /usr/include NO_CMAKE_FIND_ROOT_PATH REQUIRED)
file(MAKE_DIRECTORY ${CMAKE_BINARY_DIR}/include)
file(CREATE_LINK ${SHIMLIGHT_JSON_DIR}/nlohmann ${CMAKE_BINARY_DIR}/include/nlohmann SYMBOLIC)
include_directories(SYSTEM ${CMAKE_BINARY_DIR}/include)
