// Numbers for programs: a full stop, no unit in the cells, the unit in the head.
#include <algorithm>
#include <numbers>

#include "core/units/csv.h"
#include "core/units/format.h"
#include "study/pictures.h"

namespace flatwise::study {
namespace {

constexpr double kPerMinute = 30 / std::numbers::pi;

void add(std::string& line, double value) { line += "," + format_exact(value); }

std::string_view head_of(PlotKey key) {
  switch (key) {
    case PlotKey::hanger:
      return "way,speed_r_min,hanger_n,floor_n\n";
    case PlotKey::couple:
      return "way,rotor,azimuth_deg,couple_n_m\n";
    case PlotKey::response:
      return "way,speed_r_min,hanger_n\n";
    case PlotKey::life:
      return "way,speed_r_min,life_s,least_s,greatest_s\n";
    case PlotKey::press:
      return "way,travel_m,middle_n,least_n,greatest_n\n";
    case PlotKey::play:
      return "way,clearance_m,swing_m,least_m,greatest_m\n";
    case PlotKey::balls:
      return "way,ball,azimuth_deg,load_n,contact_deg\n";
  }
  CORE_CHECK(false);
}

double factor_of(Kind kind) {
  return kind == Kind::angular_speed ? kPerMinute : kind == Kind::angle ? 180 / std::numbers::pi : 1;
}

std::string trace_lines(const Study& study, const PlotData& plot, const Trace& trace) {
  std::string out;
  for (std::size_t i = 0; i < trace.x.size(); ++i) {
    std::string line = csv_text(study.ways[static_cast<std::size_t>(trace.way)].name());
    if (plot.key == PlotKey::couple) line += "," + std::to_string(i + 1);
    add(line, factor_of(plot.x) * trace.x[i]);
    add(line, trace.y[i]);
    if (!trace.low.empty()) add(line, trace.low[i]), add(line, trace.high[i]);
    if (!plot.floor.empty()) add(line, plot.floor[i]);
    out += line + "\n";
  }
  return out;
}

}  // namespace

std::string csv_of(const Study& study, const PlotData& plot) {
  std::string out{head_of(plot.key)};
  for (const Trace& trace : plot.traces) out += trace_lines(study, plot, trace);
  for (std::size_t way = 0; way < plot.balls.size(); ++way)
    for (std::size_t i = 0; i < plot.balls[way].size(); ++i) {
      const BallAt& ball = plot.balls[way][i];
      std::string line = csv_text(study.ways[way].name()) + "," + std::to_string(i + 1);
      add(line, ball.azimuth.degrees());
      add(line, ball.load.si());
      add(line, ball.contact.degrees());
      out += line + "\n";
    }
  return out;
}

std::string csv_of(const Study& study, const Voice& voice) {
  std::string out = "row,way,value,to,unit,says\n";
  for (const Row& row : study.rows)
    for (std::size_t i = 0; i < row.cells.size(); ++i) {
      const Cell& cell = row.cells[i];
      std::string line = std::string{name_of(row.key)} + "," + csv_text(study.ways[i].name()) + ",";
      if (cell.value) line += format_exact(cell.value->si);
      line += ",";
      if (cell.to) line += format_exact(cell.to->si);
      line += ",";
      if (cell.value) line += std::string{si_suffix(cell.value->kind)}.substr(1);
      out += line + "," + csv_text(said(cell, voice)) + "\n";
    }
  return out;
}

}  // namespace flatwise::study
