// entry_says.h: an entry as a code with arguments: for the log, the hand-over record, the shell and the words beside an answer.
#pragma once

#include "core/shaft/shaft.h"
#include "job/entry.h"

namespace flatwise::job {

/// The whole entry in one sentence: "Rotor 4, half B read on flat 2."
[[nodiscard]] Message entry_says(const Shaft& shaft, const EntryBody& body);
/// Only what it answers, as short as can be: "flat 2", "3.9365 in", "yes". What was typed stays as it was typed.
[[nodiscard]] Message answer_says(const EntryBody& body);

/// "bench", "lead", "owner" as a word.
[[nodiscard]] Word role_word(Role role);

}  // namespace flatwise::job
