#include "job/service.h"

#include "core/teardown/figures.h"
#include "core/units/format.h"
#include "job/figure_use.h"
#include "job/gauges.h"
#include "job/rules.h"

namespace flatwise::job {

std::optional<Time> NextDue::due_at() const {
  return due == nullptr ? std::nullopt : std::optional{Time::from_si(due->si("due-at"))};
}

DueSaid said(const NextDue& due) {
  Args args;
  const auto add_hours = [&](std::string_view name, const std::optional<Time>& time) {
    if (time) args.emplace_back(name, format_quantity(any(*time), {.decimals = {}, .unit = "h", .currency = {}}));
  };
  add_hours("due_at", due.due_at());
  add_hours("meter", due.meter);
  add_hours("every", due.by.every);
  add_hours("nuts", due.by.nuts_again);
  if (due.by.seasons) args.emplace_back("seasons", *due.by.seasons);
  DueSaid out{{due.due_at()     ? Code{"job.due_at"}
               : due.by.every   ? Code{"job.due_after"}
               : due.by.seasons ? Code{"job.due_season"}
                                : Code{"job.due_nuts"},
               args},
              {}};
  if (due.by.every) out.because.push_back({Code{"job.due_says"}, args});
  if (due.by.nuts_again && (due.by.every || due.by.seasons))
    out.because.push_back({Code{"job.due_nuts_again"}, std::move(args)});
  return out;
}

std::optional<NextDue> next_due(const Shaft& shaft, std::optional<Input> meter) {
  const Service& service = shaft.spec().service;
  if (!service.every && !service.seasons && !service.nuts_again) return std::nullopt;
  NextDue due{service, std::nullopt, nullptr};
  if (!meter) return due;
  due.meter = Time::from_si(std::get<AnyQuantity>(meter->value).si);
  if (!service.every) return due;
  Results<Working> working =
      use(teardown::figures(), "next-due",
          {*std::move(meter), given("every", any(*service.every), shaft.origin("service.every"))});
  if (working) due.due = std::make_shared<const Working>(*std::move(working));
  return due;
}

std::optional<NextDue> next_due(const Shaft& shaft, const Bench& bench) {
  if (!bench.hour_meter) return next_due(shaft, std::nullopt);
  const Told<Entered>& read = *bench.hour_meter;
  return next_due(shaft, measured("meter", read.value.value, text_of(read.place), read.typed));
}

namespace rules {

void due(const Facts& facts, StageReport& report) {
  const std::optional<NextDue> next = next_due(facts.shaft, facts.bench);
  if (next && next->due) report.workings.push_back({{}, {}, next->due});
}

}  // namespace rules
}  // namespace flatwise::job
