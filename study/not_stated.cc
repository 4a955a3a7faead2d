// What the figures of a bearing rest on and nobody stated, read off their workings.
#include "study/outcome.h"

namespace flatwise::study {
namespace {

bool assumed_in(const Working& working, std::string_view input) {
  const Input* found = working.input(input);
  return found != nullptr && found->origin.kind == OriginKind::assumed;
}

bool inside_assumed(const Working& geometry) {
  return geometry.input("balls") == nullptr || assumed_in(geometry, "ball-share");
}

bool grooves_assumed(const Working& geometry) {
  return assumed_in(geometry, "inner-groove-share") || assumed_in(geometry, "outer-groove-share");
}

bool rated_from_inside(const Working& turn) {
  return turn.input("dynamic-rating") == nullptr || turn.input("static-rating") == nullptr;
}

}  // namespace

std::vector<std::string> not_stated(const BearingTold& bearing, const Voice& voice) {
  std::vector<std::string> said;
  const auto say_if = [&](bool assumed, std::string_view key) {
    if (assumed) said.push_back(word(key, voice));
  };
  const Working& geometry = *bearing.geometry;
  const Working& turn = *bearing.turn;
  say_if(inside_assumed(geometry), "study.assumed.balls");
  say_if(grooves_assumed(geometry), "study.assumed.grooves");
  say_if(rated_from_inside(turn), "study.assumed.ratings");
  say_if(assumed_in(turn, "viscosity-ratio"), "study.assumed.oil");
  say_if(assumed_in(turn, "cleanliness"), "study.assumed.dirt");
  if (bearing.fitted == nullptr) return said;
  say_if(bearing.fitted->input("seat-diameter") == nullptr, "study.assumed.seat");
  say_if(assumed_in(*bearing.fitted, "warmer"), "study.assumed.warmth");
  return said;
}

}  // namespace flatwise::study
