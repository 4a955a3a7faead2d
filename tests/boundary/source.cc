#include "tests/boundary/source.h"

#include <algorithm>
#include <cctype>
#include <fstream>
#include <iterator>

namespace boundary {
namespace {

/// Walks the text once; keeps newlines, blanks comments and the insides of literals.
class Blanker {
 public:
  Blanker(Source& source, std::string_view text) : source_{source}, text_{text} {}

  std::string run() {
    while (at_ < text_.size()) step();
    return std::move(out_);
  }

 private:
  [[nodiscard]] bool starts(std::string_view what) const { return text_.substr(at_, what.size()) == what; }
  void keep() {
    if (text_[at_] == '\n') ++line_;
    out_ += text_[at_++];
  }
  void blank() {
    if (text_[at_] == '\n') {
      keep();
    } else {
      out_ += ' ';
      ++at_;
    }
  }
  void blank_until(std::string_view end) {
    while (at_ < text_.size() && !starts(end)) blank();
    for (std::size_t i = 0; i < end.size() && at_ < text_.size(); ++i) blank();
  }

  void step() {
    if (starts("//")) {
      while (at_ < text_.size() && text_[at_] != '\n') blank();
    } else if (starts("/*")) {
      blank_until("*/");
    } else if (starts("R\"")) {
      raw_literal();
    } else if (text_[at_] == '"' && in_include()) {
      while (at_ < text_.size() && text_[at_] != '\n') keep();
    } else if (text_[at_] == '"') {
      literal('"');
    } else if (text_[at_] == '\'' && !after_digit()) {
      literal('\'');
    } else {
      keep();
    }
  }

  [[nodiscard]] bool after_digit() const {
    return !out_.empty() && std::isalnum(static_cast<unsigned char>(out_.back())) != 0;
  }
  [[nodiscard]] bool in_include() const {
    const auto begin = out_.rfind('\n') + 1;  // npos + 1 is 0
    return out_.find("#include", begin) != std::string::npos;
  }

  void literal(char quote) {
    const int line = line_;
    std::string inside;
    keep();
    while (at_ < text_.size() && text_[at_] != quote && text_[at_] != '\n') {
      if (text_[at_] == '\\' && at_ + 1 < text_.size()) {
        inside += text_[at_];
        blank();
      }
      inside += text_[at_];
      blank();
    }
    if (at_ < text_.size()) keep();
    if (quote == '"') note(line, std::move(inside));
  }

  void raw_literal() {
    const int line = line_;
    const auto open = text_.find('(', at_);
    if (open == std::string_view::npos) return keep();
    const std::string end = ")" + std::string{text_.substr(at_ + 2, open - at_ - 2)} + "\"";
    const auto close = std::min(text_.find(end, open), text_.size());
    note(line, std::string{text_.substr(open + 1, close - open - 1)});
    blank_until(end);
  }

  void note(int line, std::string inside) {
    source_.literals.push_back(std::move(inside));
    source_.literal_lines.push_back(line);
  }

  Source& source_;
  std::string_view text_;
  std::size_t at_ = 0;
  int line_ = 0;
  std::string out_;
};

std::vector<std::string> split_lines(std::string_view text) {
  std::vector<std::string> lines;
  while (!text.empty()) {
    const auto end = std::min(text.find('\n'), text.size());
    lines.emplace_back(text.substr(0, end));
    text.remove_prefix(std::min(end + 1, text.size()));
  }
  return lines;
}

std::string trimmed(const std::string& text) {
  const auto first = text.find_first_not_of(" \t\n");
  if (first == std::string::npos) return {};
  return text.substr(first, text.find_last_not_of(" \t\n") - first + 1);
}

bool has_word_at_start(const std::string& text, std::string_view word) {
  return text.starts_with(word) && (text.size() == word.size() || text[word.size()] == ' ' || text[word.size()] == '{');
}

bool opens_namespace(const std::string& head) {
  return has_word_at_start(head, "namespace") || head.starts_with("inline namespace") || head.starts_with("extern \"");
}
bool opens_type(const std::string& head) {
  const std::string start = head.substr(0, head.find('('));
  for (const auto* word : {"struct", "class", "enum", "union"}) {
    if (has_word_at_start(start, word)) return true;
  }
  return head.starts_with("template") && head.find('(') == std::string::npos;
}

/// The identifier before the first '(' of a head: "TEST" for tests.
std::string called(const std::string& head) {
  const auto paren = head.find('(');
  if (paren == std::string::npos) return {};
  auto begin = paren;
  while (begin > 0 && (std::isalnum(static_cast<unsigned char>(head[begin - 1])) != 0 || head[begin - 1] == '_'))
    --begin;
  return head.substr(begin, paren - begin);
}

/// Follows braces; collects heads and statements that stand at namespace level.
class Outliner {
 public:
  Outline run(const Source& source) {
    for (line_ = 0; line_ < static_cast<int>(source.code.size()); ++line_) {
      const std::string& text = source.code[static_cast<std::size_t>(line_)];
      if (text.starts_with("#")) continue;
      for (const char c : text) take(c);
      take('\n');
    }
    return std::move(out_);
  }

 private:
  void take(char c) {
    if (depth_ > 0) {
      if (c == '{') ++depth_;
      if (c == '}' && --depth_ == 0) close();
      return;
    }
    if (c == '{') {
      open();
    } else if (c == '}') {
      head_.clear();  // of a namespace
    } else if (c == ';') {
      if (!trimmed(head_).empty()) out_.statements.push_back({trimmed(head_), head_line_});
      head_.clear();
    } else {
      if (trimmed(head_).empty() && c != ' ' && c != '\n') head_line_ = line_;
      head_ += c == '\n' ? ' ' : c;
    }
  }

  void open() {
    const std::string head = trimmed(head_);
    if (opens_namespace(head)) {
      head_.clear();
      return;
    }
    depth_ = 1;
    const std::string before_value = head.substr(0, head.find(" = "));
    in_function_ = !opens_type(head) && before_value.find('(') != std::string::npos;
    if (in_function_) out_.functions.push_back({head, called(head), head_line_, line_, line_});
  }
  void close() {
    if (in_function_) {
      out_.functions.back().last_line = line_;
      head_.clear();
    } else {
      head_ += "{}";
    }
    in_function_ = false;
  }

  Outline out_;
  std::string head_;
  int line_ = 0, head_line_ = 0, depth_ = 0;
  bool in_function_ = false;
};

bool is_left_out(const std::filesystem::path& folder) {
  const std::string name = folder.filename().string();
  return name.starts_with(".") || name == "build" || name == "node_modules" || name == "out";
}

}  // namespace

bool Source::is_test() const {
  return path.ends_with("_test.cc") || path.ends_with("_samples.h") || path.find("test_") != std::string::npos ||
         path.starts_with("tests/") || path.starts_with("reference/");
}

std::string Source::folder() const {
  const auto first = path.find('/');
  if (first == std::string::npos) return {};
  if (!path.starts_with("core/") && !path.starts_with("store/")) return path.substr(0, first);
  const auto second = path.find('/', first + 1);
  return path.substr(0, second == std::string::npos ? first : second);
}

Source read_source(std::string path, std::string_view text) {
  Source source;
  source.path = std::move(path);
  source.lines = split_lines(text);
  source.code = split_lines(Blanker{source, text}.run());
  return source;
}

std::string read_text(const std::filesystem::path& file) {
  std::ifstream in{file, std::ios::binary};
  return {std::istreambuf_iterator<char>{in}, {}};
}

std::vector<Source> read_sources(const std::filesystem::path& root) {
  std::vector<Source> sources;
  for (auto it = std::filesystem::recursive_directory_iterator{root}; it != std::filesystem::end(it); ++it) {
    if (it->is_directory() && is_left_out(it->path())) it.disable_recursion_pending();
    const auto extension = it->path().extension();
    if (!it->is_regular_file() || (extension != ".h" && extension != ".cc")) continue;
    sources.push_back(read_source(it->path().lexically_relative(root).generic_string(), read_text(it->path())));
  }
  std::ranges::sort(sources, {}, &Source::path);
  return sources;
}

Outline outline(const Source& source) { return Outliner{}.run(source); }

}  // namespace boundary
