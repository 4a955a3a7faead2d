// The table: a row a question, a cell a way.
#include <algorithm>
#include <cmath>
#include <functional>

#include "core/dynamics/pattern_simple.h"
#include "study/study.h"

namespace flatwise::study {
namespace {

using Ways = std::vector<Way>;
using Outcomes = std::vector<Outcome>;

Cell figure(AnyQuantity value, WorkingPtr working) { return {.value = value, .working = std::move(working)}; }
Cell words(Message message) { return {.says = {std::move(message)}}; }

AnyQuantity output(const Working& working, std::string_view name) {
  return std::get<AnyQuantity>(working.output(name)->value);
}

Row row_of(RowKey key, Form form, const Ways& ways, const Outcomes& outcomes,
           const std::function<Cell(const Way&, const Outcome&)>& cell) {
  Row row{.key = key, .form = form, .cells = {}};
  for (std::size_t i = 0; i < ways.size(); ++i) row.cells.push_back(cell(ways[i], outcomes[i]));
  return row;
}

// --- The arrangement ---------------------------------------------------------------------------------------------------

Cell couples_cell(const Outcome& o) {
  if (o.arranged.quiet())
    return {.says = {{Code{"study.closes"}, {}}}, .detail = Message{Code{"study.nothing_left"}, {}}};
  const double one = std::abs(o.arranged.couples.front().si());
  const double share = one > 0 ? o.arranged.left.couple.size.si() / one : 0;
  const bool alike = std::ranges::all_of(o.arranged.couples, [&](Torque c) { return c == o.arranged.couples.front(); });
  const double whole = std::round(share);
  if (alike && std::abs(share - whole) < 1e-6)
    return words({Code{"study.left_whole"}, {{"count", static_cast<std::int64_t>(whole)}}});
  return words({Code{"study.left_some"}, {{"left", any(o.arranged.left.couple.size)}}});
}

Cell flats_cell(const Outcome& o) {
  std::string flats;
  for (const int flat : o.arranged.flats) flats += (flats.empty() ? "" : " · ") + std::to_string(flat);
  return words({Code{"study.flats"}, {{"flats", flats}}});
}

/// Under the floor nothing that can be measured is left: the word, and the floor beside it.
Cell left_cell(AnyQuantity left, AnyQuantity floor, const Outcome& o) {
  if (!o.arranged.quiet()) return figure(left, o.arranged.couple);
  return {.says = {{Code{"study.none"}, {}}},
          .detail = Message{Code{"study.floor"}, {{"floor", floor}}},
          .working = o.arranged.couple};
}

Cell gap_cell(const Outcome& o) {
  if (o.arranged.gap == nullptr) return words({Code{"study.one_rotor"}, {}});
  Cell cell = figure(output(*o.arranged.gap, "gap"), o.arranged.gap);
  cell.bad = o.arranged.strikes();
  const Args pair{{"rotor", o.arranged.gap_after}, {"next", o.arranged.gap_after + 1}};
  cell.detail = cell.bad ? Message{Code{"study.strikes"}, pair} : Message{Code{"study.nothing_strikes"}, {}};
  return cell;
}

/// Steps from rotor to rotor, clockwise seen from end A.
std::vector<std::int64_t> steps_of(const Way& way, const Outcome& o) {
  std::vector<std::int64_t> steps;
  const int n = way.shaft.flats();
  for (std::size_t i = 1; i < o.arranged.flats.size(); ++i)
    steps.push_back(((o.arranged.flats[i] - o.arranged.flats[i - 1]) % n + n) % n);
  return steps;
}

Cell say_cell(const Way& way, const Outcome& o) {
  const auto steps = steps_of(way, o);
  if (steps.empty()) return words({Code{"study.one_rotor"}, {}});
  const bool even = std::ranges::all_of(steps, [&](std::int64_t s) { return s == steps.front(); });
  if (even && 2 * steps.front() == way.shaft.flats()) return words({Code{"study.say_facing"}, {}});
  if (even && steps.front() == 0) return words({Code{"study.say_same"}, {}});
  if (even) return words({Code{"study.say_step"}, {{"flats", steps.front()}}});
  return words({Code{"study.say_steps"}, {{"steps", steps}}});
}

Cell build_cell(const Outcome& o) {
  if (o.arranged.flats.size() < 2) return words({Code{"study.one_rotor"}, {}});
  return words({Code{"study.build"}, {{"steps", o.arranged.simplicity.steps}}});
}

/// Whether all rotors come apart into pairs that face and threes at thirds.
struct Groups {
  int pairs = 0, threes = 0;
  bool whole = false;
};
Groups groups_of(const Way& way, const Outcome& o) {
  const auto n = static_cast<std::size_t>(way.shaft.flats());
  std::vector<int> at(n, 0);
  for (const int flat : o.arranged.flats) ++at[static_cast<std::size_t>(flat - 1)];
  Groups out;
  for (std::size_t i = 0; n % 2 == 0 && i < n / 2; ++i) {
    const int pairs = std::min(at[i], at[i + n / 2]);
    out.pairs += pairs;
    at[i] -= pairs;
    at[i + n / 2] -= pairs;
  }
  for (std::size_t i = 0; n % 3 == 0 && i < n / 3; ++i) {
    const int threes = std::min({at[i], at[i + n / 3], at[i + 2 * n / 3]});
    out.threes += threes;
    for (std::size_t k = 0; k < 3; ++k) at[i + k * n / 3] -= threes;
  }
  out.whole = std::ranges::all_of(at, [](int c) { return c == 0; });
  return out;
}

Message why_left(const Way& way, const Outcome& o) {
  const int rotors = way.shaft.rotor_count();
  if (o.arranged.quiet()) {
    const Groups groups = groups_of(way, o);
    if (!groups.whole) return {Code{"study.why_quiet"}, {}};
    if (groups.threes == 0) return {Code{"study.why_pairs"}, {{"rotors", rotors}}};
    if (groups.pairs == 0) return {Code{"study.why_threes"}, {{"rotors", rotors}}};
    return {Code{"study.why_groups"}, {{"pairs", groups.pairs}, {"threes", groups.threes}}};
  }
  const auto steps = steps_of(way, o);
  const bool even = !steps.empty() && std::ranges::all_of(steps, [&](auto s) { return s == steps.front(); });
  const double one = std::abs(o.arranged.couples.front().si()), left = o.arranged.left.couple.size.si();
  const bool one_left = std::abs(left - one) < 1e-6 * one;
  if (even && one_left && 2 * steps.front() == way.shaft.flats() && rotors % 2 == 1)
    return {Code{"study.why_odd"}, {{"rotors", rotors}}};
  if (even && one_left && 3 * steps.front() % way.shaft.flats() == 0 && rotors % 3 != 0)
    return {Code{"study.why_not_threes"}, {{"rotors", rotors}}};
  return {dynamics::planes_of(way.shaft).hangers ? Code{"study.why_left"} : Code{"study.why_left_ends"},
          {{"left", any(o.arranged.left.couple.size)}, {"hanger", any(o.arranged.left.larger)}}};
}

// --- The bearing and the press -----------------------------------------------------------------------------------------

Cell unsolved(const std::vector<Problem>& problems) {
  Cell cell{.bad = true};
  if (problems.empty()) cell.says = {{Code{"study.no_answer"}, {}}};
  for (const Problem& problem : problems) cell.says.push_back(message_of(problem));
  return cell;
}

Cell range(const Working& working, std::string_view from, std::string_view to, const WorkingPtr& shown) {
  Cell cell = figure(output(working, from), shown);
  cell.to = output(working, to);
  return cell;
}

Cell clearance_cell(const Way& way, const Outcome& o) {
  if (!o.bearing) return unsolved(o.bearing_problems);
  Cell cell = figure(any(o.bearing->clearance.least), o.bearing->fitted);
  cell.to = any(o.bearing->clearance.greatest);
  if (way.clearance)
    cell.detail = Message{Code{"study.as_said"}, {}};
  else if (o.bearing->clearance.least <= Length{})
    cell.detail = Message{Code{"study.may_bind"}, {}};
  cell.bad = o.bearing->middle() <= Length{};
  return cell;
}

Cell interference_cell(const Outcome& o) {
  if (!o.press) return unsolved(o.press_problems);
  Cell cell = figure(any(o.press->interference.least), o.press->interference_working);
  cell.to = any(o.press->interference.greatest);
  if (o.press->interference.least <= Length{}) cell.detail = Message{Code{"study.may_be_loose"}, {}};
  cell.bad = o.press->interference.greatest <= Length{};
  return cell;
}

Cell press_cell(const Outcome& o) {
  if (!o.press) return unsolved(o.press_problems);
  return range(*o.press->force, "force-least", "force-greatest", o.press->force);
}

Cell play_cell(const Outcome& o) {
  if (!o.bearing) return unsolved(o.bearing_problems);
  if (o.bearing->play == nullptr) return words({Code{"study.no_play"}, {}});
  return range(*o.bearing->play, "swing-least", "swing-greatest", o.bearing->play);
}

Cell life_cell(const Outcome& o) {
  if (!o.bearing) return unsolved(o.bearing_problems);
  if (!o.bearing->ground)
    return {.says = {{Code{"study.life_not_known"}, {}}},
            .detail = Message{Code{"study.state_ground"}, {}},
            .working = o.bearing->turn};
  Cell cell = figure(any(o.bearing->life.basic), o.bearing->turn);
  cell.detail = Message{Code{"study.with_dirt"},
                        {{"least", any(o.bearing->life.least)}, {"greatest", any(o.bearing->life.greatest)}}};
  return cell;
}

Cell stress_cell(const Outcome& o) {
  if (!o.bearing) return unsolved(o.bearing_problems);
  const bearings::Turn& turn = o.bearing->life.turn;
  const Pressure stress = turn.angles[static_cast<std::size_t>(turn.hardest)].stress;
  Cell cell = figure(any(stress), o.bearing->turn);
  cell.bad = stress > megapascals(4200);
  if (cell.bad) cell.detail = Message{Code{"study.dents"}, {}};
  return cell;
}

Cell critical_cell(const Outcome& o) {
  if (!o.bent) return unsolved(o.bent_problems);
  Cell cell = o.bent->forward ? figure(any(*o.bent->forward), nullptr) : words({Code{"study.no_critical"}, {}});
  cell.bad = o.bent->nearest.has_value();
  if (cell.bad) cell.detail = Message{Code{"study.near_critical"}, {{"critical", any(*o.bent->nearest)}}};
  return cell;
}

/// Whether two cells say the same to somebody who reads three figures.
bool same(const Cell& a, const Cell& b) {
  const Voice voice;
  return said(a, voice) == said(b, voice) && a.bad == b.bad;
}
bool differs(const Row& row) {
  return std::ranges::any_of(row.cells, [&](const Cell& cell) { return !same(cell, row.cells.front()); });
}

/// The way with more (or less) of something than any other, by more than it can be read; -1 where there is none.
int foremost(const Outcomes& outcomes, const std::function<std::optional<double>(const Outcome&)>& of, bool most) {
  int best = -1;
  for (std::size_t i = 0; i < outcomes.size(); ++i) {
    const auto mine = of(outcomes[i]);
    if (!mine) return -1;
    bool alone = true;
    for (std::size_t k = 0; k < outcomes.size(); ++k)
      if (k != i && of(outcomes[k]))
        alone = alone && (most ? *mine > 1.02 * *of(outcomes[k]) : 1.02 * *mine < *of(outcomes[k]));
    if (alone) best = static_cast<int>(i);
  }
  return best;
}

void add_words(const Ways& ways, const Outcomes& outcomes, bool arrangement, Row& row) {
  const auto gap = [](const Outcome& o) {
    return o.arranged.gap ? std::optional{o.arranged.gap->si("gap")} : std::nullopt;
  };
  const auto life = [](const Outcome& o) {
    const auto said = o.bearing ? o.bearing->life_said() : std::nullopt;
    return said ? std::optional{said->si()} : std::nullopt;
  };
  const int closest = foremost(outcomes, gap, false), widest = foremost(outcomes, gap, true);
  const int longest = foremost(outcomes, life, true), shortest = foremost(outcomes, life, false);
  for (std::size_t i = 0; i < ways.size(); ++i) {
    std::vector<Message>& says = row.cells[i].says;
    const int way = static_cast<int>(i);
    if (arrangement) says.push_back(why_left(ways[i], outcomes[i]));
    if (way == closest) says.push_back({Code{"study.closest"}, {}});
    const std::optional<Message> bad = must_not_be(outcomes[i]);  // No praise for what must not be.
    if (way == widest && !bad) says.push_back({Code{"study.widest"}, {}});
    if (way == longest && !bad) says.push_back({Code{"study.longest"}, {}});
    if (way == shortest) says.push_back({Code{"study.shortest"}, {}});
    for (const Problem& problem : outcomes[i].bearing_problems) says.push_back(message_of(problem));
    for (const Message& change : ways[i].changes)
      if (says.empty()) says.push_back(change);
    if (says.empty()) says.push_back({Code{"study.as_defined"}, {}});
  }
}

}  // namespace

std::vector<Row> rows_of(const Ways& ways, const Outcomes& outcomes) {
  std::vector<Row> rows;
  const auto add = [&](RowKey key, Form form, const std::function<Cell(const Way&, const Outcome&)>& cell) {
    rows.push_back(row_of(key, form, ways, outcomes, cell));
  };
  const auto add_if_differs = [&](RowKey key, const std::function<Cell(const Way&, const Outcome&)>& cell) {
    Row row = row_of(key, Form::figure, ways, outcomes, cell);
    if (differs(row)) rows.push_back(std::move(row));
  };
  add(RowKey::couples, Form::drawing, [](const Way&, const Outcome& o) { return couples_cell(o); });
  add(RowKey::flats, Form::figure, [](const Way&, const Outcome& o) { return flats_cell(o); });
  const bool arrangement = differs(rows.back());
  add(RowKey::couple, Form::large, [](const Way&, const Outcome& o) {
    return left_cell(any(o.arranged.left.couple.size), any(o.arranged.couple_floor), o);
  });
  add(RowKey::hanger, Form::figure, [](const Way&, const Outcome& o) {
    return left_cell(any(o.arranged.left.larger), any(o.arranged.left.floor_rms), o);
  });
  rows.back().ends = !dynamics::planes_of(ways.front().shaft).hangers;  // The stack is the same in every way.
  add(RowKey::gap, Form::figure, [](const Way&, const Outcome& o) { return gap_cell(o); });
  if (arrangement) {
    add(RowKey::say, Form::words, say_cell);
    add(RowKey::build, Form::words, [](const Way&, const Outcome& o) { return build_cell(o); });
  }
  add_if_differs(RowKey::speed,
                 [](const Way& w, const Outcome&) { return figure(any(w.shaft.spec().speed), nullptr); });
  add_if_differs(RowKey::lean,
                 [](const Way& w, const Outcome&) { return figure(any(w.shaft.rotor(1).lean), nullptr); });
  add_if_differs(RowKey::clearance, clearance_cell);
  add_if_differs(RowKey::interference, [](const Way&, const Outcome& o) { return interference_cell(o); });
  add_if_differs(RowKey::press, [](const Way&, const Outcome& o) { return press_cell(o); });
  add_if_differs(RowKey::play, [](const Way&, const Outcome& o) { return play_cell(o); });
  add_if_differs(RowKey::life, [](const Way&, const Outcome& o) { return life_cell(o); });
  add_if_differs(RowKey::stress, [](const Way&, const Outcome& o) { return stress_cell(o); });
  add_if_differs(RowKey::critical, [](const Way&, const Outcome& o) { return critical_cell(o); });
  add(RowKey::words, Form::words, [](const Way&, const Outcome&) { return Cell{}; });
  add_words(ways, outcomes, arrangement, rows.back());
  return rows;
}

}  // namespace flatwise::study
