// What the plots show, as numbers in SI.
#include <algorithm>
#include <cmath>
#include <functional>
#include <numbers>

#include "study/study.h"

namespace flatwise::study {
namespace {

using Ways = std::vector<Way>;
using Outcomes = std::vector<Outcome>;

constexpr int kSpeeds = 61, kLives = 25, kResponses = 241, kTravels = 41, kClearances = 41;
constexpr double kBeyond = 1.5;     ///< Of the fastest way, plots over speed go so far.
constexpr double kFarCritical = 4;  ///< A critical speed farther off than this is not drawn.
constexpr double kSame = 0.004;     ///< Of the scale: curves nearer than this are one.
constexpr double kDegree = std::numbers::pi / 180;

double speed_of(const Way& way) { return way.shaft.spec().speed.radians_per_second(); }

double fastest(const Ways& ways) {
  double most = 0;
  for (const Way& way : ways) most = std::max(most, speed_of(way));
  return most;
}

std::vector<double> evenly(double from, double to, int count) {
  std::vector<double> out;
  for (int i = 0; i < count; ++i) out.push_back(from + (to - from) * i / (count - 1));
  return out;
}

Shaft at_speed(const Shaft& shaft, double speed) {
  ShaftSpec spec = shaft.spec();
  spec.speed = radians_per_second(speed);
  return *Shaft::make(std::move(spec));
}

bool same(const Trace& a, const Trace& b, double height) {
  const auto near = [&](const std::vector<double>& p, const std::vector<double>& q) {
    return std::ranges::equal(p, q, [&](double u, double v) { return std::abs(u - v) <= kSame * height; });
  };
  return a.x == b.x && near(a.y, b.y) && near(a.low, b.low) && near(a.high, b.high);
}

bool differs(const PlotData& plot) {
  double height = 0;
  for (const Trace& trace : plot.traces)
    for (const double y : trace.y) height = std::max(height, std::abs(y));
  for (const Trace& trace : plot.traces)
    if (!same(trace, plot.traces.front(), height)) return true;
  return std::ranges::any_of(
      plot.spots, [&](const Spot& spot) { return std::abs(spot.x - plot.spots.front().x) > 1e-9 * std::abs(spot.x); });
}

PlotData hanger_plot(const Ways& ways, const Outcomes& outcomes) {
  PlotData out{.key = PlotKey::hanger, .x = Kind::angular_speed, .y = Kind::force};
  const std::vector<double> speeds = evenly(0, kBeyond * fastest(ways), kSpeeds);
  out.floor_x = speeds;
  out.floor.assign(speeds.size(), 0);
  for (std::size_t i = 0; i < ways.size(); ++i) {
    Trace trace{.way = static_cast<int>(i), .x = speeds, .y = {}};
    for (std::size_t k = 0; k < speeds.size(); ++k) {
      const auto left = speeds[k] > 0 ? dynamics::resultants(at_speed(ways[i].shaft, speeds[k]),
                                                             outcomes[i].arranged.tilt, outcomes[i].arranged.errors)
                                      : dynamics::Resultants{};
      trace.y.push_back(left.larger.si());
      out.floor[k] = std::max(out.floor[k], left.floor_rms.si());
    }
    out.traces.push_back(std::move(trace));
    out.spots.push_back({static_cast<int>(i), speed_of(ways[i]), outcomes[i].arranged.left.larger.si()});
  }
  return out;
}

PlotData couple_plot(const Outcomes& outcomes) {
  PlotData out{.key = PlotKey::couple, .x = Kind::angle, .y = Kind::torque};
  for (std::size_t i = 0; i < outcomes.size(); ++i) {
    Trace trace{.way = static_cast<int>(i), .x = {}, .y = {}};
    for (std::size_t k = 0; k < outcomes[i].arranged.couples.size(); ++k) {
      trace.x.push_back(outcomes[i].arranged.tilt[k].radians());
      trace.y.push_back(outcomes[i].arranged.couples[k].si());
    }
    out.traces.push_back(std::move(trace));
  }
  return out;
}

std::optional<PlotData> response_plot(const Ways& ways, const Outcomes& outcomes) {
  PlotData out{.key = PlotKey::response, .x = Kind::angular_speed, .y = Kind::force};
  double to = kBeyond * fastest(ways);
  for (const Outcome& o : outcomes) {
    if (!o.bent) return std::nullopt;
    const double critical = o.bent->forward ? o.bent->forward->radians_per_second() : 0;
    if (critical <= 0 || critical > kFarCritical * fastest(ways)) continue;
    to = std::max(to, 1.15 * critical);
    out.keep_out.push_back({critical / (1 + beam::kKeepOff), critical / (1 - beam::kKeepOff)});
  }
  for (std::size_t i = 0; i < ways.size(); ++i) {
    const Bent& bent = *outcomes[i].bent;
    const auto points = beam::response_of(ways[i].shaft, bent.of,
                                          {radians_per_second(to / kResponses), radians_per_second(to), kResponses});
    if (!points) return std::nullopt;
    Trace trace{.way = static_cast<int>(i), .x = {}, .y = {}};
    for (const beam::ResponsePoint& point : *points) {
      trace.x.push_back(point.speed.radians_per_second());
      trace.y.push_back(std::ranges::max(point.hangers).si());
    }
    out.traces.push_back(std::move(trace));
    out.spots.push_back({static_cast<int>(i), speed_of(ways[i]), bent.hanger.si()});
  }
  return out;
}

/// The task of a bearing at another speed: what turns changes with it, the travel stays.
bearings::TurnLifeTask task_at(const Way& way, const Beared& bearing, double speed) {
  const Shaft shaft = at_speed(way.shaft, speed);
  const auto rotors = static_cast<std::size_t>(shaft.rotor_count());
  const auto sets = dynamics::rotating_sets(shaft, std::vector<Angle>(rotors));
  bearings::TurnLifeTask task = bearing.task;
  task.turn.rotor.force = sets[static_cast<std::size_t>(bearing.rotor - 1)].force;
  task.turn.rotor.couple = sets[static_cast<std::size_t>(bearing.rotor - 1)].couple;
  task.shaft = shaft.spec().speed;
  task.spin = dynamics::spin_of(shaft, bearing.rotor);
  return task;
}

std::optional<PlotData> life_plot(const Ways& ways, const Outcomes& outcomes) {
  PlotData out{.key = PlotKey::life, .x = Kind::angular_speed, .y = Kind::time};
  const double to = kBeyond * fastest(ways);
  for (std::size_t i = 0; i < ways.size(); ++i) {
    if (!outcomes[i].bearing || !outcomes[i].bearing->ground) continue;
    const Beared& bearing = *outcomes[i].bearing;
    Trace trace{.way = static_cast<int>(i), .x = {}, .y = {}};
    for (const double speed : evenly(0.2 * to, to, kLives)) {
      const auto life = bearings::turn_life(task_at(ways[i], bearing, speed));
      if (!life) continue;  // Beyond what its balls bear: the curve ends there.
      trace.x.push_back(speed);
      trace.y.push_back(life->basic.si());
      trace.low.push_back(life->least.si());
      trace.high.push_back(life->greatest.si());
    }
    out.traces.push_back(std::move(trace));
    out.spots.push_back({static_cast<int>(i), speed_of(ways[i]), bearing.life.basic.si()});
  }
  if (out.traces.empty()) return std::nullopt;
  return out;
}

std::optional<PlotData> press_plot(const Outcomes& outcomes) {
  PlotData out{.key = PlotKey::press, .x = Kind::length, .y = Kind::force};
  for (std::size_t i = 0; i < outcomes.size(); ++i) {
    if (!outcomes[i].press) continue;
    const fits::PressPath& path = outcomes[i].press->path;
    const Length home = path.lead + path.pressing.width;
    std::vector<Length> travels;
    for (const double x : evenly(0, home.si(), kTravels)) travels.push_back(metres(x));
    const auto curve = fits::press_curve(path, travels);
    if (!curve) continue;
    Trace trace{.way = static_cast<int>(i), .x = {}, .y = {}};
    for (const fits::CurvePoint& point : *curve) {
      trace.x.push_back(point.travel.si());
      trace.low.push_back(point.least.si());
      trace.high.push_back(point.greatest.si());
      trace.y.push_back(0.5 * (point.least.si() + point.greatest.si()));
    }
    out.traces.push_back(std::move(trace));
    out.end = home.si();
  }
  if (out.traces.empty()) return std::nullopt;
  return out;
}

/// Whole swing of a dial at the tine tips.
std::optional<double> swing_at(const Way& way, const Beared& bearing, double clearance, double factor) {
  const auto tilt = bearings::free_tilt(bearing.inside, metres(clearance), factor);
  if (!tilt) return std::nullopt;
  return 2 * tilt->radians() * way.shaft.rotor(bearing.rotor).tip_radius.si();
}

std::optional<PlotData> play_plot(const Ways& ways, const Outcomes& outcomes) {
  PlotData out{.key = PlotKey::play, .x = Kind::length, .y = Kind::length};
  double most = 40e-6;  // m
  for (const Outcome& o : outcomes)
    if (o.bearing) most = std::max(most, 1.3 * o.bearing->clearance.greatest.si());
  for (std::size_t i = 0; i < ways.size(); ++i) {
    if (!outcomes[i].bearing) continue;
    const Beared& bearing = *outcomes[i].bearing;
    const bool counted = bearing.geometry->input("balls") != nullptr;
    const bearings::TiltFactor factor =
        counted ? bearings::tilt_factor(bearing.inside.balls) : bearings::tilt_factor_about(bearing.inside.balls);
    Trace trace{.way = static_cast<int>(i), .x = {}, .y = {}};
    for (const double clearance : evenly(0, most, kClearances)) {
      const auto low = swing_at(ways[i], bearing, clearance, factor.least);
      const auto mean = swing_at(ways[i], bearing, clearance, factor.mean);
      const auto high = swing_at(ways[i], bearing, clearance, factor.greatest);
      if (!low || !mean || !high) continue;
      trace.x.push_back(clearance);
      trace.low.push_back(*low);
      trace.y.push_back(*mean);
      trace.high.push_back(*high);
    }
    const double middle = bearing.middle().si();
    if (const auto here = middle > 0 ? swing_at(ways[i], bearing, middle, factor.mean) : std::nullopt)
      out.spots.push_back({static_cast<int>(i), middle, *here});
    out.traces.push_back(std::move(trace));
  }
  if (out.traces.empty()) return std::nullopt;
  return out;
}

/// The balls at the shaft angle that presses one of them hardest, turned from the leaning ring into what is seen from end A.
std::vector<BallAt> balls_of(const Beared& bearing) {
  const bearings::Turn& turn = bearing.life.turn;
  const bearings::AtAngle& hardest = turn.angles[static_cast<std::size_t>(turn.hardest)];
  const auto loaded = bearings::loaded_bearing(bearing.task.turn.at, bearing.task.turn.contacts, hardest.cage);
  CORE_CHECK(loaded.has_value());
  std::vector<BallAt> out;
  for (const bearings::BallLoad& ball : bearings::ball_loads(*loaded, hardest.shift)) {
    const double seen = std::fmod(180 * kDegree + hardest.shaft.radians() + ball.azimuth.radians(), 360 * kDegree);
    out.push_back({radians(seen), ball.load, ball.contact});
  }
  return out;
}

std::optional<PlotData> balls_plot(const Outcomes& outcomes) {
  PlotData out{.key = PlotKey::balls, .x = Kind::angle, .y = Kind::force};
  double most = 0, least = 1e300;
  bool all = true;
  for (const Outcome& o : outcomes) {
    out.balls.emplace_back();
    all = all && o.bearing.has_value();
    if (!o.bearing) continue;
    out.balls.back() = balls_of(*o.bearing);
    out.ball_share = o.bearing->inside.ball / o.bearing->inside.pitch;
    double greatest = 0;
    for (const BallAt& ball : out.balls.back()) greatest = std::max(greatest, ball.load.si());
    most = std::max(most, greatest);
    least = std::min(least, greatest);
  }
  if (!(most > 0)) return std::nullopt;
  out.differs = !all || least < (1 - kSame) * most;
  return out;
}

}  // namespace

std::vector<PlotData> plots_of(const Ways& ways, const Outcomes& outcomes) {
  std::vector<PlotData> plots;
  const auto add = [&](std::optional<PlotData> plot) {
    if (!plot) return;
    if (plot->key != PlotKey::balls) plot->differs = differs(*plot);
    plots.push_back(*std::move(plot));
  };
  add(hanger_plot(ways, outcomes));
  add(couple_plot(outcomes));
  add(response_plot(ways, outcomes));
  add(life_plot(ways, outcomes));
  add(press_plot(outcomes));
  add(play_plot(ways, outcomes));
  add(balls_plot(outcomes));
  std::ranges::stable_sort(plots, [](const PlotData& a, const PlotData& b) { return a.differs && !b.differs; });
  return plots;
}

}  // namespace flatwise::study
