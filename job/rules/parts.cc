// Parts: the right bearing and the right lean in every rotor that came off, a new set where one is due, rings only if
// sound, and the count-out of each tray.
#include <algorithm>
#include <cmath>

#include "job/kit.h"
#include "job/rules.h"

namespace flatwise::job::rules {
namespace {

void add(StageReport& report, int rotor, Code code, Severity severity, Args args, Code instruction) {
  args.emplace_back("rotor", rotor);
  Message todo{instruction, args};
  report.findings.push_back({code, severity, std::move(args), at_rotor(rotor), std::move(todo)});
}

bool contains(const std::vector<int>& list, int value) { return std::ranges::find(list, value) != list.end(); }

void judge_set(const Facts& facts, int rotor, StageReport& report) {
  if (!facts.shaft.spec().policies.renew_disturbed || contains(facts.bench.new_set, rotor)) return;
  // Where the record leads the job nobody may have come to it yet; a readings file is written when it is done.
  if (facts.bench.led && !contains(facts.bench.kept_set, rotor))
    add(report, rotor, Code{"kit.set_not_said"}, Severity::unanswered, {}, Code{"kit.fit_new_set"});
  else
    add(report, rotor, Code{"kit.no_new_set"}, Severity::out, {}, Code{"kit.fit_new_set"});
}

void judge_designation(const Facts& facts, int rotor, StageReport& report) {
  const std::string& wanted = facts.shaft.rotor(rotor).bearing.designation;
  if (wanted.empty()) return;
  bool told = false;
  for (const Fitted& f : facts.bench.fitted) {
    if (f.rotor != rotor) continue;
    told = true;
    if (f.designation.value != wanted)
      add(report, rotor, Code{"kit.wrong_bearing"}, Severity::out, {{"read", f.designation.value}, {"wanted", wanted}},
          Code{"kit.press_out_wrong_bearing"});
  }
  if (!told)
    add(report, rotor, Code{"kit.designation_not_read"}, Severity::unanswered, {{"wanted", wanted}},
        Code{"kit.read_designation"});
}

// A marked lean is stamped in whole or half degrees: a quarter of a degree is the nearest two stamps can be told apart.
constexpr double kSameLeanDegrees = 0.25;

void judge_lean(const Facts& facts, int rotor, Half half, StageReport& report) {
  const Angle wanted = facts.shaft.rotor(rotor).lean;
  const Word which{half == Half::a ? "half.a" : "half.b"};
  bool told = false;
  for (const LeanMarked& l : facts.bench.leans) {
    if (l.rotor != rotor || l.half != half) continue;
    told = true;
    const AnyQuantity read = l.angle.value.value;
    if (std::abs(read.si - wanted.radians()) > degrees(kSameLeanDegrees).radians())
      add(report, rotor, Code{"kit.wrong_lean"}, Severity::out,
          {{"half", which}, {"read", read}, {"wanted", any(wanted)}}, Code{"kit.change_half"});
  }
  if (!told)
    add(report, rotor, Code{"kit.lean_not_read"}, Severity::unanswered, {{"half", which}, {"wanted", any(wanted)}},
        Code{"kit.read_lean"});
}

void judge_rings(const Facts& facts, int rotor, StageReport& report) {
  for (const ReusedRing& ring : facts.bench.reused_rings) {
    if (ring.rotor != rotor || ring.sound.value == Reply::yes) continue;
    const bool unsound = ring.sound.value == Reply::no;
    add(report, rotor, unsound ? Code{"kit.ring_not_sound"} : Code{"kit.ring_not_looked_at"},
        unsound ? Severity::out : Severity::unanswered, {},
        unsound ? Code{"kit.fit_new_ring"} : Code{"kit.look_at_ring"});
  }
}

void judge_count(const Facts& facts, int rotor, const KitItem& item, StageReport& report) {
  const Word what{"item." + std::string{item.item}};
  const Counted* counted = find_counted(facts.bench.counted, rotor, item.item);
  if (counted == nullptr)
    return add(report, rotor, Code{"kit.not_counted"}, Severity::unanswered, {{"item", what}, {"wanted", item.count}},
               Code{"kit.count_tray"});
  const int laid = counted->laid.value;
  if (laid < item.count)
    add(report, rotor, Code{"kit.missing_on_tray"}, Severity::out,
        {{"item", what}, {"wanted", item.count}, {"laid", laid}}, Code{"kit.fetch_item"});
  if (laid > item.count)
    add(report, rotor, Code{"kit.not_wanted_on_tray"}, Severity::out,
        {{"item", what}, {"wanted", item.count}, {"laid", laid}}, Code{"kit.put_back_item"});
  if (!counted->left)
    add(report, rotor, Code{"kit.not_counted_out"}, Severity::unanswered, {{"item", what}},
        Code{"kit.count_what_is_left"});
  else if (const int left = counted->left->value; left > std::max(0, laid - item.count))
    add(report, rotor, Code{"kit.left_on_tray"}, Severity::out, {{"item", what}, {"left", left}},
        Code{"kit.open_and_fit"});
}

/// Each new piece takes the place of an old one: one that lies in no scrap box may have gone back in. Judged where somebody counted.
void judge_scrap(const Facts& facts, int rotor, const KitItem& item, StageReport& report) {
  for (const Counted& c : facts.bench.scrapped)
    if (c.rotor == rotor && c.item == item.item && c.laid.value < item.fresh)
      add(report, rotor, Code{"kit.old_not_in_scrap"}, Severity::cannot_tell,
          {{"item", Word{"item." + std::string{item.item}}}, {"wanted", item.fresh}, {"count", c.laid.value}},
          Code{"kit.find_the_old"});
}

/// What was laid has left the shelf: below nought it held fewer than the stock list said, or what came in was never noted.
void judge_shelf(const Facts& facts, const Tray& tray, const KitItem& item, StageReport& report) {
  if (find_counted(facts.bench.counted, tray.rotor, item.item) == nullptr) return;
  const StockItem* stock = find_stock(facts.workshop, item.part.part_number);
  if (stock != nullptr && stock->on_shelf < 0)
    add(report, tray.rotor, Code{"kit.shelf_below_nought"}, Severity::note,
        {{"part", stock->part_number}, {"count", -stock->on_shelf}}, Code{"kit.count_shelf"});
}

}  // namespace

void parts_fitted(const Facts& facts, StageReport& report) {
  for (const int rotor : facts.bench.came_off) {
    judge_set(facts, rotor, report);
    judge_designation(facts, rotor, report);
    judge_lean(facts, rotor, Half::a, report);
    judge_lean(facts, rotor, Half::b, report);
    judge_rings(facts, rotor, report);
  }
}

void count_out(const Facts& facts, StageReport& report) {
  for (const Tray& tray : kit(facts.shaft, facts.bench.came_off, facts.bench.reused_rings))
    for (const KitItem& item : tray.items) {
      judge_count(facts, tray.rotor, item, report);
      judge_scrap(facts, tray.rotor, item, report);
      judge_shelf(facts, tray, item, report);
    }
}

}  // namespace flatwise::job::rules
