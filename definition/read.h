// read.h: files that people write (TOML) to shafts, workshops and readings. Handed text, never a path: who calls has the
// file. Every problem is given at once, each with file, line, column and the line as written.
//
//   Results<Shaft> shaft = definition::read_shaft(text, "long-nine.toml");
#pragma once

#include <optional>
#include <span>
#include <string>
#include <string_view>

#include "core/shaft/shaft.h"
#include "job/bench.h"
#include "study/study.h"

namespace flatwise::definition {

/// Reads a shaft file.
///
/// Inputs     UTF-8 TOML text, at most 4 MiB; `file` is the name said in problems and origins.
/// Returns    A checked shaft. Its spec's origins say of every value whether it was given (file:line) or assumed (and
///            why): by path in the file ("rotor.bearing.misalignment"); for a rotor whose line overrides something, and
///            only for that, also "rotors[3].lean" (index from 0); for stations "stations[7].length", ".tolerance",
///            ".outside", ".minutes_off", ".minutes_on".
/// Refuses    Text that is too long, too deep, not UTF-8 or not TOML (the first such problem only); otherwise every
///            unknown key, missing key, wrong type, unreadable or impossible value at once, sorted by line.
[[nodiscard]] Results<Shaft> read_shaft(std::string_view toml, std::string_view file);

/// Reads a workshop file: gauges, stock, own presses. Origins of gauge defaults are in docs/reference/workshop-file.md.
[[nodiscard]] Results<Workshop> read_workshop(std::string_view toml, std::string_view file);

/// What a readings file belongs to, as written; empty where it does not say.
struct Links {
  std::string shaft, workshop;
  Place shaft_place, workshop_place;
};
/// Only the two names: so that the files can be found before the readings are judged against them.
[[nodiscard]] Results<Links> read_links(std::string_view toml, std::string_view file);

/// What readings are read against.
struct BenchContext {
  const Shaft& shaft;
  const Workshop& workshop;
  std::span<const std::string_view> known_questions = {};  ///< Empty: any id is taken.
};
/// Reads a readings file. Rotor numbers, flats, labels, halves, gauges and their uses, and questions are checked
/// against the context; nothing is judged.
[[nodiscard]] Results<Bench> read_bench(std::string_view toml, std::string_view file, const BenchContext& context);
[[nodiscard]] Results<Bench> read_bench(std::string_view toml, std::string_view file, const Shaft& shaft,
                                        const Workshop& workshop,
                                        std::span<const std::string_view> known_questions = {});

/// A study file: its order, and the shaft it is about, as written.
struct StudyFile {
  study::Order order;
  std::string shaft;
  Place shaft_place;
};
/// Reads a study file. Each way's values carry their places, so that what the study refuses is told with its line.
[[nodiscard]] Results<StudyFile> read_study(std::string_view toml, std::string_view file);

}  // namespace flatwise::definition
