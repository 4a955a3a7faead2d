#include "words/words.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <optional>
#include <span>
#include <utility>

#include "core/working/place_of.h"
#include "words/dictionary.h"
#include "words/template.h"

namespace flatwise {
namespace {

using words::Entry;
using words::Piece;

const Entry* find_entry(std::string_view code) {
  const std::span<const Entry> all = words::english();
  const auto it = std::ranges::lower_bound(all, code, {}, &Entry::code);
  return it != all.end() && it->code == code ? &*it : nullptr;
}

std::string_view text_of(std::string_view code) {
  const Entry* entry = find_entry(code);
  if (entry == nullptr) core_check_failed(("words for " + std::string{code}).c_str(), __FILE__, __LINE__);
  return entry->text;
}

/// "1, 2 and 5". `last` is the code of the word before the last one: "and", "or".
template <class T, class Say>
std::string listed(const std::vector<T>& items, std::string_view last, const Say& say_one) {
  std::string out;
  for (std::size_t i = 0; i < items.size(); ++i) {
    if (i > 0) out += i + 1 == items.size() ? " " + std::string{text_of(last)} + " " : ", ";
    out += say_one(items[i]);
  }
  return out;
}

std::string whole(std::int64_t v) { return format_quantity(any_count(v)); }

/// Fills one template from one list of arguments.
class Speaker {
 public:
  Speaker(const Args& args, const Voice& voice) : args_{args}, voice_{voice} {}

  [[nodiscard]] std::string fill(std::string_view text, const std::string* number = nullptr) const {
    std::string out;
    for (const Piece& piece : words::read_template(text, number != nullptr).pieces) out += said(piece, number);
    return out;
  }

 private:
  [[nodiscard]] const ArgValue* find(std::string_view name) const {
    const auto it = std::ranges::find(args_, name, &Arg::name);
    return it == args_.end() ? nullptr : &it->value;
  }
  [[nodiscard]] const ArgValue& get(std::string_view name) const {
    const ArgValue* value = find(name);
    CORE_CHECK(value != nullptr);
    return *value;
  }
  [[nodiscard]] Shown shown(UnitSystem system) const {
    return {.system = system, .decimals = {}, .unit = {}, .currency = voice_.currency};
  }

  [[nodiscard]] std::string figure(const AnyQuantity& value, UnitSystem system) const;
  [[nodiscard]] const AnyQuantity* beside(const AnyQuantity& value) const;
  [[nodiscard]] std::string said(const Piece& piece, const std::string* number) const;
  [[nodiscard]] std::string one(const ArgValue& value, std::string_view last = "and") const;
  [[nodiscard]] std::string both(const ArgValue& value) const;
  [[nodiscard]] std::string percent(const ArgValue& value) const;
  [[nodiscard]] static bool is_there(const ArgValue& value);
  [[nodiscard]] static double amount(const ArgValue& value);

  const Args& args_;
  const Voice& voice_;
};

/// What a value is held against in the same sentence, or the value that is held against a limit.
const AnyQuantity* Speaker::beside(const AnyQuantity& value) const {
  for (const auto& [name, other] : {std::pair{"value", "limit"}, std::pair{"limit", "value"}}) {
    const ArgValue* here = find(name);
    if (here == nullptr || std::get_if<AnyQuantity>(here) != &value) continue;
    const ArgValue* there = find(other);
    return there == nullptr ? nullptr : std::get_if<AnyQuantity>(there);
  }
  return nullptr;
}

/// "3.9366 is inside 3.9366" tells nobody anything: a value and its limit that are not alike get the digits that part them.
std::string Speaker::figure(const AnyQuantity& value, UnitSystem system) const {
  constexpr int kMostDecimals = 6;
  Shown as = shown(system);
  std::string text = format_quantity(value, as);
  const AnyQuantity* limit = beside(value);
  if (limit == nullptr || limit->kind != value.kind || limit->si == value.si || text != format_quantity(*limit, as))
    return text;
  for (as.decimals = 0; *as.decimals <= kMostDecimals; ++*as.decimals)
    if (std::string finer = format_quantity(value, as); finer != format_quantity(*limit, as)) return finer;
  return text;
}

std::string Speaker::one(const ArgValue& value, std::string_view last) const {
  if (const auto* v = std::get_if<std::int64_t>(&value)) return whole(*v);
  if (const auto* v = std::get_if<AnyQuantity>(&value)) return figure(*v, voice_.units);
  if (const auto* v = std::get_if<std::string>(&value)) return *v;
  if (const auto* v = std::get_if<Word>(&value)) return word(v->id, voice_);
  if (const auto* v = std::get_if<std::vector<std::int64_t>>(&value)) return listed(*v, last, whole);
  if (const auto* v = std::get_if<std::vector<std::string>>(&value))
    return listed(*v, last, [](const std::string& s) { return s; });
  return listed(std::get<std::vector<Word>>(value), last, [&](const Word& w) { return word(w.id, voice_); });
}

std::string Speaker::both(const ArgValue& value) const {
  const std::string first = one(value);
  const auto* quantity = std::get_if<AnyQuantity>(&value);
  if (quantity == nullptr) return first;
  const std::string second = figure(*quantity, other(voice_.units));
  return first == second ? first : first + " (" + second + ")";
}

std::string Speaker::percent(const ArgValue& value) const {
  const auto* quantity = std::get_if<AnyQuantity>(&value);
  if (quantity == nullptr) return one(value);
  Shown as_percent = shown(voice_.units);
  as_percent.unit = "%";
  as_percent.decimals = std::fabs(quantity->si) < 0.1 ? 1 : 0;
  return format_quantity(*quantity, as_percent);
}

/// An empty text or list is as good as none.
bool Speaker::is_there(const ArgValue& value) {
  if (const auto* v = std::get_if<std::string>(&value)) return !v->empty();
  if (const auto* v = std::get_if<std::vector<std::int64_t>>(&value)) return !v->empty();
  if (const auto* v = std::get_if<std::vector<std::string>>(&value)) return !v->empty();
  if (const auto* v = std::get_if<std::vector<Word>>(&value)) return !v->empty();
  return true;
}

/// What a choice is made by: the number itself, or how many there are in a list.
double Speaker::amount(const ArgValue& value) {
  if (const auto* v = std::get_if<std::int64_t>(&value)) return std::fabs(static_cast<double>(*v));
  if (const auto* v = std::get_if<AnyQuantity>(&value)) return std::fabs(v->si);
  if (const auto* v = std::get_if<std::vector<std::int64_t>>(&value)) return static_cast<double>(v->size());
  if (const auto* v = std::get_if<std::vector<std::string>>(&value)) return static_cast<double>(v->size());
  if (const auto* v = std::get_if<std::vector<Word>>(&value)) return static_cast<double>(v->size());
  CORE_CHECK(false && "a choice needs a number or a list");
  return 0;
}

std::string Speaker::said(const Piece& piece, const std::string* number) const {
  switch (piece.form) {
    case Piece::Form::text:
      return std::string{piece.text};
    case Piece::Form::number:
      return number != nullptr ? *number : "#";
    case Piece::Form::value:
      return one(get(piece.text));
    case Piece::Form::any_of:
      return one(get(piece.text), "or");
    case Piece::Form::both:
      return both(get(piece.text));
    case Piece::Form::percent:
      return percent(get(piece.text));
    case Piece::Form::choice: {
      const ArgValue& value = get(piece.text);
      const double n = amount(value);
      const std::size_t way = n == 1.0 ? 0 : n == 0.0 && piece.ways.size() > 2 ? 2 : 1;
      const std::string chosen_by = one(value);
      return fill(piece.ways[way], &chosen_by);
    }
    case Piece::Form::if_there: {
      const ArgValue* value = find(piece.text);
      if (value != nullptr && is_there(*value)) return fill(piece.ways[0], number);
      return piece.ways.size() > 1 ? fill(piece.ways[1], number) : std::string{};
    }
  }
  return {};
}

/// A quantity as it is shown, parted before the space of its unit, which stays with the unit.
std::pair<std::string, std::string> figure_and_unit(AnyQuantity value, const Voice& voice) {
  const std::string text =
      format_quantity(value, {.system = voice.units, .decimals = {}, .unit = {}, .currency = voice.currency});
  const std::size_t unit = std::min(text.rfind("\u00a0"), text.size());
  return {text.substr(0, unit), text.substr(unit)};
}

}  // namespace

std::string words::fill(std::string_view text, const Args& args, const Voice& voice) {
  return Speaker{args, voice}.fill(text);
}

std::string say(std::string_view code, const Args& args, const Voice& voice) {
  return words::fill(text_of(code), args, voice);
}
std::string say(const Message& message, const Voice& voice) { return say(message.code.id(), message.args, voice); }
std::string say(const Message& message, const Where& where, const Voice& voice) {
  std::string text = say(message, voice);
  if (where.part != Where::Part::rotor) return text;
  std::vector<std::string_view> names;
  words::collect_names(text_of(message.code.id()), names);
  constexpr std::array<std::string_view, 2> kNamesOne{"rotor", "rotors"};
  if (std::ranges::find_first_of(names, kNamesOne) != names.end()) return text;
  return say(Message{Code{"where.at_rotor"}, {{"rotor", where.number}, {"text", text}}}, voice);
}
std::string say(const Finding& finding, const Voice& voice) {
  return say(Message{finding.code, finding.args}, finding.where, voice);
}

std::string word(std::string_view id, const Voice& voice) { return say(id, {}, voice); }

bool has_words(std::string_view code, Language language) {
  (void)language;  // One so far.
  return find_entry(code) != nullptr;
}

std::string capital(std::string text) {
  if (!text.empty() && text.front() >= 'a' && text.front() <= 'z')
    text.front() = static_cast<char>(text.front() - 'a' + 'A');
  return text;
}

std::string figure_only(AnyQuantity value, const Voice& voice) { return figure_and_unit(value, voice).first; }

std::string range_words(AnyQuantity least, AnyQuantity greatest, const Voice& voice) {
  const auto [low, low_unit] = figure_and_unit(least, voice);
  const auto [high, high_unit] = figure_and_unit(greatest, voice);
  return say("words.range", {{"least", low_unit == high_unit ? low : low + low_unit}, {"greatest", high + high_unit}},
             voice);
}

std::string source_words(std::string_view key, const Voice& voice) {
  const std::string code = "source." + std::string{key};
  return has_words(code, voice.language) ? word(code, voice) : std::string{key};
}

std::string sources_words(std::span<const std::string_view> keys, const Voice& voice) {
  std::string out;
  for (const std::string_view key : keys) out += (out.empty() ? "" : "; ") + source_words(key, voice);
  return out;
}

std::string source_words(const Origin& origin, const Voice& voice) {
  const bool from_source = origin.kind == OriginKind::assumed || origin.kind == OriginKind::published;
  return from_source ? source_words(origin.where, voice) : origin.where;
}

std::string where_words(const Origin& origin, const Voice& voice) {
  const std::optional<Place> place = place_of(origin);
  if (!place) return source_words(origin, voice);
  return say("origin.line", {{"where", place->file}, {"line", place->line}}, voice);
}

SaidProblem say(const Problem& problem, const Voice& voice) {
  const Args args = message_of(problem).args;
  const std::string code{problem.code.id()};
  return {say(code, args, voice), say(code + ".allowed", args, voice), say(code + ".mend", args, voice)};
}

std::vector<std::string_view> all_codes(Language language) {
  (void)language;
  std::vector<std::string_view> codes;
  for (const Entry& entry : words::english()) codes.push_back(entry.code);
  return codes;
}

}  // namespace flatwise
