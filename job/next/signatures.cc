// Signatures and second looks: who stands for what the record holds.
#include <algorithm>
#include <map>
#include <set>

#include "job/release.h"
#include "job/seen.h"

namespace flatwise::job {
namespace {

struct MarksOfRotor {
  std::map<Half, std::set<int>> flats;
  std::set<Id> readers;
  const Entry* last = nullptr;  ///< The last mark read.
  bool again = false;           ///< Looked at since by somebody else who had seen that mark.
  const Entry* missed = nullptr;
};

void take_mark(const JobState& state, const Entry& entry, const MarkSeen& mark, MarksOfRotor& rotor) {
  rotor.flats[mark.half].insert(mark.flat);
  rotor.again = false;
  rotor.last = &entry;
  rotor.missed = nullptr;
  // What was replaced was set by somebody too, but is not what stands on the shaft now.
  if (!state.corrected_by.contains(entry.id)) rotor.readers.insert(entry.by);
}

void take_look(const JobState& state, const Entry& entry, const SecondLook& look, MarksOfRotor& rotor) {
  if (look.right != Reply::yes) {
    rotor.again = false;
  } else if (!rotor.readers.contains(entry.by)) {
    const bool missed = rotor.last != nullptr && !Seen{state, entry}(*rotor.last);
    rotor.again = rotor.again || !missed;
    rotor.missed = missed && !rotor.again ? rotor.last : nullptr;
  }
}

}  // namespace

std::array<Signature, 3> signatures(const JobState& state) {
  std::array<Signature, 3> out{{{Role::bench}, {Role::lead}, {Role::owner}}};
  for (const Entry& entry : state.entries) {
    if (const auto* sign = std::get_if<Signed>(&entry.body)) {
      const auto own = static_cast<std::size_t>(sign->as);
      const bool in_turn = std::all_of(out.begin(), out.begin() + static_cast<std::ptrdiff_t>(own),
                                       [](const Signature& s) { return s.entry != nullptr; });
      if (!in_turn) continue;
      const Entry* unseen = unseen_change(state, entry);
      if (unseen == nullptr)
        out[own] = {sign->as, &entry, nullptr};
      else if (out[own].entry == nullptr)
        out[own] = {sign->as, nullptr, unseen, true};
    } else if (changes_what_was_signed(state, entry)) {
      for (Signature& s : out)
        if (s.entry != nullptr) s = {s.as, nullptr, &entry};
    }
  }
  return out;
}

std::vector<SecondLookWanted> second_looks_wanted(const JobState& state) {
  std::map<int, MarksOfRotor> rotors;
  for (const Entry& entry : state.entries) {
    if (const auto* mark = std::get_if<MarkSeen>(&entry.body)) take_mark(state, entry, *mark, rotors[mark->rotor]);
    const auto* look = std::get_if<SecondLook>(&entry.body);
    if (look == nullptr || state.corrected_by.contains(entry.id)) continue;
    take_look(state, entry, *look, rotors[look->rotor]);
  }
  std::vector<SecondLookWanted> out;
  for (const auto& [number, rotor] : rotors) {
    const bool ever_other = std::ranges::any_of(rotor.flats, [](const auto& half) { return half.second.size() > 1; });
    if (ever_other && !rotor.again) out.push_back({number, rotor.missed});
  }
  return out;
}

}  // namespace flatwise::job
