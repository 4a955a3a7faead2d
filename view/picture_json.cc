#include "view/picture_json.h"

#include <array>
#include <cmath>
#include <nlohmann/json.hpp>
#include <optional>
#include <vector>

namespace flatwise::view {
namespace {

using drawing::Point;
using wire::Json;

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
double rounded(double mm) { return std::round(mm * 100) / 100; }
Point rounded(Point p) { return {rounded(p.x), rounded(p.y)}; }

Json pair(Point p) {
  Json::array_t xy;
  xy.reserve(2);
  xy.emplace_back(p.x);
  xy.emplace_back(p.y);
  return Json(std::move(xy));
}
Json point(Point p) { return pair(rounded(p)); }

/// What falls together once it is rounded is one point: at the scale of a column that is many of them.
Json points_of(const std::vector<Point>& points) {
  Json::array_t out;
  out.reserve(points.size());
  std::optional<Point> last;
  for (const Point p : points) {
    const Point here = rounded(p);
    if (last && last->x == here.x && last->y == here.y) continue;
    out.push_back(pair(here));
    last = here;
  }
  if (out.size() == 1 && points.size() > 1) out.push_back(out.front());  // A line as short as a dot is a line still.
  return Json(std::move(out));
}

void put_look(Json& json, const drawing::Look& look, const std::string& id) {
  json["stroke"] = name(kStrokes, look.stroke);
  json["fill"] = name(kFills, look.fill);
  json["ink"] = name(kInks, look.ink);
  if (!id.empty()) json["id"] = id;
}

struct ItemJson {
  Json operator()(const drawing::Path& path) const {
    Json json = Json::object();
    json["item"] = "path";
    json["points"] = points_of(path.points);
    json["closed"] = path.closed;
    put_look(json, path.look, path.id);
    return json;
  }
  Json operator()(const drawing::Arc& arc) const {
    Json json{{"item", "arc"},
              {"centre", point(arc.centre)},
              {"radius", rounded(arc.radius)},
              {"from", rounded(arc.from)},
              {"to", rounded(arc.to)}};
    put_look(json, arc.look, arc.id);
    return json;
  }
  Json operator()(const drawing::Text& text) const {
    Json json{{"item", "text"},    {"at", point(text.at)},
              {"text", text.text}, {"size", rounded(text.size)},
              {"bold", text.bold}, {"anchor", name(kAnchors, text.anchor)}};
    json["ink"] = name(kInks, text.ink);
    if (!text.id.empty()) json["id"] = text.id;
    if (text.width > 0) json["width"] = rounded(text.width);
    if (text.on_solid) json["on_solid"] = true;
    return json;
  }
  Json operator()(const drawing::Code& code) const {
    return {{"item", "code"}, {"at", point(code.at)}, {"side", rounded(code.side)}, {"text", code.text}};
  }
};

}  // namespace

Json picture_json(const drawing::DisplayList& list) {
  Json::array_t items;
  items.reserve(list.items.size());
  for (const drawing::Item& item : list.items) items.push_back(std::visit(ItemJson{}, item));
  Json json{{"width", rounded(list.width)}, {"height", rounded(list.height)}};
  json["items"] = Json(std::move(items));
  return json;
}

}  // namespace flatwise::view
