// Reference pages and editor completion from the field table.
#include "definition/describe.h"

#include <algorithm>
#include <cmath>

#include "core/units/format.h"
#include "core/units/parse.h"
#include "definition/json_text.h"
#include "definition/starter.h"

namespace flatwise::definition {
namespace {

struct DocumentRow {
  Document document;
  std::string_view name;
  Code title, intro;
};
constexpr DocumentRow kDocuments[] = {
    {Document::shaft, "shaft", Code{"definition.page.shaft"}, Code{"definition.page.shaft.intro"}},
    {Document::readings, "readings", Code{"definition.page.readings"}, Code{"definition.page.readings.intro"}},
    {Document::workshop, "workshop", Code{"definition.page.workshop"}, Code{"definition.page.workshop.intro"}},
    {Document::study, "study", Code{"definition.page.study"}, Code{"definition.page.study.intro"}},
};
const DocumentRow& row_of(Document document) { return kDocuments[static_cast<std::size_t>(document)]; }

// A cell of a Markdown table cannot hold a bar or a line end.
std::string cell(std::string_view text) {
  std::string out;
  for (const char c : text) {
    if (c == '|') out += '\\';
    out += c == '\n' ? ' ' : c;
  }
  return out;
}

std::string code_cell(std::string_view text) { return text.empty() ? std::string{} : "`" + cell(text) + "`"; }

// Numbers of a range as they are: counts and ratios without a unit, the rest in the language's own units.
AnyQuantity bound(const Field& field, double si) { return {si, field.kind}; }

std::string range_text(const Field& field, const Say& say) {
  Args args;
  const auto add = [&](std::string_view name, double si) {
    if (!std::isfinite(si)) return;
    if (field.is(takes::kWhole))
      args.emplace_back(name, static_cast<std::int64_t>(si));
    else
      args.emplace_back(name, bound(field, si));
  };
  add(field.range.above_least ? "above" : "least", field.range.least);
  add("greatest", field.range.greatest);
  return args.empty() ? std::string{} : say("definition.page.range", args);
}

std::string allowed_text(const Field& field, const Say& say) {
  std::vector<std::string> ways;
  for (const std::string_view word : field.words) ways.push_back("`\"" + std::string{word} + "\"`");
  const auto kind = [&](Kind k) { return say("kind." + std::string{kind_name(k)}, {}); };
  if (field.is(takes::kQuantity)) ways.push_back(kind(field.kind));
  if (field.is(takes::kReading)) ways.push_back(say("type.quantity", {}));
  if (field.is(takes::kText)) ways.push_back(say("type.text", {}));
  if (field.is(takes::kWhole)) ways.push_back(say("type.whole", {}));
  if (field.is(takes::kNumber)) ways.push_back(say("definition.page.share", {}));
  if (field.is(takes::kFlag)) ways.push_back("`true`, `false`");
  if (field.is(takes::kDay)) ways.push_back(say("type.day", {}));
  if (field.is(takes::kTable)) ways.push_back(say("definition.page.table", {{"table", std::string{field.table}}}));
  if (field.is(takes::kTables)) ways.push_back(say("definition.page.tables", {{"table", std::string{field.table}}}));
  if (field.is(takes::kOpenTable))
    ways.push_back(say("definition.page.own_tables", {{"table", std::string{field.table}}}));
  if (field.is(takes::kAnswers)) ways.push_back(say("definition.page.answers", {}));
  std::string text;
  for (const std::string& way : ways) text += (text.empty() ? "" : "; ") + way;
  if (field.is(takes::kList)) text = say("definition.page.list_of", {{"what", text}});
  const std::string range = range_text(field, say);
  return range.empty() ? text : text + ", " + range;
}

std::string default_text(const Field& field, const Say& say) {
  if (field.required) return say("definition.page.required", {});
  if (field.assumed.empty() && field.assumed_from.empty()) return "";
  const std::string value = field.assumed.empty() ? std::string{} : "`" + std::string{field.assumed} + "`";
  Args args{{"why", std::string{field.assumed_from}}};
  if (!value.empty()) args.emplace_back("value", value);
  return say("definition.page.assumed", args);
}

// Kinds of table in the order they are first met, the whole file's first.
std::vector<std::string_view> tables_of(Document document) {
  std::vector<std::string_view> tables;
  for (const Field& field : fields(document))
    if (tables.empty() || std::ranges::find(tables, field.in()) == tables.end()) tables.push_back(field.in());
  return tables;
}

std::string table_section(Document document, std::string_view table, const Say& say) {
  const bool root = table == root_table(document);
  std::string out = "\n## " + (root ? say("definition.page.whole_file", {}) : "`" + std::string{table} + "`") + "\n\n";
  out += "| " + say("definition.page.key", {}) + " | " + say("definition.page.meaning", {}) + " | " +
         say("definition.page.limits", {}) + " | " + say("definition.page.default", {}) + " | " +
         say("definition.page.example", {}) + " |\n|---|---|---|---|---|\n";
  for (const Field& field : fields(document)) {
    if (field.in() != table) continue;
    std::string meaning = say(field.meaning.id(), {});
    if (field.change > 0) meaning += " " + say("definition.page.change", {{"number", field.change}});
    out += "| `" + std::string{field.key()} + "` | " + cell(meaning) + " | " + cell(allowed_text(field, say)) + " | " +
           cell(default_text(field, say)) + " | " + code_cell(field.example) + " |\n";
  }
  return out;
}

}  // namespace

std::string_view document_name(Document document) { return row_of(document).name; }
std::string_view title_code(Document document) { return row_of(document).title.id(); }

std::string reference(Document document, const Say& say) {
  const DocumentRow& row = row_of(document);
  std::string out = "<!-- " + say("definition.page.generated", {}) + " -->\n\n";
  out += "# " + say(row.title.id(), {}) + "\n\n" + say(row.intro.id(), {}) + "\n\n" +
         say("definition.page.quantities", {}) + "\n";
  for (const std::string_view table : tables_of(document)) out += table_section(document, table, say);
  if (document != Document::shaft) return out;
  const Results<std::string> example = starter({}, say);
  CORE_CHECK(example.has_value());
  return out + "\n## " + say("definition.page.starter", {}) + "\n\n```toml\n" + *example + "```\n";
}

std::string snippets(Document document, const Say& say) {
  JsonText all = JsonText::object();
  for (const Field& table : fields(document)) {
    if (table.in() != root_table(document) || table.table.empty()) continue;
    const bool many = table.is(takes::kTables) && !table.is(takes::kTable);
    std::string head = table.is(takes::kOpenTable) ? std::string{table.key()} + ".${1:name}" : std::string{table.key()};
    JsonText body = JsonText::list();
    body.add(JsonText::text(many ? "[[" + head + "]]" : "[" + head + "]"));
    int stop = 1;
    for (const Field& field : fields(document)) {
      if (field.in() != table.table || field.example.empty()) continue;
      // Braces and dollars mean something in a snippet: an example with any is a comment's, not a gap's.
      std::string example{field.example};
      for (std::size_t at = 0; (at = example.find('}', at)) != std::string::npos; at += 2) example.insert(at, "\\");
      const std::string line = std::string{field.key()} + " = ";
      body.add(JsonText::text(field.required ? line + "${" + std::to_string(++stop) + ":" + example + "}"
                                             : "# " + line + std::string{field.example}));
    }
    JsonText one = JsonText::object();
    one.add("scope", JsonText::text("toml"));
    one.add("prefix", JsonText::text(many ? "[[" + std::string{table.key()} : "[" + std::string{table.key()}));
    one.add("description", JsonText::text(say(table.meaning.id(), {})));
    one.add("body", std::move(body));
    all.add(std::string{document_name(document)} + ": " + std::string{table.key()}, std::move(one));
  }
  return all.dump() + "\n";
}

std::vector<Page> reference_pages(const Say& say) {
  std::vector<Page> pages;
  for (const DocumentRow& row : kDocuments) {
    const Document document = row.document;
    const std::string name{row.name};
    pages.push_back({"schemas/" + name + ".schema.json", schema(document, say)});
    pages.push_back({"docs/reference/" + name + "-file.md", reference(document, say)});
    pages.push_back({"editor/" + name + ".code-snippets", snippets(document, say)});
  }
  return pages;
}

}  // namespace flatwise::definition
