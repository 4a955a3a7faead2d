// describe.h: what the field table says to people and to editors: JSON Schema, reference pages, completion.
//
//   for (const Page& page : reference_pages(say)) write(page.path, page.text);
#pragma once

#include <functional>
#include <string>
#include <string_view>
#include <vector>

#include "core/units/code.h"
#include "definition/fields.h"

namespace flatwise::definition {

/// Sentences come from the dictionaries; who calls has them.
using Say = std::function<std::string(std::string_view code, const Args& args)>;

/// A generated file, with its path in the source tree.
struct Page {
  std::string path;
  std::string text;
};

/// JSON Schema (draft-07) of a file. It refuses wrong keys, types, choices and bare numbers; ranges of quantities and all that
/// hangs on two keys only the reader checks.
[[nodiscard]] std::string schema(Document document, const Say& say);
/// Reference page in Markdown: every table, every key.
[[nodiscard]] std::string reference(Document document, const Say& say);
/// Completion for editors that read the usual JSON snippet form: one entry a table, with its keys and examples.
[[nodiscard]] std::string snippets(Document document, const Say& say);

/// "shaft", "readings", "workshop".
[[nodiscard]] std::string_view document_name(Document document);
/// Code of its title.
[[nodiscard]] std::string_view title_code(Document document);
/// Everything above for all documents, as it lies in schemas/, docs/reference/ and editor/.
[[nodiscard]] std::vector<Page> reference_pages(const Say& say);

}  // namespace flatwise::definition
