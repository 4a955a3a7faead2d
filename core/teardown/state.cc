// What is on the shaft now, told by the rotors that are off; and what makes a state or prices unusable.
#include <algorithm>
#include <cmath>
#include <utility>

#include "core/teardown/split.h"

namespace flatwise::teardown {
namespace {

std::size_t at(int index) { return static_cast<std::size_t>(index); }

Problem refuse(Code code, std::string field, std::string given, Args args) {
  return {code, std::move(field), std::move(given), std::move(args), std::nullopt};
}

bool usable(double v) { return v >= 0 && std::isfinite(v); }

std::optional<Problem> bad_price(const Shaft& shaft) {
  for (int number = 1; number <= shaft.rotor_count(); ++number) {
    const Rotor& r = shaft.rotor(number);
    const std::string where = "rotor " + std::to_string(number);
    if (r.adapter_set.price && !usable(*r.adapter_set.price))
      return refuse(Code{"teardown.price"}, where + ".adapter_set", {}, {{"part", r.adapter_set.part_number}});
    if (r.seal.price && !usable(*r.seal.price))
      return refuse(Code{"teardown.price"}, where + ".seal", {}, {{"part", r.seal.part_number}});
  }
  return std::nullopt;
}

/// One flag a rotor from a list of numbers.
Result<std::vector<bool>> flags(const Shaft& shaft, std::span<const int> numbers, const char* field) {
  std::vector<bool> out(at(shaft.rotor_count()), false);
  for (const int number : numbers) {
    if (number < 1 || number > shaft.rotor_count())
      return tl::unexpected(refuse(Code{"teardown.rotor_range"}, field, std::to_string(number),
                                   {{"least", 1}, {"greatest", shaft.rotor_count()}}));
    out[at(number - 1)] = true;
  }
  return out;
}

/// Stations that can be bare: [0, to) from end A and [from, size) from end B.
struct Bare {
  int to = 0, from = 0;
};

/// With every rotor off only obstacles, and what stands between them, are still there.
Bare bare_but_obstacles(const Shaft& shaft) {
  const auto& stations = shaft.stations();
  const int size = static_cast<int>(stations.size());
  Bare bare{.to = 0, .from = size};
  while (bare.to < size && !stations[at(bare.to)].obstacle) ++bare.to;
  while (bare.from > bare.to && !stations[at(bare.from - 1)].obstacle) --bare.from;
  return bare;
}

Result<Bare> bare_stations(const Shaft& shaft, const std::vector<bool>& off) {
  const int rotors = shaft.rotor_count();
  const int size = static_cast<int>(shaft.stations().size());
  int first_on = 1, last_on = rotors;
  while (first_on <= rotors && off[at(first_on - 1)]) ++first_on;
  if (first_on > rotors) return bare_but_obstacles(shaft);
  while (off[at(last_on - 1)]) --last_on;
  for (int number = first_on; number <= last_on; ++number) {
    if (off[at(number - 1)])
      return tl::unexpected(refuse(Code{"teardown.off_between"}, "still_off", std::to_string(number),
                                   {{"rotor", number}, {"first_on", first_on}, {"last_on", last_on}}));
  }
  return Bare{.to = first_on > 1 ? shaft.station_of_rotor(first_on) : 0,
              .from = last_on < rotors ? shaft.station_of_rotor(last_on) + 1 : size};
}

/// A rotor cannot have come off past what nothing passes.
std::optional<Problem> held_back(const Shaft& shaft, const State& state, std::span<const int> still_off) {
  const auto& stations = shaft.stations();
  const auto obstacle = std::ranges::find_if(stations, [](const Station& s) { return s.obstacle; });
  if (obstacle == stations.end()) return std::nullopt;
  bool possible = true;
  for (std::size_t i = 0; i < stations.size(); ++i) {
    const bool off = !state.on_shaft[i];
    const bool told_off = stations[i].kind == StationKind::rotor &&
                          std::ranges::find(still_off, stations[i].rotor + 1) != still_off.end();
    possible = possible && !(off && stations[i].obstacle) && !(told_off && !off);
  }
  if (possible) return std::nullopt;
  return refuse(Code{"teardown.off_past_obstacle"}, "still_off", {}, {{"station", obstacle->label}});
}

}  // namespace

State all_on(const Shaft& shaft) {
  return {.on_shaft = std::vector<bool>(shaft.stations().size(), true),
          .new_set = std::vector<bool>(at(shaft.rotor_count()), false)};
}

std::optional<Problem> problem_with(const Shaft& shaft, const State& state, const Prices& prices) {
  if (state.on_shaft.size() != shaft.stations().size())
    return refuse(Code{"teardown.state_size"}, "state.on_shaft", std::to_string(state.on_shaft.size()),
                  {{"wanted", static_cast<std::int64_t>(shaft.stations().size())}});
  if (state.new_set.size() != at(shaft.rotor_count()))
    return refuse(Code{"teardown.state_size"}, "state.new_set", std::to_string(state.new_set.size()),
                  {{"wanted", shaft.rotor_count()}});
  if (prices.rate_per_hour && !usable(*prices.rate_per_hour)) return refuse(Code{"teardown.rate"}, "rate", {}, {});
  return bad_price(shaft);
}

Result<State> with_rotors_off(const Shaft& shaft, std::span<const int> still_off, std::span<const int> new_set) {
  auto sets = flags(shaft, new_set, "new_set");
  if (!sets) return tl::unexpected(sets.error());
  const auto off = flags(shaft, still_off, "still_off");
  if (!off) return tl::unexpected(off.error());
  State state = all_on(shaft);
  state.new_set = *std::move(sets);
  if (still_off.empty()) return state;
  const auto bare = bare_stations(shaft, *off);
  if (!bare) return tl::unexpected(bare.error());
  state.in_frame = false;
  for (int i = 0; i < static_cast<int>(state.on_shaft.size()); ++i)
    state.on_shaft[at(i)] = i >= bare->to && i < bare->from;
  if (auto problem = held_back(shaft, state, still_off)) return tl::unexpected(std::move(*problem));
  return state;
}

}  // namespace flatwise::teardown
