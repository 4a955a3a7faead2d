// pages_test.cc: schemas, reference pages and completion lie in the tree as the field table says them, and the schemas
// judge files as the reader does.
//
// FLATWISE_WRITE_PAGES=1 writes them anew instead of comparing.
#define TOML_EXCEPTIONS 0
#include <gtest/gtest.h>
#include <toml++/toml.h>

#include <cstdlib>
#include <fstream>
#include <iostream>
#include <iterator>
#include <nlohmann/json.hpp>
#include <valijson/adapters/nlohmann_json_adapter.hpp>
#include <valijson/schema.hpp>
#include <valijson/schema_parser.hpp>
#include <valijson/validation_results.hpp>
#include <valijson/validator.hpp>

#include "definition/bad_files.h"
#include "definition/describe.h"
#include "definition/read.h"
#include "definition/starter.h"
#include "words/words.h"

namespace flatwise::definition {
namespace {

const std::string kTree = FLATWISE_SOURCE_DIR "/";

std::string file(const std::string& path) {
  std::ifstream in{kTree + path, std::ios::binary};
  return {std::istreambuf_iterator<char>{in}, {}};
}

std::string english(std::string_view code, const Args& args) { return say(code, args, Voice{}); }

TEST(Pages, LieInTheTreeAsTheFieldTableSaysThem) {
  const bool write = std::getenv("FLATWISE_WRITE_PAGES") != nullptr;
  for (const Page& page : reference_pages(english)) {
    if (write) std::ofstream{kTree + page.path, std::ios::binary} << page.text;
    EXPECT_EQ(file(page.path), page.text) << page.path << " is not what the field table says";
  }
}

TEST(Pages, EveryKeyHasItsMeaning) {
  for (const Document document : {Document::shaft, Document::readings, Document::workshop, Document::study})
    for (const Field& f : fields(document)) EXPECT_TRUE(has_words(f.meaning.id())) << f.meaning.id();
}

// --- Every problem can be said -----------------------------------------------------------------------------------------

std::string without_mark(std::string text) {
  if (const std::size_t at = text.find(kMark); at != std::string::npos) text.erase(at, kMark.size());
  return text;
}

void say_all(const std::vector<Problem>& problems) {
  ASSERT_FALSE(problems.empty());
  for (const Problem& p : problems) {
    for (const UnitSystem units : {UnitSystem::metric, UnitSystem::inch}) {
      const SaidProblem said = say(p, Voice{Language::english, units, {}});
      EXPECT_FALSE(said.read.empty()) << p.code.id();
      EXPECT_FALSE(said.allowed.empty()) << p.code.id();
      EXPECT_FALSE(said.mend.empty()) << p.code.id();
    }
    if (std::getenv("FLATWISE_SHOW")) {
      const SaidProblem said = say(p, Voice{});
      std::cout << p.field << "\n  read     " << said.read << "\n  allowed  " << said.allowed << "\n  mend     "
                << said.mend << "\n";
    }
  }
}

TEST(Problems, EveryOneOfTheBadFilesIsSaidInThreeParts) {
  const std::string shaft_text = file("tests/data/definition/nine.toml");
  const std::string workshop_text = file("tests/data/definition/workshop.toml");
  const std::string readings_text = file("tests/data/definition/readings.toml");
  for (const Bad& bad : kBadShafts) say_all(read_shaft(without_mark(broken(shaft_text, bad)), "file.toml").error());
  for (const Bad& bad : kBadWorkshops)
    say_all(read_workshop(without_mark(broken(workshop_text, bad)), "file.toml").error());
  const Shaft shaft = read_shaft(shaft_text, "nine.toml").value();
  const Workshop workshop = read_workshop(workshop_text, "workshop.toml").value();
  const std::string_view questions[] = {"guards_on", "spacers_labelled", "bearing_greased", "captive_in",
                                        "nut_rechecked"};
  for (const Bad& bad : kBadReadings)
    say_all(read_bench(without_mark(broken(readings_text, bad)), "file.toml", shaft, workshop, questions).error());
  for (const StarterOptions& options :
       {StarterOptions{.bearing = "6211"}, StarterOptions{.flats = "six"}, StarterOptions{.lean = "5 mm"}})
    say_all(starter(options, english).error());
}

TEST(Problems, ABareNumberIsOfferedBothUnits) {
  const std::string text = file("tests/data/definition/nine.toml");
  const auto read = read_shaft(without_mark(broken(text, {"spacer = \"92 mm\"", "spacer = 92", {}, {}})), "file.toml");
  ASSERT_FALSE(read.has_value());
  EXPECT_EQ(say(read.error()[0], Voice{}).mend, "Write \"92 mm\" or \"92 in\", whichever it is.");
}

// --- The schemas judge as the reader does ------------------------------------------------------------------------------

nlohmann::json as_json(const toml::node& node);

nlohmann::json as_json(const toml::table& table) {
  nlohmann::json out = nlohmann::json::object();
  for (const auto& [key, value] : table) out[std::string{key.str()}] = as_json(value);
  return out;
}

nlohmann::json as_json(const toml::node& node) {
  if (const auto* table = node.as_table()) return as_json(*table);
  if (const auto* list = node.as_array()) {
    nlohmann::json out = nlohmann::json::array();
    for (const toml::node& item : *list) out.push_back(as_json(item));
    return out;
  }
  if (const auto* text = node.as_string()) return text->get();
  if (const auto* whole = node.as_integer()) return whole->get();
  if (const auto* number = node.as_floating_point()) return number->get();
  if (const auto* flag = node.as_boolean()) return flag->get();
  std::ostringstream day;
  if (const auto* date = node.as_date()) day << date->get();
  return day.str();
}

bool validates(Document document, const std::string& text, std::string* why = nullptr) {
  const nlohmann::json schema_json = nlohmann::json::parse(schema(document, english));
  valijson::Schema parsed;
  valijson::SchemaParser{}.populateSchema(valijson::adapters::NlohmannJsonAdapter{schema_json}, parsed);
  const toml::parse_result read = toml::parse(text);
  EXPECT_TRUE(static_cast<bool>(read)) << text;
  const nlohmann::json target = as_json(read.table());
  valijson::ValidationResults results;
  const bool good = valijson::Validator{}.validate(parsed, valijson::adapters::NlohmannJsonAdapter{target}, &results);
  valijson::ValidationResults::Error error;
  while (why && results.popError(error)) {
    for (const std::string& step : error.context) *why += step;
    *why += " " + error.description + "\n";
  }
  return good;
}

std::string with(std::string text, std::string_view from, std::string_view to) {
  const std::size_t at = text.find(from);
  EXPECT_NE(at, std::string::npos) << from;
  return at == std::string::npos ? text : text.replace(at, from.size(), to);
}

TEST(Schemas, TakeTheGoodFiles) {
  std::string why;
  EXPECT_TRUE(validates(Document::shaft, file("tests/data/definition/nine.toml"), &why)) << why;
  EXPECT_TRUE(validates(Document::workshop, file("tests/data/definition/workshop.toml"), &why)) << why;
  EXPECT_TRUE(validates(Document::readings, file("tests/data/definition/readings.toml"), &why)) << why;
  EXPECT_TRUE(validates(Document::shaft, *starter({}, english), &why)) << why;
}

TEST(Schemas, RefuseBadOnes) {
  const std::string shaft = file("tests/data/definition/nine.toml");
  const std::pair<const char*, const char*> bad_shafts[] = {
      {"spacer = \"92 mm\"", "spacer = 92"},
      {"spacer = \"92 mm\"", "spacer = \"92\""},
      {"flats = 6", "falts = 6"},
      {"flats = 6", "flats = 2"},
      {"flats = 6", "flats = 6.5"},
      {"flats = 6\n", ""},
      {"pattern = \"facing\"", "pattern = \"facin\""},
      {"pattern = \"facing\"", "pattern = { stp = 2 }"},
      {"clearance = \"C3\"", "clearance = \"C6\""},
      {"{ hanger = \"31 mm\",", "{ hanger = 31,"},
      {"invented = true", "invented = \"yes\""},
      {"poisson = 0.275", "poisson = 0.6"},
      {"name = \"Row looseners, nine\"", "name = \"\""},
      {"fit_before = [ { part = \"flange bolts of hanger B\", count = 4 } ]", "fit_before = [ { count = 4 } ]"},
  };
  for (const auto& [from, to] : bad_shafts) EXPECT_FALSE(validates(Document::shaft, with(shaft, from, to))) << to;
  const std::string readings = file("tests/data/definition/readings.toml");
  const std::pair<const char*, const char*> bad_readings[] = {
      {"came_off = [7, 8, 9]", "came_off = [\"7\"]"},  {"A = [\"3.9362 in\"", "A = [3.9362"},
      {"guards_on = \"yes\"", "guards_on = \"yess\""}, {"bearing_greased = { 7 = \"yes\"", "bearing_greased = { 7 = 1"},
      {"ring = \"outer\"", "ring = \"middle\""},
  };
  for (const auto& [from, to] : bad_readings)
    EXPECT_FALSE(validates(Document::readings, with(readings, from, to))) << to;
  const std::string workshop = file("tests/data/definition/workshop.toml");
  EXPECT_FALSE(validates(Document::workshop, with(workshop, "use = \"feeler\"", "use = \"feelers\"")));
  EXPECT_FALSE(validates(Document::workshop, with(workshop, "calibration = \"2.5 µm\"", "calibration = 2.5")));
}

TEST(Schemas, AndCompletionAreJson) {
  for (const Page& page : reference_pages(english)) {
    if (page.path.ends_with(".md")) continue;
    EXPECT_FALSE(nlohmann::json::parse(page.text, nullptr, false).is_discarded()) << page.path;
  }
}

}  // namespace
}  // namespace flatwise::definition
