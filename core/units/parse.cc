#include "core/units/parse.h"

#include <algorithm>
#include <array>
#include <utility>

#include "core/units/near.h"
#include "core/units/read_number.h"
#include "core/units/typed.h"
#include "core/units/unit_table.h"

namespace flatwise {
namespace {

constexpr std::size_t kLongestTyped = 200;

bool is_digit(char c) { return c >= '0' && c <= '9'; }
bool is_upper(char c) { return c >= 'A' && c <= 'Z'; }
char lower(char c) { return is_upper(c) ? static_cast<char>(c - 'A' + 'a') : c; }

std::string lowered(std::string_view s) {
  std::string out{s};
  std::ranges::transform(out, out.begin(), lower);
  return out;
}

bool is_currency(std::string_view unit) { return unit.size() == 3 && std::ranges::all_of(unit, is_upper); }

// Only used to say that a sum of money stands where a length is wanted; any three capitals are taken as a currency.
constexpr std::array<std::string_view, 8> kCommonCurrencies{"EUR", "USD", "GBP", "NZD", "AUD", "CAD", "CHF", "ZAR"};

Word kind_word(Kind kind) { return Word{"kind." + std::string{kind_name(kind)}}; }

/// Units that may follow one another in one length, angle, time or mass.
struct Chain {
  std::string_view great, small;
};
constexpr std::array<Chain, 6> kChains{Chain{"ft", "in"}, Chain{"°", "′"},   Chain{"′", "″"},
                                       Chain{"h", "min"}, Chain{"min", "s"}, Chain{"lb", "oz"}};

/// One number with its unit, where both stand in the folded text.
struct Term {
  ReadNumber number;
  std::size_t begin = 0, unit_begin = 0, unit_end = 0;
  const Unit* unit = nullptr;
};

/// Reads one quantity; its problems all carry the kind and the accepted forms.
class Reader {
 public:
  Reader(std::string_view typed, Kind kind, std::string_view field) : typed_{typed}, kind_{kind}, field_{field} {}
  [[nodiscard]] Result<Entered> read();

 private:
  [[nodiscard]] Problem problem(Code code, Args args = {}) const;
  [[nodiscard]] Problem number_problem(NumberFault fault, std::size_t at) const;
  [[nodiscard]] Problem unit_problem(const Term& term) const;
  [[nodiscard]] std::string quoted(std::size_t begin, std::size_t end) const;
  [[nodiscard]] std::size_t unit_end(std::size_t begin) const;
  [[nodiscard]] std::string normal(const Term& t) const;
  [[nodiscard]] std::string nearest_unit(std::string_view normal) const;

  [[nodiscard]] Result<std::vector<Term>> terms(std::size_t at) const;
  [[nodiscard]] Result<exact::Ratio> si(std::vector<Term>& terms) const;
  [[nodiscard]] Result<exact::Ratio> without_unit(const Term& term) const;
  [[nodiscard]] Result<exact::Ratio> money(const Term& term) const;
  [[nodiscard]] Result<exact::Ratio> sum(const std::vector<Term>& terms) const;
  [[nodiscard]] Result<Entered> finished(const exact::Ratio& si) const;

  std::string_view typed_;
  Kind kind_;
  std::string_view field_;
  Folded folded_;
  std::string_view text_;  ///< folded_.text without closing spaces.
  bool negative_ = false;
};

Problem Reader::problem(Code code, Args args) const {
  args.emplace_back("kind", kind_word(kind_));
  args.emplace_back("forms", accepted_forms(kind_));
  return {code, std::string{field_}, showable(typed_), std::move(args), std::nullopt};
}

std::string Reader::quoted(std::size_t begin, std::size_t end) const {
  while (begin < end && text_[begin] == ' ') ++begin;
  while (end > begin && text_[end - 1] == ' ') --end;
  const std::size_t from = folded_.from[begin];
  return showable(typed_.substr(from, folded_.from[end] - from));
}

Problem Reader::number_problem(NumberFault fault, std::size_t at) const {
  switch (fault) {
    case NumberFault::comma: {
      std::string plain{text_}, point{text_};
      std::erase(plain, ',');
      std::ranges::replace(point, ',', '.');
      if (std::ranges::count(text_, ',') > 1 || point.find('.') != point.rfind('.')) point.clear();
      return problem(Code{"quantity.comma"}, {{"plain", plain}, {"point", point}});
    }
    case NumberFault::spaced_digits: {
      std::string plain{text_.substr(0, at)};
      std::erase(plain, ' ');
      return problem(Code{"quantity.spaced_digits"}, {{"plain", plain}});
    }
    case NumberFault::too_many_digits:
      return problem(Code{"quantity.too_many_digits"}, {{"most", 15}});
    case NumberFault::zero_denominator:
      return problem(Code{"quantity.zero_denominator"});
    case NumberFault::improper_fraction:
      return problem(Code{"quantity.improper_fraction"});
    case NumberFault::out_of_range:
      return problem(Code{"quantity.out_of_range"});
    case NumberFault::none:
    case NumberFault::no_number:
      break;
  }
  for (const std::string_view word : {"nan", "inf"})
    if (lowered(text_.substr(at)).starts_with(word) && find_unit(kind_, normal_unit(text_.substr(at))) == nullptr)
      return problem(Code{"quantity.not_finite"});
  return problem(Code{"quantity.no_number"});
}

std::string Reader::normal(const Term& t) const {
  return normal_unit(text_.substr(t.unit_begin, t.unit_end - t.unit_begin));
}

std::string Reader::nearest_unit(std::string_view wrong) const {
  std::vector<std::string_view> names;
  std::vector<const Unit*> units;
  for (const Unit& unit : all_units()) {
    if (unit.kind != kind_) continue;
    for (std::string_view rest = unit.spellings; !rest.empty();) {
      const std::string_view name = rest.substr(0, rest.find('|'));
      if (lowered(name) == lowered(wrong)) return std::string{unit.shown};
      if (name.size() > 1) names.push_back(name), units.push_back(&unit);  // One letter is near to everything.
      rest.remove_prefix(std::min(rest.size(), name.size() + 1));
    }
  }
  const std::string_view near = nearest(wrong, names);
  for (std::size_t i = 0; i < names.size() && !near.empty(); ++i)
    if (names[i] == near) return std::string{units[i]->shown};
  return {};
}

Problem Reader::unit_problem(const Term& term) const {
  const std::string unit = quoted(term.unit_begin, term.unit_end);
  const std::string name = normal(term);
  if (kind_ == Kind::count) return problem(Code{"quantity.count_with_unit"}, {{"unit", unit}});
  if (const Unit* other = find_unit_elsewhere(kind_, name))
    return problem(Code{"quantity.other_kind"}, {{"unit", unit}, {"found", kind_word(other->kind)}});
  if (std::ranges::find(kCommonCurrencies, name) != kCommonCurrencies.end())
    return problem(Code{"quantity.other_kind"}, {{"unit", unit}, {"found", kind_word(Kind::money)}});
  for (const std::string_view ton : {"ton", "tons", "tonf", "tonsf", "ton*force", "tons*force"})
    if (kind_ == Kind::force && name == ton) return problem(Code{"quantity.ambiguous_ton"}, {{"unit", unit}});
  const bool begins_no_unit =
      name.empty() || is_digit(name.front()) || std::string_view{"*-.+,="}.find(name.front()) != std::string_view::npos;
  if (begins_no_unit) return problem(Code{"quantity.unreadable"}, {{"rest", unit}});
  return problem(Code{"quantity.unknown_unit"}, {{"unit", unit}, {"near", nearest_unit(name)}});
}

/// A unit ends at the end, before a number after a space, or before a digit after a prime or degree sign.
std::size_t Reader::unit_end(std::size_t begin) const {
  for (std::size_t i = begin; i < text_.size(); ++i) {
    const bool number = is_digit(text_[i]) || (text_[i] == '.' && i + 1 < text_.size() && is_digit(text_[i + 1]));
    if (i == begin) continue;
    const char before = text_[i - 1];
    const bool after_mark = before == '\'' || before == '"' || before == kDegree;
    if (number && (before == ' ' || after_mark)) return i;
    // 5'-6": the hyphen of drawings.
    if (before == '\'' && text_[i] == '-' && i + 1 < text_.size() && is_digit(text_[i + 1])) return i;
  }
  return text_.size();
}

Result<std::vector<Term>> Reader::terms(std::size_t at) const {
  std::vector<Term> found;
  while (at < text_.size()) {
    if (found.size() > 2)
      return tl::unexpected{problem(Code{"quantity.unreadable"}, {{"rest", quoted(at, text_.size())}})};
    if (!found.empty() && text_[at] == '-') ++at;
    Term term;
    term.begin = at;
    term.number = read_number(text_, at);
    if (term.number.fault != NumberFault::none)
      return tl::unexpected{number_problem(term.number.fault, term.number.end)};
    term.unit_begin = term.number.end;
    while (term.unit_begin < text_.size() && text_[term.unit_begin] == ' ') ++term.unit_begin;
    term.unit_end = unit_end(term.unit_begin);
    at = term.unit_end;
    found.push_back(term);
  }
  return found;
}

Result<exact::Ratio> Reader::without_unit(const Term& term) const {
  if (kind_ != Kind::count && kind_ != Kind::ratio) return tl::unexpected{problem(Code{"quantity.no_unit"})};
  if (kind_ == Kind::count && !term.number.plain_whole) return tl::unexpected{problem(Code{"quantity.not_whole"})};
  return term.number.value;
}

Result<exact::Ratio> Reader::money(const Term& term) const {
  const std::string unit = normal(term);
  if (kind_ == Kind::money && is_currency(unit)) return term.number.value;
  if (kind_ == Kind::money_rate && unit.size() > 4 && unit[3] == '/' && is_currency(unit.substr(0, 3)))
    if (const Unit* time = find_unit(Kind::time, unit.substr(4)))
      return term.number.value * exact::Ratio{false, exact::Whole{time->den}, exact::Whole{time->num}};
  if (find_unit_elsewhere(kind_, unit) == nullptr && unit.size() >= 3) {
    std::string near = unit.substr(0, 3);
    std::ranges::transform(near, near.begin(),
                           [](char c) { return c >= 'a' && c <= 'z' ? static_cast<char>(c - 32) : c; });
    const bool letters = is_currency(near) && (unit.size() == 3 || unit[3] == '/');
    if (letters) near += kind_ == Kind::money ? "" : "/h";
    Args args{{"unit", quoted(term.unit_begin, term.unit_end)}, {"near", letters ? near : std::string{}}};
    return tl::unexpected{problem(Code{"quantity.unknown_unit"}, std::move(args))};
  }
  return tl::unexpected{unit_problem(term)};
}

Result<exact::Ratio> Reader::sum(const std::vector<Term>& terms) const {
  const Unit& first = *terms.front().unit;
  exact::Ratio total;
  for (std::size_t i = 0; i < terms.size(); ++i) {
    const auto& [number, begin, unit_begin, unit_end, unit] = terms[i];
    const exact::Ratio plain{false, exact::Whole{unit->num}, exact::Whole{unit->den}};
    const exact::Ratio part = number.value * plain;
    if (i > 0) {
      const Unit& above = *terms[i - 1].unit;
      const bool linked = std::ranges::any_of(
          kChains, [&](const Chain& c) { return c.great == above.shown && c.small == unit->shown; });
      const bool below_one = part.num * exact::Whole{above.den} < exact::Whole{above.num} * part.den;
      if (!linked || !below_one || !terms[i - 1].number.plain_whole) {
        Args args{{"first", std::string{above.shown}}, {"second", std::string{unit->shown}}};
        return tl::unexpected{problem(Code{"quantity.compound"}, std::move(args))};
      }
    }
    total = total + part;
  }
  total.negative = negative_;
  if (first.zero_cents != 0) {
    const exact::Ratio to_kelvin{false, exact::Whole{first.num}, exact::Whole{first.den}};
    total = total + exact::Ratio{false, exact::Whole{first.zero_cents}, exact::Whole{100}} * to_kelvin;
  }
  return first.turns ? total * exact::pi() : total;
}

Result<exact::Ratio> Reader::si(std::vector<Term>& found) const {
  const bool bare = found.front().unit_begin == found.front().unit_end;
  if (found.size() == 1 && (bare || kind_ == Kind::money || kind_ == Kind::money_rate)) {
    Result<exact::Ratio> value = bare ? without_unit(found.front()) : money(found.front());
    if (value) value->negative = negative_;
    return value;
  }
  for (Term& term : found) {
    const std::string name = normal(term);
    if (name.empty())
      return tl::unexpected{problem(Code{"quantity.unreadable"}, {{"rest", quoted(term.begin, text_.size())}})};
    term.unit = find_unit(kind_, name);
    if (term.unit == nullptr) return tl::unexpected{unit_problem(term)};
  }
  return sum(found);
}

Result<Entered> Reader::finished(const exact::Ratio& value) const {
  if (value.overflowed()) return tl::unexpected{problem(Code{"quantity.out_of_range"})};
  if (kind_ == Kind::temperature && value.negative && !value.num.is_zero())
    return tl::unexpected{problem(Code{"quantity.below_absolute_zero"})};
  Entered entered{{exact::nearest_double(value), kind_}, std::nullopt, std::string{typed_}};
  if (kind_ != Kind::length) return entered;
  entered.nm = exact::nearest_whole(value * exact::Ratio{false, exact::Whole{1'000'000'000}, exact::Whole{1}});
  if (!entered.nm) return tl::unexpected{problem(Code{"quantity.out_of_range"})};
  return entered;
}

Result<Entered> Reader::read() {
  if (typed_.size() > kLongestTyped) {
    Problem long_one = problem(Code{"quantity.too_long"}, {{"most", static_cast<int>(kLongestTyped)}});
    long_one.given = showable(typed_.substr(0, 40)) + "…";
    return tl::unexpected{std::move(long_one)};
  }
  std::optional<Folded> folded = fold_typed(typed_);
  if (!folded) return tl::unexpected{problem(Code{"quantity.not_text"})};
  folded_ = *std::move(folded);
  text_ = folded_.text;
  while (text_.ends_with(' ')) text_.remove_suffix(1);
  std::size_t at = 0;
  while (at < text_.size() && text_[at] == ' ') ++at;
  if (at == text_.size()) return tl::unexpected{problem(Code{"quantity.missing"})};
  negative_ = text_[at] == '-';
  if (negative_ || text_[at] == '+') ++at;
  if (at == text_.size()) return tl::unexpected{problem(Code{"quantity.no_number"})};
  Result<std::vector<Term>> found = terms(at);
  if (!found) return tl::unexpected{std::move(found.error())};
  Result<exact::Ratio> value = si(*found);
  if (!value) return tl::unexpected{std::move(value.error())};
  return finished(*value);
}

}  // namespace

Result<Entered> parse_quantity(std::string_view text, Kind kind, std::string_view field) {
  return Reader{text, kind, field}.read();
}

std::vector<std::string_view> unit_spellings(Kind kind) {
  std::vector<std::string_view> names;
  for (const Unit& unit : all_units())
    if (unit.kind == kind) names.push_back(unit.shown);
  return names;
}

std::vector<std::string> accepted_forms(Kind kind) {
  switch (kind) {
    case Kind::length:
      return {"38.1 mm", "1 1/2 in", "12 µm", "0.5 thou"};
    case Kind::area:
      return {"120 mm²", "0.2 in²"};
    case Kind::angle:
      return {"5°", "2° 30′", "10′", "0.1 rad"};
    case Kind::mass:
      return {"12.5 kg", "27 lb", "250 g"};
    case Kind::time:
      return {"11 min", "1 h 30 min", "90 s"};
    case Kind::force:
      return {"400 N", "25 kN", "90 lbf"};
    case Kind::torque:
      return {"475 N·m", "350 ft·lb", "90 in·lb"};
    case Kind::pressure:
      return {"210 MPa", "206 GPa", "30000 psi", "160 bar"};
    case Kind::temperature:
      return {"20 °C", "68 °F", "293.15 K"};
    case Kind::temperature_rise:
      return {"15 K", "27 °F"};
    case Kind::angular_speed:
      return {"480 r/min", "50 rad/s"};
    case Kind::frequency:
      return {"8 Hz", "2.5 kHz"};
    case Kind::speed:
      return {"1.4 m/s", "5 km/h", "3 mph"};
    case Kind::acceleration:
      return {"9.8 m/s²", "2 g"};
    case Kind::inertia:
      return {"0.35 kg·m²", "8 lb·ft²"};
    case Kind::unbalance:
      return {"150 g·mm", "2 oz·in"};
    case Kind::expansion:
      return {"11.5 µm/(m·K)", "11.5e-6 /K"};
    case Kind::energy:
      return {"30 J", "22 ft·lbf"};
    case Kind::density:
      return {"7850 kg/m³", "0.284 lb/in³"};
    case Kind::stiffness:
      return {"5000 N/mm", "28000 lbf/in"};
    case Kind::section_modulus:
      return {"5760 mm³", "0.35 in³"};
    case Kind::second_moment:
      return {"127000 mm⁴", "0.3 in⁴"};
    case Kind::viscosity:
      return {"68 mm²/s", "68 cSt"};
    case Kind::money:
      return {"18.40 EUR"};
    case Kind::money_rate:
      return {"60 EUR/h"};
    case Kind::ratio:
      return {"0.12", "12 %"};
    case Kind::count:
      return {"3"};
  }
  return {};
}

}  // namespace flatwise
