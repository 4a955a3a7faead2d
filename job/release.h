// release.h: what keeps a job from a complete release, and who has signed for what the record holds.
#pragma once

#include <array>
#include <vector>

#include "job/next.h"

namespace flatwise::job::standing_parts {
struct Course;
}

namespace flatwise::job {

/// One of the three signatures, in the order they are made: bench, lead, owner.
struct Signature {
  Role as = Role::bench;
  const Entry* entry = nullptr;    ///< None: nobody signed, or what was signed for has changed since.
  const Entry* void_by = nullptr;  ///< The entry that changed it; none where nobody had signed.
  bool unseen = false;  ///< That one was there already when the signature came, but the signer had not seen it.
};
/// A signature holds while nothing came after it but notes, photos, later signatures and second looks that found the marks
/// right; and while nothing else came before it that the signer had not seen (job/seen.h). One made before the one that it must
/// follow does not hold.
[[nodiscard]] std::array<Signature, 3> signatures(const JobState& state);

struct SecondLookWanted {
  int rotor = 0;
  const Entry* missed = nullptr;  ///< Somebody looked, but had not seen this mark; none where nobody looked.
  friend bool operator==(const SecondLookWanted&, const SecondLookWanted&) = default;
};
/// Rotors whose marks were read on more than one flat in this job, and that nobody but who read them has looked at since, knowing the
/// last one read.
[[nodiscard]] std::vector<SecondLookWanted> second_looks_wanted(const JobState& state);

/// One that somebody's signature lifts.
[[nodiscard]] bool is_of_signature(const Block& block);

/// Everything missing, out, or that cannot be told, in the order it is to be dealt with: by stage, what a hand can be hurt by
/// first, then out before cannot tell before unanswered. Signatures come last. Empty: the release is complete.
[[nodiscard]] std::vector<Block> release_blocks(const Facts& facts, const JobState& state, const JobReport& report);
/// The same for a course that is known already: standing() looks at it too.
[[nodiscard]] std::vector<Block> release_blocks(const Facts& facts, const JobState& state, const JobReport& report,
                                                const standing_parts::Course& course);

}  // namespace flatwise::job
