#include "paper/compose.h"

#include <algorithm>
#include <cmath>

#include "job/judge.h"
#include "job/kit.h"
#include "job/marks.h"
#include "job/plan.h"
#include "job/play.h"
#include "job/press_path.h"
#include "job/stack_length.h"
#include "job/turns.h"
#include "paper/quote.h"

namespace flatwise::paper {
namespace {

/// All that several sheets need, worked out once.
struct Material {
  const SheetOrder& order;
  job::PlanReport plan;
  timing::Map map;
  std::vector<drawing::RotorMarks> marks;

  [[nodiscard]] const teardown::Plan& advised() const { return plan.ways[plan.advised].plan; }
  [[nodiscard]] const WorkingPtr& advised_working() const { return plan.ways[plan.advised].working; }
  [[nodiscard]] const Shaft& shaft() const { return *order.shaft; }
  [[nodiscard]] const Voice& voice() const { return order.head.voice; }
};

bool contains(const std::vector<int>& list, int value) { return std::ranges::find(list, value) != list.end(); }

/// How the shaft is timed as the timing check sees it: by the rotors that stayed, or by the least work.
std::optional<timing::Reference> reference_of(const SheetOrder& order) {
  if (order.bench == nullptr || order.bench->marks.empty()) return std::nullopt;
  const Result<timing::Reading> reading = job::marks_reading({*order.shaft, *order.workshop, *order.bench});
  if (!reading) return std::nullopt;
  const Result<timing::Check> check = timing::check(*order.shaft, *reading);
  if (!check) return std::nullopt;
  return check->plan.reference;
}

std::vector<drawing::PairMarks> marks_read(const SheetOrder& order) {
  std::vector<drawing::PairMarks> read(static_cast<std::size_t>(order.shaft->rotor_count()));
  if (order.bench == nullptr) return read;
  for (const MarkRead& m : order.bench->marks) {
    drawing::PairMarks& pair = read[static_cast<std::size_t>(m.rotor) - 1];
    (m.half == Half::a ? pair.flat_a : pair.flat_b) = m.flat.value;
  }
  return read;
}

Pages timing_map(const Material& m, const TextMeasure& measure) {
  MapSheet sheet{.head = m.order.head, .shaft = &m.shaft(), .map = &m.map, .stayed = {}, .read = marks_read(m.order)};
  for (int r = 1; r <= m.shaft().rotor_count(); ++r)
    sheet.stayed.push_back(!m.order.rotors.empty() && !contains(m.advised().rotors, r));
  if (!m.order.rotors.empty()) {
    sheet.off.resize(m.shaft().stations().size());
    for (const int station : m.advised().stations) sheet.off[static_cast<std::size_t>(station)] = true;
  }
  return map_sheet(sheet, measure);
}

Pages tear_down(const Material& m, const TextMeasure& measure) {
  return tear_down_sheet(
      {.head = m.order.head, .shaft = &m.shaft(), .plan = &m.advised(), .steps = m.plan.steps, .marks = m.marks},
      measure);
}

const Gauge* bore_gauge(const SheetOrder& order) {
  const auto& gauges = order.workshop->gauges;
  const auto it = std::ranges::find(gauges, Gauge::Use::bore_gauge, &Gauge::use);
  return it == gauges.end() ? nullptr : &*it;
}

/// What the press of a rotor should show, once its bore is gauged, and what was read of it so far.
std::optional<PressBlock> press_block(const Material& m, int rotor, const Working& band) {
  const job::Facts facts{m.shaft(), *m.order.workshop, *m.order.bench};
  const auto drawn = job::press_drawn(facts, rotor, band, m.voice().units);
  if (!drawn) return std::nullopt;
  PressBlock block{.rotor = rotor, .curve = {.band = drawn->band, .home = drawn->home}};
  block.curve.force = drawn->force;
  block.curve.points = drawn->points;
  block.curve.travel_unit = {drawn->length_unit, drawn->length_si};
  block.curve.force_unit = {drawn->force_unit, drawn->force_si};
  block.curve.title = say(drawn->title, m.voice());
  for (const Message& part : drawn->question)
    block.curve.question += (block.curve.question.empty() ? "" : " ") + say(part, m.voice());
  block.curve.x_words = say(drawn->x_words, m.voice());
  if (drawn->read_words) block.curve.read_words = say(*drawn->read_words, m.voice());
  block.expected =
      range_words(any(newtons(band.si("force-least"))), any(newtons(band.si("force-greatest"))), m.voice());
  block.travels = job::press_stops(m.shaft().rotor(rotor), m.voice().units);
  block.notes = {say(Message{Code{"bench.press.curve_lead"}, {{"lead", any(job::kPressLead)}}}, m.voice())};
  return block;
}

/// What the fit of a rotor's ring means for bearing and hub: clearance left, creep, and a hub that gives way.
void add_fit_notes(const Material& m, const job::Shown& shown, std::vector<std::string>& notes) {
  const Working& made = *shown.working;
  const auto length = [&](std::string_view name) { return any(metres(made.si(name))); };
  if (made.figure == "fitted-clearance")
    notes.push_back(
        say(Message{Code{"paper.press_clearance"}, {{"least", length("least")}, {"greatest", length("greatest")}}},
            m.voice()));
  if (made.figure == "creep-load")
    notes.push_back(say(Message{Code{"paper.press_creep"}, {{"wanted", length("wanted")}}}, m.voice()));
  if (made.figure == "hub-yielding")
    for (const Finding& f : made.findings)
      notes.push_back(say(f, m.voice()) + (f.instruction ? " " + say(*f.instruction, m.voice()) : ""));
}

std::vector<PressBlock> press_blocks(const Material& m) {
  std::vector<PressBlock> blocks;
  if (m.order.bench == nullptr) return blocks;
  const job::StageReport report = job::judge({m.shaft(), *m.order.workshop, *m.order.bench}, job::Stage::press);
  for (const job::Shown& shown : report.workings) {
    if (shown.working->figure != "press-force" || shown.where.part != Where::Part::rotor) continue;
    if (auto block = press_block(m, shown.where.number, *shown.working)) blocks.push_back(*std::move(block));
  }
  for (PressBlock& block : blocks)
    for (const job::Shown& shown : report.workings)
      if (shown.where == job::at_rotor(block.rotor)) add_fit_notes(m, shown, block.notes);
  return blocks;
}

Pages bench(const Material& m, const TextMeasure& measure) {
  BenchSheet sheet{
      .head = m.order.head, .shaft = &m.shaft(), .rotors = m.advised().rotors, .gauge = {}, .setting_ring = {}};
  if (const Gauge* gauge = bore_gauge(m.order)) {
    sheet.gauge = gauge->id;
    sheet.setting_ring = gauge->setting_ring;
  }
  sheet.presses = press_blocks(m);
  if (m.order.bench != nullptr)
    for (const PlayReading& play : m.order.bench->plays)
      sheet.plays[play.rotor] = say(job::swing_as_read(play), m.voice());
  return bench_sheet(sheet, measure);
}

Pages kit(const Material& m, const TextMeasure& measure) {
  KitSheet sheet{.head = m.order.head, .trays = {}, .stock = {}};
  const Bench none;
  const Bench& bench = m.order.bench != nullptr ? *m.order.bench : none;
  const auto trays = job::kit(m.shaft(), m.advised().rotors, bench.reused_rings);
  for (const job::Tray& tray : trays) {
    KitTray out{
        std::to_string(tray.rotor), say(Message{Code{"sheet.rotor_number"}, {{"rotor", tray.rotor}}}, m.voice()), {}};
    for (const job::KitItem& i : tray.items)
      out.lines.push_back(
          {word("item." + std::string{i.item}, m.voice()), i.part.part_number, i.count, i.fresh, i.reuse_if_sound});
    sheet.trays.push_back(std::move(out));
  }
  for (const job::PartWanted& p : job::parts_wanted(trays, *m.order.workshop, bench.counted))
    sheet.stock.push_back(
        {word("item." + std::string{p.item}, m.voice()), p.part.part_number, p.to_take(), p.on_shelf, p.on_order});
  return kit_sheet(sheet, measure);
}

/// How far the nut should turn, and what the second pull may find; nothing where the definition cannot tell.
void add_turn(const Material& m, const Nut& nut, std::vector<Target>& to) {
  const job::TurnOfNut turn = job::turn_of(m.shaft(), nut);
  if (turn.expected == nullptr || turn.settled == nullptr) return;
  const auto angle = [&](std::string_view name) { return any(radians(turn.expected->si(name))); };
  const Args args{{"end", job::letter_of(nut.end)}, {"turn", angle("turn")},
                  {"least", angle("turn-least")},   {"greatest", angle("turn-greatest")},
                  {"snug", any(*nut.snug)},         {"most", any(job::most_by_settling(*turn.settled))}};
  const auto said = [&](Code code) { return say(Message{code, args}, m.voice()); };
  to.push_back({said(Code{"sheet.turn_of_nut"}), said(Code{"sheet.turn_band"}), said(Code{"sheet.turn_about"})});
  to.push_back({said(Code{"sheet.second_pull"}), said(Code{"sheet.second_most"}), said(Code{"sheet.second_when"})});
}

/// Before any nut is pulled the stack is measured: middle of the band that decides, and how far it reaches.
void add_stack(const Material& m, std::vector<Target>& to) {
  const Bench nothing_read;
  const WorkingPtr length =
      job::stack_length({m.shaft(), *m.order.workshop, m.order.bench != nullptr ? *m.order.bench : nothing_read});
  if (length == nullptr) return;
  const double least = length->si("band-least"), greatest = length->si("band-greatest");
  const auto band = [&](UnitSystem units) {
    return format_with_uncertainty({(least + greatest) / 2, Kind::length}, (greatest - least) / 2,
                                   {.system = units, .decimals = {}, .unit = {}, .currency = {}});
  };
  const UnitSystem units = m.voice().units;
  to.push_back({word("sheet.stack_length", m.voice()), band(units),
                say(Message{Code{"sheet.stack_other"}, {{"other", band(other(units))}}}, m.voice())});
}

std::vector<Target> targets(const Material& m) {
  std::vector<Target> out;
  add_stack(m, out);
  const Shown here{.system = m.voice().units, .decimals = {}, .unit = {}, .currency = {}};
  const Shown there{.system = other(m.voice().units), .decimals = {}, .unit = {}, .currency = {}};
  std::vector<Nut> nuts = m.shaft().spec().nuts;
  std::ranges::sort(nuts, {}, &Nut::order);
  for (const Nut& nut : nuts) {
    const Torque least = (1 - nut.torque_tolerance) * nut.torque, greatest = (1 + nut.torque_tolerance) * nut.torque;
    Args args{{"other", format_quantity(any(nut.torque), there)}, {"least", any(least)}, {"greatest", any(greatest)}};
    out.push_back(
        {say(Message{Code{"sheet.nut_at"}, {{"end", Word{nut.end == End::a ? "end.a" : "end.b"}}}}, m.voice()),
         format_quantity(any(nut.torque), here), say(Message{Code{"sheet.torque_other"}, std::move(args)}, m.voice())});
    add_turn(m, nut, out);
  }
  return out;
}

Pages assembly(const Material& m, const TextMeasure& measure) {
  return assembly_sheet({.head = m.order.head,
                         .shaft = &m.shaft(),
                         .plan = &m.advised(),
                         .steps = m.plan.back,
                         .marks = m.marks,
                         .targets = targets(m)},
                        measure);
}

std::string neighbours(const Material& m, int station) {
  const auto& stations = m.shaft().stations();
  const int last = static_cast<int>(stations.size()) - 1;
  const auto label = [&](int i) { return stations[static_cast<std::size_t>(i)].label; };
  if (station == 0 || station == last)
    return say(Message{Code{"sheet.beside"}, {{"label", label(station == 0 ? 1 : last - 1)}}}, m.voice());
  return say(Message{Code{"sheet.between"}, {{"left", label(station - 1)}, {"right", label(station + 1)}}}, m.voice());
}

Label label_of(const Material& m, int index) {
  const Station& station = m.shaft().stations()[static_cast<std::size_t>(index)];
  const bool rotor = station.kind == StationKind::rotor;
  Label label{.name = station.label, .what = {}, .where = neighbours(m, index), .end = End::a, .code = station.label};
  label.what = station.kind == StationKind::other ? station.own_kind
                                                  : word("station." + std::string{name_of(station.kind)}, m.voice());
  if (rotor) label.where = say(Message{Code{"sheet.tray_number"}, {{"tray", station.number}}}, m.voice());
  return label;
}

Pages labels(const Material& m, const TextMeasure& measure) {
  LabelSheet sheet{.head = m.order.head, .labels = {}};
  for (const int index : m.advised().stations) {
    const StationKind kind = m.shaft().stations()[static_cast<std::size_t>(index)].kind;
    if (kind != StationKind::washer) sheet.labels.push_back(label_of(m, index));
  }
  return label_sheet(sheet, measure);
}

std::string about_of(const Material& m, const job::Shown& shown) {
  std::string part;
  if (shown.where.part == Where::Part::rotor && shown.where.number > 0)
    part = say(Message{Code{"sheet.rotor_number"}, {{"rotor", shown.where.number}}}, m.voice());
  else if (shown.where.part == Where::Part::station && shown.where.number > 0)
    part = m.shaft().stations()[static_cast<std::size_t>(shown.where.number) - 1].label;
  if (part.empty() || shown.about.empty()) return part + shown.about;
  return part + ", " + shown.about;
}

Pages workings(const Material& m, const TextMeasure& measure) {
  WorkingSheet sheet{.head = m.order.head, .workings = {}};
  if (m.advised_working() != nullptr) {
    sheet.workings.push_back(m.advised_working());
    sheet.about.emplace_back();
  }
  if (m.order.bench != nullptr) {
    const job::JobReport report =
        job::judge_through({m.shaft(), *m.order.workshop, *m.order.bench}, job::Stage::release);
    for (const job::StageReport& stage : report.stages)
      for (const job::Shown& shown : stage.workings) {
        sheet.workings.push_back(shown.working);
        sheet.about.push_back(about_of(m, shown));
      }
  }
  return sheet.workings.empty() ? Pages{} : working_sheet(sheet, measure);
}

Pages hand_over_record(const Material& m, const TextMeasure& measure) {
  HandOverOrder order = *m.order.record;
  order.head = m.order.head;
  return hand_over_sheet(hand_over(order), measure);
}

/// The ways are offered for what was chosen to be opened, whatever came off in the end: that is what was asked for.
Pages quote_of(const Material& m, const TextMeasure& measure) {
  const job::WayChosen* chosen = m.order.record ? m.order.record->job->state.way : nullptr;
  Results<job::PlanReport> offered =
      job::offer(m.shaft(), *m.order.workshop, chosen != nullptr ? chosen->open : m.order.rotors);
  if (!offered) return {};
  return quote_sheet(quote({.shaft = &m.shaft(),
                            .workshop = m.order.workshop,
                            .offered = &*offered,
                            .record = m.order.record ? &*m.order.record : nullptr,
                            .marks = m.marks,
                            .head = m.order.head}),
                     measure);
}

enum class Needs { nothing, rotors, record };
struct SheetKind {
  const char* name;  ///< Its title is the word "sheet.<name>".
  Needs needs;
  Pages (*make)(const Material&, const TextMeasure&);
};
constexpr SheetKind kKinds[] = {{"quote", Needs::rotors, quote_of},
                                {"tear-down", Needs::rotors, tear_down},
                                {"bench", Needs::rotors, bench},
                                {"kit", Needs::rotors, kit},
                                {"timing-map", Needs::nothing, timing_map},
                                {"assembly", Needs::rotors, assembly},
                                {"labels", Needs::rotors, labels},
                                {"workings", Needs::rotors, workings},
                                {"hand-over", Needs::record, hand_over_record}};

/// Why a sheet cannot be made; none: it can.
std::optional<Problem> lacking(const SheetKind& kind, const SheetOrder& order) {
  if (kind.needs == Needs::rotors && order.rotors.empty())
    return Problem{Code{"sheet.needs_rotors"}, "open", {}, {}, std::nullopt};
  if (kind.needs == Needs::record && !order.record)
    return Problem{Code{"sheet.needs_record"}, "sheet", kind.name, {}, std::nullopt};
  return std::nullopt;
}

Results<Material> material_of(const SheetOrder& order) {
  const std::optional<timing::Reference> reference = reference_of(order);
  Result<timing::Map> map = timing::map(*order.shaft, reference);
  if (!map) return tl::unexpected(std::vector<Problem>{std::move(map.error())});
  Material m{order, {}, *std::move(map), {}};
  for (const timing::RotorMarks& r : m.map.rotors)
    m.marks.push_back(
        {azimuth_of_flat(r.flat_a, order.shaft->flats()), azimuth_of_flat(r.flat_b, order.shaft->flats())});
  if (order.rotors.empty()) return m;
  Results<job::PlanReport> plan = job::plan(*order.shaft, *order.workshop, order.rotors, reference);
  if (!plan) return tl::unexpected(std::move(plan.error()));
  m.plan = *std::move(plan);
  return m;
}

}  // namespace

const std::vector<std::string>& sheet_names() {
  static const std::vector<std::string> kNames = [] {
    std::vector<std::string> names;
    for (const SheetKind& kind : kKinds) names.emplace_back(kind.name);
    return names;
  }();
  return kNames;
}

Results<std::vector<Composed>> compose(const SheetOrder& order, const TextMeasure& measure) {
  const Results<Material> material = material_of(order);
  if (!material) return tl::unexpected(material.error());
  std::vector<Composed> out;
  for (const SheetKind& kind : kKinds) {
    const bool asked = std::ranges::find(order.names, kind.name) != order.names.end();
    if (!order.names.empty() && !asked) continue;
    if (auto problem = lacking(kind, order)) {
      if (asked) return tl::unexpected(std::vector<Problem>{*std::move(problem)});
      continue;
    }
    Pages pages = kind.make(*material, measure);
    if (!pages.empty())
      out.push_back({kind.name, word("sheet." + std::string{kind.name}, order.head.voice), std::move(pages)});
  }
  return out;
}

}  // namespace flatwise::paper
