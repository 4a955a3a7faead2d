// Ways of one shaft side by side: for the page, for the printer, for programs.
#include <algorithm>
#include <nlohmann/json.hpp>

#include "definition/read.h"
#include "paper/render.h"
#include "paper/study_sheet.h"
#include "record/instant.h"
#include "record/strict_json.h"
#include "server/input.h"
#include "server/times.h"
#include "study/pictures.h"
#include "view/blocks.h"
#include "view/study_view.h"

namespace flatwise::server {
namespace {

using study::Study;
using wire::Json;
namespace fields = job::fields;

constexpr int kLongestText = 400;

void read_way(const Json& json, std::size_t index, std::vector<Problem>& problems, study::TypedWay& way) {
  record::FieldReader reader{json, "ways[" + std::to_string(index) + "]", problems};
  reader(fields::text("name", 0, kLongestText), way.name.text);
  const auto read = [&](const job::FieldSpec& spec) {
    std::optional<std::string> text;
    reader(spec, text);
    if (text) *study::field_of(way, spec.name) = study::Typed{*std::move(text)};
  };
  read(fields::text("pattern", 0, kLongestText));
  read(fields::text("speed", 0, kLongestText));
  read(fields::text("lean", 0, kLongestText));
  read(fields::text("clearance", 0, kLongestText));
  read(fields::text("fit", 0, kLongestText));
  reader.refuse_others();
}

/// The ways in an address: a JSON list of objects.
Results<std::vector<study::TypedWay>> ways_of(std::string_view text) {
  const auto json = record::strict_json(text);
  const auto refused = [](Problem problem) {
    problem.field = "ways";
    return tl::unexpected(std::vector<Problem>{std::move(problem)});
  };
  if (!json) return refused(json.error());
  if (!json->is_array())
    return refused(
        problem_of(Code{"record.wrong_type"}, "ways", record::shown(*json), {{"wanted", Word{"kind.list"}}}));
  std::vector<study::TypedWay> ways;
  std::vector<Problem> problems;
  for (std::size_t i = 0; i < json->size() && i <= study::kMostWays; ++i) {
    ways.emplace_back();
    if ((*json)[i].is_object())
      read_way((*json)[i], i, problems, ways.back());
    else
      problems.push_back(problem_of(Code{"record.wrong_type"}, "ways[" + std::to_string(i) + "]",
                                    record::shown((*json)[i]), {{"wanted", Word{"kind.object"}}}));
  }
  if (!problems.empty()) return tl::unexpected(std::move(problems));
  if (ways.empty())
    return refused(problem_of(Code{"study.count"}, "ways", {},
                              {{"count", 0}, {"least", study::kFewestWays}, {"greatest", study::kMostWays}}));
  return ways;
}

/// The study of an address, or why there is none.
tl::expected<Study, Reply> study_of(const Call& call) {
  const auto version = call.store.shaft_version(call.id());
  if (!version) return tl::unexpected(fault_reply(version.error(), "id"));
  study::Order order{.name = std::string{call.query.find("name").value_or("")}};
  if (const auto ground = call.query.find("ground")) order.ground = study::Typed{std::string{*ground}};
  if (const auto share = call.query.find("error_share")) order.error_share = study::Typed{std::string{*share}};
  if (const auto azimuth = call.query.find("error_azimuth")) order.error_azimuth = study::Typed{std::string{*azimuth}};
  if (const auto text = call.query.find("ways")) {
    auto ways = ways_of(*text);
    if (!ways) return tl::unexpected(unreadable(std::move(ways.error()), call.voice));
    order.ways = *std::move(ways);
  }
  const auto shaft = definition::read_shaft(version->toml, "shaft.toml");
  if (!shaft) return tl::unexpected(problem_reply(422, shaft.error(), call.voice));
  auto done = study::study(*shaft, order, call.voice);
  if (!done) return tl::unexpected(problem_reply(422, std::move(done.error()), call.voice));
  return *std::move(done);
}

Reply printed(const Call& call, const Study& done) {
  const auto measure = paper::make_measure();
  if (!measure) return problem_reply(503, measure.error(), call.voice);
  paper::Head head;
  head.shaft = done.shaft.spec().name;
  if (const auto workshop = call.store.workshop()) head.workshop = workshop->name;
  head.invented = done.shaft.spec().invented;
  head.printed = when_text(now(), call.voice);
  head.from = done.shaft.spec().name;
  head.paper = call.query.find("paper") == "letter" ? paper::Paper::letter : paper::Paper::a4;
  head.voice = call.voice;
  const paper::Pages pages = paper::study_sheet({.head = head, .study = &done}, **measure);
  return bytes_reply("application/pdf", paper::render_pdf(pages, {done.name, record::text_of(now())}));
}

Reply no_such_file(const Call& call, const Study& done, const std::string& name) {
  std::vector<std::string> names{"study.pdf", "study.csv"};
  for (const study::PlotData& plot : done.plots)
    for (const char* form : {".csv", ".svg"}) names.push_back(std::string{study::name_of(plot.key)} + form);
  return problem_reply(404, problem_of(Code{"study.no_plot"}, "file", name, {{"words", names}}), call.voice);
}

}  // namespace

Reply get_study(const Call& call) {
  const auto done = study_of(call);
  if (!done) return done.error();
  const std::string id = call.id();
  const view::StudyAddress at{id, "/api/shafts/" + id + "/study", std::string{call.request.query}};
  return json_reply(view::study_view(*done, at, call.voice));
}

Reply get_study_file(const Call& call) {
  const std::string name = decoded(call.request.captured[1], false).value_or("");
  const auto done = study_of(call);
  if (!done) return done.error();
  if (name == "study.pdf") return printed(call, *done);
  if (name == "study.csv") return bytes_reply("text/csv; charset=utf-8", study::csv_of(*done, call.voice));
  for (const study::PlotData& plot : done->plots) {
    const std::string key{study::name_of(plot.key)};
    if (name == key + ".csv") return bytes_reply("text/csv; charset=utf-8", study::csv_of(*done, plot));
    if (name == key + ".svg")
      return bytes_reply("image/svg+xml", paper::render_svg(study::picture_of(*done, plot, call.voice)));
  }
  return no_such_file(call, *done, name);
}

}  // namespace flatwise::server
