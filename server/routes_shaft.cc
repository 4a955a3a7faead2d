// One shaft as defined: the quietest arrangements, the shaft as a beam, a bearing. The same JSON as the shell's `pattern`, `bend` and
// `bearing` with --json, by the same functions.
#include <algorithm>
#include <nlohmann/json.hpp>

#include "definition/read.h"
#include "paper/pattern_sheet.h"
#include "paper/render.h"
#include "record/instant.h"
#include "server/answers.h"
#include "server/routes.h"
#include "server/times.h"
#include "view/shaft_bearing.h"
#include "view/shaft_bend.h"
#include "view/shaft_pattern.h"

namespace flatwise::server {
namespace {

/// What is not possible, by the names that an address has: "least_gap" where the shell has --least-gap.
Reply not_possible(std::vector<Problem> problems, const Voice& voice) {
  for (Problem& problem : problems)
    if (problem.field == "least-gap" || problem.field == "error-share" || problem.field == "error-azimuth")
      std::ranges::replace(problem.field, '-', '_');
  return problem_reply(422, std::move(problems), voice);
}

/// The shaft that the address names, or why there is none.
tl::expected<Shaft, Reply> shaft_of(const Call& call) {
  const auto version = call.store.shaft_version(call.id());
  if (!version) return tl::unexpected(fault_reply(version.error(), "id"));
  auto shaft = definition::read_shaft(version->toml, "shaft.toml");
  if (!shaft) return tl::unexpected(problem_reply(422, std::move(shaft.error()), call.voice));
  return *std::move(shaft);
}

std::string text_in(const Call& call, std::string_view name) { return std::string{call.query.find(name).value_or("")}; }

struct Pattern {
  Shaft shaft;
  view::PatternAsked asked;
  job::Arranged arranged;
};
tl::expected<Pattern, Reply> pattern_in(const Call& call) {
  auto shaft = shaft_of(call);
  if (!shaft) return tl::unexpected(shaft.error());
  view::PatternAsked asked{.least_gap = text_in(call, "least_gap"),
                           .error_share = text_in(call, "error_share"),
                           .error_azimuth = text_in(call, "error_azimuth"),
                           .stays = view::stays_in(text_in(call, "stay")),
                           .by_hangers = call.query.find("by_hangers") == "true"};
  if (const auto judged = call.query.find("judged")) asked.judged = *judged;
  auto arranged = view::arranged_as_asked(*shaft, asked);
  if (!arranged) return tl::unexpected(not_possible(std::move(arranged.error()), call.voice));
  return Pattern{*std::move(shaft), std::move(asked), *std::move(arranged)};
}

/// Of a route with one file: 404 for any other name.
std::optional<Reply> other_file(const Call& call, const char* name) {
  const std::string asked = decoded(call.request.captured[1], false).value_or("");
  if (asked == name) return std::nullopt;
  return problem_reply(
      404, problem_of(Code{"study.no_plot"}, "file", asked, {{"words", std::vector<std::string>{name}}}), call.voice);
}

}  // namespace

Reply get_pattern(const Call& call) {
  const auto pattern = pattern_in(call);
  if (!pattern) return pattern.error();
  return json_reply(view::pattern_json(pattern->shaft, pattern->asked, pattern->arranged, call.voice));
}

Reply get_pattern_file(const Call& call) {
  if (auto other = other_file(call, "pattern.pdf")) return *std::move(other);
  const auto pattern = pattern_in(call);
  if (!pattern) return pattern.error();
  const auto measure = paper::make_measure();
  if (!measure) return problem_reply(503, measure.error(), call.voice);
  const ShaftSpec& spec = pattern->shaft.spec();
  paper::PatternSheet sheet{.head = {},
                            .shaft = &pattern->shaft,
                            .arranged = &pattern->arranged,
                            .judged = view::judged_by(pattern->asked, 0).kind};
  if (const auto workshop = call.store.workshop()) sheet.head.workshop = workshop->name;
  sheet.head.shaft = spec.name;
  sheet.head.invented = spec.invented;
  sheet.head.from = spec.name;
  sheet.head.printed = when_text(now(), call.voice);
  sheet.head.paper = call.query.find("paper") == "letter" ? paper::Paper::letter : paper::Paper::a4;
  sheet.head.voice = call.voice;
  return bytes_reply("application/pdf",
                     paper::render_pdf(paper::pattern_sheet(sheet, **measure), {spec.name, record::text_of(now())}));
}

Reply get_bend(const Call& call) {
  const auto shaft = shaft_of(call);
  if (!shaft) return shaft.error();
  auto bend = view::bend_of(*shaft);
  if (!bend) return not_possible(std::move(bend.error()), call.voice);
  return json_reply(view::bend_json(*shaft, *bend, call.voice));
}

Reply get_bend_file(const Call& call) {
  if (auto other = other_file(call, "response.csv")) return *std::move(other);
  const auto shaft = shaft_of(call);
  if (!shaft) return shaft.error();
  auto bend = view::bend_of(*shaft);
  if (!bend) return not_possible(std::move(bend.error()), call.voice);
  view::ResponseAsked asked{.from = text_in(call, "from"), .to = text_in(call, "to")};
  if (const auto speeds = call.query.whole("speeds")) asked.speeds = *speeds;
  auto csv = view::response_csv(*shaft, *bend, asked);
  if (!csv) return not_possible({std::move(csv.error())}, call.voice);
  return bytes_reply("text/csv; charset=utf-8", *std::move(csv));
}

Reply get_bearing(const Call& call) {
  const auto shaft = shaft_of(call);
  if (!shaft) return shaft.error();
  std::optional<std::string> station;
  if (const auto asked = call.query.find("station")) station = *asked;
  auto told = view::bearing_as_asked(*shaft, station);
  if (!told) return not_possible(std::move(told.error()), call.voice);
  return json_reply(view::bearing_json(*shaft, *told, call.voice));
}

}  // namespace flatwise::server
