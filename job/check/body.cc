#include "job/check/body.h"

#include <algorithm>
#include <array>

#include "core/units/near.h"
#include "job/check/pieces.h"
#include "job/check/plausible.h"
#include "job/gauges.h"
#include "job/plan.h"
#include "job/seen.h"
#include "job/steps.h"

namespace flatwise::job::check_detail {
namespace {

using Use = Gauge::Use;
constexpr std::array<const char*, 7> kUses{"gauge_use.bore_gauge",     "gauge_use.thermometer", "gauge_use.length",
                                           "gauge_use.feeler",         "gauge_use.wrench",      "gauge_use.press_gauge",
                                           "gauge_use.vibration_meter"};
Word use_word(Use use) { return Word{kUses[static_cast<std::size_t>(use)]}; }

class BodyCheck {
 public:
  BodyCheck(const Shaft& shaft, const Workshop& workshop, const JobState& state, const Entry& entry)
      : shaft_{shaft}, workshop_{workshop}, state_{state}, entry_{entry} {}

  std::vector<Problem> run() {
    std::visit(*this, entry_.body);
    for (const Reading& reading : readings_of(shaft_, entry_.body)) possible(reading);
    return std::move(problems_);
  }

  void operator()(const BookedIn& /*b*/) {}
  void operator()(const Answered& b) {
    const auto it = std::ranges::find(questions(), b.question, &Question::id);
    if (it == questions().end()) {
      const std::vector<std::string_view> known = question_ids();
      return add(Problem{Code{"record.no_such_question"}, "body.question", b.question, near_args(b.question, known),
                         std::nullopt});
    }
    const bool fits = [&] {
      switch (it->of) {
        case AskedOf::shaft:
          return b.number == 0;
        case AskedOf::rotor_that_came_off:
          return b.number >= 1 && b.number <= shaft_.rotor_count();
        case AskedOf::captive_station:
          return station_there(b.number) && !station(b.number).fit_before.empty();
        case AskedOf::nut:
          return std::ranges::any_of(shaft_.spec().nuts,
                                     [&](const Nut& n) { return b.number == (n.end == End::a ? 1 : 2); });
      }
      return false;
    }();
    if (!fits)
      add(Problem{Code{"record.not_asked_of_it"},
                  "body.number",
                  std::to_string(b.number),
                  {{"question", Word{"question." + b.question}}},
                  std::nullopt});
  }
  void operator()(const Looked& b) { part(b.part); }
  void operator()(const PhotoTaken& b) { part(b.part); }
  void operator()(const NoteWritten& b) { part(b.part); }
  void operator()(const PlayRead& b) {
    rotor(b.rotor);
    gauge(b.gauge, Use::length);
    if (b.push && b.held != Held::hanging)
      add(Problem{Code{"record.push_of_hanging"}, "body.push", b.push->typed, {}, std::nullopt});
  }
  void operator()(const WayChosen& b) {
    const Results<PlanReport> planned = plan(shaft_, workshop_, b.open);
    if (planned) return;
    for (Problem problem : planned.error()) {
      problem.field = "body." + problem.field;
      add(std::move(problem));
    }
  }
  void operator()(const CustomerSaid& /*b*/) {}
  void operator()(const Ordered& b) {
    if (!customer_agreed(state_)) add(Problem{Code{"record.customer_first"}, "body", {}, {}, std::nullopt});
    if (part_number(b.part_number)) orders();
  }
  void operator()(const Received& b) {
    if (part_number(b.part_number)) orders();
  }
  void operator()(const StepDone& b) {
    const std::vector<JobStep> steps = job_steps(shaft_, workshop_, state_, b.phase);
    if (steps.empty()) return add(Problem{Code{"record.nothing_chosen"}, "body.step", b.step, {}, std::nullopt});
    if (std::ranges::find(steps, b.step, &JobStep::key) == steps.end())
      add(Problem{Code{"record.no_such_step"}, "body.step", b.step, {}, std::nullopt});
  }
  void operator()(const TakenOff& b) {
    if (!station_is_there(b.station) || !station(b.station).obstacle) return;
    add(Problem{Code{"record.stays_on"},
                "body.station",
                std::to_string(b.station),
                {{"station", station(b.station).label}},
                std::nullopt});
  }
  void operator()(const PutOn& b) {
    if (!station_is_there(b.station) || state_.came_off[static_cast<std::size_t>(b.station) - 1]) return;
    add(Problem{Code{"record.did_not_come_off"},
                "body.station",
                std::to_string(b.station),
                {{"station", station(b.station).label}},
                std::nullopt});
  }
  void operator()(const OpenedBy& b) {
    const auto planned = plan_opened(shaft_, workshop_, state_, {b.from, b.rotors_from_a, {}});
    const int most = b.from == teardown::OpenedFrom::both ? std::max(0, shaft_.rotor_count() - 1) : 0;
    if (b.rotors_from_a > most) return out_of_range("body.rotors_from_a", b.rotors_from_a, 0, most);
    if (!planned || *planned) return;
    Problem problem = planned->error();
    problem.field = "body." + problem.field;
    add(std::move(problem));
  }
  void operator()(const SpacersFound& b) {
    std::vector<std::string_view> labels;
    for (const Station& s : shaft_.stations())
      if (s.kind == StationKind::spacer) labels.push_back(s.label);
    if (station_is_there(b.station) && station(b.station).kind != StationKind::spacer)
      add(Problem{Code{"record.no_spacer"},
                  "body.station",
                  std::to_string(b.station),
                  {{"station", station(b.station).label}},
                  std::nullopt});
    if (b.label.empty()) return;
    if (b.count == 0) add(Problem{Code{"record.nothing_lies_there"}, "body.label", b.label, {}, std::nullopt});
    if (std::ranges::find(labels, b.label) == labels.end())
      add(Problem{Code{"record.no_such_label"}, "body.label", b.label, near_args(b.label, labels), std::nullopt});
  }
  void operator()(const BoreRead& b) {
    rotor(b.rotor);
    if (b.direction > b.directions) out_of_range("body.direction", b.direction, 1, b.directions);
    needs_gauge(b.gauge, Use::bore_gauge);
  }
  void operator()(const TemperatureRead& b) {
    rotor(b.rotor);
    gauge(b.thermometer, Use::thermometer, "body.thermometer");
  }
  void operator()(const SetRenewed& b) { rotor(b.rotor); }
  void operator()(const FittedRead& b) { rotor(b.rotor); }
  void operator()(const LeanRead& b) { rotor(b.rotor); }
  void operator()(const RingSound& b) {
    if (rotor(b.rotor)) pieces("body.ring", b.ring, rings(b.rotor), "snap_ring");
  }
  void operator()(const Laid& b) { item(b.rotor, b.item, b.count); }
  void operator()(const LeftOver& b) { item(b.rotor, b.item, b.count); }
  void operator()(const Scrapped& b) { item(b.rotor, b.item, b.count); }
  void operator()(const Pressed& b) {
    rotor(b.rotor);
    needs_gauge(b.gauge, Use::press_gauge);
  }
  void operator()(const PressPointRead& b) {
    rotor(b.rotor);
    needs_gauge(b.gauge, Use::press_gauge);
  }
  void operator()(const RingPressedSeen& b) { rotor(b.rotor); }
  void operator()(const MarkSeen& b) {
    rotor(b.rotor);
    if (b.flat < 1 || b.flat > shaft_.flats()) out_of_range("body.flat", b.flat, 1, shaft_.flats());
  }
  void operator()(const LabelPutBack& b) {
    std::vector<std::string_view> labels;
    for (const Station& s : shaft_.stations())
      if (s.kind == StationKind::spacer) labels.push_back(s.label);
    // A spacer too many is a finding of the stack, not an entry that cannot be.
    const int most = 2 * std::max(1, static_cast<int>(labels.size()));
    if (b.position < 1 || b.position > most) out_of_range("body.position", b.position, 1, most);
    if (!b.label.empty() && std::ranges::find(labels, b.label) == labels.end())
      add(Problem{Code{"record.no_such_label"}, "body.label", b.label, near_args(b.label, labels), std::nullopt});
  }
  void operator()(const StackRead& b) { needs_gauge(b.gauge, Use::length); }
  void operator()(const FeelerTried& b) {
    int joints = -1;
    for (const Station& s : shaft_.stations())
      if (s.kind != StationKind::nut) joints += s.kind == StationKind::rotor ? 2 : 1;
    if (b.joint < 1 || b.joint > joints) out_of_range("body.joint", b.joint, 1, joints);
    needs_gauge(b.gauge, Use::feeler);
  }
  void operator()(const PartMeasured& b) {
    if (station_is_there(b.station)) {
      const bool is_rotor = station(b.station).kind == StationKind::rotor;
      if (is_rotor != b.half.has_value())
        add(Problem{is_rotor ? Code{"record.half_missing"} : Code{"record.no_halves"},
                    "body.half",
                    {},
                    {{"station", station(b.station).label}},
                    std::nullopt});
    }
    needs_gauge(b.gauge, Use::length);
  }
  void operator()(const ToolTaken& b) { nut_is_there(b.nut); }
  void operator()(const NutPulledAgain& b) {
    nut_is_there(b.nut);
    gauge(b.gauge, Use::wrench);
  }
  void operator()(const NutPulled& b) {
    nut_is_there(b.nut);
    const bool bar = b.with == TorquePull::With::bar;
    if (!bar) needs_gauge(b.gauge, Use::wrench);
    if (bar) gauge(b.gauge, Use::press_gauge);
    if ((bar || b.extension) && !b.tool_length)
      add(Problem{Code{"record.tool_length_missing"}, "body.tool_length", {}, {}, std::nullopt});
  }
  void operator()(const RunRead& b) {
    if (b.what == RunQuantity::hanger) {
      if (station_is_there(b.station) && station(b.station).kind != StationKind::hanger)
        add(Problem{Code{"record.no_hanger"},
                    "body.station",
                    std::to_string(b.station),
                    {{"station", station(b.station).label}},
                    std::nullopt});
    } else if (b.station != 0 && b.what != RunQuantity::vibration) {
      out_of_range("body.station", b.station, 0, 0);
    } else if (b.station != 0) {
      (void)station_is_there(b.station);
    }
    if (b.what == RunQuantity::hanger || b.what == RunQuantity::room) gauge(b.gauge, Use::thermometer);
    if (b.what == RunQuantity::vibration) gauge(b.gauge, Use::vibration_meter);
  }
  void operator()(const SecondLook& b) {
    if (!rotor(b.rotor)) return;
    for (const Half half : {Half::a, Half::b})
      if (const LiveAnswers* marks = state_.answers(question_of(MarkSeen{b.rotor, half, 1})))
        for (const Entry* seen : marks->entries)
          if (seen->by == entry_.by)
            return add(Problem{Code{"record.own_marks"}, "by", {}, {{"rotor", b.rotor}}, std::nullopt});
  }
  void operator()(const GaugeAccepted& b) {
    const Gauge* found = known_gauge(b.gauge, "body.gauge");
    if (found == nullptr || past_date(*found, state_.bench.date) || past_date(*found, day_of(latest(entry_)))) return;
    add(Problem{Code{"record.gauge_in_date"},
                "body.gauge",
                b.gauge,
                {{"until", text_of(found->calibrated_until)}},
                std::nullopt});
  }
  void operator()(const Signed& /*b*/) {}
  void operator()(const Released& /*b*/) {}
  void operator()(const Withdrawn& /*b*/) { orders(); }

 private:
  void orders() {
    if (auto problem = problem_of_orders(workshop_, state_, entry_)) add(*std::move(problem));
  }
  [[nodiscard]] static bool past_date(Gauge gauge, Day day) {
    certify_for(gauge, day);
    return gauge.calibrated_until < day;
  }
  void possible(const Reading& reading) {
    if (reading.range.holds(reading.value)) return;
    add(Problem{Code{"record.not_possible"},
                "body." + std::string{reading.field},
                {},
                {{"value", reading.value}, {"least", reading.range.least}, {"greatest", reading.range.greatest}},
                std::nullopt});
  }
  void add(Problem problem) { problems_.push_back(std::move(problem)); }
  void nut_is_there(End end) {
    if (std::ranges::find(shaft_.spec().nuts, end, &Nut::end) != shaft_.spec().nuts.end()) return;
    add(Problem{
        Code{"record.no_such_nut"}, "body.nut", {}, {{"nut", Word{end == End::a ? "end.a" : "end.b"}}}, std::nullopt});
  }
  void out_of_range(std::string field, int given, int least, int greatest) {
    add(Problem{Code{"record.out_of_range"},
                std::move(field),
                std::to_string(given),
                {{"least", any_count(least)}, {"greatest", any_count(greatest)}},
                std::nullopt});
  }
  static Args near_args(std::string_view given, std::span<const std::string_view> known) {
    Args args{{"known", std::vector<std::string>{known.begin(), known.end()}}};
    if (const auto near = nearest(given, known); !near.empty()) args.emplace_back("near", std::string{near});
    return args;
  }
  bool rotor(int number, std::string field = "body.rotor") {
    if (number >= 1 && number <= shaft_.rotor_count()) return true;
    add(Problem{Code{"record.no_such_rotor"},
                std::move(field),
                std::to_string(number),
                {{"greatest", shaft_.rotor_count()}},
                std::nullopt});
    return false;
  }
  [[nodiscard]] bool station_there(int number) const {
    return number >= 1 && number <= static_cast<int>(shaft_.stations().size());
  }
  bool station_is_there(int number, std::string field = "body.station") {
    if (station_there(number)) return true;
    add(Problem{Code{"record.no_such_station"},
                std::move(field),
                std::to_string(number),
                {{"greatest", static_cast<int>(shaft_.stations().size())}},
                std::nullopt});
    return false;
  }
  [[nodiscard]] const Station& station(int number) const {
    return shaft_.stations()[static_cast<std::size_t>(number) - 1];
  }
  void part(const Where& where) {
    if (where.part == Where::Part::rotor) (void)rotor(where.number, "body.part.number");
    if (where.part == Where::Part::station) (void)station_is_there(where.number, "body.part.number");
    if (where.part == Where::Part::shaft && where.number != 0) out_of_range("body.part.number", where.number, 0, 0);
  }
  [[nodiscard]] int rings(int number) const { return static_cast<int>(shaft_.rotor(number).snap_rings); }
  void pieces(std::string field, int given, int most, const std::string& what) {
    if (given <= most) return;
    add(Problem{Code{"record.not_so_many"},
                std::move(field),
                std::to_string(given),
                {{"most", most}, {"item", Word{"item." + what}}},
                std::nullopt});
  }
  void item(int number, const std::string& what, int count) {
    if (!rotor(number)) return;
    const int most = most_pieces(shaft_.rotor(number), what);
    if (most == 0)
      pieces("body.item", 1, 0, what);
    else if (count > most)
      out_of_range("body.count", count, 0, most);
  }
  bool part_number(const std::string& number) {
    std::vector<std::string_view> known;
    for (const StockItem& s : workshop_.stock) known.push_back(s.part_number);
    for (const Station& s : shaft_.stations()) known.push_back(s.part.part_number);
    for (const Rotor& r : shaft_.spec().rotors)
      for (const Priced* p : {&r.adapter_set, &r.seal, &r.snap_ring}) known.push_back(p->part_number);
    std::erase(known, std::string_view{});
    std::ranges::sort(known);
    const auto twice = std::ranges::unique(known);
    known.erase(twice.begin(), twice.end());
    if (std::ranges::find(known, number) != known.end()) return true;
    add(Problem{Code{"record.no_such_part"}, "body.part_number", number, near_args(number, known), std::nullopt});
    return false;
  }
  const Gauge* known_gauge(const std::string& id, const std::string& field) {
    const Gauge* found = find_gauge(workshop_, id);
    if (found != nullptr) return found;
    std::vector<std::string_view> known;
    for (const Gauge& g : workshop_.gauges) known.push_back(g.id);
    add(Problem{Code{"record.no_such_gauge"}, field, id, near_args(id, known), std::nullopt});
    return nullptr;
  }
  void gauge(const std::string& id, Use use, const std::string& field = "body.gauge") {
    if (id.empty()) return;
    const Gauge* found = known_gauge(id, field);
    if (found != nullptr && found->use != use)
      add(Problem{Code{"record.wrong_gauge"},
                  field,
                  id,
                  {{"use", use_word(found->use)}, {"wanted", use_word(use)}},
                  std::nullopt});
  }
  void needs_gauge(const std::string& id, Use use) {
    if (id.empty())
      return add(Problem{Code{"record.gauge_missing"}, "body.gauge", {}, {{"wanted", use_word(use)}}, std::nullopt});
    gauge(id, use);
  }

  const Shaft& shaft_;
  const Workshop& workshop_;
  const JobState& state_;
  const Entry& entry_;
  std::vector<Problem> problems_;
};

/// Paper, parts on the shelf and what is said of the whole job; all else is done with a hand at the machine.
struct Touches {
  template <class B>
  bool operator()(const B& /*body*/) const {
    constexpr bool kDesk = std::is_same_v<B, BookedIn> || std::is_same_v<B, PhotoTaken> ||
                           std::is_same_v<B, NoteWritten> || std::is_same_v<B, WayChosen> ||
                           std::is_same_v<B, CustomerSaid> || std::is_same_v<B, Ordered> ||
                           std::is_same_v<B, Received> || std::is_same_v<B, Laid> || std::is_same_v<B, LeftOver> ||
                           std::is_same_v<B, Scrapped> || std::is_same_v<B, GaugeAccepted> ||
                           std::is_same_v<B, Signed> || std::is_same_v<B, Released> || std::is_same_v<B, Withdrawn>;
    return !kDesk;
  }
  bool operator()(const Answered& body) const { return stage_of(body) != Stage::booking_in; }
};

}  // namespace

std::vector<Problem> problems_of_body(const Shaft& shaft, const Workshop& workshop, const JobState& state,
                                      const Entry& entry) {
  return BodyCheck{shaft, workshop, state, entry}.run();
}

bool touches_machine(const EntryBody& body) { return std::visit(Touches{}, body); }

}  // namespace flatwise::job::check_detail
