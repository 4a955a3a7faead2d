// The figures of the test run: a hanger's heat above the room, the vibration of its housing.
#include <algorithm>
#include <array>
#include <cmath>
#include <utility>

#include "core/metrology/figures_parts.h"
#include "core/metrology/run.h"

namespace flatwise::metrology {
namespace {

constexpr double kHottest_K = 573.15, kColdest_K = 223.15;
constexpr double kMostRise_K = 200, kMostVibration_m_s = 1;
constexpr std::string_view kSupports[] = {"rigid", "flexible"};
constexpr std::string_view kGroups[] = {"over_300_kW", "15_to_300_kW"};
constexpr std::string_view kZones[] = {"A", "B", "C", "D"};

/// What a figure says about a value and its limit.
struct Says {
  Code out, cannot_tell, no_certificate, find, settle;
  Kind kind;
  double finest_si;     ///< Nearer to the limit nothing decides.
  double readings = 1;  ///< That share the doubt.
};
constexpr Says kRise{Code{"metrology.rise_out"},
                     Code{"metrology.rise_cannot_tell"},
                     Code{"metrology.rise_no_certificate"},
                     Code{"metrology.find_the_heat"},
                     Code{"metrology.settle_thermometer"},
                     Kind::temperature_rise,
                     kFinestThermometer_K,
                     2};
constexpr Says kVibration{Code{"metrology.vibration_out"},
                          Code{"metrology.vibration_cannot_tell"},
                          Code{"metrology.vibration_no_certificate"},
                          Code{"metrology.find_the_shake"},
                          Code{"metrology.settle_meter"},
                          Kind::speed,
                          kFinestMeter_m_s};

Message settles(const Says& says, double margin_si) {
  const double holds = std::abs(margin_si) / std::sqrt(says.readings);
  if (holds < says.finest_si) return {Code{"metrology.settle_run_none"}, {}};
  return {says.settle, {{"holds", AnyQuantity{holds, says.kind}}}};
}

/// The answer and what it says; without a certificate nothing is told, and without a limit nothing is judged.
void judge_into(Computed& out, const Given& in, const std::optional<Sized>& value, const Says& says) {
  const auto quantity = [&](double si) { return AnyQuantity{si, says.kind}; };
  if (value) out.u.front() = value->uncertainty();
  if (!in.has("greatest")) return;
  const AnyQuantity read = std::get<AnyQuantity>(out.values.front());
  Args args{{"value", read}, {"limit", quantity(in.si("greatest"))}};
  if (!value) {
    out.answer = Answer::cannot_tell;
    out.findings.push_back({says.no_certificate, Severity::cannot_tell, args, {}, Message{says.settle, {}}});
    return;
  }
  const Rule rule = rule_from(in);
  const Judged judged = judge(*value, Bounds{.greatest_si = in.si("greatest")}, rule);
  out.answer = judged.answer;
  if (judged.answer == Answer::in) return;
  args.emplace_back("uncertainty", quantity(value->guard_si(rule)));
  args.emplace_back("by", quantity(std::abs(judged.margin_si)));
  if (judged.answer == Answer::out) {
    out.findings.push_back({says.out, Severity::out, std::move(args), {}, Message{says.find, {}}});
    return;
  }
  args.emplace_back("side", judged.margin_si >= 0 ? Word{"metrology.inside"} : Word{"metrology.outside_of"});
  out.findings.push_back(
      {says.cannot_tell, Severity::cannot_tell, std::move(args), {}, settles(says, judged.margin_si)});
}

/// Names of one instrument's inputs.
struct InstrumentNames {
  std::string_view reading, calibration, resolution, repeatability, readings;
};
constexpr InstrumentNames kHanger{"hanger", "hanger-calibration", "hanger-resolution", "hanger-repeatability",
                                  "hanger-repeatability-readings"};
constexpr InstrumentNames kRoom{"room", "room-calibration", "room-resolution", "room-repeatability",
                                "room-repeatability-readings"};
constexpr InstrumentNames kMeter{"vibration", "calibration", "resolution", "repeatability", "repeatability-readings"};

std::vector<InputSpec> instrument_inputs(const InstrumentNames& n, Kind step, double most) {
  return {
      optional(from_nought(n.calibration, "U_c", step, most)), optional(from_nought(n.resolution, "res", step, most)),
      optional(from_nought(n.repeatability, "s", step, most)), optional(between(n.readings, "n", Kind::count, 3, 1e6))};
}

Result<InstrumentRead> read_from(const Given& in, const InstrumentNames& n) {
  InstrumentRead read{.value_si = in.si(n.reading)};
  if (in.has(n.calibration)) read.calibration_si = in.si(n.calibration);
  if (in.has(n.resolution)) read.resolution_si = in.si(n.resolution);
  if (in.has(n.repeatability) != in.has(n.readings))
    return tl::unexpected(Problem{Code{"metrology.study_incomplete"}, std::string{n.repeatability}, {}, {}, {}});
  if (in.has(n.repeatability)) read.scatter = Component{in.si(n.repeatability), 1, in.si(n.readings) - 1};
  return read;
}

Result<Computed> compute_rise(const Given& in) {
  const auto hanger = read_from(in, kHanger), room = read_from(in, kRoom);
  if (!hanger) return tl::unexpected(hanger.error());
  if (!room) return tl::unexpected(room.error());
  Computed out{.values = {AnyQuantity{hanger->value_si - room->value_si, Kind::temperature_rise}}, .u = {std::nullopt}};
  judge_into(out, in, rise_above(*hanger, *room), kRise);
  return out;
}

FigureSpec rise_figure() {
  return {.name = "run-rise",
          .formula = "Δt = t_h − t_r;  in: Δt + U ≤ Δt_max;  out: Δt − U > Δt_max",
          .inputs = joined(
              {{between("hanger", "t_h", Kind::temperature, kColdest_K, kHottest_K),
                between("room", "t_r", Kind::temperature, kColdest_K, kHottest_K)},
               instrument_inputs(kHanger, Kind::temperature_rise, kMostRise_K),
               instrument_inputs(kRoom, Kind::temperature_rise, kMostRise_K),
               {optional(above_nought("greatest", "Δt_max", Kind::temperature_rise, kMostRise_K)), rule_input()}}),
          .outputs = {{"rise", "Δt", Kind::temperature_rise}},
          .sources = {"ISO14253-1", "GUM"},
          .compute = compute_rise,
          .example = {{"hanger=40 °C", "room=14 °C", "hanger-calibration=0.5 K", "room-calibration=0.5 K",
                       "hanger-resolution=0.1 K", "room-resolution=0.1 K", "greatest=40 K"},
                      "rise=26 K"}};
}

Result<Computed> compute_vibration(const Given& in) {
  const auto read = read_from(in, kMeter);
  if (!read) return tl::unexpected(read.error());
  const auto index_in = [&](std::string_view name, const auto& words) {
    return static_cast<int>(std::ranges::find(words, std::string_view{in.text(name)}) - std::begin(words));
  };
  const Zone zone =
      vibration_zone(Speed::from_si(read->value_si), static_cast<MachineGroup>(index_in("machine", kGroups)),
                     static_cast<Support>(index_in("support", kSupports)));
  const auto at = static_cast<std::size_t>(zone);
  Computed out{.values = {AnyQuantity{read->value_si, Kind::speed}, std::string{kZones[at]}},
               .u = {std::nullopt, std::nullopt}};
  judge_into(out, in, sized_from(*read), kVibration);
  constexpr std::array<const char*, 4> kSays{"metrology.zone_a", "metrology.zone_b", "metrology.zone_c",
                                             "metrology.zone_d"};
  if (!in.has("greatest"))
    out.findings.push_back({Code{"metrology.vibration_zone"},
                            Severity::note,
                            {{"value", AnyQuantity{read->value_si, Kind::speed}},
                             {"zone", std::string{kZones[at]}},
                             {"says", Word{kSays[at]}}},
                            {},
                            std::nullopt});
  return out;
}

FigureSpec vibration_figure() {
  return {.name = "run-vibration",
          .formula = "in: v + U ≤ v_max;  out: v − U > v_max;  zone by the boundaries A/B, B/C, C/D",
          .inputs = joined({{from_nought("vibration", "v", Kind::speed, kMostVibration_m_s)},
                            instrument_inputs(kMeter, Kind::speed, kMostVibration_m_s),
                            {optional(above_nought("greatest", "v_max", Kind::speed, kMostVibration_m_s)), rule_input(),
                             assumed_word("machine", "15_to_300_kW", kGroups, kCommonPractice),
                             assumed_word("support", "flexible", kSupports, "a light frame on wheels")}}),
          .outputs = {{"level", "v", Kind::speed}, {"zone", "", Kind::ratio, true}},
          .sources = {"ISO14253-1", "GUM", "ISO20816-3"},
          .compute = compute_vibration,
          .example = {{"vibration=2.3 mm/s", "calibration=0.12 mm/s", "resolution=0.1 mm/s", "greatest=4.5 mm/s"},
                      "level=2.3 mm/s"}};
}

}  // namespace

std::vector<FigureSpec> run_figures() { return {rise_figure(), vibration_figure()}; }

}  // namespace flatwise::metrology
