// sources_test.cc: the sources and the dictionary agree: every Code and Word written in a source has its entry, every
// entry is used, problems have their three sentences, and templates ask only for arguments that somebody gives.
#include <gtest/gtest.h>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <map>
#include <regex>
#include <set>
#include <string>

#include "words/dictionary.h"
#include "words/template.h"
#include "words/words.h"

namespace flatwise {
namespace {

namespace fs = std::filesystem;

/// Folders whose sources speak.
constexpr std::string_view kFolders[] = {"core", "job",  "study", "definition", "drawing", "paper", "wire",
                                         "cli",  "wasm", "words", "view",       "record",  "desk",  "server"};

/// Entries that are asked for by a code put together while running, with the place that does it.
constexpr std::string_view kMadeWhileRunning[] = {
    "study.row.",   "study.plot.",   "study.offer.",  // study: rows, plots and fields by their names
    "source.",                                        // what figures rest on, by the keys in their `sources`
    "section.",                                       // core/figures: the folders' sections
    "figure.",  // core/figures: title, limits and meaning of each figure; checked against the catalogue there
    "answer.",  // Answer
    "record.kind.", "record.field.",  // record/: the schema of entries, by the list of fields
    "caution.",                       // job::Stage
    "item.",                          // job::KitItem
    "sheet.",                         // paper: titles of sheets by their names
    "stage.",                         // job::Stage
    "station.",                       // StationKind
    "way.",                           // job::Way
    "verdict.",                       // timing::Verdict
    "severity.",                      // Severity
    "origin.",                        // OriginKind
    "reply.",                         // Reply
    "where.",                         // Where::Part
    "system.",                        // UnitSystem
    "definition.",                    // definition/: meanings of its fields, checked there
    "cli.",                           // cli/: its help
    "view.stage.",                    // job::Stage, short
    "gauge_use.",                     // Gauge::Use
};

struct Mention {
  std::string id, place;
  bool problem = false;
  bool open = false;  ///< Ends in '.': the rest is put on while running.
};
struct Sources {
  std::vector<Mention> mentions;
  std::set<std::string> literals;  ///< Every string literal, for argument names and codes held in tables.
};

/// The text without comments; lines stay where they are. Good enough for our own sources: no raw strings with quotes.
std::string without_comments(std::string text) {
  bool in_string = false;
  for (std::size_t i = 0; i + 1 < text.size(); ++i) {
    if (in_string && text[i] == '\\') {
      ++i;
    } else if (text[i] == '"' && (i == 0 || text[i - 1] != '\'')) {
      in_string = !in_string;
    } else if (text[i] == '\n') {
      in_string = false;
    } else if (!in_string && text[i] == '/' && text[i + 1] == '/') {
      while (i < text.size() && text[i] != '\n') text[i++] = ' ';
    }
  }
  return text;
}

void read_source(const fs::path& file, const std::string& shown, Sources& sources) {
  std::ifstream in{file};
  const std::string text = without_comments({std::istreambuf_iterator<char>{in}, {}});
  static const std::regex kMention{R"re((Problem\s*\{\s*)?\b(Code|Word)\s*\{\s*(?:std::string\s*[({]\s*)?"([^"]+)")re"};
  static const std::regex kLiteral{R"re("([A-Za-z0-9_.\-]+)")re"};
  for (auto it = std::sregex_iterator{text.begin(), text.end(), kMention}; it != std::sregex_iterator{}; ++it) {
    const auto line = 1 + std::count(text.begin(), text.begin() + it->position(), '\n');
    const std::string id = (*it)[3];
    sources.mentions.push_back({id, shown + ":" + std::to_string(line), (*it)[1].matched, id.ends_with('.')});
  }
  for (auto it = std::sregex_iterator{text.begin(), text.end(), kLiteral}; it != std::sregex_iterator{}; ++it)
    sources.literals.insert((*it)[1]);
}

/// The page asks by word('page.code', {argument, argument: value}), or by word(`page.code.${rest}`).
void read_page_source(const fs::path& file, const std::string& shown, Sources& sources) {
  std::ifstream in{file};
  const std::string text{std::istreambuf_iterator<char>{in}, {}};
  static const std::regex kMention{R"re(\bword\(\s*['`]([a-z0-9_.]+)(?:'|\$\{[^`]*`)(?:\s*,\s*\{([^}]*)\})?)re"};
  static const std::regex kName{R"re((\w+))re"};
  for (auto it = std::sregex_iterator{text.begin(), text.end(), kMention}; it != std::sregex_iterator{}; ++it) {
    const auto line = 1 + std::count(text.begin(), text.begin() + it->position(), '\n');
    const std::string id = (*it)[1];
    sources.mentions.push_back({id, shown + ":" + std::to_string(line), false, id.ends_with('.')});
    const std::string given = (*it)[2];
    for (auto name = std::sregex_iterator{given.begin(), given.end(), kName}; name != std::sregex_iterator{}; ++name)
      sources.literals.insert((*name)[1]);
  }
}

void read_page(const fs::path& root, Sources& read) {
  const fs::path page = root / "web" / "src";
  if (!fs::exists(page)) return;
  for (const auto& entry : fs::recursive_directory_iterator{page}) {
    const std::string name = entry.path().filename().string();
    const bool source = name.ends_with(".svelte") || name.ends_with(".ts");
    if (source && !name.ends_with(".test.ts") && !name.ends_with(".gen.ts"))
      read_page_source(entry.path(), fs::relative(entry.path(), root).string(), read);
  }
}

const Sources& sources() {
  static const Sources kRead = [] {
    Sources read;
    const fs::path root{FLATWISE_SOURCE_DIR};
    read_page(root, read);
    for (const std::string_view folder : kFolders) {
      if (!fs::exists(root / folder)) continue;
      for (const auto& entry : fs::recursive_directory_iterator{root / folder}) {
        const std::string name = entry.path().filename().string();
        const bool source = name.ends_with(".cc") || name.ends_with(".h");
        if (source && !name.ends_with("_test.cc"))
          read_source(entry.path(), fs::relative(entry.path(), root).string(), read);
      }
    }
    return read;
  }();
  return kRead;
}

bool starts_any(std::string_view code) {
  return std::ranges::any_of(kMadeWhileRunning, [&](std::string_view prefix) { return code.starts_with(prefix); });
}

std::string_view without_part(std::string_view code) {
  for (const std::string_view part : {".allowed", ".mend"}) {
    const std::string_view base = code.substr(0, code.size() - std::min(code.size(), part.size()));
    if (code.ends_with(part) && base.find('.') != std::string_view::npos) return base;  // "cli.mend" is a label.
  }
  return code;
}

bool any_entry_starts(std::string_view prefix) {
  return std::ranges::any_of(words::english(), [&](const words::Entry& e) { return e.code.starts_with(prefix); });
}

/// What is amiss, one line each.
class Amiss {
 public:
  void note(bool good, const std::string& line) {
    if (!good && std::ranges::find(lines_, line) == lines_.end()) lines_.push_back(line);
  }
  ~Amiss() {
    if (lines_.empty()) return;
    std::string all = std::to_string(lines_.size()) + " amiss:";
    for (const std::string& line : lines_) all += "\n  " + line;
    ADD_FAILURE() << all;
  }
  Amiss() = default;
  Amiss(const Amiss&) = delete;
  Amiss& operator=(const Amiss&) = delete;

 private:
  std::vector<std::string> lines_;
};

TEST(Sources, EveryCodeAndWordHasItsEntry) {
  ASSERT_GT(sources().mentions.size(), 20U);
  Amiss amiss;
  for (const Mention& m : sources().mentions)
    amiss.note(m.open ? any_entry_starts(m.id) : has_words(m.id), m.place + ": no words for \"" + m.id + '"');
}

TEST(Sources, EveryProblemHasItsThreeSentences) {
  Amiss amiss;
  for (const Mention& m : sources().mentions)
    for (const char* part : {".allowed", ".mend"})
      amiss.note(!m.problem || has_words(m.id + part), m.place + ": no words for \"" + m.id + part + '"');
  for (const words::Entry& e : words::english()) {
    const std::string base{without_part(e.code)};
    if (base == e.code) continue;
    amiss.note(has_words(base) && has_words(base + ".allowed") && has_words(base + ".mend"),
               base + ": a problem has three sentences");
  }
}

TEST(Sources, EveryEntryIsUsed) {
  Amiss amiss;
  std::set<std::string, std::less<>> used;
  std::vector<std::string> open;
  for (const Mention& m : sources().mentions) {
    if (m.open) open.push_back(m.id);
    used.insert(m.id);
  }
  for (const words::Entry& e : words::english()) {
    const std::string base{without_part(e.code)};
    const bool by_prefix = std::ranges::any_of(open, [&](const std::string& p) { return base.starts_with(p); });
    amiss.note(by_prefix || starts_any(base) || used.contains(base) || sources().literals.contains(base),
               "nothing says \"" + std::string{e.code} + '"');
  }
}

TEST(Sources, EveryArgumentIsGivenBySomebody) {
  Amiss amiss;
  for (const words::Entry& e : words::english()) {
    std::vector<std::string_view> names;
    words::collect_names(e.text, names);
    const bool is_problem = has_words(std::string{without_part(e.code)} + ".mend");
    for (const std::string_view name : names) {
      if (is_problem && (name == "field" || name == "given")) continue;
      amiss.note(sources().literals.contains(std::string{name}),
                 std::string{e.code} + ": no source gives an argument \"" + std::string{name} + '"');
    }
  }
}

// The checks above must bite: a mention as sources write it is found, one in a comment is not.
TEST(Sources, MentionsAreFoundWhereTheyStand) {
  const fs::path file = fs::path{testing::TempDir()} / "flatwise_mentions.cc";
  std::ofstream{file} << "// Code{\"in.comment\"}\nreturn Problem{Code{\"a.b\"}, \"//\", {{\"x\", 1}}};\n"
                         "f(Word{\"kind.\" + name}, Word{std::string{\"half.\"} + c}, Message{Code{\"c.d\"}});\n";
  Sources read;
  read_source(file, "f.cc", read);
  fs::remove(file);
  ASSERT_EQ(read.mentions.size(), 4U);
  EXPECT_EQ(read.mentions[0].id, "a.b");
  EXPECT_EQ(read.mentions[0].place, "f.cc:2");
  EXPECT_TRUE(read.mentions[0].problem && !read.mentions[3].problem);
  EXPECT_TRUE(read.mentions[1].open && read.mentions[2].open);
  EXPECT_TRUE(read.literals.contains("x"));
}

TEST(Sources, WordsOfThePageAreFoundWhereTheyStand) {
  const fs::path file = fs::path{testing::TempDir()} / "flatwise_page.svelte";
  std::ofstream{file} << "<p>{word('page.a')}</p>\n{word('page.b', { count: rows.length, name })} {sword('page.c')}"
                         "{word(`page.d.${kind}`)}";
  Sources read;
  read_page_source(file, "page.svelte", read);
  fs::remove(file);
  ASSERT_EQ(read.mentions.size(), 3U);
  EXPECT_EQ(read.mentions[0].id, "page.a");
  EXPECT_TRUE(read.mentions[2].id == "page.d." && read.mentions[2].open);
  EXPECT_EQ(read.mentions[1].place, "page.svelte:2");
  EXPECT_TRUE(read.literals.contains("count") && read.literals.contains("name"));
}

}  // namespace
}  // namespace flatwise
