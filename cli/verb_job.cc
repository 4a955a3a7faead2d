#include <nlohmann/json.hpp>
#include <ostream>

#include "cli/render.h"
#include "cli/text.h"
#include "cli/verbs.h"
#include "job/kit.h"
#include "wire/json.h"

namespace flatwise::cli {
namespace {

wire::Json money_json(const Voice& voice, std::optional<double> price) {
  return price ? wire::to_json(any_money(*price), voice) : wire::Json(nullptr);
}

wire::Json kit_json(const Context& context, const std::vector<job::Tray>& trays,
                    const std::vector<job::PartWanted>& parts) {
  wire::Json json{{"trays", wire::Json::array()}, {"parts", wire::Json::array()}};
  for (const job::Tray& tray : trays) {
    wire::Json one{{"rotor", tray.rotor}, {"items", wire::Json::array()}};
    for (const job::KitItem& i : tray.items)
      one["items"].push_back({{"item", i.item},
                              {"count", i.count},
                              {"new", i.fresh},
                              {"reuse_if_sound", i.reuse_if_sound},
                              {"part_number", i.part.part_number}});
    json["trays"].push_back(std::move(one));
  }
  for (const job::PartWanted& p : parts) {
    wire::Json one{{"item", p.item},
                   {"part_number", p.part.part_number},
                   {"wanted", p.wanted},
                   {"price", money_json(context.voice, p.price)}};
    one["on_shelf"] = p.on_shelf ? wire::Json(*p.on_shelf) : wire::Json(nullptr);
    one["on_order"] = p.on_order ? wire::Json(*p.on_order) : wire::Json(nullptr);
    json["parts"].push_back(std::move(one));
  }
  return json;
}

std::string dash(const std::optional<int>& n) { return n ? std::to_string(*n) : "–"; }

std::string kit_text(const Context& context, const std::vector<job::Tray>& trays,
                     const std::vector<job::PartWanted>& parts) {
  const auto w = [&](std::string_view id) { return word(id, context.voice); };
  Table table{
      .head = {w("cli.head.tray"), w("cli.head.item"), w("cli.head.count"), w("cli.head.new"), w("cli.head.part")},
      .rows = {},
      .right = "rlrrl"};
  for (const job::Tray& tray : trays)
    for (const job::KitItem& i : tray.items)
      table.rows.push_back({std::to_string(tray.rotor), w("item." + std::string{i.item}), std::to_string(i.count),
                            std::to_string(i.fresh), printable(i.part.part_number)});
  Table stock{.head = {w("cli.head.part"), w("cli.head.item"), w("cli.head.wanted"), w("cli.head.shelf"),
                       w("cli.head.order"), w("cli.head.price")},
              .rows = {},
              .right = "llrrrr"};
  for (const job::PartWanted& p : parts)
    stock.rows.push_back({printable(p.part.part_number), w("item." + std::string{p.item}), std::to_string(p.wanted),
                          dash(p.on_shelf), dash(p.on_order),
                          p.price ? render_value(context, any_money(*p.price), {}) : "–"});
  return lay_out(table) + "\n" + lay_out(stock);
}

}  // namespace

std::string job_head(const Context& context, const Job& job) {
  std::string out = toned(printable(job.shaft.spec().name), Tone::strong, context.colour);
  if (!job.bench.job.empty()) out += ", " + say(Message{Code{"cli.job"}, {{"job", job.bench.job}}}, context.voice);
  out += "\n";
  if (job.shaft.spec().invented) out += word("cli.invented", context.voice) + "\n";
  return out;
}

Context speaking(const Context& context, const Job& job) {
  Context own = context;
  own.voice.currency = job.workshop.currency;
  return own;
}

Status judge_stage(const Context& context, const JobFiles& files, job::Stage stage) {
  const Results<Job> job = load_job(context, files);
  if (!job) return refuse(context, job.error());
  const Context own = speaking(context, *job);
  const job::StageReport report = job::judge(job->facts(), stage);
  if (own.json)
    *own.out << wire::dump(wire::to_json(report, own.voice));
  else
    *own.out << job_head(own, *job) << render(own, report);
  return status_of(report.worst());
}

Status judge_all(const Context& context, const JobFiles& files, job::Stage through) {
  const Results<Job> job = load_job(context, files);
  if (!job) return refuse(context, job.error());
  const Context own = speaking(context, *job);
  const job::JobReport report = job::judge_through(job->facts(), through);
  if (own.json)
    *own.out << wire::dump(wire::to_json(report, own.voice));
  else
    *own.out << job_head(own, *job) << "\n" << render(own, report);
  return status_of(report.worst());
}

Status list_kit(const Context& context, const JobFiles& files) {
  const Results<Job> job = load_job(context, files);
  if (!job) return refuse(context, job.error());
  const Context own = speaking(context, *job);
  const auto trays = job::kit(job->shaft, job->bench.came_off, job->bench.reused_rings);
  const auto parts = job::parts_wanted(trays, job->workshop, job->bench.counted);
  const job::StageReport report = job::judge(job->facts(), job::Stage::kit);
  if (own.json) {
    wire::Json json = kit_json(own, trays, parts);
    json["report"] = wire::to_json(report, own.voice);
    *own.out << wire::dump(json);
  } else {
    *own.out << job_head(own, *job) << kit_text(own, trays, parts) << "\n" << render(own, report);
  }
  return status_of(report.worst());
}

}  // namespace flatwise::cli
