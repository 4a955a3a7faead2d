#include "view/picture_json.h"

#include <array>
#include <cmath>
#include <nlohmann/json.hpp>

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
Json point(Point p) { return Json::array({rounded(p.x), rounded(p.y)}); }

void put_look(Json& json, const drawing::Look& look, const std::string& id) {
  json["stroke"] = name(kStrokes, look.stroke);
  json["fill"] = name(kFills, look.fill);
  json["ink"] = name(kInks, look.ink);
  if (!id.empty()) json["id"] = id;
}

struct ItemJson {
  Json operator()(const drawing::Path& path) const {
    Json json{{"item", "path"}};
    Json points = Json::array();
    for (const Point p : path.points) points.push_back(point(p));
    json["points"] = std::move(points);
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
  Json items = Json::array();
  for (const drawing::Item& item : list.items) items.push_back(std::visit(ItemJson{}, item));
  return {{"width", rounded(list.width)}, {"height", rounded(list.height)}, {"items", std::move(items)}};
}

}  // namespace flatwise::view
