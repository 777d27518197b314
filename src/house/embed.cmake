# SPDX-License-Identifier: MIT
# Puts the text of an asset into a room, as shimlight::<room>::<name>_text (see embedded.hpp).
function(embed_text room name file)
  set_property(DIRECTORY APPEND PROPERTY CMAKE_CONFIGURE_DEPENDS ${CMAKE_SOURCE_DIR}/${file})
  file(READ ${CMAKE_SOURCE_DIR}/${file} bytes HEX)
  string(REGEX REPLACE "([0-9a-f][0-9a-f])" "'\\\\x\\1'," bytes "${bytes}")
  set(source ${CMAKE_BINARY_DIR}/embedded/${room}_${name}.cpp)
  file(CONFIGURE OUTPUT ${source} @ONLY CONTENT [[
// Made from @file@ by the build.
#include "@room@/embedded.hpp"
namespace shimlight::@room@ {
namespace {
constexpr char bytes_[] = {@bytes@};
}
const std::string_view @name@_text{bytes_, sizeof bytes_};
} // namespace shimlight::@room@
]])
  target_sources(${room} PRIVATE ${source})
endfunction()

embed_text(house demo_house assets/demo_house.json)

# The JSON library is headers only, but the WASM compiler does not look where the system keeps them.
if(EMSCRIPTEN)
  find_path(SHIMLIGHT_JSON_ROOT nlohmann/json.hpp PATHS /usr/include /usr/local/include
            NO_CMAKE_FIND_ROOT_PATH REQUIRED)
  file(MAKE_DIRECTORY ${CMAKE_BINARY_DIR}/json)
  file(CREATE_LINK ${SHIMLIGHT_JSON_ROOT}/nlohmann ${CMAKE_BINARY_DIR}/json/nlohmann SYMBOLIC)
  target_include_directories(house SYSTEM PUBLIC ${CMAKE_BINARY_DIR}/json)
endif()
