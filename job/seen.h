// seen.h: what the author of an entry had seen of the record when he made it. An entry can come late: from a tablet that slept, or
// that had no network. What somebody signed, agreed to or looked at is what he saw then, not what the record holds when it comes.
#pragma once

#include "job/job_state.h"

namespace flatwise::job {

/// Model      All up to the entry that it follows, and what the same person wrote on the same device: that waited there with it.
/// Inputs     `by` may be in the record or about to go into it; the entries asked about are in the record of the state.
class Seen {
 public:
  Seen(const JobState& state, const Entry& by);
  [[nodiscard]] bool operator()(const Entry& other) const {
    return (last_ != nullptr && &other <= last_) || (other.by == by_->by && other.on == by_->on);
  }

 private:
  const Entry* by_;
  const Entry* last_ = nullptr;  ///< The last one that was there; none: nothing was.
};

/// Whether what stood signed before the entry is no longer what the record holds: all but notes, photos, signatures, a release, and
/// second looks that found the marks right.
[[nodiscard]] bool changes_what_was_signed(const JobState& state, const Entry& entry);

/// The first entry before `by` that changes the record and that its author had not seen; nullptr: he had seen all of them.
[[nodiscard]] const Entry* unseen_change(const JobState& state, const Entry& by);

/// The customer's answer to the way that is chosen now: one that was given, or written down, before the way was seen is an answer to
/// another way. None while nobody asked, while answers differ, and while it is disputed what is opened.
[[nodiscard]] const CustomerSaid* customer_on_way(const JobState& state);
[[nodiscard]] bool customer_agreed(const JobState& state);

}  // namespace flatwise::job
