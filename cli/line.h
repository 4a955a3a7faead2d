// line.h: what a typed line asks for, and the parts that every verb's arguments are made of. The verbs stand in line_*.cc; help,
// completions and the man page are made from them.
#pragma once

#include <CLI/CLI.hpp>
#include <functional>

#include "cli/checks.h"
#include "cli/text.h"
#include "cli/verbs.h"

namespace flatwise::cli {

using Action = std::function<Status(const Context&)>;

/// What the parsed line asks for; filled by CLI11, which needs places that stay where they are.
struct Line : Refusing {
  bool json = false, why = false, inch = false, metric = false, no_colour = false;
  std::string shaft_file, workshop_file, readings, shell;
  std::string through = "release";
  std::optional<std::string> shaft_instead, workshop_instead;
  MapOptions map;
  PatternOptions pattern;
  PlanOptions plan;
  BendOptions bend;
  BearingOptions bearing;
  PeopleOptions people;
  StudyOptions study;
  NewShaft fresh;
  SheetOptions sheets;
  std::string reference_folder = ".";
  std::string figure;
  std::vector<std::string> inputs;
  std::string first_flat;
  std::vector<std::string> open;
  bool figure_pages = false;
  std::string demo_folder, out_folder = "flatwise-demo";
  ServeOptions serve;
  RecordOptions record;
  std::string port;
  Action action;
};

[[nodiscard]] std::string help(std::string_view verb);

CLI::App* add_verb(CLI::App& app, Line& line, const std::string& name, Action action);

/// A flag stands alone: "--json=no" is refused, not read as something.
CLI::Option* add_switch(CLI::App& verb, const std::string& name, bool& into, const std::string& meaning);

void add_definition_verbs(CLI::App& app, Line& line);  ///< define, map, plan.
void add_reckoning_verbs(CLI::App& app, Line& line);   ///< pattern, bend, bearing, study, figure.
void add_job_verbs(CLI::App& app, Line& line);         ///< The stages, marks, kit, check, sheets.
void add_record_verbs(CLI::App& app, Line& line);      ///< serve, job, people, demo.

}  // namespace flatwise::cli
