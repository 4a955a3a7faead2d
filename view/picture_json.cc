#include "view/picture_json.h"

#include <array>
#include <charconv>
#include <cmath>
#include <nlohmann/json.hpp>
#include <optional>

#include "wire/written.h"

namespace flatwise::view {
namespace {

using drawing::Point;

constexpr std::array<std::string_view, 8> kStrokes{"none",   "narrow", "wide",   "heavy",
                                                   "hidden", "axis",   "wanted", "part"};
constexpr std::array<std::string_view, 9> kFills{"none", "sheet",    "solid", "tone", "ink",
                                                 "cut",  "cut_next", "renew", "next"};
constexpr std::array<std::string_view, 7> kInks{"ink", "second", "next", "in", "out", "tell", "sheet"};
constexpr std::array<std::string_view, 3> kAnchors{"start", "middle", "end"};

template <std::size_t N, class E>
std::string_view name(const std::array<std::string_view, N>& names, E value) {
  return names[static_cast<std::size_t>(value)];
}

std::int64_t hundredths(double mm) { return std::llround(mm * 100); }

/// Writes the items of a picture as JSON text, member by member.
class Writer {
 public:
  explicit Writer(std::string& out) : out_{out} {}

  void operator()(const drawing::Path& path) {
    out_ += R"({"item":"path","points":)";
    points(path.points);
    out_ += path.closed ? R"(,"closed":true)" : R"(,"closed":false)";
    look(path.look, path.id);
  }
  void operator()(const drawing::Arc& arc) {
    out_ += R"({"item":"arc","centre":)";
    point(arc.centre);
    member("radius", arc.radius);
    member("from", arc.from);
    member("to", arc.to);
    look(arc.look, arc.id);
  }
  void operator()(const drawing::Text& text) {
    out_ += R"({"item":"text","at":)";
    point(text.at);
    member("text", text.text);
    member("size", text.size);
    out_ += text.bold ? R"(,"bold":true)" : R"(,"bold":false)";
    member("anchor", name(kAnchors, text.anchor));
    member("ink", name(kInks, text.ink));
    if (!text.id.empty()) member("id", text.id);
    if (text.width > 0) member("width", text.width);
    if (text.on_solid) out_ += R"(,"on_solid":true)";
    out_ += '}';
  }
  void operator()(const drawing::Code& code) {
    out_ += R"({"item":"code","at":)";
    point(code.at);
    member("side", code.side);
    member("text", code.text);
    out_ += '}';
  }
  void number(double mm) {
    CORE_CHECK(std::isfinite(mm));
    number(hundredths(mm));
  }

 private:
  void number(std::int64_t all) {
    if (all < 0) out_ += '-';
    const std::int64_t whole = std::abs(all) / 100, rest = std::abs(all) % 100;
    std::array<char, 24> digits{};
    out_.append(digits.data(), std::to_chars(digits.data(), digits.data() + digits.size(), whole).ptr);
    if (rest == 0) return;
    (out_ += '.') += static_cast<char>('0' + rest / 10);
    if (rest % 10 != 0) out_ += static_cast<char>('0' + rest % 10);
  }
  void point(Point p) {
    out_ += '[';
    number(p.x);
    out_ += ',';
    number(p.y);
    out_ += ']';
  }
  /// What falls together once it is rounded is one point: at the scale of a column that is many of them. A line as short as a dot is
  /// a line still.
  void points(const std::vector<Point>& all) {
    std::optional<std::array<std::int64_t, 2>> last;
    std::size_t count = 0;
    out_ += '[';
    for (const Point& p : all) {
      const std::array here{hundredths(p.x), hundredths(p.y)};
      if (here == last && !(&p == &all.back() && count == 1)) continue;
      if (count++ > 0) out_ += ',';
      point(p);
      last = here;
    }
    out_ += ']';
  }
  void key(std::string_view name) { ((out_ += ",\"") += name) += "\":"; }
  void member(std::string_view name, double mm) {
    key(name);
    number(mm);
  }
  void member(std::string_view name, std::string_view text) {
    key(name);
    wire::add_text(out_, text);
  }
  void look(const drawing::Look& look, const std::string& id) {
    member("stroke", name(kStrokes, look.stroke));
    member("fill", name(kFills, look.fill));
    member("ink", name(kInks, look.ink));
    if (!id.empty()) member("id", id);
    out_ += '}';
  }

  std::string& out_;
};

}  // namespace

wire::Json picture_json(const drawing::DisplayList& list) {
  constexpr std::size_t kItem = 200;  // Bytes, about.
  std::string out;
  out.reserve(64 + kItem * list.items.size());
  Writer writer{out};
  out += R"({"width":)";
  writer.number(list.width);
  out += R"(,"height":)";
  writer.number(list.height);
  out += R"(,"items":[)";
  for (const drawing::Item& item : list.items) {
    if (&item != &list.items.front()) out += ',';
    std::visit(writer, item);
  }
  out += "]}";
  return wire::written(out);
}

}  // namespace flatwise::view
