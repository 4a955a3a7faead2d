#include "paper/quote.h"

#include <algorithm>
#include <iterator>

#include "job/seen.h"
#include "paper/sheet_parts.h"

namespace flatwise::paper {
namespace {

/// What every part of the quote is told from.
struct Source {
  const QuoteOrder& order;

  [[nodiscard]] const Voice& voice() const { return order.head.voice; }
  [[nodiscard]] std::string say(const Message& m) const { return flatwise::say(m, voice()); }
  [[nodiscard]] std::string word(const Word& w) const { return flatwise::word(w.id, voice()); }
  [[nodiscard]] const job::JobState* state() const {
    return order.record == nullptr ? nullptr : &order.record->job->state;
  }
  [[nodiscard]] std::string value(AnyQuantity quantity) const {
    return format_quantity(quantity,
                           {.system = voice().units, .decimals = {}, .unit = {}, .currency = voice().currency});
  }
  [[nodiscard]] std::string money(const std::optional<double>& amount) const {
    return amount ? value(any_money(*amount)) : std::string{};
  }
  [[nodiscard]] std::string rotors(const std::vector<int>& numbers) const {
    return say({Code{"paper.quote_rotors"},
                {{"count", static_cast<std::int64_t>(numbers.size())}, {"rotors", numbers_words(numbers, voice())}}});
  }
  [[nodiscard]] std::string name_of(const job::Way& way) const { return word(Word{"way." + std::string{way.name}}); }
  /// The way that was chosen; where none is, or not agreed, the advised one is what the quote asks for.
  [[nodiscard]] bool chosen(const job::Way& way) const {
    return state() != nullptr && state()->way != nullptr && state()->way->way == way.name;
  }
  [[nodiscard]] std::size_t asked() const {
    const auto& ways = order.offered->ways;
    const auto it = std::ranges::find_if(ways, [&](const job::Way& way) { return chosen(way); });
    return it == ways.end() ? order.offered->advised : static_cast<std::size_t>(std::distance(ways.begin(), it));
  }
};

std::vector<drawing::StationState> states_of(const Shaft& shaft, const teardown::Plan& plan) {
  std::vector<drawing::StationState> states(shaft.stations().size());
  for (const int i : plan.stations) states[static_cast<std::size_t>(i)].body = drawing::Body::off;
  for (const int rotor : job::rotors_renewed(plan))
    states[static_cast<std::size_t>(shaft.station_of_rotor(rotor))].renew = true;
  return states;
}

std::string comes_off(const Source& from, const teardown::Plan& plan) {
  const bool a = plan.split.from_a > 0, b = plan.split.from_b > 0;
  const Code code = a && b ? Code{"view.plan.from_both"} : b ? Code{"view.plan.from_b"} : Code{"view.plan.from_a"};
  return from.say({code, {{"rotors", from.rotors(plan.rotors)}}});
}

QuoteWay way_of(const Source& from, std::size_t index) {
  const job::Way& way = from.order.offered->ways[index];
  const std::vector<int> renewed = job::rotors_renewed(way.plan);
  QuoteWay out{.name = std::to_string(index + 1) + "  " + from.name_of(way), .framed = index == from.asked()};
  if (from.chosen(way))
    out.chip = from.word(Word{"paper.quote_chosen"});
  else if (index == from.order.offered->advised)
    out.chip = from.word(Word{"paper.quote_advised"});
  out.states = states_of(*from.order.shaft, way.plan);
  out.comes_off = comes_off(from, way.plan);
  out.renewed = renewed.empty() ? from.word(Word{"view.plan.seals_only"}) : from.rotors(renewed);
  out.time = from.value(any(way.plan.time()));
  out.price = way.plan.money ? from.money(way.plan.money) : from.word(Word{"view.plan.price_open"});
  if (way.plan.work_price && way.plan.parts_price)
    out.price_of = from.say({Code{"view.plan.price_of"},
                             {{"work", any_money(*way.plan.work_price)}, {"parts", any_money(*way.plan.parts_price)}}});
  out.words = from.word(Word{way.name == "failed_only" ? "view.way.failed_only"
                             : way.name == "all"       ? "view.way.all"
                                                       : "view.way.disturbed"});
  return out;
}

void fill_parts(const Source& from, const teardown::Plan& plan, QuoteSheet& sheet) {
  for (const teardown::PartsDue& due : plan.due) {
    if (due.count == 0) continue;
    const bool set = due.kind == teardown::PartsDue::Kind::adapter_set;
    QuotePart part{
        .item = from.word(Word{set ? "item.set" : "item.seal"}), .part_number = due.part_number, .count = due.count};
    part.each = due.price_each ? from.money(due.price_each) : from.word(Word{"paper.quote_no_price"});
    if (due.price_each) part.sum = from.money(*due.price_each * due.count);
    sheet.parts.push_back(std::move(part));
  }
  const auto known = [&](const std::optional<double>& amount) {
    return amount ? from.money(amount) : from.word(Word{"paper.quote_no_price"});
  };
  Args args{{"time", any(plan.time())}};
  if (const auto& rate = from.order.workshop->rate_per_hour)
    args.emplace_back("rate", AnyQuantity{*rate / 3600, Kind::money_rate});
  sheet.work = from.say({Code{"paper.quote_work"}, std::move(args)});
  sheet.work_price = known(plan.work_price);
  sheet.parts_price = known(plan.parts_price);
}

/// The live entry that holds an answer of the customer: who wrote it down, and when.
const job::Entry* entry_of(const job::JobState& state, const job::CustomerSaid& said) {
  const job::LiveAnswers* answers = state.answers("customer_said");
  if (answers == nullptr) return nullptr;
  for (const job::Entry* entry : answers->entries)
    if (std::get_if<job::CustomerSaid>(&entry->body) == &said) return entry;
  return nullptr;
}

std::string said_line(const Source& from, const job::CustomerSaid& said) {
  Args args{{"reply", Word{said.reply == Reply::yes ? "reply.yes" : "reply.no"}}};
  args.emplace_back("who", said.who.empty() ? from.word(Word{"paper.customer"}) : said.who);
  if (!said.how.empty()) args.emplace_back("how", said.how);
  if (said.price) args.emplace_back("price", said.price->typed);
  if (const job::Entry* entry = entry_of(*from.state(), said)) {
    const auto it = from.order.record->people.find(entry->by);
    args.emplace_back("when", from.order.record->when(entry->at));
    args.emplace_back("by", it == from.order.record->people.end() ? entry->by : it->second);
    args.emplace_back("number", entry->number);
  }
  return from.say({Code{"paper.quote_said"}, std::move(args)});
}

/// A yes counts for the way its author had seen; one that came before a change of the way is shown, and asked for again.
void fill_yes(const Source& from, QuoteSheet& sheet) {
  const job::JobState* state = from.state();
  const job::LiveAnswers* answers = state == nullptr ? nullptr : state->answers("customer_said");
  if (answers == nullptr || answers->entries.empty()) {
    sheet.yes = {from.word(Word{"paper.quote_nobody"})};
    return;
  }
  const job::CustomerSaid* counts = job::customer_on_way(*state);
  if (counts == nullptr) {
    for (const job::Entry* entry : answers->entries)
      if (const auto* said = std::get_if<job::CustomerSaid>(&entry->body)) sheet.yes.push_back(said_line(from, *said));
    sheet.yes.push_back(from.word(Word{answers->agreed ? "paper.quote_other_way" : "paper.quote_disputed"}));
    return;
  }
  sheet.yes = {said_line(from, *counts)};
  sheet.flag = counts->reply == Reply::yes ? drawing::Flag::done : drawing::Flag::stopped;
  const auto& now = from.order.offered->ways[from.asked()].plan.money;
  if (now && counts->price && std::abs(counts->price->value.si - *now) >= 0.005)
    sheet.yes.push_back(from.say({Code{"paper.quote_price_moved"}, {{"now", any_money(*now)}}}));
}

void fill_record(const Source& from, QuoteSheet& sheet) {
  if (from.order.record == nullptr) return;
  sheet.machine = from.order.record->machine;
  sheet.customer = from.order.record->customer;
  const job::BookedIn* booked = from.state()->booked;
  if (booked == nullptr) return;
  if (booked->hour_meter) sheet.hour_meter = booked->hour_meter->typed;
  if (!booked->complaint.empty())
    sheet.complaint = from.say({Code{"paper.quote_complaint"}, {{"complaint", booked->complaint}}});
}

}  // namespace

QuoteSheet quote(const QuoteOrder& order) {
  const Source from{order};
  QuoteSheet sheet;
  sheet.head = order.head;
  sheet.shaft = order.shaft;
  sheet.marks = order.marks;
  const job::Way& asked = order.offered->ways[from.asked()];
  sheet.price = asked.plan.money ? from.money(asked.plan.money) : from.word(Word{"view.plan.price_open"});
  sheet.way = from.say({Code{"paper.quote_asked"},
                        {{"number", static_cast<std::int64_t>(from.asked()) + 1},
                         {"way", from.name_of(asked)},
                         {"off", comes_off(from, asked.plan)},
                         {"time", any(asked.plan.time())}}});
  for (std::size_t i = 0; i < order.offered->ways.size(); ++i) sheet.ways.push_back(way_of(from, i));
  fill_parts(from, asked.plan, sheet);
  fill_yes(from, sheet);
  fill_record(from, sheet);
  if (from.asked() == order.offered->advised)
    for (const Message& why : order.offered->says) sheet.why.push_back(from.say(why));
  for (const Word& line :
       {Word{"paper.quote_holds_for"}, Word{"paper.quote_holds_more"}, Word{"paper.quote_holds_tax"}})
    sheet.holds.push_back(from.word(line));
  return sheet;
}

}  // namespace flatwise::paper
