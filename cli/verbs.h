// verbs.h: one function a verb of the command line: options in, text or JSON out, exit status back. No formula, no rule and no
// sentence lives here.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "cli/context.h"
#include "cli/load.h"
#include "job/questions.h"
#include "view/shaft_pattern.h"

namespace flatwise::cli {

// The shaft as described.
Status define_check(const Context& context, const std::string& shaft_file);
struct NewShaft {
  std::string name;
  std::string across, lean, bearing;  ///< As typed; empty: asked on a terminal, else the starter's own.
  std::string flats, rotors, pattern;
  std::string out;     ///< Empty: the standard output.
  bool force = false;  ///< Overwrite a file that is there.
};
Status define_new(const Context& context, NewShaft options);
Status define_reference(const Context& context, const std::string& folder);  ///< Writes schemas and reference pages.

struct MapOptions {
  std::string shaft_file;
  std::optional<int> first_flat;
  bool mirrored = false;
  bool from_b = false;
};
Status map_marks(const Context& context, const MapOptions& options);

struct PatternOptions {
  std::string shaft_file;
  view::PatternAsked asked;
  std::string pdf;  ///< File to write; empty: none.
  std::string paper = "a4";
  std::string printed;  ///< "when" for the foot.
};
Status arrange_pattern(const Context& context, const PatternOptions& options);

struct PlanOptions {
  std::string shaft_file;
  std::string workshop_file;
  std::vector<int> rotors;
  bool steps = false;
};
Status plan_teardown(const Context& context, const PlanOptions& options);

struct BendOptions {
  std::string shaft_file;
  std::string csv;       ///< File for the response over speed; empty: none.
  std::string from, to;  ///< As typed; empty: a tenth of the shaft's speed, twice it.
  std::string speeds;    ///< How many; empty: 200.
};
Status bend_shaft(const Context& context, const BendOptions& options);

struct BearingOptions {
  std::string shaft_file;
  std::optional<std::string> station;  ///< Of a rotor, by its label; none: the one whose bearing ends first.
};
/// What the wobble does to a bearing.
Status tell_bearing(const Context& context, const BearingOptions& options);

struct StudyOptions {
  std::string file;                        ///< A study, or a shaft.
  std::vector<std::string> ways;           ///< "NAME: FIELD=VALUE; ..."
  std::string name, ground;                ///< As typed; empty: as the file has it.
  std::string error_share, error_azimuth;  ///< The same.
  std::string csv, svg, pdf;               ///< Folders and a file to write; empty: none.
  std::string paper = "a4";
  std::string printed;  ///< "when" for the foot.
};
Status study_ways(const Context& context, const StudyOptions& options);

// The job as read and answered.
Status judge_stage(const Context& context, const JobFiles& files, job::Stage stage);
Status judge_all(const Context& context, const JobFiles& files, job::Stage through);
Status judge_marks(const Context& context, const JobFiles& files);  ///< The stage, with the marks read and wanted.
Status list_kit(const Context& context, const JobFiles& files);

struct SheetOptions {
  JobFiles files;                   ///< readings may be empty: sheets from the shaft alone.
  std::vector<std::string> sheets;  ///< Names; empty: all that the job has use for.
  std::string paper = "a4";
  std::string format = "pdf";
  std::string folder = "sheets";
  std::vector<int> rotors;  ///< To open, where no readings say it.
  std::string printed;      ///< "when" for the foot; no clock in the drawing.
};
Status write_sheets(const Context& context, const SheetOptions& options);

/// Shaft and job, and that the demo is invented: the head of what is said about a job.
[[nodiscard]] std::string job_head(const Context& context, const Job& job);
/// The context with the workshop's currency.
[[nodiscard]] Context speaking(const Context& context, const Job& job);

// Any figure alone.
Status list_figures(const Context& context);
Status one_figure(const Context& context, const std::string& name, const std::vector<std::string>& inputs);
Status figure_reference(const Context& context);  ///< The reference page, in Markdown.

// The record in a folder: served, and from the shell.
struct ServeOptions {
  std::string data, demo, web_root;
  std::string listen = "127.0.0.1";
  std::vector<std::string> names;
  int port = 8080;
  bool open = false;
  [[nodiscard]] bool for_others() const;  ///< Others than this machine are expected: a code must be at hand.
};
Status serve(const Context& context, const ServeOptions& options);

struct RecordOptions {
  std::string data;
  std::string job;  ///< Number or id.
  std::string by;   ///< Name or id of a person.
  std::string readings;
  std::vector<std::string> entry;  ///< Kind and fields, where no readings are given.
  bool correct = false;            ///< In place of what was answered before.
  std::vector<int> of;             ///< Numbers of the entries it takes back or takes the place of.
};
Status list_jobs(const Context& context, const RecordOptions& options);
Status show_job(const Context& context, const RecordOptions& options);
Status record_entries(const Context& context, const RecordOptions& options);
Status report_job(const Context& context, const RecordOptions& options);
Status log_job(const Context& context, const RecordOptions& options);
Status verify_job(const Context& context, const RecordOptions& options);

struct PeopleOptions {
  std::string data;
  std::string name;  ///< Empty: all are listed.
  std::string by;
  bool leaves = false, returns = false;
};
Status tell_people(const Context& context, const PeopleOptions& options);

Status demo(const Context& context, const std::string& demo_folder, const std::string& out_folder);

}  // namespace flatwise::cli
