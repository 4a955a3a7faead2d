#include "job/service.h"

#include "core/teardown/figures.h"
#include "job/figure_use.h"
#include "job/gauges.h"
#include "job/rules.h"

namespace flatwise::job {

std::optional<Time> NextDue::due_at() const {
  return due == nullptr ? std::nullopt : std::optional{Time::from_si(due->si("due-at"))};
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
