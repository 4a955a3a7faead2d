#include "core/fits/iso286.h"

#include <algorithm>
#include <cmath>
#include <string>

#include "core/fits/iso286_tables.h"

namespace flatwise::fits {
namespace {

constexpr int kLeastOffered = 5;  // IT4 is in the table only for the delta of grade 5.

bool is_capital(char c) { return c >= 'A' && c <= 'Z'; }
bool is_small(char c) { return c >= 'a' && c <= 'z'; }
bool is_digit(char c) { return c >= '0' && c <= '9'; }

Problem unread(std::string_view code) {
  return {Code{"fits.code_unread"}, "class", std::string{code}, {}, std::nullopt};
}

// Decimal of at most 3 whole digits and 6 places, in nanometres: exact, and free of locale and of strtod.
std::optional<std::int64_t> nanometres_of_mm(std::string_view text) {
  const auto point = text.find('.');
  const auto whole = text.substr(0, point);
  const auto part = point == std::string_view::npos ? std::string_view{} : text.substr(point + 1);
  if (whole.empty() || whole.size() > 3 || part.size() > 6) return std::nullopt;
  if (point != std::string_view::npos && part.empty()) return std::nullopt;
  std::int64_t value = 0;
  for (char c : whole) value = value * 10 + (c - '0');
  for (std::size_t i = 0; i < 6; ++i) {
    if (i < part.size() && !is_digit(part[i])) return std::nullopt;  // A second point.
    value = value * 10 + (i < part.size() ? part[i] - '0' : 0);
  }
  return value;
}

std::optional<int> letter_index(std::string_view text) {
  for (std::size_t i = 0; i < kLetters.size(); ++i) {
    const auto name = kLetters[i].shaft;
    const bool same = std::ranges::equal(name, text, {}, {},
                                         [](char c) { return is_capital(c) ? static_cast<char>(c - 'A' + 'a') : c; });
    if (same) return static_cast<int>(i);
  }
  return std::nullopt;
}

std::int64_t to_nm(Length v) { return std::llround(v.si() * 1e9); }

template <std::size_t N>
std::size_t step_of(const std::array<int, N>& ends_mm, std::int64_t nominal_nm) {
  const auto it = std::ranges::find_if(ends_mm, [&](int end) { return nominal_nm <= std::int64_t{end} * 1'000'000; });
  CORE_CHECK(it != ends_mm.end());
  return static_cast<std::size_t>(it - ends_mm.begin());
}

std::optional<Problem> size_problem(Length nominal) {
  if (nominal.si() > 0 && nominal.si() < 1 && to_nm(nominal) >= 3'000'000 && to_nm(nominal) <= 500'000'000)
    return std::nullopt;
  return Problem{Code{"fits.size_out_of_range"},
                 "nominal",
                 {},
                 {{"nominal", any(nominal)}, {"least", any(millimetres(3))}, {"greatest", any(millimetres(500))}},
                 std::nullopt};
}

int tolerance_um(std::size_t step, int grade) {
  return kStandardTolerance[static_cast<std::size_t>(grade - kFirstGrade)][step];
}

// Both deviations in half micrometres (js needs the half).
struct HalfMicrometres {
  int upper, lower;
};

std::optional<HalfMicrometres> listed_j(const FitClass& fit, std::size_t step, int tolerance) {
  if (fit.hole) {
    if (fit.grade < 6 || fit.grade > 8) return std::nullopt;
    const int es = kHoleJ[static_cast<std::size_t>(fit.grade - 6)][step];
    return HalfMicrometres{2 * es, 2 * (es - tolerance)};
  }
  if (fit.grade > 8) return std::nullopt;
  const int ei = kShaftJ[static_cast<std::size_t>(fit.grade - kLeastOffered)][step];
  if (ei == kNoJ) return std::nullopt;
  return HalfMicrometres{2 * (ei + tolerance), 2 * ei};
}

// Upper deviation of a hole on the interference side, K to ZC, from the shaft's ei.
std::optional<int> hole_es(std::string_view letter, int grade, std::size_t step, int ei) {
  const bool over_3_mm = step > 0;
  const bool k_m_n = letter == "k" || letter == "m" || letter == "n";
  if (letter == "k" && grade > 8 && over_3_mm) return std::nullopt;
  if (letter == "n" && grade > 8 && over_3_mm) return 0;
  if (letter == "m" && grade == 6 && kStandardStepEnds[step] == 315) return -9;  // Not -11: note to the table.
  const bool with_delta = over_3_mm && grade <= (k_m_n ? 8 : 7);
  return -ei + (with_delta ? tolerance_um(step, grade) - tolerance_um(step, grade - 1) : 0);
}

std::optional<HalfMicrometres> deviations_of(const FitClass& fit, std::int64_t nominal_nm) {
  const auto step = step_of(kStandardStepEnds, nominal_nm);
  const int tolerance = tolerance_um(step, fit.grade);
  const auto& letter = kLetters[static_cast<std::size_t>(fit.letter)];
  if (letter.side == Side::middle) return HalfMicrometres{tolerance, -tolerance};
  if (letter.side == Side::listed) return listed_j(fit, step, tolerance);
  const int deviation = letter.deviation[step_of(kDeviationStepEnds, nominal_nm)];
  if (deviation == kNoDeviation) return std::nullopt;
  if (letter.side == Side::away) {
    if (fit.hole) return HalfMicrometres{2 * (deviation + tolerance), 2 * deviation};
    return HalfMicrometres{-2 * deviation, -2 * (deviation + tolerance)};
  }
  if (fit.hole) {
    const auto es = hole_es(letter.shaft, fit.grade, step, deviation);
    if (!es) return std::nullopt;
    return HalfMicrometres{2 * *es, 2 * (*es - tolerance)};
  }
  const int ei = letter.shaft == "k" && fit.grade > 7 ? 0 : deviation;
  return HalfMicrometres{2 * (ei + tolerance), 2 * ei};
}

std::string class_text(const FitClass& fit) {
  std::string text{kLetters[static_cast<std::size_t>(fit.letter)].shaft};
  if (fit.hole) std::ranges::transform(text, text.begin(), [](char c) { return static_cast<char>(c - 'a' + 'A'); });
  return text + std::to_string(fit.grade);
}

Result<HalfMicrometres> checked_deviations(Length nominal, const FitClass& fit) {
  CORE_CHECK(fit.letter >= 0 && fit.letter < static_cast<int>(kLetters.size()));
  CORE_CHECK(fit.grade >= kLeastOffered && fit.grade <= kLastGrade);
  if (auto bad = size_problem(nominal)) return tl::unexpected(*bad);
  const auto found = deviations_of(fit, to_nm(nominal));
  if (!found)
    return tl::unexpected(Problem{Code{"fits.class_not_at_size"},
                                  "class",
                                  class_text(fit),
                                  {{"class", class_text(fit)}, {"nominal", any(nominal)}},
                                  std::nullopt});
  return *found;
}

}  // namespace

Result<FitClass> parse_fit_class(std::string_view code) {
  std::string_view rest = code;
  const auto blanks = [&rest] { rest.remove_prefix(std::min(rest.find_first_not_of(' '), rest.size())); };
  const auto take = [&rest](auto wanted) {
    const auto end = std::ranges::find_if_not(rest, wanted);
    const auto taken = rest.substr(0, static_cast<std::size_t>(end - rest.begin()));
    rest.remove_prefix(taken.size());
    return taken;
  };
  FitClass fit;
  blanks();
  if (const auto size = take([](char c) { return is_digit(c) || c == '.'; }); !size.empty()) {
    const auto nm = nanometres_of_mm(size);
    if (!nm) return tl::unexpected(unread(code));
    fit.nominal = nanometres(*nm);
  }
  blanks();
  const auto letters = take([](char c) { return is_capital(c) || is_small(c); });
  const auto grade = take(is_digit);
  blanks();
  if (!rest.empty() || letters.empty() || grade.empty() || grade.size() > 2) return tl::unexpected(unread(code));
  fit.hole = is_capital(letters.front());
  if (!std::ranges::all_of(letters, fit.hole ? is_capital : is_small)) return tl::unexpected(unread(code));
  const auto index = letter_index(letters);
  if (!index)
    return tl::unexpected(Problem{
        Code{"fits.letter_unknown"}, "class", std::string{code}, {{"letter", std::string{letters}}}, std::nullopt});
  fit.letter = *index;
  for (char c : grade) fit.grade = fit.grade * 10 + (c - '0');
  if (fit.grade < kLeastOffered || fit.grade > kLastGrade)
    return tl::unexpected(Problem{Code{"fits.grade_out_of_range"},
                                  "class",
                                  std::string{code},
                                  {{"grade", fit.grade}, {"least", kLeastOffered}, {"greatest", kLastGrade}},
                                  std::nullopt});
  return fit;
}

Result<Length> standard_tolerance(Length nominal, int grade) {
  if (auto bad = size_problem(nominal)) return tl::unexpected(*bad);
  if (grade < kFirstGrade || grade > kLastGrade)
    return tl::unexpected(Problem{Code{"fits.grade_out_of_range"},
                                  "grade",
                                  std::to_string(grade),
                                  {{"grade", grade}, {"least", kFirstGrade}, {"greatest", kLastGrade}},
                                  std::nullopt});
  return micrometres(tolerance_um(step_of(kStandardStepEnds, to_nm(nominal)), grade));
}

Result<Deviations> limit_deviations(Length nominal, const FitClass& fit) {
  const auto found = checked_deviations(nominal, fit);
  if (!found) return tl::unexpected(found.error());
  return Deviations{.upper = nanometres(std::int64_t{found->upper} * 500),
                    .lower = nanometres(std::int64_t{found->lower} * 500)};
}

Result<Limits> limits_of_fit(Length nominal, std::string_view code) {
  const auto fit = parse_fit_class(code);
  if (!fit) return tl::unexpected(fit.error());
  if (auto bad = size_problem(nominal)) return tl::unexpected(*bad);
  if (fit->nominal && to_nm(*fit->nominal) != to_nm(nominal))
    return tl::unexpected(Problem{Code{"fits.two_nominals"},
                                  "class",
                                  std::string{code},
                                  {{"nominal", any(nominal)}, {"in_code", any(*fit->nominal)}},
                                  std::nullopt});
  const auto found = checked_deviations(nominal, *fit);
  if (!found) return tl::unexpected(found.error());
  const auto nm = to_nm(nominal);
  return Limits{.least = nanometres(nm + std::int64_t{found->lower} * 500),
                .greatest = nanometres(nm + std::int64_t{found->upper} * 500)};
}

Result<Limits> limits_of_fit(std::string_view code) {
  const auto fit = parse_fit_class(code);
  if (!fit) return tl::unexpected(fit.error());
  if (!fit->nominal)
    return tl::unexpected(Problem{Code{"fits.nominal_missing"}, "class", std::string{code}, {}, std::nullopt});
  return limits_of_fit(*fit->nominal, code);
}

}  // namespace flatwise::fits
