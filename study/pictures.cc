#include "study/pictures.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "core/units/parse.h"
#include "drawing/couple_arrows.h"
#include "drawing/pen.h"
#include "drawing/plot_labels.h"

namespace flatwise::study {
namespace {

using drawing::DisplayList;

constexpr double kSame = 0.004;  ///< Of the scale, as the curves are compared.
constexpr double kNameSize = 3.6;

std::string plot_code(PlotKey key) { return "study.plot." + std::string{name_of(key)}; }

/// A unit of an axis: what it is called, and how much of SI one of it is.
struct AxisUnit {
  std::string name;
  double si = 1;
  [[nodiscard]] double of(double value) const { return value / si; }
};

AxisUnit unit_of(std::string name, Kind kind) {
  const Result<Entered> one = parse_quantity("1 " + name, kind, name);
  CORE_CHECK(one.has_value());
  return {std::move(name), one->value.si};
}

AxisUnit x_unit(const PlotData& plot, const Voice& voice) {
  const bool metric = voice.units == UnitSystem::metric;
  if (plot.x == Kind::angular_speed) return unit_of("/min", plot.x);
  if (plot.key == PlotKey::play) return unit_of(metric ? "µm" : "thou", plot.x);
  return unit_of(metric ? "mm" : "in", Kind::length);
}

AxisUnit y_unit(const PlotData& plot, const Voice& voice) {
  const bool metric = voice.units == UnitSystem::metric;
  switch (plot.y) {
    case Kind::force:
      return plot.key == PlotKey::press && metric ? unit_of("kN", plot.y) : unit_of(metric ? "N" : "lbf", plot.y);
    case Kind::time:
      return unit_of("h", plot.y);
    default:
      return unit_of(metric ? "mm" : "in", Kind::length);
  }
}

bool outside_all(double x, const std::vector<Stretch>& stretches) {
  return std::ranges::none_of(stretches, [&](const Stretch& s) { return x >= s.from && x <= s.to; });
}

/// How far y goes: all of it, but for a life that runs away at slow speed and a response where the shaft shakes itself.
double top_of(const PlotData& plot) {
  double most = 0, spots = 0;
  for (const Spot& spot : plot.spots) spots = std::max(spots, spot.y);
  for (const Trace& trace : plot.traces) {
    for (std::size_t i = 0; i < trace.y.size(); ++i)
      if (plot.key != PlotKey::response || outside_all(trace.x[i], plot.keep_out))
        most = std::max({most, trace.y[i], trace.high.empty() ? 0 : trace.high[i]});
  }
  for (const double floor : plot.floor) most = std::max(most, floor);
  if (plot.key == PlotKey::life && spots > 0) most = std::min(most, 2.2 * spots);
  if (plot.key == PlotKey::response) most = 1.5 * std::max(most, spots);
  return most > 0 ? most : 1;
}

double end_of(const PlotData& plot) {
  double most = 0;
  for (const Trace& trace : plot.traces)
    if (!trace.x.empty()) most = std::max(most, trace.x.back());
  return most > 0 ? most : 1;
}

/// Draws one plot that has axes.
class Drawer {
 public:
  Drawer(const Study& study, const PlotData& plot, const Voice& voice)
      : study_{study}, data_{plot}, voice_{voice}, x_{x_unit(plot, voice)}, y_{y_unit(plot, voice)} {}

  drawing::Plot plot() {
    plot_.title = title_of(data_.key, voice_);
    plot_.question = question_of(data_.key, voice_);
    if (study_.shaft.spec().invented) plot_.question += " " + word("study.demo", voice_);
    plot_.x = {.words = axis_words(), .from = 0, .to = x_.of(end_of(data_))};
    plot_.y = {.words = y_.name, .from = 0, .to = y_.of(top_of(data_))};
    add_curves();
    add_floor();
    add_keep_out();
    add_places();
    return std::move(plot_);
  }

 private:
  [[nodiscard]] const std::string& name(int way) const { return study_.ways[static_cast<std::size_t>(way)].name(); }
  [[nodiscard]] std::string axis_words() const { return say(plot_code(data_.key) + ".x", {{"unit", x_.name}}, voice_); }
  /// A way that leaves nothing lies on the axis: it is named with the floor it is under.
  [[nodiscard]] std::string with_floor(const drawing::Curve& curve) const {
    const auto way = static_cast<std::size_t>(std::stoi(curve.id) - 1);
    if (data_.key != PlotKey::hanger || !study_.outcomes[way].arranged.quiet()) return curve.name;
    return say(Message{Code{"study.below_floor"}, {{"name", curve.name}}}, voice_);
  }
  [[nodiscard]] bool all_quiet() const {
    return data_.key == PlotKey::hanger &&
           std::ranges::all_of(study_.outcomes, [](const Outcome& o) { return o.arranged.quiet(); });
  }
  void add_curves() {
    std::vector<drawing::Curve> curves;
    for (const Trace& trace : data_.traces) {
      drawing::Curve curve{.id = std::to_string(trace.way + 1), .name = name(trace.way), .points = {}};
      curve.chosen = study_.is_best(trace.way) && data_.differs;
      for (std::size_t i = 0; i < trace.x.size(); ++i) curve.points.push_back({x_.of(trace.x[i]), y_.of(trace.y[i])});
      curves.push_back(std::move(curve));
    }
    const std::size_t all = curves.size();
    plot_.curves = drawing::merged(std::move(curves), plot_.y, kSame);
    if (plot_.curves.size() == 1 && all > 1) {
      plot_.curves.front().name = word("study.all_ways", voice_);
      plot_.curves.front().chosen = false;
    }
    for (drawing::Curve& curve : plot_.curves) {
      curve.name = with_floor(curve);
      add_band(curve);
    }
  }
  void add_band(const drawing::Curve& curve) {
    const auto trace =
        std::ranges::find_if(data_.traces, [&](const Trace& t) { return std::to_string(t.way + 1) == curve.id; });
    if (trace->low.empty()) return;
    drawing::PlotBand band{.id = curve.id, .x = {}, .low = {}, .high = {}};
    for (std::size_t i = 0; i < trace->x.size(); ++i) {
      band.x.push_back(x_.of(trace->x[i]));
      band.low.push_back(y_.of(trace->low[i]));
      band.high.push_back(y_.of(trace->high[i]));
    }
    plot_.bands.push_back(std::move(band));
  }
  void add_floor() {
    if (data_.floor.empty()) return;
    drawing::PlotBand band{.id = "floor", .x = {}, .low = {}, .high = {}};
    for (std::size_t i = 0; i < data_.floor.size(); ++i) {
      band.x.push_back(x_.of(data_.floor_x[i]));
      band.low.push_back(0);
      band.high.push_back(y_.of(data_.floor[i]));
    }
    plot_.bands.push_back(std::move(band));
  }
  /// Stretches that lie on one another are one; its words once.
  void add_keep_out() {
    std::vector<Stretch> stretches = data_.keep_out;
    std::ranges::sort(stretches, {}, &Stretch::from);
    for (const Stretch& s : stretches) {
      const double from = x_.of(s.from), to = x_.of(s.to);
      if (!plot_.keep_out.empty() && from <= plot_.keep_out.back().to) {
        plot_.keep_out.back().to = std::max(plot_.keep_out.back().to, to);
        continue;
      }
      plot_.keep_out.push_back({from, to, {}});
    }
    if (!plot_.keep_out.empty())
      plot_.keep_out.front().words = {word("study.keep_out", voice_), word("study.keep_out.within", voice_)};
  }
  [[nodiscard]] bool one_place() const {
    return std::ranges::all_of(
        data_.spots, [&](const Spot& s) { return std::abs(s.x - data_.spots.front().x) <= 1e-9 * std::abs(s.x); });
  }
  void add_places() {
    if (data_.end) plot_.here = {.x = x_.of(*data_.end), .y = {}, .words = {word("study.home", voice_)}};
    if (data_.spots.empty()) return;
    const Spot& most = *std::ranges::max_element(data_.spots, {}, &Spot::y);
    if (one_place() && data_.key != PlotKey::play) {
      const Message at{Code{"study.work"}, {{"speed", AnyQuantity{most.x, data_.x}}}};
      plot_.here = {.x = x_.of(most.x), .y = y_.of(most.y), .words = {said(at, voice_)}};
      if (most.y > 0) plot_.here->words.push_back(figure_text({most.y, data_.y}, voice_));
      return;
    }
    for (const Spot& spot : data_.spots) {
      const bool named = plot_.curves.size() == 1 && !all_quiet();  // Else the curve has the name already.
      plot_.marks.push_back({.at = {x_.of(spot.x), y_.of(spot.y)},
                             .form = drawing::MarkForm::circle,
                             .id = std::to_string(spot.way + 1),
                             .words = named ? name(spot.way) : std::string{}});
    }
    join_marks();
  }
  /// Ways at one place are one mark with both names.
  void join_marks() {
    std::vector<drawing::PlotMark> kept;
    for (drawing::PlotMark& mark : plot_.marks) {
      const auto twin = std::ranges::find_if(kept, [&](const drawing::PlotMark& k) {
        return std::abs(k.at.x - mark.at.x) < 1e-6 * (1 + std::abs(mark.at.x)) &&
               std::abs(k.at.y - mark.at.y) < 1e-6 * (1 + std::abs(mark.at.y));
      });
      if (twin == kept.end())
        kept.push_back(std::move(mark));
      else if (!mark.words.empty())
        twin->words += ", " + mark.words;
    }
    plot_.marks = std::move(kept);
  }

  const Study& study_;
  const PlotData& data_;
  const Voice& voice_;
  AxisUnit x_, y_;
  drawing::Plot plot_;
};

/// Pictures of the ways side by side under the plot's head.
class SideBySide {
 public:
  SideBySide(const Study& study, PlotKey key, const Voice& voice, const drawing::PlotSize& size)
      : study_{study}, size_{size} {
    list_.width = size.width;
    list_.height = size.height;
    drawing::Pen pen{list_};
    std::string question = question_of(key, voice);
    if (study.shaft.spec().invented) question += " " + word("study.demo", voice);
    pen.text({0, 4.6}, title_of(key, voice), {.size = 4.6, .bold = true});
    const double letters = kNameSize * std::min(1.0, size.width / drawing::words_width(question, kNameSize));
    pen.text({0, 9.8}, question, {.size = letters, .ink = drawing::Ink::second});
  }
  [[nodiscard]] int columns() const {
    return size_.width / study_.count() >= kNarrowest ? study_.count() : (study_.count() + 1) / 2;
  }
  [[nodiscard]] double column() const { return size_.width / columns(); }
  [[nodiscard]] double row() const { return (size_.height - kHead) / (columns() == study_.count() ? 1 : 2); }
  [[nodiscard]] double picture_height() const { return row() - kName; }
  void put(int way, const DisplayList& picture) {
    const double x = (way % columns()) * column(), y = kHead + (way / columns()) * row();
    drawing::Pen pen{list_};
    std::string name = study_.ways[static_cast<std::size_t>(way)].name();
    double letters = kNameSize;
    if (const double wide = drawing::words_width(name, kNameSize); wide > column() - 2)
      letters *= (column() - 2) / wide;
    pen.text({x + column() / 2, y + kNameSize}, name,
             {.size = letters, .bold = study_.is_best(way), .anchor = drawing::Anchor::middle});
    drawing::append(list_, picture, {x + (column() - picture.width) / 2, y + kName});
  }
  [[nodiscard]] DisplayList taken() { return std::move(list_); }

 private:
  static constexpr double kHead = 13, kName = 5, kNarrowest = 28;
  const Study& study_;
  drawing::PlotSize size_;
  DisplayList list_;
};

DisplayList all_couples(const Study& study, const Voice& voice, const drawing::PlotSize& size) {
  SideBySide page{study, PlotKey::couple, voice, size};
  for (int way = 0; way < study.count(); ++way)
    page.put(way, couples_of(study, way, page.column() - 2, page.picture_height()));
  return page.taken();
}

DisplayList all_balls(const Study& study, const PlotData& plot, const Voice& voice, const drawing::PlotSize& size) {
  SideBySide page{study, PlotKey::balls, voice, size};
  double most = 0;  // All bars at one scale.
  for (const auto& balls : plot.balls)
    for (const BallAt& ball : balls) most = std::max(most, ball.load.si());
  for (int way = 0; way < study.count(); ++way) {
    const auto& balls = plot.balls[static_cast<std::size_t>(way)];
    const double side = std::min(page.column() - 4, page.picture_height());
    if (balls.empty()) continue;
    drawing::BallLoads loads{.balls = {}, .ball_share = plot.ball_share, .greatest_words = {}, .full_scale = most};
    double greatest = 0;
    for (const BallAt& ball : balls) {
      loads.balls.push_back({ball.azimuth.degrees(), ball.load.si()});
      greatest = std::max(greatest, ball.load.si());
    }
    loads.greatest_words = figure_text({greatest, Kind::force}, voice);
    page.put(way, drawing::ball_loads(loads, side));
  }
  return page.taken();
}

}  // namespace

std::string title_of(PlotKey key, const Voice& voice) { return word(plot_code(key), voice); }
std::string question_of(PlotKey key, const Voice& voice) { return word(plot_code(key) + ".question", voice); }

DisplayList picture_of(const Study& study, const PlotData& plot, const Voice& voice, const drawing::PlotSize& size) {
  if (plot.key == PlotKey::couple) return all_couples(study, voice, size);
  if (plot.key == PlotKey::balls) return all_balls(study, plot, voice, size);
  return drawing::plot(Drawer{study, plot, voice}.plot(), size);
}

std::string aloud(const Study& study, const PlotData& plot, const Voice& voice) {
  std::string out = title_of(plot.key, voice) + ".";
  const auto add = [&](int way, AnyQuantity value) {
    const Message line{
        Code{"study.aloud"},
        {{"name", study.ways[static_cast<std::size_t>(way)].name()}, {"value", figure_text(value, voice)}}};
    out += " " + say(line, voice);
  };
  for (const Spot& spot : plot.spots) add(spot.way, {spot.y, plot.y});
  if (plot.key == PlotKey::couple)
    for (int way = 0; way < study.count(); ++way)
      add(way, any(study.outcomes[static_cast<std::size_t>(way)].arranged.left.couple.size));
  if (plot.key == PlotKey::press)
    for (const Trace& trace : plot.traces) add(trace.way, {trace.high.back(), plot.y});
  for (std::size_t way = 0; way < plot.balls.size(); ++way)
    if (!plot.balls[way].empty())
      add(static_cast<int>(way), any(std::ranges::max_element(plot.balls[way], {}, &BallAt::load)->load));
  return out;
}

DisplayList couples_of(const Study& study, int way, double width, double height) {
  const Arranged& arranged = study.outcomes[static_cast<std::size_t>(way)].arranged;
  return drawing::couple_arrows(drawing::arrows_of(arranged.couples, arranged.tilt, arranged.quiet()), width, height);
}

}  // namespace flatwise::study
