// What the doubts of the definition make of each way.
#include <algorithm>
#include <array>
#include <cmath>

#include "study/study.h"

namespace flatwise::study {
namespace {

struct Asked {
  RowKey row;
  Word name;
  Kind kind;
  double (*of)(const Outcome& outcome);
};

constexpr double kNone = std::numeric_limits<double>::quiet_NaN();

const std::array<Asked, 4>& asked() {
  static const std::array<Asked, 4> kAsked{{
      {RowKey::couple, Word{"doubt.figure.couple"}, Kind::torque,
       [](const Outcome& o) { return o.arranged.left.couple.size.si(); }},
      {RowKey::hanger, Word{"doubt.figure.plane"}, Kind::force,
       [](const Outcome& o) { return o.arranged.left.larger.si(); }},
      {RowKey::life, Word{"doubt.figure.life"}, Kind::time,
       [](const Outcome& o) {
         const auto life = o.bearing ? o.bearing->life_said() : std::nullopt;
         return life ? life->si() : kNone;
       }},
      {RowKey::critical, Word{"doubt.figure.forward"}, Kind::angular_speed,
       [](const Outcome& o) { return o.bent && o.bent->forward ? o.bent->forward->radians_per_second() : kNone; }},
  }};
  return kAsked;
}

std::string key_of(std::size_t way, RowKey row) {
  return "ways[" + std::to_string(way) + "]." + std::string{name_of(row)};
}

std::vector<doubt::NamedFigure> figures_of(const Study& study, const std::optional<std::vector<Outcome>>& outcomes) {
  std::vector<doubt::NamedFigure> figures;
  for (std::size_t i = 0; i < study.ways.size(); ++i)
    for (const Asked& one : asked())
      figures.push_back({.key = key_of(i, one.row),
                         .name = one.name,
                         .of = study.ways[i].name(),
                         .value = {outcomes ? one.of((*outcomes)[i]) : kNone, one.kind}});
  return figures;
}

const doubt::ToldDoubt* find(const Study& study, std::size_t way, RowKey row) {
  const auto it = std::ranges::find(study.doubts, key_of(way, row), [](const auto& d) { return d.figure.key; });
  return it == study.doubts.end() ? nullptr : &*it;
}

}  // namespace

void add_doubts(const Shaft& shaft, const OutcomesOf& outcomes_of, Study& study) {
  study.doubts = doubt::told_of_shaft(shaft, [&](const Shaft& s) { return figures_of(study, outcomes_of(s)); });
  for (Row& row : study.rows)
    for (std::size_t i = 0; i < row.cells.size(); ++i)
      if (const auto* told = find(study, i, row.key); told != nullptr && row.cells[i].value)
        row.cells[i].u = told->doubt.u;
  for (const RowKey row : {RowKey::hanger, RowKey::life}) {
    // Of the advised way; where nothing is left of it that could be doubted, of the first that has something.
    const doubt::ToldDoubt* told = find(study, static_cast<std::size_t>(study.advice.way.value_or(0)), row);
    for (std::size_t way = 0; told == nullptr && way < study.ways.size(); ++way) told = find(study, way, row);
    if (told == nullptr) continue;
    for (Message& message : doubt::says(*told)) study.notes.push_back(std::move(message));
  }
}

}  // namespace flatwise::study
