// compile_dictionary.cc: reads the TOML files of one language and writes one C++ file of sorted entries. Runs at build
// time; a code that stands twice and a template that cannot be read stop the build with file and line.
//
//   compile_dictionary english OUT.cc words/en/*.toml

#include <toml++/toml.h>
#include <fstream>
#include <iostream>
#include <map>
#include <string>
#include <vector>

#include "words/template.h"

namespace {

struct Found {
  std::string text;
  std::string file;
  std::uint32_t line = 0;
};
using Entries = std::map<std::string, Found, std::less<>>;

int complain(const std::string& file, std::uint32_t line, std::string_view what) {
  std::cerr << file << ':' << line << ": error: " << what << '\n';
  return 1;
}

/// Every code but single words belongs to a folder: "fits.press_low".
bool is_code(std::string_view code) {
  for (const char c : code)
    if (!((c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') || c == '_' || c == '-' ||
          c == '.'))
      return false;
  return !code.empty() && code.front() != '.' && code.back() != '.';
}

int read_file(const std::string& file, Entries& entries) {
  int faults = 0;
  toml::table table;
  try {
    table = toml::parse_file(file);
  } catch (const toml::parse_error& e) {
    return complain(file, e.source().begin.line, e.description());
  }
  for (const auto& [key, node] : table) {
    const std::string code{key.str()};
    const std::uint32_t line = key.source().begin.line;
    const auto* text = node.as_string();
    if (text == nullptr || !is_code(code)) {
      faults += complain(file, line, "an entry is \"folder.code\" = \"sentence\", its key in quotes: " + code);
      continue;
    }
    if (const auto fault = flatwise::words::fault_of(text->get()); !fault.empty())
      faults += complain(file, line, code + ": " + std::string{fault});
    const auto [before, is_new] = entries.try_emplace(code, Found{text->get(), file, line});
    if (!is_new)
      faults += complain(
          file, line, code + " stands already in " + before->second.file + ":" + std::to_string(before->second.line));
  }
  return faults;
}

/// With the suffix that carries its length: counted letter by letter, as many sentences are more steps than a compiler takes for a constant.
std::string quoted(std::string_view s) {
  std::string out = "\"";
  for (const char c : s) {
    if (c == '"' || c == '\\') out += '\\';
    out += c == '\n' ? std::string{"\\n"} : std::string{c};
  }
  return out + "\"sv";
}

}  // namespace

int main(int argc, char** argv) {
  const std::vector<std::string> arguments(argv + 1, argv + argc);
  if (arguments.size() < 3) {
    std::cerr << "compile_dictionary LANGUAGE OUT.cc FILE.toml...\n";
    return 2;
  }
  Entries entries;
  int faults = 0;
  for (std::size_t i = 2; i < arguments.size(); ++i) faults += read_file(arguments[i], entries);
  if (faults != 0) return 1;

  std::ofstream out{arguments[1]};
  out << "// Made by words/compile_dictionary.cc. Not to be edited.\n#include \"words/dictionary.h\"\n\n"
      << "namespace flatwise::words {\nusing namespace std::string_view_literals;\nnamespace {\nconstexpr Entry "
         "kEntries[] = {\n";
  for (const auto& [code, found] : entries) out << "    {" << quoted(code) << ", " << quoted(found.text) << "},\n";
  out << "};\n}  // namespace\nstd::span<const Entry> " << arguments[0]
      << "() { return kEntries; }\n}  // namespace flatwise::words\n";
  out.close();
  return out ? 0 : complain(arguments[1], 0, "cannot be written");
}
