# SPDX-License-Identifier: MIT
# Files of text or bytes as C++ constants, named after the file with its dots as underscores.
#
# embed(HEADER NAMESPACE FILE…) makes HEADER (a path), remade when a FILE changes; NAMESPACE holds
#   one array a file in it. Shaders become zero-terminated text without comments and indents, anything
#   else bytes.
# embed_text(ROOM FILE) adds `extern const std::string_view <name>_text` to a room's sources, for the
#   declaration in <room>/embedded.hpp; <name> goes without the file's ending.
#
# The same file is the script that writes them (cmake -P).

set(embed_script ${CMAKE_CURRENT_LIST_FILE})

function(embed_command output)
  add_custom_command(OUTPUT ${output}
    COMMAND ${CMAKE_COMMAND} -DEMBED_OUTPUT=${output} ${ARGN} -P ${embed_script}
    DEPENDS ${embed_files} ${embed_script}
    COMMENT "Embedding into ${output}"
    VERBATIM)
endfunction()

function(embed header namespace)
  set(embed_files ${ARGN})
  string(REPLACE ";" "|" listed "${ARGN}") # a list would come apart on its way
  embed_command(${header} -DEMBED_NAMESPACE=${namespace} -DEMBED_FILES=${listed})
endfunction()

function(embed_text room file)
  set(embed_files ${CMAKE_SOURCE_DIR}/${file})
  get_filename_component(name ${file} NAME_WE)
  set(source ${CMAKE_BINARY_DIR}/embedded/${room}/${name}_text.cpp)
  embed_command(${source} -DEMBED_NAMESPACE=shimlight::${room} -DEMBED_FILES=${embed_files}
    -DEMBED_ROOM=${room} -DEMBED_NAME=${name})
  target_sources(${room} PRIVATE ${source})
endfunction()

# --- The script -----------------------------------------------------------------------------------
function(shader_text file name out)
  file(READ ${file} text)
  string(REGEX REPLACE "[ \t]*//[^\n]*" "" text "${text}")
  string(REGEX REPLACE "\n[ \t\n]+" "\n" text "${text}")
  string(REGEX REPLACE "^\n" "" text "${text}")
  set(${out} "inline constexpr char ${name}[] = R\"glsl(${text})glsl\";\n" PARENT_SCOPE)
endfunction()

function(byte_list file prefix suffix out)
  file(READ ${file} bytes HEX)
  string(REGEX REPLACE "(..)" "${prefix}\\1${suffix}," bytes "${bytes}")
  string(REGEX REPLACE "(([^,]*,)([^,]*,)([^,]*,)([^,]*,)([^,]*,)([^,]*,)([^,]*,)([^,]*,))"
    "\\1\n" bytes "${bytes}")
  set(${out} "${bytes}" PARENT_SCOPE)
endfunction()

function(write_header)
  set(content "// Made by the build.\n#pragma once\n\nnamespace ${EMBED_NAMESPACE} {\n\n")
  string(REPLACE "|" ";" files "${EMBED_FILES}")
  foreach(file IN LISTS files)
    get_filename_component(name ${file} NAME)
    string(REPLACE "." "_" name ${name})
    if(file MATCHES "\\.(vert|frag|glsl)$")
      shader_text(${file} ${name} constant)
    else()
      byte_list(${file} "0x" "" bytes)
      set(constant "inline constexpr unsigned char ${name}[] = {\n${bytes}};\n")
    endif()
    string(APPEND content "${constant}\n")
  endforeach()
  file(WRITE ${EMBED_OUTPUT} "${content}} // namespace ${EMBED_NAMESPACE}\n")
endfunction()

function(write_text)
  byte_list(${EMBED_FILES} "'\\\\x" "'" bytes)
  file(WRITE ${EMBED_OUTPUT} "// Made by the build.\n#include \"${EMBED_ROOM}/embedded.hpp\"\n
namespace ${EMBED_NAMESPACE} {\nnamespace {\nconstexpr char ${EMBED_NAME}_bytes[] = {\n${bytes}};\n}
const std::string_view ${EMBED_NAME}_text{${EMBED_NAME}_bytes, sizeof ${EMBED_NAME}_bytes};\n}\n")
endfunction()

if(CMAKE_SCRIPT_MODE_FILE AND EMBED_ROOM)
  write_text()
elseif(CMAKE_SCRIPT_MODE_FILE)
  write_header()
endif()
