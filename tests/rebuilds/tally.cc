#include "tests/rebuilds/tally.h"

#include <cmath>

namespace rebuilds {
namespace {

void add_gauged(Row& row, const Mistake& m, const MistakeOutcome& one) {
  ++row.gauged;
  row.called += one.named ? 1 : 0;
  row.undecided += one.cannot_tell ? 1 : 0;
  row.passed += one.caught || one.cannot_tell ? 0 : 1;
  row.promised += m.promised;
  row.promised_variance += m.promised * (1 - m.promised);
  row.pass_allowed += m.pass_allowed;
  row.pass_variance += m.pass_allowed * (1 - m.pass_allowed);
}

bool certain_missed(const Row& row) { return row.certain_named < row.certain; }
bool too_few_called(const Row& row) { return row.promised - row.called > above_by_chance(row.promised_variance); }
bool too_many_passed(const Row& row) { return row.passed - row.pass_allowed > above_by_chance(row.pass_variance); }

}  // namespace

void Tally::add(const Rebuild& r, const Outcome& outcome) {
  ++rebuilds;
  several += r.mistakes.size() > 1 ? 1 : 0;
  for (std::size_t i = 0; i < r.mistakes.size(); ++i) {
    const Mistake& m = r.mistakes[i];
    const MistakeOutcome& one = outcome.mistakes[i];
    Row& row = rows[static_cast<std::size_t>(m.kind)];
    ++row.put_in;
    row.caught += one.caught ? 1 : 0;
    row.named += one.named ? 1 : 0;
    if (m.discrete()) {
      ++row.certain;
      row.certain_named += one.named ? 1 : 0;
    } else {
      add_gauged(row, m, one);
    }
    if (m.discrete() && !one.named)
      misses.push_back("seed " + std::to_string(r.seed) + ", " + row_of(m.kind).words + " (" + m.told +
                       "): " + one.why);
  }
  mends += outcome.marks_judged ? 1 : 0;
  mends_right += outcome.marks_judged && outcome.mend_right ? 1 : 0;
  other_stories += outcome.marks_judged && outcome.other_story ? 1 : 0;
  for (const std::string& a : outcome.discrete_alarms)
    misses.push_back("seed " + std::to_string(r.seed) + ", alarm: " + a);
  clean_discrete += static_cast<int>(outcome.discrete_alarms.size());
  if (!r.mistakes.empty()) return;
  ++clean;
  clean_called += outcome.gauge_alarms;
  clean_undecided += outcome.undecided;
  for (const SoundDecision& d : r.sound) {
    ++clean_decisions;
    called_allowed += d.chance_out;
    called_variance += d.chance_out * (1 - d.chance_out);
  }
}

double above_by_chance(double variance) {
  const double l = -std::log(1e-6);
  return l / 3 + std::sqrt(l * l / 9 + 2 * l * variance);
}

std::vector<std::string> broken_promises(const Tally& t) {
  std::vector<std::string> out;
  for (int i = 0; i < kKinds; ++i) {
    const Row& row = t.rows[static_cast<std::size_t>(i)];
    const std::string words = row_of(static_cast<Kind>(i)).words;
    if (certain_missed(row))
      out.push_back(words + ": " + std::to_string(row.certain - row.certain_named) +
                    " certain ones missed or not named");
    if (too_few_called(row)) out.push_back(words + ": called out less often than promised");
    if (too_many_passed(row)) out.push_back(words + ": passed in silence more often than allowed");
  }
  if (t.clean_discrete > 0) out.push_back(std::to_string(t.clean_discrete) + " alarms that no gauge excuses");
  if (t.clean_called - t.called_allowed > above_by_chance(t.called_variance))
    out.push_back("sound parts called out more often than the uncertainty allows");
  if (t.mends_right < t.mends) out.push_back(std::to_string(t.mends - t.mends_right) + " mends leave the marks wrong");
  return out;
}

std::vector<std::string> fallen_rows(const Tally& t) {
  std::vector<std::string> out;
  for (int i = 0; i < kKinds; ++i) {
    const Row& row = t.rows[static_cast<std::size_t>(i)];
    if (certain_missed(row) || too_few_called(row) || too_many_passed(row))
      out.emplace_back(row_of(static_cast<Kind>(i)).name);
  }
  return out;
}

}  // namespace rebuilds
