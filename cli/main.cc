// main.cc: arguments to verbs. The table of verbs below is also what help, completions and the man page are made from.
#include <unistd.h>

#include <CLI/CLI.hpp>
#include <cstdlib>
#include <functional>
#include <iostream>

#include "cli/checks.h"
#include "cli/describe.h"
#include "cli/text.h"
#include "cli/verbs.h"

namespace flatwise::cli {
namespace {

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

std::string help(std::string_view verb) { return word("cli.help." + std::string{verb}, {}); }

CLI::App* add_verb(CLI::App& app, Line& line, const std::string& name, Action action) {
  CLI::App* verb = app.add_subcommand(name, help(name));
  verb->callback([&line, action = std::move(action)] { line.action = action; });
  return verb;
}

/// A flag stands alone: "--json=no" is refused, not read as something.
CLI::Option* add_switch(CLI::App& verb, const std::string& name, bool& into, const std::string& meaning) {
  return verb.add_flag(name, into, meaning)->disable_flag_override();
}

void add_speech(CLI::App& verb, Line& line) {
  add_switch(verb, "--json", line.json, help("json"));
  add_switch(verb, "--why", line.why, help("why"));
  add_switch(verb, "--inch", line.inch, help("inch"))
      ->excludes(add_switch(verb, "--metric", line.metric, help("metric")));
  add_switch(verb, "--no-colour", line.no_colour, help("no_colour"));
}

void add_job_files(CLI::App& verb, Line& line) {
  verb.add_option("READINGS", line.readings, help("readings"))->required();
  verb.add_option("--shaft", line.shaft_instead, help("shaft_instead"));
  verb.add_option("--workshop", line.workshop_instead, help("workshop_instead"));
}

JobFiles job_files(const Line& line) { return {line.readings, line.shaft_instead, line.workshop_instead}; }

struct StageVerb {
  const char* name;
  job::Stage stage;
};
constexpr StageVerb kStageVerbs[] = {{"book-in", job::Stage::booking_in}, {"tear-down", job::Stage::teardown},
                                     {"inspect", job::Stage::inspection}, {"press", job::Stage::press},
                                     {"stack", job::Stage::stack},        {"torque", job::Stage::torque},
                                     {"test-run", job::Stage::test_run}};

void add_job_verbs(CLI::App& app, Line& line) {
  for (const StageVerb& sv : kStageVerbs)
    add_job_files(
        *add_verb(app, line, sv.name,
                  [&line, stage = sv.stage](const Context& c) { return judge_stage(c, job_files(line), stage); }),
        line);
  add_job_files(*add_verb(app, line, "marks", [&line](const Context& c) { return judge_marks(c, job_files(line)); }),
                line);
  add_job_files(*add_verb(app, line, "kit", [&line](const Context& c) { return list_kit(c, job_files(line)); }), line);
  CLI::App* check = add_verb(app, line, "check", [&line](const Context& c) {
    for (int s = 0; s < job::kStageCount; ++s)
      if (job::stage_name(static_cast<job::Stage>(s)) == line.through)
        return judge_all(c, job_files(line), static_cast<job::Stage>(s));
    return Status::bad_input;  // Not reached: CLI11 checks the word.
  });
  add_job_files(*check, line);
  std::vector<std::string> stages;
  for (int s = 0; s < job::kStageCount; ++s) stages.emplace_back(job::stage_name(static_cast<job::Stage>(s)));
  check->add_option("--through", line.through, help("through"))->check(one_of(line, stages));
}

void add_shaft_verbs(CLI::App& app, Line& line) {
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

void add_bend_verb(CLI::App& app, Line& line) {
  CLI::App* bend = add_verb(app, line, "bend", [&line](const Context& c) { return bend_shaft(c, line.bend); });
  bend->add_option("SHAFT", line.bend.shaft_file, help("shaft"))->required();
  bend->add_option("--csv", line.bend.csv, help("bend_csv"))->check(not_empty(line, "--csv"));
  bend->add_option("--from", line.bend.from, help("bend_from"))->check(not_empty(line, "--from"));
  bend->add_option("--to", line.bend.to, help("bend_to"))->check(not_empty(line, "--to"));
  bend->add_option("--speeds", line.bend.speeds, help("bend_speeds"))->check(whole_numbers(line, "--speeds", false));
}

void add_bearing_verb(CLI::App& app, Line& line) {
  CLI::App* bearing =
      add_verb(app, line, "bearing", [&line](const Context& c) { return tell_bearing(c, line.bearing); });
  bearing->add_option("SHAFT", line.bearing.shaft_file, help("shaft"))->required();
  bearing->add_option("--station", line.bearing.station, help("bearing_station"))->check(not_empty(line, "--station"));
}

void add_pattern_verb(CLI::App& app, Line& line) {
  CLI::App* pattern =
      add_verb(app, line, "pattern", [&line](const Context& c) { return arrange_pattern(c, line.pattern); });
  pattern->add_option("SHAFT", line.pattern.shaft_file, help("shaft"))->required();
  pattern->add_option("--judged", line.pattern.asked.judged, help("judged"))
      ->check(one_of(line, {"larger-plane", "both-planes", "couple"}));
  pattern->add_option("--least-gap", line.pattern.asked.least_gap, help("least_gap"))
      ->check(not_empty(line, "--least-gap"));
  pattern->add_option("--stay", line.pattern.asked.stays, help("stay"))
      ->delimiter(',')
      ->allow_extra_args(false)
      ->check(not_empty(line, "--stay"));
  pattern->add_option("--error-share", line.pattern.asked.error_share, help("error_share"))
      ->check(not_empty(line, "--error-share"));
  pattern->add_option("--error-azimuth", line.pattern.asked.error_azimuth, help("error_azimuth"))
      ->check(not_empty(line, "--error-azimuth"));
  add_switch(*pattern, "--by-hangers", line.pattern.asked.by_hangers, help("by_hangers"));
  pattern->add_option("--pdf", line.pattern.pdf, help("pattern_pdf"))->check(not_empty(line, "--pdf"));
  pattern->add_option("--paper", line.pattern.paper, help("paper"))->check(one_of(line, {"a4", "letter"}));
  pattern->add_option("--printed", line.pattern.printed, help("printed"));
}

void add_study_verb(CLI::App& app, Line& line) {
  CLI::App* study = add_verb(app, line, "study", [&line](const Context& c) { return study_ways(c, line.study); });
  study->add_option("FILE", line.study.file, help("study_file"))->required();
  study->add_option("--way", line.study.ways, help("way"))->allow_extra_args(false)->check(not_empty(line, "--way"));
  study->add_option("--name", line.study.name, help("study_name"))->check(not_empty(line, "--name"));
  study->add_option("--ground", line.study.ground, help("ground"))->check(not_empty(line, "--ground"));
  study->add_option("--error-share", line.study.error_share, help("error_share"))
      ->check(not_empty(line, "--error-share"));
  study->add_option("--error-azimuth", line.study.error_azimuth, help("error_azimuth"))
      ->check(not_empty(line, "--error-azimuth"));
  study->add_option("--csv", line.study.csv, help("study_csv"))->check(not_empty(line, "--csv"));
  study->add_option("--svg", line.study.svg, help("study_svg"))->check(not_empty(line, "--svg"));
  study->add_option("--pdf", line.study.pdf, help("study_pdf"))->check(not_empty(line, "--pdf"));
  study->add_option("--paper", line.study.paper, help("paper"))->check(one_of(line, {"a4", "letter"}));
  study->add_option("--printed", line.study.printed, help("printed"));
}

void add_sheet_verb(CLI::App& app, Line& line) {
  CLI::App* sheets = add_verb(app, line, "sheets", [&line](const Context& c) {
    line.sheets.files = job_files(line);
    line.sheets.rotors = numbers_of(line.open);
    return write_sheets(c, line.sheets);
  });
  sheets->add_option("READINGS", line.readings, help("readings"));
  sheets->add_option("--shaft", line.shaft_instead, help("shaft_instead"));
  sheets->add_option("--workshop", line.workshop_instead, help("workshop_instead"));
  sheets->add_option("--open", line.open, help("open"))
      ->allow_extra_args(false)
      ->check(whole_numbers(line, "--open", true));
  sheets->add_option("--sheet", line.sheets.sheets, help("sheet"))
      ->delimiter(',')
      ->allow_extra_args(false)
      ->check(one_of(line, sheet_names()));
  sheets->add_option("--paper", line.sheets.paper, help("paper"))->check(one_of(line, {"a4", "letter"}));
  sheets->add_option("--format", line.sheets.format, help("format"))->check(one_of(line, {"pdf", "svg", "png"}));
  sheets->add_option("--out", line.sheets.folder, help("out"))->check(not_empty(line, "--out"));
  sheets->add_option("--printed", line.sheets.printed, help("printed"));
}

void add_serve_verb(CLI::App& app, Line& line) {
  CLI::App* verb = add_verb(app, line, "serve", [&line](const Context& c) {
    if (!line.port.empty()) line.serve.port = numbers_of({line.port}).front();
    return serve(c, line.serve);
  });
  verb->add_option("--data", line.serve.data, help("data"))->check(not_empty(line, "--data"));
  verb->add_option("--port", line.port, help("port"))->check(port_number(line));
  add_switch(*verb, "--open", line.serve.open, help("open_page"));
  verb->add_option("--listen", line.serve.listen, help("listen"))->check(not_empty(line, "--listen"));
  verb->add_option("--host", line.serve.names, help("host"))->allow_extra_args(false)->check(not_empty(line, "--host"));
  verb->add_option("--web-root", line.serve.web_root, help("web_root"))->check(not_empty(line, "--web-root"));
  verb->add_option("--demo", line.serve.demo, help("demo_folder"))->check(not_empty(line, "--demo"));
}

using RecordVerb = Status (*)(const Context&, const RecordOptions&);

CLI::App* add_record_verb(CLI::App& under, Line& line, const std::string& name, RecordVerb act) {
  CLI::App* verb = under.add_subcommand(name, help("job_" + name));
  if (act != list_jobs) verb->add_option("JOB", line.record.job, help("job_number"))->required();
  verb->add_option("--data", line.record.data, help("data"))->check(not_empty(line, "--data"));
  verb->callback([&line, act] { line.action = [&line, act](const Context& c) { return act(c, line.record); }; });
  return verb;
}

void add_record_verbs(CLI::App& app, Line& line) {
  CLI::App* jobs = app.add_subcommand("job", help("job"));
  jobs->require_subcommand(1);
  add_record_verb(*jobs, line, "list", list_jobs);
  add_record_verb(*jobs, line, "show", show_job);
  CLI::App* record = add_record_verb(*jobs, line, "record", record_entries);
  record->add_option("ENTRY", line.record.entry, help("entry"));
  record->add_option("--readings", line.record.readings, help("readings"));
  record->add_option("--by", line.record.by, help("by"))->required()->check(not_empty(line, "--by"));
  add_switch(*record, "--correct", line.record.correct, help("correct"));
  record->add_option("--of", line.record.of, help("of"))->delimiter(',');
  add_record_verb(*jobs, line, "report", report_job);
  add_record_verb(*jobs, line, "log", log_job);
  add_record_verb(*jobs, line, "verify", verify_job);
  CLI::App* people = add_verb(app, line, "people", [&line](const Context& c) { return tell_people(c, line.people); });
  people->add_option("NAME", line.people.name, help("person"));
  people->add_option("--data", line.people.data, help("data"))->check(not_empty(line, "--data"));
  people->add_option("--by", line.people.by, help("by"))->check(not_empty(line, "--by"));
  add_switch(*people, "--leaves", line.people.leaves, help("leaves"));
  add_switch(*people, "--returns", line.people.returns, help("returns"));
}

void add_other_verbs(CLI::App& app, Line& line) {
  CLI::App* figure = add_verb(app, line, "figure", [&line](const Context& c) {
    if (line.figure_pages) return figure_reference(c);
    return line.figure.empty() ? list_figures(c) : one_figure(c, line.figure, line.inputs);
  });
  figure->add_option("NAME", line.figure, help("figure_name"));
  figure->add_option("INPUT", line.inputs, help("figure_input"));
  add_switch(*figure, "--reference", line.figure_pages, help("figure_reference"));
  CLI::App* show =
      add_verb(app, line, "demo", [&line](const Context& c) { return demo(c, line.demo_folder, line.out_folder); });
  show->add_option("--demo", line.demo_folder, help("demo_folder"));
  show->add_option("--out", line.out_folder, help("out"))->check(not_empty(line, "--out"));
  CLI::App* completions = add_verb(app, line, "completions", [&app, &line](const Context& c) {
    *c.out << completions_for(app, line.shell);
    return Status::in_order;
  });
  completions->add_option("SHELL", line.shell, help("shell"))->required()->check(one_of(line, {"bash", "zsh", "fish"}));
  add_verb(app, line, "man", [&app](const Context& c) {
    *c.out << man_page(app);
    return Status::in_order;
  });
}

void build(CLI::App& app, Line& line) {
  app.name("flatwise");
  app.set_version_flag("--version", std::string{"flatwise "} + FLATWISE_VERSION);
  app.set_help_flag("--help,-h", help("help"));
  app.require_subcommand(1);
  add_shaft_verbs(app, line);
  add_pattern_verb(app, line);
  add_bend_verb(app, line);
  add_bearing_verb(app, line);
  add_study_verb(app, line);
  add_job_verbs(app, line);
  add_sheet_verb(app, line);
  add_serve_verb(app, line);
  add_record_verbs(app, line);
  add_other_verbs(app, line);
  for (CLI::App* verb : app.get_subcommands({})) {
    if (verb->get_name() == "man" || verb->get_name() == "completions") continue;  // They speak to programs already.
    add_speech(*verb, line);
    for (CLI::App* sub : verb->get_subcommands({})) add_speech(*sub, line);
  }
}

bool coloured(const Line& line) {
  const char* told = std::getenv("NO_COLOR");  // Empty counts as not set, by that convention.
  return !line.no_colour && (told == nullptr || *told == '\0') && ::isatty(STDOUT_FILENO) == 1;
}

Context context_of(const Line& line) {
  Context context;
  context.voice.units = line.inch ? UnitSystem::inch : UnitSystem::metric;
  context.json = line.json;
  context.why = line.why;
  context.colour = coloured(line);
  context.progress = ::isatty(STDERR_FILENO) == 1;
  context.out = &std::cout;
  context.err = &std::cerr;
  context.in = &std::cin;
  return context;
}

/// The verb that was typed where none such is: of the program, or below a verb that wants another one.
std::optional<Problem> wrong_verb(const CLI::App& app, const std::vector<std::string>& typed) {
  const CLI::App* at = &app;
  for (const std::string& word_typed : typed) {
    std::vector<std::string> verbs;
    for (const CLI::App* verb : at->get_subcommands({})) verbs.push_back(verb->get_name());
    if (verbs.empty()) return std::nullopt;
    if (word_typed.starts_with("-")) continue;
    if (std::ranges::find(verbs, word_typed) == verbs.end()) return not_a_choice(word_typed, verbs);
    at = at->get_subcommand(word_typed);
  }
  return std::nullopt;
}

Problem misuse(const CLI::App& app, const Line& line, const CLI::ParseError& error,
               const std::vector<std::string>& typed) {
  if (line.refused) return *line.refused;
  if (const std::optional<Problem> verb = wrong_verb(app, typed)) return *verb;
  const std::vector<std::string> known = words_known(app, typed);
  Args args{{"said", std::string{error.what()}}};
  for (const std::string& word_typed : typed) {
    const std::string bare = word_typed.substr(0, word_typed.find('='));
    if (std::ranges::find(known, bare) == known.end() && args.size() == 1) add_near(args, bare, known);
  }
  return {Code{"cli.usage"}, "command", {}, std::move(args), std::nullopt};
}

Status misused(const CLI::App& app, const Line& line, const CLI::ParseError& error,
               const std::vector<std::string>& typed) {
  Context context = context_of(line);
  context.json = context.json || std::ranges::find(typed, "--json") != typed.end();
  return refuse(context, misuse(app, line, error, typed));
}

int run(int argc, char** argv) {
  CLI::App app{word("cli.help.program", {})};
  Line line;
  build(app, line);
  try {
    app.parse(argc, argv);
  } catch (const CLI::Success& success) {
    return app.exit(success);
  } catch (const CLI::ParseError& error) {
    return static_cast<int>(misused(app, line, error, std::vector<std::string>(argv + 1, argv + argc)));
  }
  const Status status = line.action(context_of(line));
  std::cout.flush();
  if (std::cout) return static_cast<int>(status);
  std::cerr << word("cli.output_lost", {}) << "\n";
  return static_cast<int>(Status::bad_input);
}

}  // namespace
}  // namespace flatwise::cli

int main(int argc, char** argv) {
  try {
    return flatwise::cli::run(argc, argv);
  } catch (const std::exception& bug) {
    std::cerr << flatwise::word("cli.bug", {}) << "\n" << bug.what() << "\n";
    return 3;
  }
}
