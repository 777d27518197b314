# SPDX-License-Identifier: MIT
# Native targets: the door on the command line and one test program per room.
add_executable(shimlight src/door/main.cpp)
target_compile_options(shimlight PRIVATE ${SHIMLIGHT_WARNINGS})
target_link_libraries(shimlight PRIVATE door)
set_target_properties(shimlight PROPERTIES RUNTIME_OUTPUT_DIRECTORY ${CMAKE_BINARY_DIR})

enable_testing()
foreach(name physics section opening assess house door)
  file(GLOB sources CONFIGURE_DEPENDS tests/unit/${name}/*.cpp tests/reference/${name}/*.cpp)
  if(sources)
    add_executable(test_${name} tests/unit/main.cpp ${sources})
    target_include_directories(test_${name} PRIVATE tests)
    target_compile_options(test_${name} PRIVATE ${SHIMLIGHT_WARNINGS})
    target_compile_definitions(test_${name} PRIVATE
      SHIMLIGHT_REFERENCE_DIR="${CMAKE_SOURCE_DIR}/tests/reference")
    target_link_libraries(test_${name} PRIVATE ${name})
    add_test(NAME ${name} COMMAND test_${name})
    set_tests_properties(${name} PROPERTIES TIMEOUT 300)
  endif()
endforeach()
