# SPDX-License-Identifier: MIT
# Dear ImGui as a library of its own, with its own warnings.

# trim(SOURCE CALL REPLACEMENT…): a copy of an ImGui source with calls taken out that nothing here
# needs; the linker then leaves out what only they led to.
function(trim name)
  file(READ ${SHIMLIGHT_IMGUI_DIR}/${name} text)
  set(pairs ${ARGN})
  while(pairs)
    list(POP_FRONT pairs from to)
    string(REPLACE "${from}" "${to}" changed "${text}")
    if(changed STREQUAL text)
      message(FATAL_ERROR "${name} is not the one expected: it lacks ${from}")
    endif()
    set(text "${changed}")
  endwhile()
  set(written "")
  if(EXISTS ${CMAKE_BINARY_DIR}/imgui/${name})
    file(READ ${CMAKE_BINARY_DIR}/imgui/${name} written)
  endif()
  if(NOT written STREQUAL text)
    file(WRITE ${CMAKE_BINARY_DIR}/imgui/${name} "${text}")
  endif()
endfunction()

# Drawing without a font of ours is a fault, never a reason to carry ImGui's (10 KB packed).
trim(imgui_draw.cpp "\n        AddFontDefault()" "\n        IM_ASSERT(0)")
# One window over the whole page, without frame, scroll bar or keyboard: those are the view's and
# the DOM mirror's. No settings file, no popups, no columns, no cursor drawn, none of
# ImGui's colours.
set(off "\n    (void)0")
trim(imgui.cpp
  "\n    TableSettingsAddSettingsHandler()" ${off} "\n    UpdateSettings()" ${off}
  "\n    NavUpdate()" ${off} "\n    NavEndFrame()" ${off}
  "\n                        NavProcessItem()" ${off} "\n    UpdateKeyRoutingTable(" "\n    (void)("
  "\n    UpdateMouseWheel()" ${off}
  "\n    UpdateMouseMovingWindowNewFrame()" ${off} "\n    UpdateMouseMovingWindowEndFrame()" ${off}
  "\n    RenderDimmedBackgrounds()" ${off} "\n        AddSettingsHandler(&ini_handler)" ${off}
  "\n        EndColumns()" ${off} "\n        LogFinish()" ${off}
  "\n        RenderMouseCursor(g.IO" "\n        (void)(g.IO"
  "auto_fit_mask = UpdateWindowManualResize(" "auto_fit_mask = 0 && UpdateWindowManualResize("
  "\n    ImGui::StyleColorsDark(this)" ${off}
  "\n            RenderWindowTitleBarContents(" "\n            if (false) RenderWindowTitleBarContents("
  "\n            RenderWindowDecorations(" "\n            if (false) RenderWindowDecorations("
  "window->Pos = FindBestWindowPosForPopup(window)" "(void)0")

# ImGui reads numbers only from its settings file, which is never written: without sscanf 2 KB less.
set(no_scan ${CMAKE_BINARY_DIR}/imgui/no_scan.cpp)
file(CONFIGURE OUTPUT ${no_scan}
  CONTENT "extern \"C\" int no_scan(const char*, const char*, ...) { return 0; }\n")

add_library(imgui STATIC
  ${CMAKE_BINARY_DIR}/imgui/imgui.cpp
  ${SHIMLIGHT_IMGUI_DIR}/imgui_tables.cpp
  ${SHIMLIGHT_IMGUI_DIR}/imgui_widgets.cpp
  ${CMAKE_BINARY_DIR}/imgui/imgui_draw.cpp ${no_scan})
target_include_directories(imgui SYSTEM PUBLIC ${SHIMLIGHT_IMGUI_DIR})
# 32-bit indices: a temperature field and its text can pass 65,535 corners in one list.
target_compile_definitions(imgui PUBLIC "ImDrawIdx=unsigned int"
  IMGUI_DISABLE_OBSOLETE_FUNCTIONS IMGUI_DISABLE_DEMO_WINDOWS IMGUI_DISABLE_DEBUG_TOOLS
  IMGUI_DISABLE_FILE_FUNCTIONS)
target_compile_definitions(imgui PRIVATE sscanf=no_scan)
