#include "desk/stock.h"

#include <algorithm>

#include "job/kit.h"
#include "record/chain.h"

namespace flatwise::desk {
namespace {

using namespace job;

/// How many of the pieces counted are new, and of which part.
void add_counted(const Shaft& shaft, const JobState& state, int rotor, const std::string& item, int count, int sign,
                 Effects& effects) {
  if (rotor < 1 || rotor > shaft.rotor_count()) return;
  for (const Tray& tray : kit(shaft, {rotor}, state.bench.reused_rings))
    for (const KitItem& line : tray.items)
      if (line.item == item && !line.part.part_number.empty())
        effects[line.part.part_number].shelf += sign * new_among(line, count);
}

/// What is left goes back, but no more than was taken.
int left_of(const JobState& state, const Laid& laid) {
  const LiveAnswers* left = state.answers(question_of(LeftOver{laid.rotor, laid.item, 0}));
  if (left == nullptr) return 0;
  return std::min(laid.count, std::get<LeftOver>(left->first().body).count);
}

}  // namespace

Id id_after(const std::string& of) {
  const std::string hash = record::sha256(of);
  return hash.substr(0, 8) + "-" + hash.substr(8, 4) + "-8" + hash.substr(13, 3) + "-a" + hash.substr(17, 3) + "-" +
         hash.substr(20, 12);
}

Effects stock_effects(const Shaft& shaft, const JobState& state) {
  Effects effects;
  for (const Entry* entry : state.added) {
    if (const auto* ordered = std::get_if<Ordered>(&entry->body)) effects[ordered->part_number].order += ordered->count;
    if (const auto* received = std::get_if<Received>(&entry->body)) {
      effects[received->part_number].order -= received->count;
      effects[received->part_number].shelf += received->count;
    }
  }
  for (const auto& [question, answers] : state.live)
    if (const auto* laid = std::get_if<Laid>(&answers.first().body))
      add_counted(shaft, state, laid->rotor, laid->item, laid->count - left_of(state, *laid), -1, effects);
  std::erase_if(effects, [](const auto& e) { return e.second == Effect{}; });
  return effects;
}

std::vector<StockMove> moves_between(const Effects& before, const Effects& after, const Entry& by) {
  Effects change = after;
  for (const auto& [part, effect] : before) {
    change[part].shelf -= effect.shelf;
    change[part].order -= effect.order;
  }
  std::vector<StockMove> moves;
  for (const auto& [part, effect] : change)
    if (effect != Effect{})
      moves.push_back(
          {id_after(by.id + "/" + part), part, effect.shelf, effect.order, by.id, by.at, by.by, MoveReason::job});
  return moves;
}

}  // namespace flatwise::desk
