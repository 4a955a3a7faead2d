// hand_over_samples.h: hand-over records of invented jobs in several states, for tests and the gallery. Header only.
#pragma once

#include <string>
#include <utility>

#include "job/job_samples.h"
#include "paper/hand_over.h"

namespace flatwise::paper {

enum class Ending { complete, blocked, forced };

/// An invented job from booking in to its ending. Rotor 1's half B is read wrong first and put right.
inline job::SampleRecord hand_over_record(Ending ending, int rotors) {
  job::SampleRecord record{{.rotors = rotors}};
  record.do_all();
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

inline Pages hand_over_pages(Ending ending, int rotors, const Head& head, const TextMeasure& measure) {
  const auto open = hand_over_record(ending, rotors).open();
  for (job::Entry& e : open->entries) e.hash = std::string(64, 'a');
  const job::Standing standing = job::standing(*open);
  const HandOverOrder order{.job = open.get(),
                            .standing = &standing,
                            .people = {{"bench", "Bench"}, {"lead", "Lead"}, {"owner", "Owner"}},
                            .head = head,
                            .when = sample_time};
  return hand_over_sheet(hand_over(order), measure);
}

}  // namespace flatwise::paper
