// Plan and quote: three ways side by side at one scale. The eye finds first the heavy frame round the advised way.
#include <algorithm>

#include "drawing/bars.h"
#include "job/kit.h"
#include "job/plan.h"
#include "job/seen.h"
#include "view/blocks.h"
#include "view/play.h"
#include "view/rails.h"
#include "view/rotor_lists.h"
#include "view/stage_sheets.h"

namespace flatwise::view {
namespace {

constexpr double kWayWidth = 100;  // One column of three at 1440.

/// One way with what it means for this shop.
struct Offer {
  const job::Way* way = nullptr;
  std::string price;
};

std::string_view sentence_of(std::string_view way) {
  if (way == "failed_only") return "view.way.failed_only";
  return way == "all" ? "view.way.all" : "view.way.disturbed";
}

// Outline comes off, hatched is renewed.
drawing::DisplayList way_strip(const Shaft& shaft, const job::OpenJob& job, const teardown::Plan& plan) {
  std::vector<drawing::StationState> states(shaft.stations().size());
  for (const int i : plan.stations) states[static_cast<std::size_t>(i)].body = drawing::Body::off;
  for (const int rotor : job::rotors_renewed(plan))
    states[static_cast<std::size_t>(shaft.station_of_rotor(rotor))].renew = true;
  drawing::DisplayList list =
      drawing::shaft_strip(shaft, states, marks_read(job), {.width = kWayWidth, .numbers = false, .draw_marks = false})
          .list;
  for (drawing::Item& item : list.items)  // Only to look at: a tap on it means nothing.
    if (auto* path = std::get_if<drawing::Path>(&item)) path->id.clear();
  return list;
}

std::string comes_off(const Screen& screen, const teardown::Plan& plan) {
  const bool a = plan.split.from_a > 0;
  const bool b = plan.split.from_b > 0;
  const Code code = a && b ? Code{"view.plan.from_both"} : b ? Code{"view.plan.from_b"} : Code{"view.plan.from_a"};
  return tell(screen, code, {{"rotors", rotor_runs(screen, plan.rotors)}});
}

std::string money(const Screen& screen, const std::optional<double>& value) {
  return value ? shown(any_money(*value), screen.voice) : tell(screen, Code{"view.plan.price_open"});
}

TableCell price_cell(const Screen& screen, const teardown::Plan& plan) {
  TableCell cell{.text = money(screen, plan.money), .tone = "strong"};
  if (plan.work_price && plan.parts_price)
    cell.detail = tell(screen, Code{"view.plan.price_of"},
                       {{"work", any_money(*plan.work_price)}, {"parts", any_money(*plan.parts_price)}});
  return cell;
}

/// The price as a bar, all ways on one scale.
TableCell price_bar(const teardown::Plan& plan, double greatest) {
  TableCell cell;
  if (!plan.work_price || !plan.parts_price || !(greatest > 0)) return cell;
  cell.bar = drawing::band_bar({.least = *plan.parts_price, .greatest = *plan.money, .end = greatest}, 60);
  return cell;
}

double greatest_price(const std::vector<job::Way>& ways) {
  double greatest = 0;
  for (const job::Way& way : ways) greatest = std::max(greatest, way.plan.money.value_or(0));
  return greatest;
}

job::WayChosen choice_of(std::string_view way, const std::vector<int>& open) { return {open, std::string{way}}; }

Json ways_json(const Subject& subject, const Screen& screen, const job::PlanReport& report,
               const std::vector<int>& open) {
  const Shaft& shaft = subject.job.shaft;
  std::vector<WayIs> ways;
  std::vector<WaysRow> rows;
  for (const Code label : {Code{"view.plan.row.off"}, Code{"view.plan.row.renewed"}, Code{"view.plan.row.time"},
                           Code{"view.plan.row.price"}, Code{"view.plan.row.words"}})
    rows.push_back({tell(screen, label), {}});
  for (std::size_t i = 0; i < report.ways.size(); ++i) {
    const job::Way& way = report.ways[i];
    const bool advised = i == report.advised;
    const bool chosen = subject.job.state.way != nullptr && subject.job.state.way->way == way.name;
    const std::string name = word("way." + std::string{way.name}, screen.voice);
    const Code label = chosen ? Code{"view.plan.chosen"} : Code{"view.plan.choose"};
    const int number = static_cast<int>(i) + 1;
    ways.push_back({std::string{way.name}, std::to_string(number) + "  " + capital(name), advised, chosen,
                    way_strip(shaft, subject.job, way.plan),
                    action(tell(screen, label, {{"number", number}}),
                           do_record({draft(subject, choice_of(way.name, open))}, GoTo{.stage = job::Stage::plan}),
                           {.tone = advised && !chosen ? "next" : "plain", .says = name})});
    rows[0].cells.push_back({.text = comes_off(screen, way.plan)});
    const std::vector<int> fresh = job::rotors_renewed(way.plan);
    rows[1].cells.push_back(
        {.text = fresh.empty() ? tell(screen, Code{"view.plan.seals_only"}) : rotor_runs(screen, fresh),
         .tone = "strong"});
    rows[2].cells.push_back({.text = shown(any(way.plan.time()), screen.voice)});
    TableCell price = price_cell(screen, way.plan);
    price.bar = price_bar(way.plan, greatest_price(report.ways)).bar;
    rows[3].cells.push_back(std::move(price));
    rows[4].cells.push_back({.text = say(sentence_of(way.name), {}, screen.voice)});
  }
  std::vector<std::string> says;
  for (const Message& message : report.says) says.push_back(say(message, screen.voice));
  return ways_block(ways, rows, std::move(says));
}

const job::Way* chosen_way(const Subject& subject, const job::PlanReport& report) {
  if (subject.job.state.way == nullptr) return nullptr;
  const auto it = std::ranges::find(report.ways, std::string_view{subject.job.state.way->way}, &job::Way::name);
  return it == report.ways.end() ? nullptr : &*it;
}

/// The price that the customer answered to, where it is another one than today's.
std::optional<std::string> other_price(const Subject& subject, const std::optional<Entered>& today) {
  const job::LiveAnswers* live = subject.job.state.answers(job::question_of(job::CustomerSaid{}));
  if (live == nullptr || live->entries.empty()) return std::nullopt;
  const auto* said = std::get_if<job::CustomerSaid>(&live->first().body);
  if (said == nullptr || !said->price || (today && said->price->value == today->value)) return std::nullopt;
  return said->price->typed;
}

/// The customer's yes or no to the way that is chosen, with the price it was asked for.
Json customer_json(const Subject& subject, const Screen& screen, const job::Way& way) {
  const std::string name = word("way." + std::string{way.name}, screen.voice);
  std::optional<Entered> price;
  if (way.plan.money) {
    const AnyQuantity value = any_money(*way.plan.money);
    price = Entered{
        value, std::nullopt,
        format_quantity(
            value,
            {.system = screen.voice.units, .decimals = 2, .unit = {}, .currency = subject.job.workshop.currency})};
  }
  Args detail;
  if (const auto other = other_price(subject, price)) detail.emplace_back("other", *other);
  const Ask ask{
      .label = tell(screen, Code{"view.plan.customer"},
                    {{"customer", subject.customer}, {"way", name}, {"price", money(screen, way.plan.money)}}),
      .detail = tell(screen, Code{"view.plan.customer_detail"}, std::move(detail))};
  return yes_no(subject, screen, ask,
                [&](Reply reply) { return job::EntryBody{job::CustomerSaid{reply, subject.customer, {}, price}}; });
}

std::string laid_text(const Screen& screen, int taken) {
  return taken == 0 ? std::string{} : tell(screen, Code{"view.plan.laid"}, {{"count", taken}});
}

/// Parts of the chosen way against the shelf; what is missing is ordered after the yes, what comes is taken in.
Json parts_json(const Subject& subject, const Screen& screen, const job::Way& way) {
  std::vector<job::Tray> trays =
      job::kit(subject.job.shaft, job::rotors_renewed(way.plan), subject.job.state.bench.reused_rings);
  std::vector<TableRow> rows;
  const job::PartsDue due = job::parts_due(subject.job.state);
  for (const job::PartWanted& part : job::parts_wanted(trays, subject.job.workshop, subject.job.state.bench.counted)) {
    const std::string& number = part.part.part_number;
    const int open = due.contains(number) ? due.at(number) : 0;
    const int missing = part.on_shelf ? part.to_take() - *part.on_shelf - std::max(open, 0) : 0;
    TableRow row{.cells = {{.text = word("item." + std::string{part.item}, screen.voice), .detail = number},
                           {.text = std::to_string(part.wanted), .detail = laid_text(screen, part.taken)},
                           {.text = part.on_shelf ? std::to_string(*part.on_shelf) : "–"},
                           {.text = std::to_string(std::max(open, 0))}},
                 .chosen = {},
                 .action = nullptr};
    if (missing > 0) {
      const bool yes = job::customer_agreed(subject.job.state);
      row.cells[2].flag = "waits";
      row.action = action(tell(screen, Code{"view.plan.order"}, {{"count", missing}}),
                          do_record({draft(subject, job::Ordered{number, missing, {}})}),
                          {.blocked = yes ? std::string{} : tell(screen, Code{"view.plan.order_waits"})});
    } else if (open > 0) {
      row.action = action(tell(screen, Code{"view.plan.receive"}, {{"count", open}}),
                          do_record({draft(subject, job::Received{number, open})}));
    }
    rows.push_back(std::move(row));
  }
  return table_block({{tell(screen, Code{"view.plan.part"})},
                      {tell(screen, Code{"view.plan.wanted"}), true},
                      {tell(screen, Code{"view.plan.on_shelf"}), true},
                      {tell(screen, Code{"view.plan.on_order"}), true}},
                     rows, tell(screen, Code{"view.plan.parts"}));
}

/// The chosen rotor in or out of what is to be opened: the ways are worked out from that.
Json open_switch(const Subject& subject, const Screen& screen, const Spot& spot, const std::vector<int>& open) {
  const int rotor = rotor_at(subject.job.shaft, spot.station);
  if (rotor == 0) return nullptr;
  std::vector<int> other = open;
  const bool in = std::ranges::find(open, rotor) != open.end();
  if (in)
    std::erase(other, rotor);
  else
    other.insert(std::ranges::upper_bound(other, rotor), rotor);
  const Code label = in ? Code{"view.plan.leave_out"} : Code{"view.plan.take_in"};
  const std::string_view way =
      subject.job.state.way != nullptr ? std::string_view{subject.job.state.way->way} : std::string_view{"disturbed"};
  const std::string blocked = other.empty() ? tell(screen, Code{"view.plan.none_left"}) : std::string{};
  Json drafts = other.empty() ? draft(subject, choice_of(way, open)) : draft(subject, choice_of(way, other));
  return actions_block({action(tell(screen, label, {{"rotor", rotor}}),
                               do_record({std::move(drafts)}, GoTo{.stage = job::Stage::plan, .station = spot.station}),
                               {.blocked = blocked})});
}

}  // namespace

SheetParts plan_sheet(const Subject& subject, const Screen& screen, const Spot& spot) {
  SheetParts parts{.title = tell(screen, Code{"view.plan.title"}), .aside = tell(screen, Code{"view.plan.aside"})};
  const std::vector<int> open = rotors_to_open(subject);
  if (open.empty()) {
    parts.head.push_back(text_block(tell(screen, Code{"view.plan.nothing"})));
    if (Json choose = open_switch(subject, screen, spot, open); !choose.is_null()) parts.head.push_back(choose);
    return parts;
  }
  const Results<job::PlanReport> report = job::offer(subject.job.shaft, subject.job.workshop, open);
  if (!report) {
    for (const Problem& problem : report.error()) {
      const SaidProblem said = say(problem, screen.voice);
      parts.head.push_back(text_block(said.read + ". " + said.mend, "read", "out"));
    }
    return parts;
  }
  parts.head.push_back(text_block(tell(screen, Code{"view.plan.for"}, {{"rotors", rotor_runs(screen, open)}})));
  parts.head.push_back(ways_json(subject, screen, *report, open));
  if (Json choose = open_switch(subject, screen, spot, open); !choose.is_null()) parts.head.push_back(choose);
  if (const job::Way* way = chosen_way(subject, *report)) {
    parts.left.push_back(asks_block("rows", {customer_json(subject, screen, *way)}));
    parts.right.push_back(parts_json(subject, screen, *way));
    if (way->working != nullptr)
      parts.left.push_back(
          working_block(word("way." + std::string{way->name}, screen.voice), *way->working, screen.voice));
  }
  return parts;
}

CellSays plan_cell(const Subject& subject, const Screen& screen, int station) {
  CellSays cell;
  const int rotor = rotor_at(subject.job.shaft, station);
  if (rotor == 0) return cell;
  if (const job::WayChosen* way = subject.job.state.way) {
    if (std::ranges::find(way->open, rotor) == way->open.end()) return cell;
    cell.word = tell(screen, Code{"view.cell.open"});
    cell.flag = "stopped";
    cell.tone = "strong";
  } else if (worn(subject, rotor) == Worn::worn || wrong_sign_at(subject, job::at_rotor(rotor))) {
    cell.word = tell(screen, Code{"view.cell.suspect"});
    cell.flag = "unknown";
    cell.tone = "strong";
  }
  return cell;
}

}  // namespace flatwise::view
