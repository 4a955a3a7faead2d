// machine_view.h: one machine: its history and the hours on every bearing (schemas/api/openapi.json, MachineView).
#pragma once

#include <map>
#include <span>
#include <string>

#include "core/shaft/shaft.h"
#include "job/store.h"
#include "wire/json.h"

namespace flatwise::view {

/// What is known of a machine. Nothing is copied; all must outlive the call.
struct MachineSubject {
  const job::Machine& machine;
  std::string customer;  ///< Name.
  const Shaft& shaft;    ///< The newest version.
  const Workshop& workshop;
  std::span<const job::HourReading> hours;  ///< In any order.
  std::span<const job::BearingLife> lives;
  std::span<const job::JobRow> jobs;
  std::map<job::Id, std::string> people = {};  ///< Names of who read the meter.
};

/// The hours hang under their rotors, the longest solid bar is the oldest bearing. Hours of a job: the last reading of the meter on
/// or before the day it was booked in.
[[nodiscard]] wire::Json machine_view(const MachineSubject& subject, const Voice& voice);

}  // namespace flatwise::view
