// What works on the workshop's record: serve, job and people; and the demo.
#include "cli/line.h"

namespace flatwise::cli {
namespace {

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

void add_people_verb(CLI::App& app, Line& line) {
  CLI::App* people = add_verb(app, line, "people", [&line](const Context& c) { return tell_people(c, line.people); });
  people->add_option("NAME", line.people.name, help("person"));
  people->add_option("--data", line.people.data, help("data"))->check(not_empty(line, "--data"));
  people->add_option("--by", line.people.by, help("by"))->check(not_empty(line, "--by"));
  add_switch(*people, "--leaves", line.people.leaves, help("leaves"));
  add_switch(*people, "--returns", line.people.returns, help("returns"));
}

void add_demo_verb(CLI::App& app, Line& line) {
  CLI::App* show =
      add_verb(app, line, "demo", [&line](const Context& c) { return demo(c, line.demo_folder, line.out_folder); });
  show->add_option("--demo", line.demo_folder, help("demo_folder"));
  show->add_option("--out", line.out_folder, help("out"))->check(not_empty(line, "--out"));
}

}  // namespace

void add_record_verbs(CLI::App& app, Line& line) {
  add_serve_verb(app, line);
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
  add_people_verb(app, line);
  add_demo_verb(app, line);
}

}  // namespace flatwise::cli
