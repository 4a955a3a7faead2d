// Parts: what lies on the shelf, what jobs still take of it, and every move with its reason.
#include <algorithm>
#include <map>
#include <memory>
#include <nlohmann/json.hpp>

#include "desk/kept.h"
#include "job/kit.h"
#include "job/shop_rules.h"
#include "server/input.h"
#include "server/live.h"
#include "server/people.h"
#include "server/times.h"
#include "view/shop.h"

namespace flatwise::server {
namespace {

using wire::Json;
namespace fields = job::fields;
using job::MoveReason;

constexpr int kMostPieces = 1'000'000;

/// Of what is changed in place; what lies there moves by moves.
std::string tag_of_part(const std::string& name, int least) { return tag_of(name + '\0' + std::to_string(least)); }

/// The part as its author had it before him, by If-Match; none where he says nothing of that. Another tag than of what is there is
/// a fault, but for one who sends once more what stands there by now.
job::Stored<std::optional<StockItem>> seen_part(const Workshop& workshop, const StockItem& part,
                                                std::string_view if_match) {
  if (if_match.empty()) return std::nullopt;
  const StockItem* there = job::find_stock(workshop, part.part_number);
  if (there != nullptr &&
      (if_match == tag_of_part(there->name, there->least) || (there->name == part.name && there->least == part.least)))
    return *there;
  return tl::unexpected(job::StoreFault{job::StoreFault::Kind::changed, "part " + part.part_number});
}

Reply stock_reply(const Call& call, int status) {
  const auto workshop = call.store.workshop();
  if (!workshop) return fault_reply(workshop.error(), "stock");
  const auto rows = call.store.open_jobs();
  if (!rows) return fault_reply(rows.error(), "jobs");
  std::vector<std::shared_ptr<const desk::Opened>> opened;
  std::vector<view::JobWants> jobs;
  for (const job::JobRow& row : *rows) {
    auto one = call.shared.opened.get(call.store, row.id);
    if (!one) return refusal_reply(one.error(), "jobs", call.voice);
    opened.push_back(*std::move(one));
    jobs.push_back({row.id, row.number, opened.back()->standing.wanted});
  }
  Json json = view::stock_view(*workshop, jobs, call.voice);
  for (Json& row : json["stock"]) row["tag"] = tag_of_part(row["name"], row["least"]);
  return json_reply(json, status);
}

/// Whether this very move is in the record already; only the newest are looked at, as it is sent again at once.
bool moved_already(job::Store& store, const job::Id& id) {
  constexpr int kLooked = 500;
  const auto moves = store.moves(kLooked);
  return moves && std::ranges::find(*moves, id, &job::StockMove::id) != moves->end();
}

}  // namespace

Reply get_stock(const Call& call) { return stock_reply(call, 200); }

Reply post_stock(const Call& call) {
  Input input{call};
  job::StockMove move;
  input(id_field("id"), move.id);
  input(id_field("by"), move.by);
  input(fields::text("part_number", 1, 80), move.part_number);
  input(fields::word("reason", fields::kMoveReasons), move.reason);
  input(fields::whole("shelf", -kMostPieces, kMostPieces), move.shelf);
  input(fields::whole("order", -kMostPieces, kMostPieces), move.order);
  input(fields::whole("counted", 0, kMostPieces), move.counted);
  input(fields::text("why", 0, 200), move.why);
  if (auto refused = input.refused(call.voice)) return *std::move(refused);
  const auto people = call.store.people();
  if (!people) return fault_reply(people.error(), "by");
  const auto workshop = call.store.workshop();
  if (!workshop) return fault_reply(workshop.error(), "stock");
  std::vector<Problem> problems;
  if (auto wrong = problem_of_sender(*people, move.by)) problems.push_back(*std::move(wrong));
  if (auto wrong = job::problem_of(move)) problems.push_back(*std::move(wrong));
  if (problems.empty() && !moved_already(call.store, move.id))
    if (auto wrong = job::problem_of_level(*workshop, move)) problems.push_back(*std::move(wrong));
  if (!problems.empty()) return problem_reply(422, std::move(problems), call.voice);
  move.at = now();
  if (const auto moved = call.store.move_stock(move); !moved) return fault_reply(moved.error(), "id");
  call.shared.live.poke();
  return stock_reply(call, 201);
}

Reply post_part(const Call& call) {
  Input input{call};
  StockItem part;
  job::Id by;
  input(id_field("by"), by);
  input(fields::text("part_number", 1, 80), part.part_number);
  input(fields::text("name", 1, 120), part.name);
  input(fields::whole("least", 0, kMostPieces), part.least);
  if (auto refused = input.refused(call.voice)) return *std::move(refused);
  const auto people = call.store.people();
  if (!people) return fault_reply(people.error(), "by");
  if (auto wrong = problem_of_sender(*people, by)) return problem_reply(422, *std::move(wrong), call.voice);
  const auto workshop = call.store.workshop();
  if (!workshop) return fault_reply(workshop.error(), "stock");
  const auto seen = seen_part(*workshop, part, call.request.if_match);
  if (!seen) return fault_reply(seen.error(), "part_number");
  if (const auto kept = call.store.put_part(part, *seen); !kept) return fault_reply(kept.error(), "part_number");
  call.shared.live.poke();
  return stock_reply(call, 201);
}

Reply get_moves(const Call& call) {
  constexpr int kUsual = 50;
  const auto moves = call.store.moves(call.query.whole("limit").value_or(kUsual));
  if (!moves) return fault_reply(moves.error(), "moves");
  const auto people = call.store.people();
  if (!people) return fault_reply(people.error(), "people");
  std::map<job::Id, std::string> jobs;
  for (const job::StockMove& m : *moves) {
    if (m.reason != MoveReason::job || jobs.contains(m.why)) continue;
    const auto entry = call.store.entry(m.why);
    if (!entry) return fault_reply(entry.error(), "moves");
    if (!*entry) continue;
    const auto row = call.store.job((*entry)->job);
    if (!row) return fault_reply(row.error(), "moves");
    jobs[m.why] = row->number;
  }
  return json_reply(view::moves_view({*moves, *people, jobs}, call.voice));
}

}  // namespace flatwise::server
