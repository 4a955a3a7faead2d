// Signatures and second looks: who stands for what the record holds.
#include <algorithm>
#include <map>
#include <set>

#include "job/release.h"

namespace flatwise::job {
namespace {

bool only_adds(const EntryBody& body) {
  return std::holds_alternative<NoteWritten>(body) || std::holds_alternative<PhotoTaken>(body);
}

bool takes_back_only_notes(const JobState& state, const Entry& entry) {
  if (!std::holds_alternative<Withdrawn>(entry.body) || entry.corrects.empty()) return false;
  return std::ranges::all_of(entry.corrects, [&](const Id& id) {
    const auto it = std::ranges::find(state.entries, id, &Entry::id);
    return it != state.entries.end() && only_adds(it->body);
  });
}

/// Whether a signature that stands before the entry no longer says what the record holds.
bool changes_what_was_signed(const JobState& state, const Entry& entry) {
  if (only_adds(entry.body) || takes_back_only_notes(state, entry)) return false;
  if (std::holds_alternative<Signed>(entry.body) || std::holds_alternative<Released>(entry.body)) return false;
  const auto* look = std::get_if<SecondLook>(&entry.body);
  return look == nullptr || look->right != Reply::yes;
}

struct MarksOfRotor {
  std::map<Half, std::set<int>> flats;
  std::set<Id> readers;
  bool again = false;  ///< Looked at by somebody else since.
};

void take_mark(const JobState& state, const Entry& entry, const MarkSeen& mark, MarksOfRotor& rotor) {
  rotor.flats[mark.half].insert(mark.flat);
  rotor.again = false;
  // What was replaced was set by somebody too, but is not what stands on the shaft now.
  if (!state.corrected_by.contains(entry.id)) rotor.readers.insert(entry.by);
}

}  // namespace

std::array<Signature, 3> signatures(const JobState& state) {
  std::array<Signature, 3> out{{{Role::bench}, {Role::lead}, {Role::owner}}};
  for (const Entry& entry : state.entries) {
    if (const auto* sign = std::get_if<Signed>(&entry.body)) {
      const auto own = static_cast<std::size_t>(sign->as);
      const bool in_turn = std::all_of(out.begin(), out.begin() + static_cast<std::ptrdiff_t>(own),
                                       [](const Signature& s) { return s.entry != nullptr; });
      if (in_turn) out[own] = {sign->as, &entry, nullptr};
    } else if (changes_what_was_signed(state, entry)) {
      for (Signature& s : out)
        if (s.entry != nullptr) s = {s.as, nullptr, &entry};
    }
  }
  return out;
}

std::vector<int> second_looks_wanted(const JobState& state) {
  std::map<int, MarksOfRotor> rotors;
  for (const Entry& entry : state.entries) {
    if (const auto* mark = std::get_if<MarkSeen>(&entry.body)) take_mark(state, entry, *mark, rotors[mark->rotor]);
    const auto* look = std::get_if<SecondLook>(&entry.body);
    if (look == nullptr || state.corrected_by.contains(entry.id)) continue;
    MarksOfRotor& rotor = rotors[look->rotor];
    if (look->right == Reply::yes && !rotor.readers.contains(entry.by)) rotor.again = true;
    if (look->right != Reply::yes) rotor.again = false;
  }
  std::vector<int> out;
  for (const auto& [number, rotor] : rotors) {
    const bool ever_other = std::ranges::any_of(rotor.flats, [](const auto& half) { return half.second.size() > 1; });
    if (ever_other && !rotor.again) out.push_back(number);
  }
  return out;
}

}  // namespace flatwise::job
