// play.h: side play and signs of a rotor as they were told at booking in, and the blocks that show what a swing means.
#pragma once

#include <vector>

#include "view/bench_view.h"

namespace flatwise::view {

/// The swing that was read and agreed; nullptr where there is none.
[[nodiscard]] const job::PlayRead* play_of(const Subject& subject, int rotor);
/// Where the dial stands: as told, else at the tip, as the rules take it.
[[nodiscard]] Length dial_radius(const Subject& subject, int rotor);
/// A swing or any sign was told of this rotor.
[[nodiscard]] bool anything_found(const Subject& subject, int rotor);
/// A sign that says something is wrong was told of a part.
[[nodiscard]] bool wrong_sign_at(const Subject& subject, Where part);

/// What the swing says against a new bearing.
enum class Worn { not_read, read, as_new, doubt, worn };
[[nodiscard]] Worn worn(const Subject& subject, int rotor);

/// Bar with two scales, and the clearance as a range with its working; nothing where the swing was not read.
[[nodiscard]] std::vector<Json> play_blocks(const Subject& subject, const Screen& screen, int rotor);

}  // namespace flatwise::view
