# SPDX-License-Identifier: MIT
# What the web build asks of the compiler, for every room.

# Debian's acorn lives where other distributions' node does not look; without it no optimised link.
set(CMAKE_CXX_LINKER_LAUNCHER ${CMAKE_COMMAND} -E env NODE_PATH=/usr/share/nodejs)

# Sizes count: first visits come over a phone network. What runs for every cell of a section is the
# one part to be fast in. One level a file: emcc 3.1.6 given -Oz and then -O2 does neither, its
# functions stay apart.
set(CMAKE_CXX_FLAGS_RELEASE "-DNDEBUG")
set(fast_files column_factors column_operator conjugate_gradient factorization five_point multigrid
  row_blocks semicoarsening)
add_compile_options($<$<AND:$<CONFIG:Release>,$<NOT:$<STREQUAL:$<TARGET_PROPERTY:NAME>,section>>>:-Oz>)
# Of the section's files, the fast ones to be fast, the others small.
function(optimize_section)
  foreach(file IN LISTS ARGN)
    get_filename_component(name ${file} NAME_WE)
    set(level -Oz)
    if(name IN_LIST fast_files)
      set(level -O2)
    endif()
    set_source_files_properties(${file} PROPERTIES COMPILE_OPTIONS $<$<CONFIG:Release>:${level}>)
  endforeach()
endfunction()
add_compile_options(-fno-exceptions -fno-rtti)
add_compile_definitions(JSON_NOEXCEPTION)

# The JSON headers alone: the rest of the system's headers belong to another machine.
find_path(SHIMLIGHT_JSON_DIR nlohmann/json.hpp PATHS /usr/include NO_CMAKE_FIND_ROOT_PATH REQUIRED)
file(MAKE_DIRECTORY ${CMAKE_BINARY_DIR}/include)
file(CREATE_LINK ${SHIMLIGHT_JSON_DIR}/nlohmann ${CMAKE_BINARY_DIR}/include/nlohmann SYMBOLIC)
include_directories(SYSTEM ${CMAKE_BINARY_DIR}/include)
