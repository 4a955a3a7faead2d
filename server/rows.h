// rows.h: rows of the record as the API writes them.
#pragma once

#include <string>
#include <string_view>

#include "job/store.h"
#include "wire/json.h"

namespace flatwise::server {

/// A job's card; the quick one.
void add_job(std::string& out, const job::JobRow& row);
[[nodiscard]] wire::Json person_json(const job::Person& person);
[[nodiscard]] wire::Json customer_json(const job::Customer& customer);
[[nodiscard]] wire::Json machine_json(const job::Machine& machine);
[[nodiscard]] std::string_view name_of(job::Role role);

}  // namespace flatwise::server
