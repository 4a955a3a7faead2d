#include "cli/describe.h"

#include <CLI/CLI.hpp>
#include <algorithm>

#include "words/words.h"

namespace flatwise::cli {
namespace {

std::string help(std::string_view id) { return word("cli.help." + std::string{id}, {}); }

/// "--json" for flags and options, nothing for positionals.
std::vector<std::string> long_names(const CLI::App& app) {
  std::vector<std::string> names;
  for (const CLI::Option* option : app.get_options())
    for (const std::string& name : option->get_lnames()) names.push_back("--" + name);
  return names;
}

std::string joined(const std::vector<std::string>& words) {
  std::string out;
  for (const std::string& w : words) out += (out.empty() ? "" : " ") + w;
  return out;
}

std::vector<std::string> verb_names(const CLI::App& app) {
  std::vector<std::string> names;
  for (const CLI::App* verb : app.get_subcommands({})) names.push_back(verb->get_name());
  return names;
}

std::string quoted(std::string text) {
  std::string out;
  for (const char c : text) out += c == '\'' ? std::string{"'\\''"} : std::string(1, c);
  return "'" + out + "'";
}

std::string bash(const CLI::App& app) {
  std::string out =
      "_flatwise() {\n  local word=\"${COMP_WORDS[COMP_CWORD]}\" verb=\"${COMP_WORDS[1]}\" choices=\"\"\n";
  out +=
      "  if [ \"$COMP_CWORD\" -eq 1 ]; then choices=\"" + joined(verb_names(app)) + "\"; else\n    case \"$verb\" in\n";
  for (const CLI::App* verb : app.get_subcommands({})) {
    std::vector<std::string> words = verb_names(*verb);
    std::ranges::copy(long_names(*verb), std::back_inserter(words));
    for (const CLI::App* sub : verb->get_subcommands({}))
      std::ranges::copy(long_names(*sub), std::back_inserter(words));
    out += "      " + verb->get_name() + ") choices=\"" + joined(words) + "\";;\n";
  }
  out += "    esac\n  fi\n  COMPREPLY=($(compgen -W \"$choices\" -- \"$word\"))\n";
  return out +
         "  [ ${#COMPREPLY[@]} -gt 0 ] || COMPREPLY=($(compgen -f -- \"$word\"))\n}\ncomplete -o filenames -F "
         "_flatwise flatwise\n";
}

std::string zsh(const CLI::App& app) {
  std::string out = "#compdef flatwise\n_flatwise() {\n  local -a verbs\n  verbs=(\n";
  for (const CLI::App* verb : app.get_subcommands({}))
    out += "    " + quoted(verb->get_name() + ":" + verb->get_description()) + "\n";
  out += "  )\n  if (( CURRENT == 2 )); then _describe verb verbs; return; fi\n  case $words[2] in\n";
  for (const CLI::App* verb : app.get_subcommands({})) {
    std::vector<std::string> words = verb_names(*verb);
    std::ranges::copy(long_names(*verb), std::back_inserter(words));
    for (const CLI::App* sub : verb->get_subcommands({}))
      std::ranges::copy(long_names(*sub), std::back_inserter(words));
    out += "    " + verb->get_name() + ") compadd -- " + joined(words) + "; _files;;\n";
  }
  return out + "  esac\n}\ncompdef _flatwise flatwise\n";
}

/// `seen`: fish's condition that this verb stands on the line.
std::string fish_options(const CLI::App& verb, const std::string& seen) {
  std::string out;
  for (const CLI::Option* option : verb.get_options())
    for (const std::string& name : option->get_lnames())
      out += "complete -c flatwise -n '" + seen + "' -l " + name + " -d " + quoted(option->get_description()) + "\n";
  return out;
}

std::string fish(const CLI::App& app) {
  const auto seen = [](const CLI::App& verb) { return "__fish_seen_subcommand_from " + verb.get_name(); };
  std::string out;
  for (const CLI::App* verb : app.get_subcommands({})) {
    out += "complete -c flatwise -n __fish_use_subcommand -a " + verb->get_name() + " -d " +
           quoted(verb->get_description()) + "\n" + fish_options(*verb, seen(*verb));
    for (const CLI::App* sub : verb->get_subcommands({}))
      out += "complete -c flatwise -n '" + seen(*verb) + "' -a " + sub->get_name() + " -d " +
             quoted(sub->get_description()) + "\n" + fish_options(*sub, seen(*verb) + "; and " + seen(*sub));
  }
  return out;
}

/// Text for roff: a dot or quote at the start of a line and every backslash would be read as commands.
std::string roff(std::string text) {
  std::string out;
  for (const char c : text) {
    if (c == '\\')
      out += "\\e";
    else if (c == '-')
      out += "\\-";
    else
      out += c;
  }
  return !out.empty() && (out[0] == '.' || out[0] == '\'') ? "\\&" + out : out;
}

std::string man_options(const CLI::App& app) {
  std::string out;
  for (const CLI::Option* option : app.get_options()) {
    const bool flag = option->get_items_expected_max() == 0;
    std::string name = option->get_positional() ? option->get_name(true) : option->get_name(false, true);
    if (!flag && !option->get_positional()) name += " VALUE";
    out += ".TP\n.B " + roff(name) + "\n" + roff(option->get_description()) + "\n";
  }
  return out;
}

void man_verb(const CLI::App& verb, const std::string& before, std::string& out) {
  const std::string name = before + verb.get_name();
  out += ".SS " + roff(name) + "\n" + roff(verb.get_description()) + "\n";
  if (verb.get_subcommands({}).empty()) out += man_options(verb);
  for (const CLI::App* sub : verb.get_subcommands({})) man_verb(*sub, name + " ", out);
}

}  // namespace

std::string completions_for(const CLI::App& app, std::string_view shell) {
  if (shell == "bash") return bash(app);
  return shell == "zsh" ? zsh(app) : fish(app);
}

std::string man_page(const CLI::App& app) {
  std::string out = ".TH FLATWISE 1 " + help("man_date") + " \"flatwise " FLATWISE_VERSION "\"\n.SH " +
                    help("man_name") + "\nflatwise \\- " + roff(app.get_description()) + "\n";
  out += ".SH " + help("man_synopsis") + "\n.B flatwise\n.I VERB\n[\\fIOPTIONS\\fR]\n.SH " + help("man_verbs") + "\n";
  for (const CLI::App* verb : app.get_subcommands({})) man_verb(*verb, "flatwise ", out);
  out += ".SH " + help("man_status") + "\n";
  for (const std::string_view status : {"0", "1", "2"})
    out += ".TP\n.B " + std::string{status} + "\n" + roff(help("status_" + std::string{status})) + "\n";
  return out + ".SH " + help("man_safety") + "\n" + roff(help("safety")) + "\n";
}

std::vector<std::string> words_known(const CLI::App& app, const std::vector<std::string>& typed) {
  std::vector<std::string> known = verb_names(app);
  for (const CLI::App* verb : app.get_subcommands({})) {
    if (std::ranges::find(typed, verb->get_name()) == typed.end()) continue;
    std::ranges::copy(long_names(*verb), std::back_inserter(known));
    std::ranges::copy(verb_names(*verb), std::back_inserter(known));
    for (const CLI::App* sub : verb->get_subcommands({}))
      std::ranges::copy(long_names(*sub), std::back_inserter(known));
  }
  return known;
}

}  // namespace flatwise::cli
