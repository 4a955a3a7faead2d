#include "cli/line.h"

namespace flatwise::cli {

std::string help(std::string_view verb) { return word("cli.help." + std::string{verb}, {}); }

CLI::App* add_verb(CLI::App& app, Line& line, const std::string& name, Action action) {
  CLI::App* verb = app.add_subcommand(name, help(name));
  verb->callback([&line, action = std::move(action)] { line.action = action; });
  return verb;
}

CLI::Option* add_switch(CLI::App& verb, const std::string& name, bool& into, const std::string& meaning) {
  return verb.add_flag(name, into, meaning)->disable_flag_override();
}

}  // namespace flatwise::cli
