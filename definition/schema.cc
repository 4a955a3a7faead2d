// The JSON Schema of a file from the field table.
#include <cmath>
#include <set>

#include "core/units/parse.h"
#include "definition/describe.h"
#include "definition/json_text.h"
#include "definition/text.h"

namespace flatwise::definition {
namespace {

// A number with something behind it that is not one: the reader knows every unit, an editor need only warn of none.
constexpr std::string_view kWithUnit = "^\\s*(-|\\+|−)?\\s*([0-9.]|½|¼|¾|⅛|⅜|⅝|⅞).*[^0-9 .,/+-]";

// In front of it where no doubt may stand behind the number.
constexpr std::string_view kExact = "^(?!.*(±|\\+-|\\.\\.))";
constexpr std::string_view kMaybeDoubted = "^[0-9. ]+%?( *(±|\\+-|\\.\\.) *[0-9. ]+%?)?$";

class SchemaWriter {
 public:
  SchemaWriter(Document document, const Say& say) : document_{document}, say_{say} {}

  std::string write() {
    JsonText all = JsonText::object();
    all.add("$schema", JsonText::text("http://json-schema.org/draft-07/schema#"));
    all.add("title", JsonText::text(say_(title_code(document_), {})));
    add_table(all, root_table(document_), false);
    JsonText definitions = JsonText::object();
    while (!wanted_.empty()) {
      const auto [table, partial] = wanted_.extract(wanted_.begin()).value();
      if (!done_.insert({table, partial}).second) continue;
      JsonText one = JsonText::object();
      add_table(one, table, partial);
      definitions.add(name_of(table, partial), std::move(one));
    }
    if (answers_) definitions.add("answers", answers());
    all.add("definitions", std::move(definitions));
    return all.dump() + "\n";
  }

 private:
  static std::string name_of(std::string_view table, bool partial) {
    return std::string{table} + (partial ? "_part" : "");
  }

  void add_table(JsonText& to, std::string_view table, bool partial) {
    JsonText properties = JsonText::object(), required = JsonText::list();
    for (const Field& field : fields(document_)) {
      if (field.in() != table) continue;
      properties.add(field.key(), property(field, partial));
      if (field.required && !partial) required.add(JsonText::text(field.key()));
    }
    to.add("type", JsonText::text("object"));
    to.add("properties", std::move(properties));
    if (!required.empty()) to.add("required", std::move(required));
    to.add("additionalProperties", JsonText::flag(false));
  }

  JsonText reference_to(std::string_view table, bool partial) {
    wanted_.insert({std::string{table}, partial});
    return JsonText::object().add("$ref", JsonText::text("#/definitions/" + name_of(table, partial)));
  }

  JsonText property(const Field& field, bool partial) {
    std::vector<JsonText> ways = scalars(field);
    if (field.is(takes::kList)) {
      JsonText items = ways.size() == 1 ? std::move(ways.front()) : any_of(std::move(ways));
      ways.clear();
      ways.push_back(JsonText::object().add("type", JsonText::text("array")).add("items", std::move(items)));
    }
    // What lies over another table need not say everything again.
    const bool inner_partial =
        partial || field.key() == "with" || (field.in() == "station" && field.key() == "between");
    if (field.is(takes::kTable)) ways.push_back(reference_to(field.table, inner_partial));
    if (field.is(takes::kTables))
      ways.push_back(
          JsonText::object().add("type", JsonText::text("array")).add("items", reference_to(field.table, partial)));
    if (field.is(takes::kOpenTable))
      ways.push_back(JsonText::object()
                         .add("type", JsonText::text("object"))
                         .add("additionalProperties", reference_to(field.table, partial)));
    if (field.is(takes::kAnswers)) {
      answers_ = true;
      ways.push_back(JsonText::object().add("$ref", JsonText::text("#/definitions/answers")));
    }
    JsonText whole = JsonText::object();
    whole.add("description", JsonText::text(say_(field.meaning.id(), {})));
    if (!field.assumed.empty()) whole.add("default", assumed(field));
    // A lone way stands beside its description, except that nothing may stand beside a reference.
    if (ways.size() == 1 && !field.is(takes::kTable | takes::kAnswers)) return whole.merge(std::move(ways.front()));
    JsonText list = JsonText::list();
    for (JsonText& way : ways) list.add(std::move(way));
    return whole.add("anyOf", std::move(list));
  }

  static JsonText any_of(std::vector<JsonText> ways) {
    JsonText list = JsonText::list();
    for (JsonText& way : ways) list.add(std::move(way));
    return JsonText::object().add("anyOf", std::move(list));
  }

  static JsonText assumed(const Field& field) {
    const bool bare =
        field.is(takes::kWhole | takes::kFlag) || (field.is(takes::kNumber) && !field.assumed.ends_with('%'));
    return bare ? JsonText::raw(std::string{field.assumed}) : JsonText::text(field.assumed);
  }

  static JsonText words_of(const Field& field) {
    JsonText words = JsonText::list();
    for (const std::string_view word : field.words) words.add(JsonText::text(word));
    return JsonText::object().add("enum", std::move(words));
  }

  static JsonText limited(std::string_view type, const Range& range) {
    JsonText number = JsonText::object().add("type", JsonText::text(type));
    if (std::isfinite(range.least))
      number.add(range.above_least ? "exclusiveMinimum" : "minimum", JsonText::number(range.least));
    if (std::isfinite(range.greatest)) number.add("maximum", JsonText::number(range.greatest));
    return number;
  }

  JsonText unit_text(const Field& field) {
    const bool doubted = may_be_doubted(document_, field);
    JsonText text = JsonText::object()
                        .add("type", JsonText::text("string"))
                        .add("pattern", JsonText::text((doubted ? "" : std::string{kExact}) + std::string{kWithUnit}));
    JsonText examples = JsonText::list();
    if (field.is(takes::kQuantity))
      for (const std::string& form : accepted_forms(field.kind)) examples.add(JsonText::text(form));
    if (doubted) examples.add(JsonText::text(accepted_forms(field.kind).front() + " ± 1 %"));
    if (!examples.empty()) text.add("examples", std::move(examples));
    return text;
  }

  std::vector<JsonText> scalars(const Field& field) {
    std::vector<JsonText> ways;
    if (field.is(takes::kWord)) ways.push_back(words_of(field));
    if (field.is(takes::kQuantity | takes::kReading)) ways.push_back(unit_text(field));
    if (field.is(takes::kText))
      ways.push_back(JsonText::object()
                         .add("type", JsonText::text("string"))
                         .add("minLength", JsonText::number(field.is(takes::kList) ? 0 : 1))
                         .add("maxLength", JsonText::number(static_cast<double>(kLongestText))));
    if (field.is(takes::kWhole)) ways.push_back(limited("integer", field.range));
    if (field.is(takes::kNumber)) {
      ways.push_back(limited("number", field.range));
      ways.push_back(
          JsonText::object()
              .add("type", JsonText::text("string"))
              .add("pattern", JsonText::text(may_be_doubted(document_, field) ? kMaybeDoubted : "^[0-9. ]+%?$")));
    }
    if (field.is(takes::kFlag)) ways.push_back(JsonText::object().add("type", JsonText::text("boolean")));
    if (field.is(takes::kDay))
      ways.push_back(JsonText::object()
                         .add("type", JsonText::text("string"))
                         .add("pattern", JsonText::text("^[0-9]{4}-[0-9]{2}-[0-9]{2}$")));
    return ways;
  }

  JsonText answers() {
    const Field* field = find_field(document_, root_table(document_), "answers");
    JsonText ways = JsonText::list();
    ways.add(words_of(*field));
    ways.add(JsonText::object().add("type", JsonText::text("boolean")));
    ways.add(JsonText::object().add("$ref", JsonText::text("#/definitions/answers")));
    JsonText value = JsonText::object();
    value.add("anyOf", std::move(ways));
    return JsonText::object().add("type", JsonText::text("object")).add("additionalProperties", std::move(value));
  }

  Document document_;
  const Say& say_;
  std::set<std::pair<std::string, bool>> wanted_, done_;
  bool answers_ = false;
};

}  // namespace

std::string schema(Document document, const Say& say) { return SchemaWriter{document, say}.write(); }

}  // namespace flatwise::definition
