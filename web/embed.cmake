# SPDX-License-Identifier: MIT
# Files of text or bytes as C++ constants.
#
# embed(HEADER NAMESPACE FILE…) adds HEADER (a path) to the build, remade when a FILE changes. In it,
# NAMESPACE holds one constant a file, named after the file with its dot as an underscore. Shaders
# become zero-terminated text, whole-line comments left out; anything else becomes bytes.
#
# The same file is the script that writes the header (cmake -P).

set(embed_script ${CMAKE_CURRENT_LIST_FILE})

function(embed header namespace)
  add_custom_command(OUTPUT ${header}
    COMMAND ${CMAKE_COMMAND} -DEMBED_HEADER=${header} -DEMBED_NAMESPACE=${namespace}
      "-DEMBED_FILES=${ARGN}" -P ${embed_script}
    DEPENDS ${ARGN} ${embed_script}
    COMMENT "Embedding into ${header}"
    VERBATIM)
endfunction()

function(embedded_text file name out)
  file(READ ${file} text)
  string(REGEX REPLACE "(^|\n)[ \t]*//[^\n]*" "\\1" text "${text}")
  string(REGEX REPLACE "\n\n+" "\n" text "${text}")
  string(REGEX REPLACE "^\n" "" text "${text}")
  set(${out} "inline constexpr char ${name}[] = R\"glsl(${text})glsl\";\n" PARENT_SCOPE)
endfunction()

function(embedded_bytes file name out)
  file(READ ${file} bytes HEX)
  string(REGEX REPLACE "(..)" "0x\\1," bytes "${bytes}")
  string(REGEX REPLACE "(................................................................................)"
    "\\1\n" bytes "${bytes}")
  set(${out} "inline constexpr unsigned char ${name}[] = {\n${bytes}};\n" PARENT_SCOPE)
endfunction()

if(CMAKE_SCRIPT_MODE_FILE)
  set(content "// Made by the build.\n#pragma once\n\nnamespace ${EMBED_NAMESPACE} {\n\n")
  foreach(file IN LISTS EMBED_FILES)
    get_filename_component(name ${file} NAME)
    string(REPLACE "." "_" name ${name})
    if(file MATCHES "\\.(vert|frag|glsl)$")
      embedded_text(${file} ${name} constant)
    else()
      embedded_bytes(${file} ${name} constant)
    endif()
    string(APPEND content "${constant}\n")
  endforeach()
  file(WRITE ${EMBED_HEADER} "${content}} // namespace ${EMBED_NAMESPACE}\n")
endif()
