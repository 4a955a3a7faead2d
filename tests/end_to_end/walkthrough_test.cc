// walkthrough_test.cc: docs/walkthrough.md says what the program answers today.
//
// A block begins with ```console; in it a line '$ COMMAND' is run by bash in a copy of the demo's folder (with what the
// commands before it left there), and the lines under it must stand in the answer as they stand here. A line '…' alone
// leaves lines out: what is before it must be together, what follows must come later. Words after 'console' may name the
// exit status wanted ('status=1'; 0 if none).
//
// FLATWISE_WRITE_PAGES=1 fills every block anew. What is shown of a long answer is said by comments above the
// block: <!-- show FROM => TO -->, two regular expressions for the first and the last line of a part (TO empty: up to the
// next empty line). A block with none is shown whole.
#include <gtest/gtest.h>

#include <algorithm>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <regex>

#include "tests/end_to_end/process.h"

namespace flatwise::end_to_end {
namespace {

namespace fs = std::filesystem;
using Lines = std::vector<std::string>;

const std::string kPage = "docs/walkthrough.md";
const std::string kLeftOut = "…";

struct Part {
  std::string from, to;
};

struct Block {
  std::size_t first = 0, last = 0;  ///< Lines of the page between the fences: [first, last).
  int status = 0;
  std::string command;
  Lines shown;
  std::vector<Part> parts;
};

/// One command a block: the answer under it is then the rest of the block.
std::vector<Block> blocks_of(const Lines& page) {
  static const std::regex fence{R"(```console( status=(\d))?)"}, show{R"(<!-- show (.*?) =>(?: (.*?))? -->)"};
  std::vector<Block> blocks;
  std::vector<Part> parts;
  for (std::size_t i = 0; i < page.size(); ++i) {
    std::smatch match;
    if (std::regex_match(page[i], match, show)) parts.push_back({match[1], match[2]});
    if (!std::regex_match(page[i], match, fence)) continue;
    Block block;
    block.status = match[2].matched ? std::stoi(match[2]) : 0;
    block.parts = std::exchange(parts, {});
    block.first = i + 1;
    for (block.last = block.first; block.last < page.size() && page[block.last] != "```";) ++block.last;
    if (block.first == block.last || !page[block.first].starts_with("$ "))
      throw std::runtime_error("a block without a command");
    block.command = page[block.first].substr(2);
    block.shown.assign(page.begin() + static_cast<std::ptrdiff_t>(block.first) + 1,
                       page.begin() + static_cast<std::ptrdiff_t>(block.last));
    i = block.last;
    blocks.push_back(std::move(block));
  }
  return blocks;
}

/// Empty when the parts shown stand in the answer, in order; else the first line that does not.
std::string difference(const Lines& shown, const Lines& answer) {
  std::vector<Lines> parts(1);
  for (const std::string& line : shown) {
    if (line == kLeftOut)
      parts.emplace_back();
    else
      parts.back().push_back(line);
  }
  if (parts.size() == 1) {
    if (shown == answer) return {};
    const auto [s, a] = std::ranges::mismatch(shown, answer);
    return "here:    " + (s == shown.end() ? "(end)" : *s) + "\nanswer:  " + (a == answer.end() ? "(end)" : *a);
  }
  auto from = answer.begin();
  for (const Lines& part : parts) {
    const auto found = std::search(from, answer.end(), part.begin(), part.end());
    if (found == answer.end()) return "not in the answer: " + part.front() + " and the lines under it";
    from = found + static_cast<std::ptrdiff_t>(part.size());
  }
  return {};
}

Lines lines_shown(const Block& block, const Lines& answer) {
  if (block.parts.empty()) return answer;
  Lines out;
  auto at = answer.begin();
  for (const Part& part : block.parts) {
    const std::regex from{part.from}, to{part.to};
    const auto first = std::find_if(at, answer.end(), [&](const auto& l) { return std::regex_search(l, from); });
    if (first == answer.end()) throw std::runtime_error(block.command + ": no line is like " + part.from);
    const auto next_empty = std::find(first + 1, answer.end(), "");
    const auto last = part.to.empty()
                          ? next_empty
                          : std::find_if(first, answer.end(), [&](const auto& l) { return std::regex_search(l, to); });
    if (last == answer.end() && !part.to.empty())
      throw std::runtime_error(block.command + ": no line is like " + part.to);
    if (first != at) out.push_back(kLeftOut);
    at = part.to.empty() ? last : last + 1;
    out.insert(out.end(), first, at);
  }
  if (at != answer.end()) out.push_back(kLeftOut);
  return out;
}

/// A folder as the reader has it: the demo in it, and the program in PATH.
class Reader {
 public:
  Reader() {
    fs::copy(std::string{FLATWISE_SOURCE_DIR} + "/demo", scratch_.path() / "demo", fs::copy_options::recursive);
    fs::create_directory(scratch_.path() / "bin");
    fs::create_symlink(program(), scratch_.path() / "bin/flatwise");
  }
  [[nodiscard]] Ran types(const std::string& command) const {
    const std::string path = std::getenv("PATH");
    return run({"bash", "-c", "exec 2>&1; " + command},
               {.folder = scratch_.path().string(),
                .environment = {{"PATH", scratch_ / "bin" + (":" + path)}, {"LC_ALL", "C.UTF-8"}}});
  }

 private:
  Scratch scratch_;
};

void write_anew(Lines page) {
  const Reader reader;
  std::vector<Block> blocks = blocks_of(page);
  std::vector<Lines> shown;
  for (const Block& block : blocks) shown.push_back(lines_shown(block, lines_of(reader.types(block.command).out)));
  for (std::size_t i = blocks.size(); i-- > 0;) {
    const auto at = page.begin() + static_cast<std::ptrdiff_t>(blocks[i].first) + 1;
    page.insert(page.erase(at, page.begin() + static_cast<std::ptrdiff_t>(blocks[i].last)), shown[i].begin(),
                shown[i].end());
  }
  std::ofstream out{std::string{FLATWISE_SOURCE_DIR} + "/" + kPage, std::ios::binary};
  for (const std::string& line : page) out << line << "\n";
}

TEST(Walkthrough, SaysWhatTheProgramAnswers) {
  if (std::getenv("FLATWISE_WRITE_PAGES") != nullptr) write_anew(lines_of(ours(kPage)));
  const Reader reader;
  const std::vector<Block> blocks = blocks_of(lines_of(ours(kPage)));
  ASSERT_GT(blocks.size(), 15U);
  for (const Block& block : blocks) {
    const Ran ran = reader.types(block.command);
    EXPECT_EQ(ran.status, block.status) << "$ " << block.command << "\n" << ran.out;
    EXPECT_EQ(difference(block.shown, lines_of(ran.out)), "")
        << "$ " << block.command << " (line " << block.first + 1 << " of " << kPage << ")";
  }
}

TEST(Walkthrough, SendsNobodyToAFileThatIsNotThere) {
  const std::string page = ours(kPage);
  static const std::regex link{R"(\]\(([^)#]+)[^)]*\))"};
  int links = 0;
  for (std::sregex_iterator it{page.begin(), page.end(), link}, end; it != end; ++it, ++links)
    EXPECT_TRUE(fs::exists(fs::path{FLATWISE_SOURCE_DIR} / "docs" / (*it)[1].str())) << (*it)[1];
  EXPECT_GT(links, 2);
}

TEST(Walkthrough, ComparisonBites) {
  const Lines answer{"a", "b", "c", "d", "e"};
  EXPECT_EQ(difference(answer, answer), "");
  EXPECT_EQ(difference({"a", "b", kLeftOut, "d", kLeftOut}, answer), "");
  EXPECT_NE(difference({"a", "b"}, answer), "");
  EXPECT_NE(difference({"a", "c", kLeftOut}, answer), "");
  EXPECT_NE(difference({kLeftOut, "d", kLeftOut, "b", kLeftOut}, answer), "");
  EXPECT_NE(difference({"a", "b", "c", "d", "f"}, answer), "");
  EXPECT_NE(difference({"a", "b", "c", "d", "e", "f"}, answer), "");
}

}  // namespace
}  // namespace flatwise::end_to_end
