#include "view/shaft_pattern.h"

#include <algorithm>
#include <charconv>
#include <nlohmann/json.hpp>

#include "core/beam/hanger_rows.h"
#include "core/units/parse.h"

namespace flatwise::view {
namespace {

using MistakeKind = dynamics::TimingMistake::Kind;

/// "3=4": rotor 3 stays with half A on flat 4.
Result<dynamics::Stays> stays_of(const std::string& typed) {
  dynamics::Stays stays;
  const std::size_t equals = std::min(typed.find('='), typed.size());
  const auto number = [&](std::size_t from, std::size_t to, int& into) {
    const auto read = std::from_chars(typed.data() + from, typed.data() + to, into);
    return read.ec == std::errc{} && read.ptr == typed.data() + to;
  };
  if (equals == typed.size() || !number(0, equals, stays.rotor) || !number(equals + 1, typed.size(), stays.flat))
    return tl::unexpected(Problem{Code{"pattern.stays_form"}, "stay", typed, {}, std::nullopt});
  return stays;
}

Results<dynamics::PatternWish> wish_of(const PatternAsked& asked, const Shaft& shaft) {
  dynamics::PatternWish wish;
  std::vector<Problem> problems;
  wish.judged = asked.judged == "both-planes" ? dynamics::Judged::both_planes
                : asked.judged == "couple"    ? dynamics::Judged::couple
                                              : dynamics::Judged::larger_plane;
  const auto read = [&](const std::string& typed, Kind kind, const char* field, double& into) {
    if (typed.empty()) return;
    const Result<Entered> entered = parse_quantity(typed, kind, field);
    if (entered)
      into = entered->value.si;
    else
      problems.push_back(entered.error());
  };
  double gap_m = 0, azimuth_rad = wish.errors.azimuth.radians();
  read(asked.least_gap, Kind::length, "least-gap", gap_m);
  read(asked.error_share, Kind::ratio, "error-share", wish.errors.share);
  read(asked.error_azimuth, Kind::angle, "error-azimuth", azimuth_rad);
  wish.least_gap = metres(gap_m);
  wish.errors.azimuth = radians(azimuth_rad);
  for (const std::string& typed : asked.stays) {
    const Result<dynamics::Stays> stays = stays_of(typed);
    if (stays)
      wish.stays.push_back(*stays);
    else
      problems.push_back(stays.error());
  }
  if (asked.by_hangers) {
    auto rows = beam::hanger_rows(shaft);
    if (rows)
      wish.hangers = *std::move(rows);
    else
      problems.push_back(rows.error());
  }
  if (!problems.empty()) return tl::unexpected(std::move(problems));
  return wish;
}

/// One shaft asked about, and how its numbers are said.
class Telling {
 public:
  Telling(const PatternAsked& asked, const Voice& voice) : asked_{asked}, voice_{voice} {}

  [[nodiscard]] wire::Json judged(double si) const { return value(judged_by(asked_, si)); }
  [[nodiscard]] wire::Json value(AnyQuantity q) const { return wire::to_json(q, voice_); }

  [[nodiscard]] wire::Json row(const job::ArrangedRow& row) const {
    wire::Json json{{"flats", dynamics::flats_of(row.row.places)},
                    {"left", judged(row.row.left_si)},
                    {"worst", judged(row.row.worst_si)},
                    {"couple", value(any(row.left.couple.size))},
                    {"force", value(any(row.left.force.size))},
                    {"at_a", value(any(row.left.at_a.size))},
                    {"at_b", value(any(row.left.at_b.size))},
                    {"least_gap", value(any(row.least_gap))},
                    {"gap_after", row.gap_after},
                    {"steps", row.row.simplicity.steps},
                    {"phrases", row.row.simplicity.phrases}};
    if (row.row.pressed) json["hanger"] = value(any(newtons(row.row.pressed->force_n)));
    return json;
  }

  [[nodiscard]] wire::Json mistake(const job::ArrangedMistake& m) const {
    return {{"rotor", m.what.rotor},
            {"mistake", m.what.kind == MistakeKind::half_out ? "half_out" : "rotor_turned"},
            {"flats", m.what.flats},
            {"larger", value(any(m.what.left.larger))},
            {"rise", value(any(m.what.rise))},
            {"couple", value(any(m.what.left.couple.size))},
            {"least_gap", value(any(m.what.least_gap))},
            {"gap_to", m.what.gap_to},
            {"strikes", m.what.strikes},
            {"kink", m.kink ? value(any(m.kink->angle)) : wire::Json(nullptr)},
            {"kink_times", m.kink ? wire::Json(m.kink->times) : wire::Json(nullptr)}};
  }

 private:
  const PatternAsked& asked_;
  const Voice& voice_;
};

}  // namespace

std::vector<std::string> stays_in(std::string_view typed) {
  std::vector<std::string> out;
  while (!typed.empty()) {
    const std::string_view one = typed.substr(0, typed.find(','));
    typed.remove_prefix(std::min(typed.size(), one.size() + 1));
    out.emplace_back(one);
  }
  return out;
}

Results<job::Arranged> arranged_as_asked(const Shaft& shaft, const PatternAsked& asked) {
  const Results<dynamics::PatternWish> wish = wish_of(asked, shaft);
  if (!wish) return tl::unexpected(wish.error());
  Result<job::Arranged> arranged = job::arrange(shaft, *wish);
  if (!arranged) return tl::unexpected(std::vector<Problem>{std::move(arranged.error())});
  return *std::move(arranged);
}

AnyQuantity judged_by(const PatternAsked& asked, double si) {
  return {si, asked.judged == "couple" ? Kind::torque : Kind::force};
}

wire::Json pattern_json(const Shaft& shaft, const PatternAsked& asked, const job::Arranged& arranged,
                        const Voice& voice) {
  constexpr const char* kProofs[] = {"nought", "complete", "under_floor", "none"};
  const Telling telling{asked, voice};
  wire::Json json{{"shaft", shaft.spec().name}, {"flats", shaft.flats()}, {"judged", asked.judged}};
  json["proof"] = kProofs[static_cast<int>(arranged.list.proof)];
  json["errors_decide"] = arranged.list.errors_decide;
  json["under_floor"] = arranged.list.under_floor;
  json["floor_rms"] = telling.judged(arranged.list.floor_rms);
  json["floor_worst"] = telling.judged(arranged.list.floor_worst);
  if (asked.by_hangers) json["hangers_floor"] = telling.value(any(newtons(arranged.list.hangers_floor)));
  json["robust"] = arranged.list.robust + 1;
  json["says"] = wire::Json::array();
  for (const Message& m : arranged.says) json["says"].push_back(say(m, voice));
  json["rows"] = wire::Json::array();
  for (const job::ArrangedRow& row : arranged.rows) json["rows"].push_back(telling.row(row));
  json["mistakes"] = wire::Json::array();
  for (const job::ArrangedMistake& m : arranged.mistakes) json["mistakes"].push_back(telling.mistake(m));
  json["definition"] = arranged.definition;
  wire::add_doubts(json, arranged.doubts, voice);
  return json;
}

}  // namespace flatwise::view
