#include "definition/tree.h"

#include <algorithm>

#include "core/units/parse.h"

namespace flatwise::definition {
namespace {

constexpr std::size_t kMostProblems = 500;  // A file with more is not being mended by hand.
constexpr std::size_t kMostItems = 10'000;  // Of one list.

std::vector<std::string> as_texts(std::span<const std::string_view> words) { return {words.begin(), words.end()}; }

std::string joined(const std::string& path, std::string_view key) {
  return path.empty() ? std::string{key} : path + "." + std::string{key};
}

std::string with_index(const std::string& path, std::size_t index) {
  return path + "[" + std::to_string(index + 1) + "]";
}

// What a person would call the value that stands there.
std::string_view type_word(toml::node_type type) {
  switch (type) {
    case toml::node_type::table:
      return "type.table";
    case toml::node_type::array:
      return "type.list";
    case toml::node_type::string:
      return "type.text";
    case toml::node_type::integer:
      return "type.whole";
    case toml::node_type::floating_point:
      return "type.number";
    case toml::node_type::boolean:
      return "type.flag";
    case toml::node_type::date:
      return "type.day";
    default:
      return "type.time";
  }
}

std::vector<Word> wanted_types(const Field& field, bool item) {
  std::vector<Word> words;
  const auto say = [&](unsigned what, const char* word) {
    if (field.is(what)) words.push_back(Word{word});
  };
  if (field.is(takes::kList) && !item) return {Word{"type.list"}};
  say(takes::kQuantity | takes::kReading, "type.quantity");
  say(takes::kText | takes::kWord, "type.text");
  say(takes::kWhole, "type.whole");
  say(takes::kNumber, "type.number");
  say(takes::kFlag, "type.flag");
  say(takes::kDay, "type.day");
  say(takes::kTable | takes::kOpenTable | takes::kAnswers, "type.table");
  say(takes::kTables, "type.tables");
  return words;
}

// The number with the two commonest units of its kind: which was meant is for the person to say.
std::vector<std::string> with_units(const std::string& number, Kind kind) {
  std::vector<std::string> ways;
  for (const std::string_view unit : unit_spellings(kind)) {
    const std::string way =
        number + (unit.starts_with("/") || unit.starts_with("°") || unit == "′" ? "" : " ") + std::string{unit};
    if (parse_quantity(way, kind, "way")) ways.push_back("\"" + way + "\"");
    if (ways.size() == 2) break;
  }
  return ways;
}

// "3.5" in the table is written by us; no need for a reader of all the forms of TOML.
std::optional<std::string> between_quotes(std::string_view text, char quote) {
  const std::size_t from = text.find(quote);
  const std::size_t to = text.find(quote, from + 1);
  if (from == std::string_view::npos || to == std::string_view::npos) return std::nullopt;
  return std::string{text.substr(from + 1, to - from - 1)};
}

}  // namespace

// --- File ------------------------------------------------------------------------------------------------------------

File::File(Document document, std::string_view bytes, std::string_view file)
    : document_{document}, text_{bytes, file} {}

bool File::parse() {
  if (auto unfit = text_.unfit()) {
    problems_.push_back(std::move(*unfit));
    return false;
  }
  toml::parse_result result = toml::parse(text_.bytes(), std::string_view{text_.file()});
  if (!result) {
    add_syntax_error(result.error());
    return false;
  }
  root_ = std::move(result).table();
  check_table(root_, root_table(document_), {}, false);
  return true;
}

void File::add_syntax_error(const toml::parse_error& error) {
  const auto at = error.source().begin;
  const Place where = text_.at(static_cast<int>(at.line), static_cast<int>(at.column));
  const std::string_view what = error.description();
  if (what.find("cannot redefine") != std::string_view::npos) {
    const std::string key = between_quotes(what, '\'').value_or("");
    problems_.push_back({Code{"definition.given_twice"}, key, key, {{"key", key}}, where});
    return;
  }
  // The library begins with what it was doing; what it met is the useful part.
  const std::size_t colon = what.find(": ");
  std::string detail{colon == std::string_view::npos ? what : what.substr(colon + 2)};
  problems_.push_back({Code{"definition.syntax"}, "file", {}, {{"detail", std::move(detail)}}, where});
}

std::vector<Problem> File::take_problems() {
  std::ranges::stable_sort(problems_, {}, [](const Problem& p) {
    return std::pair{p.place ? p.place->line : 0, p.place ? p.place->column : 0};
  });
  // Nine rotors of one line share its mistakes: each is said once.
  const auto same = [](const Problem& a, const Problem& b) {
    return a.code == b.code && a.field == b.field && a.place->line == b.place->line &&
           a.place->column == b.place->column;
  };
  std::vector<Problem> once;
  for (Problem& p : problems_)
    if (std::ranges::none_of(once, [&](const Problem& q) { return same(p, q); })) once.push_back(std::move(p));
  problems_ = std::move(once);
  if (left_out_ > 0) {
    const auto count = static_cast<std::int64_t>(left_out_);
    problems_.push_back({Code{"definition.more_problems"}, "file", {}, {{"count", count}}, whole()});
  }
  return std::move(problems_);
}

Place File::place(const toml::node& node) const {
  const auto at = node.source().begin;
  return text_.at(static_cast<int>(at.line), static_cast<int>(at.column));
}

Place File::place(const toml::key& key) const {
  const auto at = key.source().begin;
  return text_.at(static_cast<int>(at.line), static_cast<int>(at.column));
}

std::string File::typed(const toml::node& node) const {
  if (const auto* text = node.as_string()) return text->get();
  const auto& source = node.source();
  return text_.between(static_cast<int>(source.begin.line), static_cast<int>(source.begin.column),
                       static_cast<int>(source.end.line), static_cast<int>(source.end.column));
}

Origin File::given_at(const toml::node& node) const {
  return {OriginKind::given, text_.file() + ":" + std::to_string(node.source().begin.line)};
}

void File::add(Code code, std::string field, std::string given, Args args, Place where) {
  if (problems_.size() >= kMostProblems) {
    ++left_out_;
    return;
  }
  problems_.push_back({code, std::move(field), std::move(given), std::move(args), std::move(where)});
}

void File::add(Problem problem, std::string field, const toml::node& at) {
  add(problem.code, std::move(field), problem.given.empty() ? typed(at) : std::move(problem.given),
      std::move(problem.args), place(at));
}

Result<Entered> File::quantity(const toml::node& node, const Field& field, const std::string& path) const {
  if (!has_doubt(node)) return quantity(node, field.kind, field.range, path);
  Result<doubt::DoubtfulQuantity> read = doubtful(node, field, path);
  if (!read) return tl::unexpected(std::move(read.error()));
  if (path == moved_) {
    read->middle.value.si = moved_si_;
    read->middle.nm.reset();
  }
  return std::move(read->middle);
}

Result<Entered> File::quantity(const toml::node& node, Kind kind, Range range, const std::string& path) const {
  if (!node.is_string()) {
    Args args{{"kind", Word{"kind." + std::string{kind_name(kind)}}}, {"forms", accepted_forms(kind)}};
    if (std::vector<std::string> ways = with_units(typed(node), kind); !ways.empty()) args.emplace_back("ways", ways);
    return tl::unexpected(
        Problem{Code{"definition.number_without_unit"}, path, typed(node), std::move(args), place(node)});
  }
  Result<Entered> read = parse_quantity(node.as_string()->get(), kind, path);
  if (!read) return read;
  if (!in_range(read->value.si, range))
    return tl::unexpected(out_of_range(read->value.si, kind, range, path, read->typed));
  return read;
}

void File::check_table(const toml::table& table, std::string_view kind, const std::string& path, bool all_optional) {
  check_unknown(table, kind, path);
  if (!all_optional) check_missing(table, kind, path);
  for (const Field& field : fields(document_))
    if (field.in() == kind)
      if (const toml::node* node = table.get(field.key()))
        check_value(*node, field, joined(path, field.key()), all_optional);
}

void File::check_unknown(const toml::table& table, std::string_view kind, const std::string& path) {
  const std::vector<std::string_view> keys = keys_of(document_, kind);
  for (const auto& [key, node] : table) {
    if (index_of(key.str(), keys)) continue;
    Args args{{"key", std::string{key.str()}}, {"keys", as_texts(keys)}};
    if (const std::string_view near = meant(key.str(), keys); !near.empty())
      args.emplace_back("near", std::string{near});
    if (!path.empty()) args.emplace_back("table", path);
    add(Code{"definition.unknown_key"}, joined(path, key.str()), std::string{key.str()}, std::move(args), place(key));
  }
}

void File::check_missing(const toml::table& table, std::string_view kind, const std::string& path) {
  for (const Field& field : fields(document_)) {
    if (field.in() != kind || !field.required || table.contains(field.key())) continue;
    Args args{{"key", std::string{field.key()}}, {"meaning", Word{std::string{field.meaning.id()}}}};
    if (!path.empty()) args.emplace_back("table", path);
    if (!field.example.empty()) args.emplace_back("example", std::string{field.example});
    // The whole file's table has no line of its own.
    add(Code{"definition.missing"}, joined(path, field.key()), {}, std::move(args),
        path.empty() ? whole() : place(table));
  }
}

void File::check_value(const toml::node& node, const Field& field, const std::string& path, bool all_optional) {
  if (node.is_table() || node.is_array_of_tables()) {
    if (field.is(takes::kAnswers)) return check_answers(node, field, path);
    if (field.is(takes::kTable | takes::kTables | takes::kOpenTable))
      return check_tables(node, field, path, all_optional);
    return wrong_type(node, field, path);
  }
  if (const toml::array* list = node.as_array()) {
    // A list of tables with one stray value among them is a list of tables to us, though not to the library.
    if (field.is(takes::kList | takes::kTables)) return check_items(*list, field, path, all_optional);
    return wrong_type(node, field, path);
  }
  if (field.is(takes::kList)) return wrong_type(node, field, path);
  check_scalar(node, field, path);
}

void File::check_tables(const toml::node& node, const Field& field, const std::string& path, bool all_optional) {
  if (const toml::table* table = node.as_table()) {
    if (field.is(takes::kOpenTable)) {
      for (const auto& [key, inner] : *table) {
        const std::string at = joined(path, key.str());
        if (const toml::table* own = inner.as_table())
          check_table(*own, field.table, at, all_optional);
        else
          add(Code{"definition.wrong_type"}, at, typed(inner),
              {{"found", Word{std::string{type_word(inner.type())}}},
               {"wanted", std::vector<Word>{Word{"type.table"}}}},
              place(inner));
      }
      return;
    }
    // What a `with` says lies over a whole rotor: nothing in it must be there.
    if (field.is(takes::kTable))
      return check_table(
          *table, field.table, path,
          all_optional || field.key() == "with" || (field.in() == "station" && field.key() == "between"));
    return wrong_type(node, field, path);
  }
  if (!field.is(takes::kTables)) return wrong_type(node, field, path);
  check_items(*node.as_array(), field, path, all_optional);
}

void File::check_items(const toml::array& list, const Field& field, const std::string& path, bool all_optional) {
  if (list.size() > kMostItems) {
    Args args{{"count", static_cast<std::int64_t>(list.size())}, {"greatest", static_cast<std::int64_t>(kMostItems)}};
    return add(Code{"definition.too_many"}, path, {}, std::move(args), place(list));
  }
  std::size_t index = 0;
  for (const toml::node& item : list) {
    const std::string at = with_index(path, index++);
    if (const toml::table* table = item.as_table()) {
      check_table(*table, field.table, at, all_optional);
    } else if (field.is(takes::kTables)) {
      add(Code{"definition.wrong_type"}, at, typed(item),
          {{"found", Word{std::string{type_word(item.type())}}}, {"wanted", std::vector<Word>{Word{"type.table"}}}},
          place(item));
    } else if (item.is_array()) {
      wrong_type(item, field, at, true);
    } else {
      check_scalar(item, field, at);
    }
  }
}

void File::check_scalar(const toml::node& node, const Field& field, const std::string& path) {
  if (node.is_integer() && field.is(takes::kWhole)) return check_number(node, field, path);
  if (node.is_number() && field.is(takes::kNumber)) return check_number(node, field, path);
  if (node.is_boolean() && field.is(takes::kFlag)) return;
  if (const auto* day = node.as_date(); day && field.is(takes::kDay)) {
    if (day->get().year < 1900 || day->get().year > 2200)
      add(Code{"definition.year"}, path, typed(node), {{"least", 1900}, {"greatest", 2200}}, place(node));
    return;
  }
  if (node.is_string()) return check_text(node, field, path);
  if (node.is_number() && field.is(takes::kQuantity | takes::kReading)) {
    // A reading's kind hangs on another field: its own table says which forms it takes.
    if (!field.is(takes::kReading)) add(quantity(node, field, path).error(), path, node);
    return;
  }
  wrong_type(node, field, path, field.is(takes::kList));
}

void File::check_text(const toml::node& node, const Field& field, const std::string& path) {
  const std::string& text = node.as_string()->get();
  const auto control = [](char c) { return static_cast<unsigned char>(c) < 0x20 || c == 0x7f; };
  if (text.size() > kLongestText || std::ranges::any_of(text, control))
    return add(Code{"definition.not_one_line"}, path, text.substr(0, 40),
               {{"greatest", static_cast<int>(kLongestText)}}, place(node));
  if (field.is(takes::kWord) && index_of(text, field.words)) return;
  if (field.is(takes::kReading)) return;
  if (field.is(takes::kQuantity)) {
    auto read = quantity(node, field, path);
    if (read && has_doubt(node)) doubts_[path] = {&field, *doubtful(node, field, path)};
    if (!read) add(std::move(read.error()), path, node);
    return;
  }
  if (field.is(takes::kNumber)) return check_number(node, field, path);
  if (field.is(takes::kWord)) return not_a_choice(node, field, path);
  if (!field.is(takes::kText)) return wrong_type(node, field, path, field.is(takes::kList));
  // A spacer put back without a label is told as an empty text in a list; a name is never empty.
  if (!field.is(takes::kList) && std::ranges::all_of(text, [](char c) { return c == ' '; }))
    add(Code{"definition.empty"}, path, text, {}, place(node));
}

void File::check_number(const toml::node& node, const Field& field, const std::string& path) {
  double value = 0;
  if (has_doubt(node)) {
    auto read = doubtful(node, field, path);
    if (!read) return add(std::move(read.error()), path, node);
    value = read->middle.value.si;
    doubts_[path] = {&field, *std::move(read)};
  } else if (node.is_string()) {
    auto read = parse_quantity(node.as_string()->get(), Kind::ratio, path);
    if (!read) return add(std::move(read.error()), path, node);
    value = read->value.si;
  } else {
    value = node.value<double>().value_or(0);
  }
  if (!in_range(value, field.range)) add(out_of_range(value, field.kind, field.range, path, typed(node)), path, node);
}

void File::check_answers(const toml::node& node, const Field& field, const std::string& path) {
  const toml::table* table = node.as_table();
  if (!table) return wrong_type(node, field, path);
  for (const auto& [key, inner] : *table) {
    const std::string at = joined(path, key.str());
    if (inner.is_table()) {
      check_answers(inner, field, at);
    } else if (!inner.is_string() && !inner.is_boolean()) {
      wrong_type(inner, field, at);
    } else if (const auto* text = inner.as_string(); text && !index_of(text->get(), field.words)) {
      not_a_choice(inner, field, at);
    }
  }
}

void File::not_a_choice(const toml::node& node, const Field& field, const std::string& path) {
  const std::string& text = node.as_string()->get();
  Args args{{"words", as_texts(field.words)}};
  Field others = field;
  others.takes &= ~(takes::kWord | takes::kText | takes::kList | takes::kAnswers);
  if (others.takes != 0) args.emplace_back("wanted", wanted_types(others, true));
  if (const std::string_view near = meant(text, field.words); !near.empty())
    args.emplace_back("near", std::string{near});
  add(Code{"definition.not_a_choice"}, path, text, std::move(args), place(node));
}

void File::wrong_type(const toml::node& node, const Field& field, const std::string& path, bool item) {
  Args args{{"found", Word{std::string{type_word(node.type())}}}, {"wanted", wanted_types(field, item)}};
  if (!field.example.empty() && !item) args.emplace_back("example", std::string{field.example});
  add(Code{"definition.wrong_type"}, path, typed(node), std::move(args), place(node));
}

}  // namespace flatwise::definition
