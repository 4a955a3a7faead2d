// How a study speaks: figures with as many digits as they are worth.
#include <algorithm>
#include <array>
#include <cmath>

#include "core/units/format.h"
#include "core/units/rounding.h"
#include "study/study.h"

namespace flatwise::study {
namespace {

constexpr int kFigures = 3;

/// Digits that count; no unit has any.
int figures_in(std::string_view text) {
  int count = 0;
  for (const char c : text)
    if (c >= '0' && c <= '9' && (count > 0 || c != '0')) ++count;
  return count;
}

constexpr std::array<std::string_view, 17> kRows{"couples", "flats", "couple", "hanger",    "gap",          "say",
                                                 "build",   "speed", "lean",   "clearance", "interference", "press",
                                                 "play",    "life",  "stress", "critical",  "words"};
constexpr std::array<std::string_view, 4> kForms{"drawing", "large", "figure", "words"};
constexpr std::array<std::string_view, 7> kPlots{"hanger", "couple", "response", "life", "press", "play", "balls"};

}  // namespace

std::string_view name_of(RowKey key) { return kRows[static_cast<std::size_t>(key)]; }
std::string_view name_of(Form form) { return kForms[static_cast<std::size_t>(form)]; }
std::string word_of(const Row& row) {
  return "study.row." + (row.ends ? std::string{"ends"} : std::string{name_of(row.key)});
}
std::string_view name_of(PlotKey key) { return kPlots[static_cast<std::size_t>(key)]; }

std::string figure_text(AnyQuantity value, const Voice& voice) {
  Shown shown{.system = voice.units, .decimals = std::nullopt, .unit = std::nullopt, .currency = voice.currency};
  if (value.kind == Kind::count || value.kind == Kind::ratio || value.kind == Kind::angle || value.si == 0)
    return format_quantity(value, shown);
  if (value.kind == Kind::time) {
    constexpr double kHour = 3600;
    shown.unit = "h";
    shown.decimals = value.si < 10 * kHour ? 1 : 0;
    return format_quantity({to_two_figures(value.si / kHour) * kHour, Kind::time}, shown);
  }
  if (value.kind == Kind::angular_speed) {
    shown.decimals = 0;
    return format_quantity(value, shown);
  }
  if (value.kind == Kind::torque) shown.unit = voice.units == UnitSystem::inch ? "ft·lb" : "N·m";
  for (int decimals = 0; decimals < 6; ++decimals) {
    shown.decimals = decimals;
    std::string text = format_quantity(value, shown);
    if (figures_in(text) >= kFigures) return text;
  }
  return format_quantity(value, shown);
}

std::string rotor_text(const Shaft& shaft, const Voice& voice) {
  const bool rolling = dynamics::spinning_of(shaft) == dynamics::Spinning::rolling;
  const Args args{{"mass", any(shaft.rotor(1).mass)}, {"lean", any(shaft.rotor(1).lean)}};
  if (!rolling) return said(Message{Code{"study.rotor_held"}, args}, voice);
  return said(Message{Code{"study.rotor_rolling"}, args}, voice);
}

std::string said(const Message& message, const Voice& voice) {
  Message shown = message;
  for (Arg& arg : shown.args)
    if (const auto* quantity = std::get_if<AnyQuantity>(&arg.value);
        quantity != nullptr && quantity->kind != Kind::ratio && quantity->kind != Kind::count)
      arg.value = figure_text(*quantity, voice);
  return say(shown, voice);
}

std::string said(const Cell& cell, const Voice& voice) {
  if (cell.value) {
    std::string from = figure_text(*cell.value, voice);
    if (cell.u) from += " ± " + figure_text({cell.u->expanded_si, difference_kind(cell.value->kind)}, voice);
    if (!cell.to || figure_text(*cell.to, voice) == from) return from;
    return say(Message{Code{"study.range"}, {{"from", from}, {"to", figure_text(*cell.to, voice)}}}, voice);
  }
  std::string out;
  for (const Message& message : cell.says) out += (out.empty() ? "" : " ") + said(message, voice);
  return out;
}

std::string said_otherwise(const Cell& cell, const Voice& voice) {
  if (!cell.value) return {};
  Voice turned = voice;
  turned.units = other(voice.units);
  std::string text = said(cell, turned);
  return text == said(cell, voice) ? std::string{} : text;
}

AdviceSaid said(const Study& study, const Voice& voice) {
  const Advice& advice = study.advice;
  AdviceSaid out{.does = {}, .because = said(advice.because, voice), .waits = {}};
  if (!advice.way) {
    out.does = say(Message{Code{"study.take_none"}, {}}, voice);
    out.waits = say(Message{Code{"study.stays"}, {}}, voice);
    return out;
  }
  const auto at = static_cast<std::size_t>(*advice.way);
  const Way& way = study.ways[at];
  if (way.as_defined()) {
    out.does = say(Message{Code{"study.keep"}, {{"name", way.name()}}}, voice);
    out.waits = say(Message{Code{"study.stays_as_defined"}, {}}, voice);
    return out;
  }
  std::vector<std::string> changes;
  for (const Message& change : way.changes) {
    if (change.code == Code{"study.change_facing"} || change.code == Code{"study.change_step"} ||
        change.code == Code{"study.change_flats"}) {
      std::vector<std::int64_t> flats(study.outcomes[at].arranged.flats.begin(),
                                      study.outcomes[at].arranged.flats.end());
      changes.push_back(say(Message{Code{"study.take_flats"}, {{"flats", std::move(flats)}}}, voice));
    } else {
      changes.push_back(said(change, voice));
    }
  }
  out.does = say(Message{Code{"study.take"}, {{"name", way.name()}, {"changes", std::move(changes)}}}, voice);
  out.waits = say(Message{Code{"study.waits"}, {}}, voice);
  return out;
}

std::string names_of(const Study& study, const std::vector<int>& ways, const Voice& voice) {
  std::vector<std::string> names;
  for (const int way : ways) names.push_back(study.ways[static_cast<std::size_t>(way)].name());
  return say(Message{Code{"study.names"}, {{"names", std::move(names)}}}, voice);
}

}  // namespace flatwise::study
