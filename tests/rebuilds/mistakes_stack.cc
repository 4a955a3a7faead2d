// Mistakes in the stack: spacers by their labels, joints not home.
#include "tests/rebuilds/mistakes.h"

namespace rebuilds {
namespace {

const Part& labelled(const Rebuild& r, const std::string& label) {
  return *std::ranges::find(r.drawing.parts, label, &Part::label);
}

bool exchange(Rebuild& r, Mistake& m, Random& random) {
  const int count = static_cast<int>(r.labels.size());
  if (count < 2 || !claim(r, "labels")) return false;
  const int from = random.whole(0, count - 2);
  const int to = random.whole(from + 1, count - 1), between = (from + to) / 2;
  const bool three = between > from && random.chance(0.3);
  const auto at = [&](int i) -> std::string& { return r.labels[static_cast<std::size_t>(i)]; };
  std::swap(at(from), at(to));
  std::string read = at(from) + "," + at(to);
  if (three) {
    std::swap(at(from), at(between));
    read = at(from) + "," + at(between) + "," + at(to);
  }
  m.names = {{{three ? "stack.spacers_out_of_order" : "stack.spacers_exchanged"}, {}, {{"read", read}}}};
  m.told = "spacers stand as " + read;
  return true;
}

bool miss(Rebuild& r, Mistake& m, Random& random) {
  if (r.labels.empty() || !claim(r, "labels") || !claim(r, "length")) return false;
  const auto at = r.labels.begin() + random.whole(0, static_cast<int>(r.labels.size()) - 1);
  m.names = {{{"stack.spacer_missing"}, {}, {{"label", *at}}}};
  m.told = "spacer " + *at + " left out";
  r.true_stack_extra -= labelled(r, *at).true_length;
  r.labels.erase(at);
  return true;
}

// Either one more spacer with a label that stands already, or a label painted twice.
bool twice(Rebuild& r, Mistake& m, Random& random) {
  if (r.labels.size() < 2 || !claim(r, "labels") || !claim(r, "length")) return false;
  const int at = random.whole(0, static_cast<int>(r.labels.size()) - 1);
  const int other = (at + 1) % static_cast<int>(r.labels.size());
  const std::string label = r.labels[static_cast<std::size_t>(at)];
  if (random.chance(0.5)) {
    r.labels.insert(r.labels.begin() + other, label);
    r.true_stack_extra += labelled(r, label).true_length;
  } else {
    r.labels[static_cast<std::size_t>(other)] = label;
  }
  m.names = {{{"stack.label_doubled"}, {}, {{"label", label}, {"times", "2"}}}};
  m.told = "label " + label + " twice";
  return true;
}

bool unlabelled(Rebuild& r, Mistake& m, Random& random) {
  if (r.labels.empty() || !claim(r, "labels")) return false;
  std::string& label = r.labels[static_cast<std::size_t>(random.whole(0, static_cast<int>(r.labels.size()) - 1))];
  m.told = "spacer " + label + " put back without its label";
  m.names = {{{"stack.spacer_without_label"}, {}, {{"count", "1"}}},
             {{"stack.label_not_read"}, {}, {{"label", label}}}};
  label.clear();
  return true;
}

bool open(Rebuild& r, Mistake& m, Random& random) {
  if (has_claim(r, "overdue") || !claim(r, "length")) return false;
  r.claimed.emplace_back("gauge-limited");
  const double step = r.drawing.open_step.si;
  r.gap = m.kind == Kind::joint_open ? step : random.between(r.drawing.least_gap.si, step);
  r.open_joint = random.pick(joints_touched(r));
  m.told = "joint " + std::to_string(r.open_joint) + " open by " + in_millimetres(r.gap, 2).text;
  m.out = {{{"stack.not_seated"}, {}, {}}};
  m.cannot_tell = {{{"stack.cannot_tell"}, {}, {}}};
  m.promised = 0;
  m.after = [](Rebuild& to, Mistake& mine, Random&) {
    // Where a feeler went in, that joint must be the one to look at first.
    for (const Felt& f : to.sheet.feelers)
      if (f.passed)
        mine.names = {{{"stack.joint_chance"}, {}, {{"joint", std::to_string(to.open_joint)}}, "stack.look_first"}};
    const StackKnown s = stack_known(to);
    const double length = s.true_length + to.gap;
    mine.promised = 1 - chance_below(length, s.sigma, s.step, s.greatest + s.expanded);
    mine.pass_allowed = chance_below(length, s.sigma, s.step, s.least + to.drawing.least_gap.si - s.expanded);
  };
  return true;
}

}  // namespace

bool put_in_stack(Rebuild& r, Mistake& m, Random& random) {
  switch (m.kind) {
    case Kind::spacers_exchanged:
      return exchange(r, m, random);
    case Kind::spacer_missing:
      return miss(r, m, random);
    case Kind::spacer_doubled:
      return twice(r, m, random);
    case Kind::spacer_without_label:
      return unlabelled(r, m, random);
    default:
      return open(r, m, random);
  }
}

}  // namespace rebuilds
