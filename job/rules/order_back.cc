// Spacers go back by their labels: exchanged, doubled, without a label, left out. The order is compared label by label, so
// two spacers of one length exchanged are named too: worn pairs belong together.
#include <algorithm>
#include <map>

#include "job/rules.h"

namespace flatwise::job::rules {
namespace {

using Labels = std::vector<std::string>;

Labels labels_wanted(const Facts& facts) {
  const std::vector<bool> off = stations_off(facts.shaft, facts.bench);
  Labels labels;
  for (std::size_t i = 0; i < off.size(); ++i)
    if (off[i] && facts.shaft.stations()[i].kind == StationKind::spacer)
      labels.push_back(facts.shaft.stations()[i].label);
  return labels;
}

void add(StageReport& report, Code code, Severity severity, Args args, Code instruction) {
  Finding finding{code, severity, args, {}, Message{instruction, args}};
  report.findings.push_back(std::move(finding));
}

/// Labels that stand more often, or less often, than once. Returns whether the counts were right.
bool judge_counts(const Labels& wanted, const Labels& read, StageReport& report) {
  std::map<std::string, int> count;
  for (const std::string& label : read) ++count[label];
  bool right = true;
  if (count[""] > 0) {
    add(report, Code{"stack.spacer_without_label"}, Severity::unanswered, {{"count", count[""]}},
        Code{"stack.find_its_place"});
    right = false;
  }
  for (const auto& [label, times] : count) {
    if (label.empty()) continue;
    const bool known = std::ranges::find(wanted, label) != wanted.end();
    if (!known)
      add(report, Code{"stack.spacer_not_wanted"}, Severity::out, {{"label", label}}, Code{"stack.take_out_spacer"});
    if (known && times > 1)
      add(report, Code{"stack.label_doubled"}, Severity::out, {{"label", label}, {"times", times}},
          Code{"stack.compare_lengths"});
    right = right && known && times == 1;
  }
  for (const std::string& label : wanted) {
    if (count[label] > 0) continue;
    const bool may_be_unlabelled = count[""] > 0;
    add(report, may_be_unlabelled ? Code{"stack.label_not_read"} : Code{"stack.spacer_missing"},
        may_be_unlabelled ? Severity::unanswered : Severity::out, {{"label", label}}, Code{"stack.put_in_spacer"});
    right = false;
  }
  return right;
}

/// Same labels, another order: names each that is not in its place.
void judge_places(const Labels& wanted, const Labels& read, StageReport& report) {
  std::vector<std::string> there, should;
  for (std::size_t i = 0; i < wanted.size(); ++i) {
    if (wanted[i] == read[i]) continue;
    there.push_back(read[i]);
    should.push_back(wanted[i]);
  }
  if (there.empty()) return;
  const bool two = there.size() == 2;
  add(report, two ? Code{"stack.spacers_exchanged"} : Code{"stack.spacers_out_of_order"}, Severity::out,
      {{"read", there}, {"wanted", should}}, Code{"stack.put_back_by_labels"});
}

}  // namespace

void order_back(const Facts& facts, StageReport& report) {
  const Labels wanted = labels_wanted(facts);
  if (wanted.empty()) return;
  if (!facts.bench.labels_back) {
    add(report, Code{"stack.order_not_noted"}, Severity::unanswered, {{"labels", wanted}}, Code{"stack.read_labels"});
    return;
  }
  Labels read;
  for (const LabelBack& l : *facts.bench.labels_back) read.push_back(l.label);
  if (judge_counts(wanted, read, report)) judge_places(wanted, read, report);
}

}  // namespace flatwise::job::rules
