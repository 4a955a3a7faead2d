// read_workshop: gauges with their certificates, stock, own presses.
#include <algorithm>

#include "core/units/parse.h"
#include "definition/read.h"
#include "definition/tree.h"
#include "job/gauges.h"

namespace flatwise::definition {
namespace {

constexpr double kNoMore = std::numeric_limits<double>::infinity();

Day day_of(const Section& s, std::string_view key) {
  const toml::node* node = s.node(key);
  if (!node || !node->is_date()) return {};
  const toml::date d = node->as_date()->get();
  return {d.year, d.month, d.day};
}

// A value in what the gauge shows; nought where there is none or it cannot be read.
double scale_value(const Section& s, std::string_view key, Gauge::Use use, bool may_be_nought) {
  const toml::node* node = s.node(key);
  if (!node) return 0;
  if (!node->is_string() && !node->is_number()) return 0;  // Has its problem already.
  const Range range{.least = 0, .greatest = kNoMore, .above_least = !may_be_nought};
  Result<Entered> read = s.file().quantity(*node, job::step_of_scale(use), range, s.path(key));
  if (read) return read->value.si;
  s.file().add(std::move(read.error()), s.path(key), *node);
  return 0;
}

void read_calibration(const Section& s, Gauge& g) {
  const toml::node* node = s.node("calibration");
  const auto* text = node ? node->as_string() : nullptr;
  g.relative = text && text->get().ends_with('%');
  if (!g.relative) {
    g.calibration_expanded_si = scale_value(s, "calibration", g.use, true);
    return;
  }
  if (g.kind == Kind::temperature) return s.problem(Code{"definition.share_of_temperature"}, "calibration", {});
  Result<Entered> read = s.file().quantity(*node, Kind::ratio, {.least = 0, .greatest = 0.5}, s.path("calibration"));
  if (read)
    g.calibration_expanded_si = read->value.si;
  else
    s.file().add(std::move(read.error()), s.path("calibration"), *node);
}

// Two keys that say nothing without each other.
void need_both(const Section& s, std::string_view one, std::string_view other) {
  if (s.has(one) == s.has(other)) return;
  const std::string_view given = s.has(one) ? one : other, missing = s.has(one) ? other : one;
  s.problem(Code{"definition.needs_also"}, given, {{"key", std::string{given}}, {"also", std::string{missing}}});
}

Gauge read_gauge(const Section& s) {
  Gauge g;
  g.id = s.text("id");
  g.use = static_cast<Gauge::Use>(s.word("use"));
  g.kind = job::shows(g.use);
  read_calibration(s, g);
  g.resolution_si = scale_value(s, "resolution", g.use, true);
  need_both(s, "repeatability", "repeatability_readings");
  if (s.has("repeatability")) g.repeatability_si = scale_value(s, "repeatability", g.use, true);
  if (s.has("repeatability_readings")) g.repeatability_readings = static_cast<int>(s.whole("repeatability_readings"));
  g.expansion_per_kelvin = s.si("expansion");
  need_both(s, "setting_ring", "setting_ring_calibration");
  if (s.has("setting_ring")) g.setting_ring = s.length("setting_ring");
  g.setting_ring_expanded = s.length("setting_ring_calibration");
  if (s.has("least")) g.least_readable = s.length("least");
  if (s.has("greatest")) g.greatest_readable = s.length("greatest");
  if (g.least_readable && g.greatest_readable && *g.least_readable > *g.greatest_readable)
    s.problem(Code{"definition.limits_crossed"}, "least",
              {{"least", any(*g.least_readable)}, {"greatest", any(*g.greatest_readable)}});
  g.calibrated_until = day_of(s, "calibrated_until");
  if (s.has("accepted_overdue_by")) g.accepted_overdue_by = s.text("accepted_overdue_by");
  g.place = s.place();
  return g;
}

// The same name twice would leave it open which one is meant.
template <class T, class Name>
void refuse_twice(const std::vector<Section>& sections, const std::vector<T>& items, Name name, std::string_view key) {
  for (std::size_t i = 0; i < items.size(); ++i)
    for (std::size_t j = 0; j < i; ++j)
      if (!(items[i].*name).empty() && items[i].*name == items[j].*name) {
        sections[i].problem(Code{"definition.named_twice"}, key,
                            {{"name", items[i].*name}, {"line", sections[j].place().line}});
        break;
      }
}

void read_money(const Section& s, Workshop& w) {
  w.currency = s.text("currency");
  const bool three =
      w.currency.size() == 3 && std::ranges::all_of(w.currency, [](char c) { return c >= 'A' && c <= 'Z'; });
  if (s.has("currency") && !three) s.problem(Code{"definition.currency_form"}, "currency", {});
  const auto rate = s.quantity("rate");
  if (!rate) return;
  w.rate_per_hour = rate->value.si * 3600;
  if (three && rate->typed.find(w.currency) == std::string::npos)
    s.problem(Code{"definition.rate_currency"}, "rate", {{"currency", w.currency}});
}

}  // namespace

Results<Workshop> read_workshop(std::string_view toml, std::string_view name) {
  File file{Document::workshop, toml, name};
  if (!file.parse()) return tl::unexpected(file.take_problems());
  const Section all{file, "workshop_file", &file.root(), {}};
  Workshop w;
  Section s = all.table("workshop");
  s.note_in(&w.origins, "workshop");
  w.name = s.text("name");
  w.invented = s.flag("invented");
  read_money(s, w);
  w.room = kelvin(s.si("room"));
  w.room_half_width = kelvins(s.si("room_half_width"));
  std::vector<Section> gauges = all.tables("gauge");
  for (Section& gauge : gauges) {
    gauge.note_in(&w.origins, "gauge." + gauge.text("id"));
    w.gauges.push_back(read_gauge(gauge));
  }
  refuse_twice(gauges, w.gauges, &Gauge::id, "id");
  const std::vector<Section> stock = all.tables("stock");
  for (const Section& item : stock)
    w.stock.push_back({item.text("part"), item.text("name"), static_cast<int>(item.whole("on_shelf")),
                       static_cast<int>(item.whole("on_order")), static_cast<int>(item.whole("least"))});
  refuse_twice(stock, w.stock, &StockItem::part_number, "part");
  for (const Section& press : all.tables("press"))
    w.presses.push_back({press.length("interference"), press.length("joint_diameter"), press.length("width"),
                         Force::from_si(press.si("force"))});
  if (!file.sound()) return tl::unexpected(file.take_problems());
  return w;
}

}  // namespace flatwise::definition
