#include "view/play.h"

#include <algorithm>
#include <nlohmann/json.hpp>

#include "view/blocks.h"

namespace flatwise::view {

const job::PlayRead* play_of(const Subject& subject, int rotor) {
  job::PlayRead asked;
  asked.rotor = rotor;
  return subject.job.state.agreed<job::PlayRead>(job::question_of(asked));
}

Length dial_radius(const Subject& subject, int rotor) {
  const job::PlayRead* play = play_of(subject, rotor);
  if (play != nullptr && play->radius) return play->radius->length();
  return subject.job.shaft.rotor(rotor).tip_radius;
}

bool wrong_sign_at(const Subject& subject, Where part) {
  return std::ranges::any_of(subject.job.state.bench.looks, [&](const PartLook& look) {
    return look.part == part && look.sign != Sign::sound && look.reply.value == Reply::yes;
  });
}

bool anything_found(const Subject& subject, int rotor) {
  return play_of(subject, rotor) != nullptr ||
         std::ranges::any_of(subject.job.state.bench.looks,
                             [&](const PartLook& look) { return look.part == job::at_rotor(rotor); });
}

Worn worn(const Subject& subject, int rotor) {
  return play_of(subject, rotor) == nullptr ? Worn::not_read : Worn::read;
}

std::vector<Json> play_blocks(const Subject&, const Screen&, int) { return {}; }

}  // namespace flatwise::view
