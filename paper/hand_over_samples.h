// hand_over_samples.h: hand-over records of invented jobs in several states, for tests and the gallery. Header only.
#pragma once

#include <string>
#include <utility>

#include "job/job_samples.h"
#include "paper/hand_over.h"

namespace flatwise::paper {

enum class Ending { complete, blocked, forced };

/// Limits of the run and intervals of service as a definition may give them.
inline SampleShaft served(int rotors) {
  return {
      .rotors = rotors,
      .test_run = {.shortest = minutes(20), .greatest_rise = kelvins(40), .greatest_vibration = Speed::from_si(4.5e-3)},
      .service = {.every = 400.0 * minutes(60), .seasons = 1, .nuts_again = minutes(600)}};
}

/// The run with its readings: hanger B near its limit for vibration, but inside.
inline void run(job::SampleRecord& record) {
  Gauge meter;
  meter.id = "V1";
  meter.use = Gauge::Use::vibration_meter;
  meter.kind = Kind::speed;
  meter.calibration_expanded_si = 0.1e-3;
  meter.resolution_si = 0.1e-3;
  meter.calibrated_until = {2030, 1, 1};
  record.workshop().gauges.push_back(meter);
  const auto read = [&](job::RunQuantity what, int station, AnyQuantity value, const char* typed, const char* gauge) {
    record.write(job::RunRead{what, station, {value, {}, typed}, gauge});
  };
  read(job::RunQuantity::minutes, 0, any(minutes(40)), "40 min", "");
  read(job::RunQuantity::room, 0, any(celsius(14)), "14 °C", "T1");
  const int a = record.station("hanger A"), b = record.station("hanger B");
  read(job::RunQuantity::hanger, a, any(celsius(40)), "40 °C", "T1");
  read(job::RunQuantity::hanger, b, any(celsius(44)), "44 °C", "T1");
  read(job::RunQuantity::vibration, a, any(Speed::from_si(2.3e-3)), "2.3 mm/s", "V1");
  read(job::RunQuantity::vibration, b, any(Speed::from_si(4.3e-3)), "4.3 mm/s", "V1");
}

/// An invented job from booking in to its ending. Rotor 1's half B is read wrong first and put right.
inline job::SampleRecord hand_over_record(Ending ending, int rotors) {
  job::SampleRecord record{served(rotors)};
  record.do_all();
  run(record);
  const job::Id wrong = record.write(job::MarkSeen{1, Half::b, 3}, "bench", record.live(job::MarkSeen{1, Half::b, 3}));
  if (ending == Ending::blocked) return record;
  record.write(job::MarkSeen{1, Half::b, 4}, "bench", {wrong});
  if (ending == Ending::complete) {
    record.write(job::SecondLook{1, Reply::yes}, "lead");
    record.sign_all();
  }
  const bool forced = ending == Ending::forced;
  record.write(job::Released{forced, forced ? "Harvest waits; the second look follows on Monday." : ""}, "lead");
  return record;
}

inline std::string sample_time(job::Instant at) {
  const auto minute = at.ms / 60'000 % (24 * 60);
  const auto two = [](std::int64_t n) { return (n < 10 ? "0" : "") + std::to_string(n); };
  return "3 Feb " + two(minute / 60) + ":" + two(minute % 60);
}

inline Head sample_head(Paper paper = Paper::a4, UnitSystem units = UnitSystem::metric) {
  Head h;
  h.shaft = "Sample, invented";
  h.job = "31";
  h.workshop = "sample shop";
  h.invented = true;
  h.printed = "3 Feb 14:20";
  h.from = "entry 60";
  h.paper = paper;
  h.voice.units = units;
  h.voice.currency = "USD";
  return h;
}

/// Invented too.
struct SampleNames {
  std::string machine = "Looseners 2", customer = "Orchard growers, east", lead = "Lead";
};

inline Pages hand_over_pages(const job::SampleRecord& record, const Head& head, const TextMeasure& measure,
                             const SampleNames& names = {}) {
  const auto open = record.open();
  for (job::Entry& e : open->entries) e.hash = std::string(64, 'a');
  const job::Standing standing = job::standing(*open);
  const HandOverOrder order{.job = open.get(),
                            .standing = &standing,
                            .people = {{"bench", "Bench"}, {"lead", names.lead}, {"owner", "Owner"}},
                            .machine = names.machine,
                            .customer = names.customer,
                            .head = head,
                            .when = sample_time};
  return hand_over_sheet(hand_over(order), measure);
}
inline Pages hand_over_pages(Ending ending, int rotors, const Head& head, const TextMeasure& measure) {
  return hand_over_pages(hand_over_record(ending, rotors), head, measure);
}

}  // namespace flatwise::paper
