#include "job/service.h"

namespace flatwise::job {

std::optional<NextDue> next_due(const Service& service, std::optional<Time> meter) {
  if (!service.every && !service.seasons && !service.nuts_again) return std::nullopt;
  NextDue due{service, meter, std::nullopt};
  if (service.every && meter) due.due_at = *meter + *service.every;
  return due;
}

std::optional<NextDue> next_due(const Shaft& shaft, const JobState& state) {
  std::optional<Time> meter;
  if (state.booked != nullptr && state.booked->hour_meter) meter = Time::from_si(state.booked->hour_meter->value.si);
  return next_due(shaft.spec().service, meter);
}

}  // namespace flatwise::job
