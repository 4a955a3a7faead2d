// define, map and plan: what needs a shaft's file only.
#include "cli/line.h"

namespace flatwise::cli {

void add_definition_verbs(CLI::App& app, Line& line) {
  CLI::App* define = app.add_subcommand("define", help("define"));
  define->require_subcommand(1);
  CLI::App* check = define->add_subcommand("check", help("define_check"));
  check->add_option("SHAFT", line.shaft_file, help("shaft"))->required();
  check->callback([&line] { line.action = [&line](const Context& c) { return define_check(c, line.shaft_file); }; });
  CLI::App* fresh = define->add_subcommand("new", help("define_new"));
  fresh->add_option("--name", line.fresh.name, help("new_name"));
  fresh->add_option("--flats", line.fresh.flats, help("new_flats"));
  fresh->add_option("--across", line.fresh.across, help("new_across"));
  fresh->add_option("--rotors", line.fresh.rotors, help("new_rotors"));
  fresh->add_option("--lean", line.fresh.lean, help("new_lean"));
  fresh->add_option("--pattern", line.fresh.pattern, help("new_pattern"));
  fresh->add_option("--bearing", line.fresh.bearing, help("new_bearing"));
  fresh->add_option("--out", line.fresh.out, help("new_out"))->check(not_empty(line, "--out"));
  add_switch(*fresh, "--force", line.fresh.force, help("new_force"));
  fresh->callback([&line] { line.action = [&line](const Context& c) { return define_new(c, line.fresh); }; });
  CLI::App* reference = define->add_subcommand("reference", help("define_reference"));
  reference->add_option("FOLDER", line.reference_folder, help("reference_folder"));
  reference->callback(
      [&line] { line.action = [&line](const Context& c) { return define_reference(c, line.reference_folder); }; });

  CLI::App* map = add_verb(app, line, "map", [&line](const Context& c) {
    if (!line.first_flat.empty()) line.map.first_flat = numbers_of({line.first_flat}).front();
    return map_marks(c, line.map);
  });
  map->add_option("SHAFT", line.map.shaft_file, help("shaft"))->required();
  map->add_option("--first-flat", line.first_flat, help("first_flat"))
      ->check(whole_numbers(line, "--first-flat", false));
  add_switch(*map, "--mirrored", line.map.mirrored, help("mirrored"));
  add_switch(*map, "--from-b", line.map.from_b, help("from_b"));
  CLI::App* plan = add_verb(app, line, "plan", [&line](const Context& c) {
    line.plan.rotors = numbers_of(line.open);
    return plan_teardown(c, line.plan);
  });
  plan->add_option("SHAFT", line.plan.shaft_file, help("shaft"))->required();
  plan->add_option("--open", line.open, help("open"))
      ->required()
      ->allow_extra_args(false)
      ->check(whole_numbers(line, "--open", true));
  plan->add_option("--workshop", line.plan.workshop_file, help("workshop"));
  add_switch(*plan, "--steps", line.plan.steps, help("steps"));
}

}  // namespace flatwise::cli
