# SPDX-License-Identifier: MIT
# The web program and the door in WASM, and the folder a static host can serve.
set(SHIMLIGHT_SITE_DIR ${CMAKE_BINARY_DIR}/site CACHE PATH "Where the page goes")
get_filename_component(one_file ${SHIMLIGHT_SITE_DIR}/../shimlight.html ABSOLUTE)
set(SHIMLIGHT_DOOR_DIR ${CMAKE_BINARY_DIR}/door CACHE PATH "Where the door for Node goes")

set(wasm_link_options -fno-exceptions -fno-rtti
  -sALLOW_MEMORY_GROWTH=1 -sINITIAL_MEMORY=16MB -sMAXIMUM_MEMORY=64MB
  -sMALLOC=dlmalloc -sFILESYSTEM=0 -sDYNAMIC_EXECUTION=0 -sMODULARIZE=1)
if(CMAKE_BUILD_TYPE STREQUAL "Debug")
  list(APPEND wasm_link_options -sASSERTIONS=2)
endif()

# --- Fonts, shaders ---------------------------------------------------------------------------
find_program(SHIMLIGHT_PYTHON python3 PATHS /usr/bin NO_DEFAULT_PATH REQUIRED)
set(font_dir ${CMAKE_BINARY_DIR}/fonts)
set(canvas_fonts ${font_dir}/inter_regular.otf ${font_dir}/inter_semibold.otf
  ${font_dir}/inter_bold.otf)
add_custom_command(OUTPUT ${canvas_fonts}
  COMMAND ${SHIMLIGHT_PYTHON} ${CMAKE_SOURCE_DIR}/web/setup/fonts.py ${font_dir}
  DEPENDS ${CMAKE_SOURCE_DIR}/web/setup/fonts.py
  COMMENT "Cutting the fonts down"
  VERBATIM)
set(embedded_dir ${CMAKE_BINARY_DIR}/embedded)
file(GLOB shaders CONFIGURE_DEPENDS shaders/*.vert shaders/*.frag shaders/*.glsl)
embed(${embedded_dir}/app/shaders_embedded.hpp shimlight::app::shaders ${shaders})
embed(${embedded_dir}/app/fonts_embedded.hpp shimlight::app::fonts ${canvas_fonts})

# --- The program ------------------------------------------------------------------------------
file(GLOB app_sources CONFIGURE_DEPENDS src/app/*.cpp)
add_executable(shimlight_app ${app_sources}
  ${embedded_dir}/app/shaders_embedded.hpp ${embedded_dir}/app/fonts_embedded.hpp)
target_include_directories(shimlight_app PRIVATE ${embedded_dir})
target_compile_options(shimlight_app PRIVATE ${SHIMLIGHT_WARNINGS})
target_link_libraries(shimlight_app PRIVATE view)
target_link_options(shimlight_app PRIVATE ${wasm_link_options} -Oz
  -sEXPORT_NAME=createShimlight -sENVIRONMENT=web # a worker is one too, as far as this asks
  -sMIN_WEBGL_VERSION=2 -sMAX_WEBGL_VERSION=2 -sGL_TRACK_ERRORS=0 -sGL_POOL_TEMP_BUFFERS=0
  -sGL_SUPPORT_AUTOMATIC_ENABLE_EXTENSIONS=0 -sGL_SUPPORT_SIMPLE_ENABLE_EXTENSIONS=0
  -sGL_WORKAROUND_SAFARI_GETCONTEXT_BUG=0 -sSUPPORT_ERRNO=0
  -sINCOMING_MODULE_JS_API=instantiateWasm
  -Wl,--wrap=strtod # app/strtod.cpp
  -sEXPORTED_RUNTIME_METHODS=UTF8ToString
  -sEXPORTED_FUNCTIONS=_main,_malloc,_free)
# In two parts (web/setup/split.py), which is why the functions keep their names up to there.
set_target_properties(shimlight_app PROPERTIES OUTPUT_NAME shimlight SUFFIX .js
  RUNTIME_OUTPUT_DIRECTORY ${CMAKE_BINARY_DIR}/whole)
target_link_options(shimlight_app PRIVATE --profiling-funcs
  -sBINARYEN_EXTRA_PASSES=--one-caller-inline-max-function-size=60)
set(parts_dir ${CMAKE_BINARY_DIR}/parts)
set(parts ${parts_dir}/shimlight.wasm ${parts_dir}/shimlight-rest.wasm)
add_custom_command(OUTPUT ${parts}
  COMMAND ${CMAKE_COMMAND} -E make_directory ${parts_dir}
  COMMAND ${SHIMLIGHT_PYTHON} ${CMAKE_SOURCE_DIR}/web/setup/split.py
    ${CMAKE_BINARY_DIR}/whole/shimlight.wasm ${parts} ${CMAKE_SOURCE_DIR}/assets/lessons.json
  DEPENDS shimlight_app ${CMAKE_SOURCE_DIR}/web/setup/split.py
    ${CMAKE_SOURCE_DIR}/web/setup/far_strings.py ${CMAKE_SOURCE_DIR}/assets/lessons.json
  COMMENT "Cutting the program in two"
  VERBATIM)

# --- The door, for Node and for who asks on the page ---------------------------------------------
add_executable(shimlight_door src/door/wasm.cpp)
target_compile_options(shimlight_door PRIVATE ${SHIMLIGHT_WARNINGS})
target_link_libraries(shimlight_door PRIVATE door)
list(REMOVE_ITEM wasm_link_options -sMODULARIZE=1)
target_link_options(shimlight_door PRIVATE ${wasm_link_options} -O2 -sSTANDALONE_WASM --no-entry
  -sEXPORTED_FUNCTIONS=_shimlight_ask,_shimlight_room_for)
set_target_properties(shimlight_door PROPERTIES OUTPUT_NAME shimlight-door SUFFIX .wasm
  RUNTIME_OUTPUT_DIRECTORY ${SHIMLIGHT_DOOR_DIR}
  LINK_DEPENDS "${CMAKE_SOURCE_DIR}/web/door.mjs;${CMAKE_SOURCE_DIR}/web/open_door.mjs")
add_custom_command(TARGET shimlight_door POST_BUILD
  COMMAND ${CMAKE_COMMAND} -E copy_if_different ${CMAKE_SOURCE_DIR}/web/door.mjs
    ${CMAKE_SOURCE_DIR}/web/open_door.mjs ${SHIMLIGHT_DOOR_DIR}
  VERBATIM)

# --- The folder to serve ----------------------------------------------------------------------
# Everything the page needs, listed with a hash of its content in the service worker, so that a
# visit without network finds one consistent version.
file(GLOB page_files CONFIGURE_DEPENDS web/*.html web/*.css web/*.js web/*.webmanifest
  web/open_door.mjs)
file(GLOB icon_files CONFIGURE_DEPENDS assets/icons/*)
add_custom_command(OUTPUT ${CMAKE_BINARY_DIR}/site.stamp
  COMMAND ${SHIMLIGHT_PYTHON} ${CMAKE_SOURCE_DIR}/web/setup/site.py ${SHIMLIGHT_SITE_DIR}
    ${page_files} ${icon_files}
    $<TARGET_FILE:shimlight_app> ${parts} $<TARGET_FILE:shimlight_door>
  COMMAND ${SHIMLIGHT_PYTHON} ${CMAKE_SOURCE_DIR}/web/setup/one_file.py ${SHIMLIGHT_SITE_DIR}
    ${one_file}
  COMMAND ${CMAKE_COMMAND} -E touch ${CMAKE_BINARY_DIR}/site.stamp
  DEPENDS shimlight_app ${parts} shimlight_door ${page_files} ${icon_files}
    ${CMAKE_SOURCE_DIR}/web/setup/site.py ${CMAKE_SOURCE_DIR}/web/setup/one_file.py
    ${CMAKE_SOURCE_DIR}/web/setup/bundle.py
  COMMENT "Putting the page together in ${SHIMLIGHT_SITE_DIR}"
  VERBATIM)
add_custom_target(site ALL DEPENDS ${CMAKE_BINARY_DIR}/site.stamp)
