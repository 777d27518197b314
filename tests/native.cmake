# SPDX-License-Identifier: MIT
# Native targets: the door on the command line, one test program per room, fuzz and bench programs.
add_executable(shimlight src/door/main.cpp)
target_compile_options(shimlight PRIVATE ${SHIMLIGHT_WARNINGS})
target_link_libraries(shimlight PRIVATE door)
set_target_properties(shimlight PROPERTIES RUNTIME_OUTPUT_DIRECTORY ${CMAKE_BINARY_DIR})

enable_testing()

# The view's tests need Dear ImGui's headers; they are built where its source is.
set(tested_rooms physics section opening assess house door)
if(TARGET view)
  list(APPEND tested_rooms view)
endif()
# Screens without a browser: a library for the view's tests, and a program that draws one.
if(TARGET view)
  add_library(stage STATIC tests/stage/drawn_text.cpp tests/stage/picture.cpp tests/stage/stage.cpp)
  target_include_directories(stage PUBLIC tests)
  target_compile_options(stage PRIVATE ${SHIMLIGHT_WARNINGS})
  target_link_libraries(stage PUBLIC view)
  add_executable(view_picture EXCLUDE_FROM_ALL tests/stage/main.cpp)
  target_compile_options(view_picture PRIVATE ${SHIMLIGHT_WARNINGS})
  target_link_libraries(view_picture PRIVATE stage)
endif()
# For who writes lessons: reads a file of them and plays them through.
add_executable(check_lesson EXCLUDE_FROM_ALL tests/lessons/check_lesson.cpp)
target_include_directories(check_lesson PRIVATE tests)
target_compile_options(check_lesson PRIVATE ${SHIMLIGHT_WARNINGS})
target_link_libraries(check_lesson PRIVATE house)
foreach(name IN LISTS tested_rooms)
  file(GLOB sources CONFIGURE_DEPENDS tests/unit/${name}/*.cpp tests/reference/${name}/*.cpp)
  if(sources)
    add_executable(test_${name} tests/unit/main.cpp ${sources})
    target_include_directories(test_${name} PRIVATE tests)
    target_compile_options(test_${name} PRIVATE ${SHIMLIGHT_WARNINGS})
    target_compile_definitions(test_${name} PRIVATE
      SHIMLIGHT_REFERENCE_DIR="${CMAKE_SOURCE_DIR}/tests/reference")
    target_link_libraries(test_${name} PRIVATE ${name})
    if(name STREQUAL "view")
      target_link_libraries(test_view PRIVATE stage)
      target_sources(test_view PRIVATE src/app/field_axes.cpp src/app/solid_boxes.cpp) # of the painter what knows no GL
    endif()
    add_test(NAME ${name} COMMAND test_${name})
    set_tests_properties(${name} PROPERTIES TIMEOUT 1800)
  endif()
endforeach()

# One program a file: fuzz_NAME takes seconds to run for and a seed, bench_NAME prints its figures.
# They are built when asked for by name.
foreach(kind fuzz bench)
  file(GLOB programs CONFIGURE_DEPENDS tests/${kind}/*.cpp)
  foreach(source IN LISTS programs)
    get_filename_component(name ${source} NAME_WE)
    add_executable(${kind}_${name} EXCLUDE_FROM_ALL ${source})
    target_compile_options(${kind}_${name} PRIVATE ${SHIMLIGHT_WARNINGS})
    target_link_libraries(${kind}_${name} PRIVATE door)
    list(APPEND ${kind}_targets ${kind}_${name})
  endforeach()
  add_custom_target(${kind} DEPENDS ${${kind}_targets})
endforeach()

# The benchmark's peers: Eigen, and hypre for algebraic multigrid; tests/run installs the packages.
file(GLOB sources CONFIGURE_DEPENDS tests/bench/peers/*.cpp)
target_sources(bench_section_bench PRIVATE ${sources} tests/unit/section/paintings.cpp)
target_include_directories(bench_section_bench PRIVATE tests)
# MPI is looked for only beside hypre, which brings its headers: where a package has left the
# libraries alone, CMake's module ends the configuration.
find_package(Eigen3 QUIET NO_MODULE)
find_library(SHIMLIGHT_HYPRE HYPRE)
find_path(SHIMLIGHT_HYPRE_DIR HYPRE.h PATH_SUFFIXES hypre)
if(SHIMLIGHT_HYPRE AND SHIMLIGHT_HYPRE_DIR)
  find_package(MPI QUIET COMPONENTS CXX)
endif()
if(TARGET Eigen3::Eigen AND TARGET MPI::MPI_CXX)
  target_include_directories(bench_section_bench SYSTEM PRIVATE ${SHIMLIGHT_HYPRE_DIR})
  target_link_libraries(bench_section_bench PRIVATE Eigen3::Eigen MPI::MPI_CXX ${SHIMLIGHT_HYPRE})
endif()

# Random sections as door questions, for the comparison with finite elements.
add_executable(peer_sections EXCLUDE_FROM_ALL
  tests/peer/write_sections.cpp tests/unit/section/paintings.cpp)
target_include_directories(peer_sections PRIVATE tests)
target_compile_options(peer_sections PRIVATE ${SHIMLIGHT_WARNINGS})
target_link_libraries(peer_sections PRIVATE section)

# Tables for spreadsheets with their houses, for another reader.
add_executable(peer_sheets EXCLUDE_FROM_ALL tests/peer/write_sheets.cpp)
target_include_directories(peer_sheets PRIVATE tests)
target_compile_options(peer_sheets PRIVATE ${SHIMLIGHT_WARNINGS})
target_link_libraries(peer_sheets PRIVATE house)
