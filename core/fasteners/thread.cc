#include "core/fasteners/thread.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdlib>
#include <numbers>
#include <optional>
#include <utility>

namespace flatwise::fasteners {
namespace {

constexpr double kInch = 0.0254;
/// H / P of the 60° triangle.
constexpr double kTriangle = std::numbers::sqrt3 / 2;

struct InchSeries {
  double size_in;
  double coarse;  ///< Threads per inch of UNC; 0 where the series has none.
  double fine;    ///< Of UNF.
};
/// ASME B1.1, coarse and fine series, 1/4 in and over.
constexpr std::array<InchSeries, 24> kInchSeries{{
    {0.25, 20, 28},  {0.3125, 18, 24}, {0.375, 16, 24}, {0.4375, 14, 20}, {0.5, 13, 20},  {0.5625, 12, 18},
    {0.625, 11, 18}, {0.75, 10, 16},   {0.875, 9, 14},  {1.0, 8, 12},     {1.125, 7, 12}, {1.25, 7, 12},
    {1.375, 6, 12},  {1.5, 6, 12},     {1.75, 5, 0},    {2.0, 4.5, 0},    {2.25, 4.5, 0}, {2.5, 4, 0},
    {2.75, 4, 0},    {3.0, 4, 0},      {3.25, 4, 0},    {3.5, 4, 0},      {3.75, 4, 0},   {4.0, 4, 0},
}};

struct Coarse {
  double size_mm, pitch_mm;
};
/// ISO 261, coarse pitches of first and second choice sizes.
constexpr std::array<Coarse, 26> kCoarse{{
    {3, 0.5},  {4, 0.7},  {5, 0.8},  {6, 1},  {8, 1.25}, {10, 1.5}, {12, 1.75}, {14, 2}, {16, 2},
    {18, 2.5}, {20, 2.5}, {22, 2.5}, {24, 3}, {27, 3},   {30, 3.5}, {33, 3.5},  {36, 4}, {39, 4},
    {42, 4.5}, {45, 4.5}, {48, 5},   {52, 5}, {56, 5.5}, {60, 5.5}, {64, 6},    {68, 6},
}};

/// Eats from the front of a text; numbers are exact for the digits a thread can have.
class Reader {
 public:
  explicit Reader(std::string_view text) : rest_{text} {}
  [[nodiscard]] bool done() const { return rest_.empty(); }
  void blanks() {
    while (!rest_.empty() && rest_.front() == ' ') rest_.remove_prefix(1);
  }
  bool eat(std::string_view wanted) {
    if (rest_.size() < wanted.size()) return false;
    for (std::size_t i = 0; i < wanted.size(); ++i)
      if (upper(rest_[i]) != upper(wanted[i])) return false;
    rest_.remove_prefix(wanted.size());
    return true;
  }
  std::optional<int> whole() {
    int value = 0, digits = 0;
    for (; !rest_.empty() && rest_.front() >= '0' && rest_.front() <= '9' && digits < 5; ++digits) {
      value = 10 * value + (rest_.front() - '0');
      rest_.remove_prefix(1);
    }
    if (digits == 0) return std::nullopt;
    return value;
  }
  std::optional<double> decimal() {
    const auto before = rest_;
    const auto units = whole();
    double value = units.value_or(0);
    bool any = units.has_value();
    if (eat(".")) {
      long part = 0, scale = 1;
      for (int d = 0; !rest_.empty() && rest_.front() >= '0' && rest_.front() <= '9' && d < 6; ++d) {
        part = 10 * part + (rest_.front() - '0');
        scale *= 10;
        rest_.remove_prefix(1);
      }
      any = any || scale > 1;
      value += static_cast<double>(part) / static_cast<double>(scale);
    }
    if (any) return value;
    rest_ = before;
    return std::nullopt;
  }
  /// "3/4", "1 1/2", "1-1/4", "1.500", "2".
  std::optional<double> inch_size() {
    const auto first = decimal();
    if (!first) return std::nullopt;
    if (eat("/")) return over(*first);
    const auto before = rest_;
    if (eat("-") || eat(" ")) {
      blanks();
      const auto numerator = whole();
      if (numerator && eat("/")) {
        const auto fraction = over(*numerator);
        if (!fraction || !(*fraction < 1)) return std::nullopt;
        return *first + *fraction;
      }
    }
    rest_ = before;
    return first;
  }

 private:
  static char upper(char c) { return c >= 'a' && c <= 'z' ? static_cast<char>(c - 'a' + 'A') : c; }
  std::optional<double> over(double numerator) {
    const auto denominator = whole();
    if (!denominator || *denominator == 0) return std::nullopt;
    return numerator / *denominator;
  }
  std::string_view rest_;
};

tl::unexpected<Problem> refused(Code code, std::string_view field, const ThreadForm& thread, Args args = {}) {
  args.emplace_back("thread", thread.designation);
  return tl::unexpected(Problem{code, std::string{field}, thread.designation, std::move(args), std::nullopt});
}
tl::unexpected<Problem> unreadable(std::string_view field, const ThreadForm& thread) {
  const std::vector<std::string> forms{"1 1/2-6 UNC", "3/4-16", "M36x3", "M30"};
  return refused(Code{"fasteners.thread_unreadable"}, field, thread, {{"forms", forms}});
}

/// Tolerance class and hand, after which nothing may stand.
bool read_tail(Reader& in, bool& left_hand) {
  for (;;) {
    in.blanks();
    if (in.done()) return true;
    in.eat("-");
    in.blanks();
    if (in.eat("LH")) {
      left_hand = true;
      continue;
    }
    if (!in.whole()) return false;
    bool letter = false;  // "2A", "6g", "5g6g", "6H".
    for (const auto* l : {"A", "B", "G", "H", "E", "F"}) letter = letter || in.eat(l);
    if (!letter) return false;
    if (in.whole() && !(in.eat("G") || in.eat("H"))) return false;
  }
}

std::string read_series(Reader& in) {
  for (const auto* s : {"UNEF", "UNREF", "UNRC", "UNRF", "UNRS", "UNC", "UNF", "UNS", "UNR", "UN"})
    if (in.eat(s)) return s;
  return {};
}

Result<ThreadForm> in_proportion(ThreadForm thread, std::string_view field, Length least, Length greatest) {
  if (!(thread.major >= least && thread.major <= greatest))
    return refused(Code{"fasteners.thread_size"}, field, thread,
                   {{"size", any(thread.major)}, {"least", any(least)}, {"greatest", any(greatest)}});
  if (!(thread.pitch > Length{} && 4 * thread.pitch <= thread.major))
    return refused(Code{"fasteners.thread_pitch"}, field, thread,
                   {{"pitch", any(thread.pitch)}, {"greatest", any(thread.major / 4)}});
  return thread;
}

Result<ThreadForm> read_inch(ThreadForm thread, std::string_view field) {
  thread.system = ThreadSystem::inch;
  Reader in{thread.designation};
  const auto size = in.inch_size();
  if (!size) return unreadable(field, thread);
  in.eat("in");
  in.eat("\"");
  in.blanks();
  const bool dash = in.eat("-");
  if (dash) in.blanks();
  const auto per_inch = dash ? in.decimal() : std::nullopt;
  if (!per_inch && in.done()) return refused(Code{"fasteners.thread_without_pitch"}, field, thread);
  if (!per_inch) return unreadable(field, thread);
  in.blanks();
  const std::string series = read_series(in);
  if (!read_tail(in, thread.left_hand)) return unreadable(field, thread);
  thread.threads_per_inch = *per_inch;
  thread.major = inches(*size);
  if (!(*per_inch > 0)) return unreadable(field, thread);
  thread.pitch = Length::from_si(kInch / *per_inch);
  const bool coarse = series == "UNC" || series == "UNRC";
  if (coarse || series == "UNF" || series == "UNRF") {
    const auto row = std::ranges::find(kInchSeries, *size, &InchSeries::size_in);
    const double wanted = row == kInchSeries.end() ? 0 : coarse ? row->coarse : row->fine;
    if (wanted != *per_inch)
      return refused(Code{"fasteners.thread_series"}, field, thread,
                     {{"series", series}, {"wanted", any_ratio(wanted)}, {"known", wanted > 0 ? 1 : 0}});
  }
  return in_proportion(std::move(thread), field, inches(0.25), inches(6));
}

Result<ThreadForm> read_metric(ThreadForm thread, std::string_view field) {
  Reader in{thread.designation};
  in.eat("M");
  in.blanks();
  const auto size = in.decimal();
  if (!size) return unreadable(field, thread);
  in.blanks();
  std::optional<double> pitch;
  if (in.eat("x") || in.eat("×")) {
    in.blanks();
    pitch = in.decimal();
    if (!pitch) return unreadable(field, thread);
  }
  if (!read_tail(in, thread.left_hand)) return unreadable(field, thread);
  if (!pitch) {
    const auto row = std::ranges::find(kCoarse, *size, &Coarse::size_mm);
    if (row == kCoarse.end()) return refused(Code{"fasteners.thread_without_pitch"}, field, thread);
    pitch = row->pitch_mm;
  }
  thread.major = millimetres(*size);
  thread.pitch = millimetres(*pitch);
  return in_proportion(std::move(thread), field, millimetres(3), millimetres(150));
}

}  // namespace

Result<ThreadForm> read_thread(std::string_view text, std::string_view field) {
  while (!text.empty() && text.front() == ' ') text.remove_prefix(1);
  while (!text.empty() && text.back() == ' ') text.remove_suffix(1);
  ThreadForm thread;
  thread.designation = std::string{text.substr(0, 80)};
  if (text.empty() || text.size() > 40) return unreadable(field, thread);
  const bool metric = text.front() == 'M' || text.front() == 'm';
  return metric ? read_metric(std::move(thread), field) : read_inch(std::move(thread), field);
}

Area stress_area(const ThreadForm& thread) {
  double mean_m = 0;
  if (thread.system == ThreadSystem::inch) {
    mean_m = thread.major.si() - 0.9743 * thread.pitch.si();
  } else {
    // (d2 + d3) / 2 with d2 = d - 3/4 H, d1 = d - 5/4 H, d3 = d1 - H/6: ISO 724 and ISO 898-1.
    const double triangle_m = kTriangle * thread.pitch.si();
    const double pitch_diameter_m = thread.major.si() - 0.75 * triangle_m;
    const double root_diameter_m = thread.major.si() - 1.25 * triangle_m - triangle_m / 6;
    mean_m = 0.5 * (pitch_diameter_m + root_diameter_m);
  }
  return Area::from_si(std::numbers::pi / 4 * mean_m * mean_m);
}

Length pitch_diameter(const ThreadForm& thread) { return thread.major - 0.75 * kTriangle * thread.pitch; }

}  // namespace flatwise::fasteners
