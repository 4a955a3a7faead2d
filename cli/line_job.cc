// The stages of a job from its readings, and its sheets.
#include "cli/describe.h"
#include "cli/line.h"

namespace flatwise::cli {
namespace {

struct StageVerb {
  const char* name;
  job::Stage stage;
};
constexpr StageVerb kStageVerbs[] = {{"book-in", job::Stage::booking_in}, {"tear-down", job::Stage::teardown},
                                     {"inspect", job::Stage::inspection}, {"press", job::Stage::press},
                                     {"stack", job::Stage::stack},        {"torque", job::Stage::torque},
                                     {"test-run", job::Stage::test_run}};

CLI::Option* add_job_files(CLI::App& verb, Line& line) {
  verb.add_option("--shaft", line.shaft_instead, help("shaft_instead"));
  verb.add_option("--workshop", line.workshop_instead, help("workshop_instead"));
  return verb.add_option("READINGS", line.readings, help("readings"));
}

JobFiles job_files(const Line& line) { return {line.readings, line.shaft_instead, line.workshop_instead}; }

/// A verb that judges the readings of a job.
CLI::App* add_judging_verb(CLI::App& app, Line& line, const std::string& name, Action action) {
  CLI::App* verb = add_verb(app, line, name, std::move(action));
  add_job_files(*verb, line)->required();
  return verb;
}

void add_sheet_verb(CLI::App& app, Line& line) {
  CLI::App* sheets = add_verb(app, line, "sheets", [&line](const Context& c) {
    line.sheets.files = job_files(line);
    line.sheets.rotors = numbers_of(line.open);
    return write_sheets(c, line.sheets);
  });
  add_job_files(*sheets, line);  // Without readings: of a shaft and the rotors that are to be opened.
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

}  // namespace

void add_job_verbs(CLI::App& app, Line& line) {
  for (const StageVerb& sv : kStageVerbs)
    add_judging_verb(app, line, sv.name,
                     [&line, stage = sv.stage](const Context& c) { return judge_stage(c, job_files(line), stage); });
  add_judging_verb(app, line, "marks", [&line](const Context& c) { return judge_marks(c, job_files(line)); });
  add_judging_verb(app, line, "kit", [&line](const Context& c) { return list_kit(c, job_files(line)); });
  CLI::App* check = add_judging_verb(app, line, "check", [&line](const Context& c) {
    for (int s = 0; s < job::kStageCount; ++s)
      if (job::stage_name(static_cast<job::Stage>(s)) == line.through)
        return judge_all(c, job_files(line), static_cast<job::Stage>(s));
    return Status::bad_input;  // Not reached: CLI11 checks the word.
  });
  std::vector<std::string> stages;
  for (int s = 0; s < job::kStageCount; ++s) stages.emplace_back(job::stage_name(static_cast<job::Stage>(s)));
  check->add_option("--through", line.through, help("through"))->check(one_of(line, stages));
  add_sheet_verb(app, line);
}

}  // namespace flatwise::cli
