# The standard we write in, the warnings we do not accept, and one helper that makes a library of ours.

set(CMAKE_CXX_STANDARD 20)
set(CMAKE_CXX_STANDARD_REQUIRED ON)
set(CMAKE_CXX_EXTENSIONS OFF)
if(NOT CMAKE_BUILD_TYPE)
  set(CMAKE_BUILD_TYPE Release)
endif()
set(CMAKE_CXX_FLAGS_RELEASE "-O2")
set(CMAKE_CXX_FLAGS_SANITIZE "-g1 -D_GLIBCXX_ASSERTIONS")
# Three kinds of code of ours, and how each is optimized beyond its build type.
set(FLATWISE_OPTIONS_reckoning "")
set(FLATWISE_OPTIONS_rest "")
set(FLATWISE_OPTIONS_tests -O1)  # A test's own code is run once or twice: there compiling costs most.
option(FLATWISE_TESTS "Build the tests and benchmarks" ON)
set(FLATWISE_HEADERS_ONCE "" CACHE STRING "Kinds whose big headers are read once for all files: much quicker from nothing, but hides a missing include")
option(FLATWISE_FUZZ "Build the fuzz targets (needs clang)" OFF)
set(FLATWISE_SANITIZE "" CACHE STRING "Sanitizers for everything, e.g. address,undefined")
if(FLATWISE_SANITIZE)
  set(FLATWISE_OPTIONS_reckoning -O1)
  set(FLATWISE_OPTIONS_rest -O1)
  set(FLATWISE_OPTIONS_tests -O0)  # clang takes half as long again for -O1 once it instruments; g++ does not.
endif()

add_library(flatwise_options INTERFACE)
if(CMAKE_CXX_COMPILER_ID STREQUAL "GNU")
  target_compile_options(flatwise_options INTERFACE -Wall -Wextra -Wpedantic -Wconversion -Wshadow -Werror)
else()
  target_compile_options(flatwise_options INTERFACE -w)  # clang sanitizes and fuzzes; its other opinions are not the rule
endif()
target_include_directories(flatwise_options INTERFACE "${CMAKE_SOURCE_DIR}")
if(FLATWISE_SANITIZE)
  target_compile_options(flatwise_options INTERFACE
    -fsanitize=${FLATWISE_SANITIZE} -fno-sanitize-recover=all -fno-omit-frame-pointer -g1)
  if(CMAKE_CXX_COMPILER_ID STREQUAL "GNU")
    target_compile_options(flatwise_options INTERFACE -Wno-maybe-uninitialized)  # gcc 12 errs here when instrumenting
  endif()
  target_link_options(flatwise_options INTERFACE -fsanitize=${FLATWISE_SANITIZE})
endif()

if(FLATWISE_FUZZ)
  target_compile_options(flatwise_options INTERFACE -fsanitize=fuzzer-no-link)
endif()

find_program(FLATWISE_MOLD mold)
if(FLATWISE_MOLD)
  add_link_options(-fuse-ld=mold)
endif()

# For all alike, or headers read once would not fit the server, and a program built by ./run would be built again by ./test.
target_compile_options(flatwise_options INTERFACE -pthread)

# The big headers, read once for each kind: a compiler takes them only by a target with the same options.
if(FLATWISE_HEADERS_ONCE)
  file(WRITE "${CMAKE_BINARY_DIR}/headers.cc" "")
  foreach(kind IN LISTS FLATWISE_HEADERS_ONCE)
    add_library(headers_of_${kind} OBJECT "${CMAKE_BINARY_DIR}/headers.cc")
    target_link_libraries(headers_of_${kind} PRIVATE flatwise_options)
    target_compile_options(headers_of_${kind} PRIVATE ${FLATWISE_OPTIONS_${kind}})
    target_precompile_headers(headers_of_${kind} PRIVATE
      <algorithm> <cmath> <chrono> <complex> <fstream> <functional> <map> <memory> <optional> <set> <span> <sstream> <string>
      <string_view> <unordered_map> <variant> <vector> <fmt/format.h> <nlohmann/json.hpp> <tl/expected.hpp>)
    if(FLATWISE_SANITIZE AND NOT kind STREQUAL "reckoning")  # Ours change, and a release build is often built again.
      target_precompile_headers(headers_of_${kind} PRIVATE
        "${CMAKE_SOURCE_DIR}/job/bench.h" "${CMAKE_SOURCE_DIR}/view/blocks.h" "${CMAKE_SOURCE_DIR}/wire/json.h")
    endif()
  endforeach()
  if(TARGET headers_of_tests)
    find_package(GTest REQUIRED)
    target_link_libraries(headers_of_tests PRIVATE GTest::gtest GTest::gmock)
    target_precompile_headers(headers_of_tests PRIVATE <gtest/gtest.h>)
  endif()
endif()

# flatwise_quick_to_build(TARGET reckoning|rest|tests): how it is optimized, and which headers it need not read.
function(flatwise_quick_to_build target kind)
  target_compile_options(${target} PRIVATE ${FLATWISE_OPTIONS_${kind}})
  if(TARGET headers_of_${kind})
    target_precompile_headers(${target} REUSE_FROM headers_of_${kind})
    if(CMAKE_CXX_COMPILER_ID STREQUAL "GNU")  # gcc 12 then errs about short strings put together (its bug 105651 and others).
      target_compile_options(${target} PRIVATE -Wno-array-bounds -Wno-stringop-overflow -Wno-restrict)
    endif()
  endif()
endfunction()

# flatwise_library(NAME fits SRCS press_fit.cc ... DEPS units working TESTS press_fit_test.cc ... [TEST_DEPS ...])
# makes flatwise::fits and, where there are tests, the program fits_test. DEPS are names of our folders or targets of
# cmake/dependencies.cmake (with ::).
function(flatwise_library)
  cmake_parse_arguments(ARG "" "NAME" "SRCS;DEPS;TESTS;TEST_DEPS" ${ARGN})
  if(ARG_SRCS)
    add_library(fw_${ARG_NAME} STATIC ${ARG_SRCS})
    set(scope PUBLIC)
    if(CMAKE_CURRENT_SOURCE_DIR MATCHES "^${CMAKE_SOURCE_DIR}/(core|job)(/|$)")
      flatwise_quick_to_build(fw_${ARG_NAME} reckoning)
    else()
      flatwise_quick_to_build(fw_${ARG_NAME} rest)
    endif()
  else()
    add_library(fw_${ARG_NAME} INTERFACE)
    set(scope INTERFACE)
  endif()
  add_library(flatwise::${ARG_NAME} ALIAS fw_${ARG_NAME})
  target_link_libraries(fw_${ARG_NAME} ${scope} flatwise_options)
  foreach(dep IN LISTS ARG_DEPS)
    if(dep MATCHES "::")
      target_link_libraries(fw_${ARG_NAME} ${scope} ${dep})
    else()
      target_link_libraries(fw_${ARG_NAME} ${scope} flatwise::${dep})
    endif()
  endforeach()
  if(FLATWISE_TESTS AND ARG_TESTS)
    flatwise_test(NAME ${ARG_NAME}_test SRCS ${ARG_TESTS} DEPS ${ARG_NAME} ${ARG_TEST_DEPS})
  endif()
endfunction()

# flatwise_test(NAME fits_test SRCS ... DEPS ... [LABEL quick] [OPTIMIZED]) makes a GoogleTest program that `./test` finds by its
# label. OPTIMIZED: its own code runs long.
function(flatwise_test)
  cmake_parse_arguments(ARG "OPTIMIZED" "NAME;LABEL" "SRCS;DEPS" ${ARGN})
  if(NOT ARG_LABEL)
    set(ARG_LABEL quick)
  endif()
  add_executable(${ARG_NAME} ${ARG_SRCS})
  if(ARG_OPTIMIZED OR FLATWISE_SANITIZE AND CMAKE_CURRENT_SOURCE_DIR MATCHES "/(view|paper|desk)$")  # What lays out runs long.
    flatwise_quick_to_build(${ARG_NAME} rest)
  else()
    flatwise_quick_to_build(${ARG_NAME} tests)
  endif()
  target_link_libraries(${ARG_NAME} PRIVATE flatwise_options GTest::gtest GTest::gtest_main GTest::gmock)
  foreach(dep IN LISTS ARG_DEPS)
    if(dep MATCHES "::")
      target_link_libraries(${ARG_NAME} PRIVATE ${dep})
    else()
      target_link_libraries(${ARG_NAME} PRIVATE flatwise::${dep})
    endif()
  endforeach()
  target_compile_definitions(${ARG_NAME} PRIVATE FLATWISE_SOURCE_DIR="${CMAKE_SOURCE_DIR}")
  add_test(NAME ${ARG_NAME} COMMAND ${ARG_NAME} --gtest_brief=1 WORKING_DIRECTORY "${CMAKE_SOURCE_DIR}")
  set_tests_properties(${ARG_NAME} PROPERTIES LABELS ${ARG_LABEL})
  if(FLATWISE_SANITIZE AND ARG_LABEL STREQUAL "release_only")
    set_target_properties(${ARG_NAME} PROPERTIES EXCLUDE_FROM_ALL ON)
  endif()
endfunction()

# flatwise_kernel(TARGET fw_beam SRCS response_kernel.cc) adds the files to a target three times, each for another width of
# register (core/lanes). The widest that runs is chosen when the program runs.
function(flatwise_kernel)
  cmake_parse_arguments(ARG "" "TARGET" "SRCS" ${ARGN})
  set(widths baseline)
  if(CMAKE_SYSTEM_PROCESSOR STREQUAL "x86_64")
    list(APPEND widths avx2 avx512)
  endif()
  set(flags_avx2 -march=x86-64-v3)
  set(flags_avx512 -march=x86-64-v4 -mprefer-vector-width=512)
  foreach(width IN LISTS widths)
    add_library(${ARG_TARGET}_${width} OBJECT ${ARG_SRCS})
    target_compile_options(${ARG_TARGET}_${width} PRIVATE -O3 -fno-math-errno -fno-trapping-math ${flags_${width}})
    target_compile_definitions(${ARG_TARGET}_${width} PRIVATE FLATWISE_LANES=${width})
    target_link_libraries(${ARG_TARGET}_${width} PRIVATE flatwise_options)
    target_sources(${ARG_TARGET} PRIVATE $<TARGET_OBJECTS:${ARG_TARGET}_${width}>)
  endforeach()
endfunction()
