// main.cc: from what was typed to the verb that does it, or to why not.
#include <unistd.h>

#include <cstdlib>
#include <iostream>

#include "cli/describe.h"
#include "cli/line.h"

namespace flatwise::cli {
namespace {

/// Completions and the man page, made from the verbs themselves.
void add_verbs_for_programs(CLI::App& app, Line& line) {
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

void add_speech(CLI::App& verb, Line& line) {
  add_switch(verb, "--json", line.json, help("json"));
  add_switch(verb, "--why", line.why, help("why"));
  add_switch(verb, "--inch", line.inch, help("inch"))
      ->excludes(add_switch(verb, "--metric", line.metric, help("metric")));
  add_switch(verb, "--no-colour", line.no_colour, help("no_colour"));
}

void build(CLI::App& app, Line& line) {
  app.name("flatwise");
  app.set_version_flag("--version", std::string{"flatwise "} + FLATWISE_VERSION);
  app.set_help_flag("--help,-h", help("help"));
  app.require_subcommand(1);
  add_definition_verbs(app, line);
  add_reckoning_verbs(app, line);
  add_job_verbs(app, line);
  add_record_verbs(app, line);
  add_verbs_for_programs(app, line);
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
