// shell_test.cc: completions and the man page, as the tools that read them take them. bash is always there; zsh, fish and
// man are asked where they are installed.
#include <gtest/gtest.h>

#include <algorithm>
#include <regex>
#include <set>

#include "tests/end_to_end/process.h"

namespace flatwise::end_to_end {
namespace {

using Words = std::vector<std::string>;

bool is_there(const std::string& tool) { return run({"sh", "-c", "command -v " + tool}).status == 0; }

std::string completions(const std::string& shell) { return flatwise({"completions", shell}).out; }

/// Verbs as --help lists them, with the verbs below them ("define check").
std::vector<Words> verbs() {
  const auto listed = [](const Words& words) {
    Words help = words;
    help.emplace_back("--help");
    const std::string out = flatwise(help).out;
    const std::size_t at = out.find("Subcommands:");
    Words names;
    static const std::regex name{R"(^  ([a-z][a-z-]*) )"};
    std::smatch match;
    if (at == std::string::npos) return names;
    for (const std::string& line : lines_of(out.substr(at)))
      if (std::regex_search(line, match, name)) names.push_back(match[1]);
    return names;
  };
  std::vector<Words> all;
  for (const std::string& verb : listed({})) {
    all.push_back({verb});
    for (const std::string& below : listed({verb})) all.push_back({verb, below});
  }
  return all;
}

/// Long options of a verb, from its --help.
std::set<std::string> options(const Words& verb) {
  Words help = verb;
  help.emplace_back("--help");
  const std::string out = flatwise(help).out;
  std::set<std::string> found;
  static const std::regex option{R"(^  (?:-h,)?(--[a-z-]+))"};
  std::smatch match;
  for (const std::string& line : lines_of(out))
    if (std::regex_search(line, match, option)) found.insert(match[1]);
  return found;
}

/// What bash offers for the last of the words typed.
std::vector<std::string> offered(const Words& words) {
  const Scratch scratch;
  const std::string script = scratch.write("completions", completions("bash"));
  std::string line = "source " + script + "; COMP_WORDS=(";
  for (const std::string& word : words) line += "'" + word + "' ";
  line += "); COMP_CWORD=" + std::to_string(words.size() - 1) + "; _flatwise; printf '%s\\n' \"${COMPREPLY[@]}\"";
  const Ran ran = run({"bash", "-c", line}, {.folder = std::string{FLATWISE_SOURCE_DIR} + "/demo"});
  EXPECT_EQ(ran.status, 0) << ran.err;
  return lines_of(ran.out);
}

TEST(Completions, AreAWholeScriptForEachShell) {
  const Scratch scratch;
  for (const char* shell : {"bash", "zsh", "fish"}) {
    const std::string script = scratch.write(shell, completions(shell));
    // What we write for zsh and fish is quoted in a way that bash reads too: it sees an open quote or bracket in each.
    EXPECT_EQ(run({"bash", "-n", script}).status, 0) << run({"bash", "-n", script}).err;
    if (is_there(shell)) {
      EXPECT_EQ(run({shell, "-n", script}).status, 0) << run({shell, "-n", script}).err;
    }
  }
  std::string broken = completions("bash");
  broken.erase(broken.find("esac"), 4);
  EXPECT_NE(run({"bash", "-n", scratch.write("broken", broken)}).status, 0);
}

TEST(Completions, OfBashOfferVerbsOptionsAndFiles) {
  EXPECT_EQ(offered({"flatwise", "ma"}), (Words{"map", "marks", "man"}));
  EXPECT_EQ(offered({"flatwise", "define", "ch"}), (Words{"check"}));
  EXPECT_EQ(offered({"flatwise", "sheets", "--pap"}), (Words{"--paper"}));
  EXPECT_EQ(offered({"flatwise", "check", "job-31."}), (Words{"job-31.toml"}));
}

TEST(Completions, KnowEveryVerbAndOption) {
  const std::string bash = completions("bash"), zsh = completions("zsh"), fish = completions("fish");
  const std::vector<Words> all = verbs();
  ASSERT_GT(all.size(), 15U);
  for (const Words& verb : all) {
    for (const std::string* script : {&bash, &zsh, &fish})
      EXPECT_NE(script->find(verb.back()), std::string::npos) << verb.back();
    const auto offers = offered({"flatwise", verb[0], "--"});
    for (const std::string& option : options(verb)) {
      EXPECT_NE(std::ranges::find(offers, option), offers.end()) << verb[0] << " " << option;
      EXPECT_NE(fish.find("from " + verb.back() + "' -l " + option.substr(2) + " "), std::string::npos)
          << verb[0] << " " << option;
    }
  }
}

/// Lines of roff that are neither text nor one of the macros that man(7) has.
Words faults_of_roff(const std::string& page) {
  static const std::regex macro{R"(\.(TH|SH|SS|TP|PP|B|I|BR|IR)( .*)?)"};
  Words faults;
  for (const std::string& line : lines_of(page)) {
    const bool control = !line.empty() && (line[0] == '.' || line[0] == '\'');
    if (line.empty() || (control && !std::regex_match(line, macro))) faults.push_back("line '" + line + "'");
    for (std::size_t at = 0; (at = line.find('\\', at)) != std::string::npos; at += 2)
      if (at + 1 == line.size() || std::string{"-ef&"}.find(line[at + 1]) == std::string::npos)
        faults.push_back("escape in '" + line + "'");
  }
  return faults;
}

TEST(ManPage, IsWholeAndIsReadWithoutAWarning) {
  const std::string page = flatwise({"man"}).out;
  EXPECT_EQ(faults_of_roff(page), Words{});
  EXPECT_NE(faults_of_roff(page + ".Zz x\n"), Words{});
  EXPECT_NE(faults_of_roff(page + "a\\qb\n"), Words{});
  const Scratch scratch;
  const std::string file = scratch.write("flatwise.1", page);
  if (is_there("mandoc")) {
    EXPECT_EQ(run({"mandoc", "-T", "lint", "-W", "warning", file}).out, "");
  }
  if (is_there("man") && is_there("groff")) {
    const Ran ran =
        run({"man", "--warnings=all", "-l", file}, {.environment = {{"MANPAGER", "cat"}, {"LC_ALL", "C.UTF-8"}}});
    EXPECT_EQ(ran.status, 0);
    EXPECT_EQ(ran.err, "");
    EXPECT_NE(ran.out.find("flatwise define check"), std::string::npos);
  }
}

TEST(ManPage, HasEveryVerbAndOptionAndTheStatuses) {
  const std::string page = flatwise({"man"}).out;
  const auto roff = [](std::string text) { return std::regex_replace(text, std::regex{"-"}, "\\-"); };
  for (const Words& verb : verbs()) {
    std::string head = ".SS flatwise";
    for (const std::string& word : verb) head += " " + word;
    EXPECT_NE(page.find(roff(head) + "\n"), std::string::npos) << head;
    for (const std::string& option : options(verb)) EXPECT_NE(page.find(roff(option)), std::string::npos) << option;
  }
  for (const char* status : {".B 0\n", ".B 1\n", ".B 2\n"}) EXPECT_NE(page.find(status), std::string::npos) << status;
}

}  // namespace
}  // namespace flatwise::end_to_end
