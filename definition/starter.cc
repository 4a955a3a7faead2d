#include "definition/starter.h"

#include <algorithm>
#include <array>

#include "core/units/format.h"
#include "core/units/parse.h"
#include "definition/json_text.h"
#include "definition/read.h"

namespace flatwise::definition {
namespace {

// A basic string of TOML escapes what a string of JSON escapes. Not called `quoted`: <iomanip>, where somebody reads it, has one of
// its own that fits a string better.
std::string in_quotes(std::string_view text) { return JsonText::text(text).dump(); }

bool all_digits(std::string_view text) {
  return !text.empty() && text.size() < 10 && std::ranges::all_of(text, [](char c) { return c >= '0' && c <= '9'; });
}
// A count as typed; what is none stands as a text, and reading back says what is wrong with it.
std::string count(std::string_view typed) { return all_digits(typed) ? std::string{typed} : in_quotes(typed); }
std::string_view or_else(const std::string& typed, std::string_view own) {
  return typed.empty() ? own : std::string_view{typed};
}

std::vector<std::string> words_of(std::string_view text, std::string_view between) {
  std::vector<std::string> words;
  while (!text.empty()) {
    const std::size_t end = text.find_first_of(between);
    if (end != 0) words.emplace_back(text.substr(0, end));
    if (end == std::string_view::npos) break;
    text.remove_prefix(end + 1);
  }
  return words;
}

// "facing"; "step 2"; "1 4 1" or "1, 4, 1".
std::string pattern(std::string_view typed) {
  const std::vector<std::string> words = words_of(typed, " ,");
  if (words.size() == 2 && words[0] == "step") return "{ step = " + count(words[1]) + " }";
  if (words.empty() || !std::ranges::all_of(words, all_digits)) return in_quotes(typed);
  std::string flats;
  for (const std::string& flat : words) flats += (flats.empty() ? "" : ", ") + flat;
  return "{ flats = [" + flats + "] }";
}

struct BearingSizes {
  std::array<std::string, 3> size;  // d, D, B, each with its unit.
};

// "55 x 100 x 21 mm": one unit behind the last serves for all.
Result<BearingSizes> bearing_sizes(std::string_view typed) {
  const auto unread = [&] {
    return tl::unexpected(Problem{Code{"definition.bearing_form"}, "bearing", std::string{typed}, {}, std::nullopt});
  };
  std::string plain{typed};
  for (std::size_t at = 0; (at = plain.find("×")) != std::string::npos;)
    plain.replace(at, std::string_view{"×"}.size(), "x");
  std::vector<std::string> parts = words_of(plain, "x");
  if (parts.size() != 3) return unread();
  const std::size_t digits_end = parts[2].find_last_of("0123456789");
  if (digits_end == std::string::npos) return unread();
  const std::string unit = parts[2].substr(digits_end + 1);
  BearingSizes sizes;
  for (std::size_t i = 0; i < 3; ++i) {
    std::string part = parts[i];
    while (!part.empty() && part.back() == ' ') part.pop_back();
    while (!part.empty() && part.front() == ' ') part.erase(0, 1);
    if (!part.empty() && part.back() >= '0' && part.back() <= '9') part += unit;
    if (!parse_quantity(part, Kind::length, "bearing")) return unread();
    sizes.size[i] = part;
  }
  return sizes;
}

class Writer {
 public:
  explicit Writer(const Say& say) : say_{say} {}

  void comment(std::string_view code) { out_ += "# " + say_(code, {}) + "\n"; }
  void table(std::string_view name, std::string_view code) {
    out_ += "\n[" + std::string{name} + "]";
    pad(24, out_.size() - out_.rfind('\n') - 1);
    out_ += "# " + say_(code, {}) + "\n";
  }
  void blank() { out_ += "\n"; }
  void text(std::string_view line) { out_ += std::string{line} + "\n"; }
  /// A key with its meaning behind it, and its number where it is one of the five lines.
  void key(std::string_view kind, std::string_view name, std::string_view value) {
    const Field* field = find_field(Document::shaft, kind, name);
    CORE_CHECK(field != nullptr);
    line(std::string{name} + " = " + std::string{value}, *field);
  }
  void line(const std::string& start, const Field& field) {
    out_ += start;
    pad(48, columns(start));
    out_ += "# ";
    if (field.change > 0) out_ += say_("definition.starter.change", {{"number", field.change}}) + " ";
    out_ += say_(field.meaning.id(), {}) + "\n";
  }
  std::string take() { return std::move(out_); }

 private:
  static std::size_t columns(std::string_view text) {
    return static_cast<std::size_t>(
        std::ranges::count_if(text, [](char c) { return (static_cast<unsigned char>(c) & 0xC0u) != 0x80u; }));
  }
  void pad(std::size_t to, std::size_t from) { out_.append(from < to ? to - from : 1, ' '); }

  const Say& say_;
  std::string out_;
};

void write_shaft(Writer& w, const StarterOptions& o) {
  w.table("shaft", "definition.field.shaft_file.shaft");
  w.key("shaft", "name", in_quotes(or_else(o.name, "Row looseners, nine")));
  w.key("shaft", "flats", count(or_else(o.flats, "6")));
  w.key("shaft", "across", in_quotes(or_else(o.across, "1 1/2 in")));
  w.key("shaft", "speed", in_quotes(or_else(o.speed, "480 /min")));
  w.key("shaft", "pattern", pattern(or_else(o.pattern, "facing")));
  w.key("shaft", "drive_end", "\"B\"");
  w.text("# travel = \"6 km/h\"");
  w.text("# rolling_radius = \"230 mm\"");
}

void write_rotor(Writer& w, const StarterOptions& o, const BearingSizes& b) {
  const Result<Entered> outside = parse_quantity(b.size[1], Kind::length, "bearing");
  CORE_CHECK(outside.has_value() && outside->nm.has_value());
  const std::string hub_outside = format_exact_length(*outside->nm / 2 * 3, UnitSystem::metric);
  std::string designation = b.size[0] + " x " + b.size[1] + " x " + b.size[2];
  w.table("rotor", "definition.field.shaft_file.rotor");
  w.key("rotor", "lean", in_quotes(or_else(o.lean, "5°")));
  w.key("rotor", "mark", "\"notch\"");
  w.key("rotor", "tip_radius", "\"230 mm\"");
  w.key("rotor", "tine_width", "\"34 mm\"");
  w.key("rotor", "tines", "8");
  w.key("rotor", "mass", "\"11.6 kg\"");
  w.key("rotor", "inertia", "{ across = \"0.085 kg·m²\", along = \"0.160 kg·m²\" }");
  w.key("rotor", "half", "{ length = \"34 mm\", tolerance = \"0.05 mm\" }");
  w.key("rotor", "snap_rings", "2");
  w.key("rotor", "seals", "2");
  w.text(
      "# adapter_set = { part = \"\", price = \"\" }   seal = { part = \"\", price = \"\" }   snap_ring = { part = "
      "\"\", price = \"\" }");
  w.table("rotor.bearing", "definition.field.rotor.bearing");
  w.key("bearing", "designation", in_quotes(designation));
  w.key("bearing", "d", in_quotes(b.size[0]));
  w.key("bearing", "D", in_quotes(b.size[1]));
  w.key("bearing", "B", in_quotes(b.size[2]));
  w.key("bearing", "clearance", "\"C3\"");
  w.table("rotor.hub", "definition.field.rotor.hub");
  w.key("hub", "fit", "\"N7\"");
  w.key("hub", "outside", in_quotes(hub_outside));
  w.key("hub", "material", "\"cast_iron\"");
}

void write_stack(Writer& w, const StarterOptions& o) {
  w.table("between", "definition.field.shaft_file.between");
  w.key("between", "spacer", in_quotes(or_else(o.spacer, "92 mm")));
  w.key("between", "tolerance", "\"0.1 mm\"");
  w.table("stack", "definition.field.shaft_file.stack");
  w.key("stack", "tolerance", "\"0.1 mm\"");
  w.text("order = [");
  w.text("  { nut = \"34 mm\", washer = \"6 mm\" },");
  w.text("  { hanger = \"31 mm\" },");
  w.text("  { spacer = \"50 mm\" },");
  const Field* repeat = find_field(Document::shaft, "station", "repeat");
  CORE_CHECK(repeat != nullptr);
  w.line("  { rotor = \"68 mm\", repeat = " + count(or_else(o.rotors, "9")) + " },", *repeat);
  w.text("  { spacer = \"50 mm\" },");
  w.text("  { hanger = \"31 mm\" },");
  w.text("  { spacer = \"14 mm\" },");
  w.text("  { pulley = \"70 mm\", fit_before = [ { part = \"flange bolts of hanger B\", count = 4 } ] },");
  w.text("  { washer = \"6 mm\", nut = \"34 mm\" },");
  w.text("]");
  w.table("nut", "definition.field.shaft_file.nut");
  w.key("nut", "torque", "\"900 ft·lb\"");
  w.key("nut", "thread", "\"1 1/2-6 UNC\"");
  w.key("nut", "lubrication", "\"oiled\"");
  w.comment("definition.starter.clamped");
  w.text("# snug = \"90 ft·lb\"");
  w.text("# [clamped]");
  w.text("# outside = \"55 mm\"");
}

}  // namespace

Results<std::string> starter(const StarterOptions& options, const Say& say) {
  const Result<BearingSizes> bearing = bearing_sizes(or_else(options.bearing, "55 x 100 x 21 mm"));
  if (!bearing) return tl::unexpected(std::vector<Problem>{bearing.error()});
  Writer w{say};
  w.comment("definition.starter.head");
  w.comment("definition.starter.five");
  w.comment("definition.starter.units");
  write_shaft(w, options);
  write_rotor(w, options, *bearing);
  write_stack(w, options);
  std::string text = w.take();
  Results<Shaft> read = read_shaft(text, {});
  if (read) return text;
  for (Problem& problem : read.error()) problem.place = std::nullopt;
  return tl::unexpected(std::move(read.error()));
}

}  // namespace flatwise::definition
