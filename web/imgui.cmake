# SPDX-License-Identifier: MIT
# Dear ImGui as a library of its own, with its own warnings.

# Drawing without a font of ours is a fault, never a reason to carry ImGui's (10 KB packed): once
# Build() does not ask for it, the linker leaves it out.
file(READ ${SHIMLIGHT_IMGUI_DIR}/imgui_draw.cpp draw_source)
string(REPLACE "AddFontDefault();\n" "IM_ASSERT(0);\n" draw_source_fontless "${draw_source}")
if(draw_source_fontless STREQUAL draw_source)
  message(FATAL_ERROR "imgui_draw.cpp is not the one expected")
endif()
set(draw_file ${CMAKE_BINARY_DIR}/imgui/imgui_draw.cpp)
set(draw_written "")
if(EXISTS ${draw_file})
  file(READ ${draw_file} draw_written)
endif()
if(NOT draw_written STREQUAL draw_source_fontless)
  file(WRITE ${draw_file} "${draw_source_fontless}")
endif()

# ImGui reads numbers only from its settings file, which is never written: without sscanf 2 KB less.
set(no_scan ${CMAKE_BINARY_DIR}/imgui/no_scan.cpp)
file(CONFIGURE OUTPUT ${no_scan}
  CONTENT "extern \"C\" int no_scan(const char*, const char*, ...) { return 0; }\n")

add_library(imgui STATIC
  ${SHIMLIGHT_IMGUI_DIR}/imgui.cpp
  ${SHIMLIGHT_IMGUI_DIR}/imgui_tables.cpp
  ${SHIMLIGHT_IMGUI_DIR}/imgui_widgets.cpp
  ${draw_file} ${no_scan})
target_include_directories(imgui SYSTEM PUBLIC ${SHIMLIGHT_IMGUI_DIR})
# 32-bit indices: a temperature field and its text can pass 65,535 corners in one list.
target_compile_definitions(imgui PUBLIC "ImDrawIdx=unsigned int"
  IMGUI_DISABLE_OBSOLETE_FUNCTIONS IMGUI_DISABLE_DEMO_WINDOWS IMGUI_DISABLE_DEBUG_TOOLS
  IMGUI_DISABLE_FILE_FUNCTIONS)
target_compile_definitions(imgui PRIVATE sscanf=no_scan)
