// JSON written by hand must read as the JSON library writes it, whatever stands in it.
#include <gtest/gtest.h>

#include <nlohmann/json.hpp>

#include "wire/written.h"

namespace flatwise::wire {
namespace {

std::string by_library(const Json& json) { return json.dump(-1, ' ', false, Json::error_handler_t::replace); }

// Source: the JSON library (nlohmann-json of Debian 12) on the same values. Escapes: RFC 8259 section 7, the example of U+1D11E.
// Tolerance: the same bytes.
TEST(Written, TextIsWhatTheLibraryWrites) {
  const Json json{{"plain", "Rotor 4"},
                  {"quoted \"\\/", "a \"b\" \\ / \b\f\n\r\t \x01 \x7f"},
                  {"accents", "façade 5° µm \xF0\x9D\x84\x9E"},
                  {"broken", std::string{"\xC3( \xFF end"}},
                  {"empty", Json::object()},
                  {"none", Json::array()},
                  {"list", {1, -2, 3.25, 1e-9, true, false, nullptr, {{"in", {"it", 0.1}}}}}};
  EXPECT_EQ(text_of(json), by_library(json));
  for (const Json& scalar :
       {Json("x"), Json(7), Json(0.5), Json(nullptr), Json(true), Json::array({1}), Json::object()})
    EXPECT_EQ(text_of(scalar), by_library(scalar));
}

TEST(Written, WhatIsWrittenStaysAsItStandsAndTextNeverBecomesIt) {
  const std::string text = R"({"points":[[0.5,1],[2,3.25]]})";
  EXPECT_EQ(text_of(Json{{"strip", written(text)}, {"typed", text}}),
            R"({"strip":)" + text + R"(,"typed":"{\"points\":[[0.5,1],[2,3.25]]}"})");
}

}  // namespace
}  // namespace flatwise::wire
