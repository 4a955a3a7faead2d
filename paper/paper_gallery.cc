// paper_gallery FOLDER: draws every sheet of the invented shafts as PDF, A4 in millimetres and Letter in inches, and a
// page of signs. For whoever changes a sheet: look at it.
#include <cmath>
#include <cstdio>
#include <cstdlib>

#include "drawing/couple_arrows.h"
#include "drawing/pen.h"
#include "drawing/plot.h"
#include "drawing/section.h"
#include "drawing/signs.h"
#include "paper/gallery_shafts.h"
#include "paper/hand_over_samples.h"
#include "paper/render.h"

namespace {

using namespace flatwise;
using namespace flatwise::paper;

void write(const std::string& path, const Result<std::string>& bytes) {
  if (!bytes) {
    std::fprintf(stderr, "%s: %s %s\n", path.c_str(), std::string{bytes.error().code.id()}.c_str(),
                 bytes.error().given.c_str());
    std::exit(1);
  }
  if (!write_file_atomically(path, *bytes)) std::exit(1);
}

drawing::DisplayList signs(const Shaft& shaft) {
  drawing::DisplayList page{210, 150, {}};
  double x = 15;
  for (const Answer answer : {Answer::in, Answer::out, Answer::cannot_tell}) {
    drawing::draw_answer(page, answer, {x, 15}, 7);
    x += 20;
  }
  drawing::draw_gauge_bar(page,
                          {.least = 99.955,
                           .greatest = 99.990,
                           .value = 99.984,
                           .expanded = 0.004,
                           .least_words = "99.955",
                           .greatest_words = "99.990"},
                          {90, 14, 100, 7});
  append(page, drawing::pair_section(shaft, 1, 0, 70), {15, 35});
  append(page, drawing::pair_section(shaft, 1, 1, 70), {110, 35});
  append(page,
         drawing::end_view(drawing::pair_of(shaft, 1), {.flat_a = 4, .flat_b = 2, .wanted_a = 4, .wanted_b = 1},
                           {.seen_from = End::a, .size = 45}),
         {20, 100});
  append(page,
         drawing::end_view(drawing::pair_of(shaft, 1), {.flat_a = 4, .flat_b = 2, .wanted_a = 4, .wanted_b = 1},
                           {.seen_from = End::b, .size = 45}),
         {75, 100});
  append(page,
         drawing::end_view(drawing::pair_of(shaft, 1), {.flat_a = 4, .flat_b = 4, .wanted_a = 4, .wanted_b = 1},
                           {.seen_from = End::a, .size = 45}),
         {130, 100});
  return page;
}

drawing::DisplayList states(const Shaft& shaft) {
  using drawing::Body;
  using drawing::Flag;
  drawing::DisplayList page{210, 200, {}};
  std::vector<drawing::StationState> s(shaft.stations().size());
  const Flag flags[] = {Flag::none, Flag::done, Flag::stopped, Flag::waits, Flag::unknown};
  for (std::size_t i = 0; i < s.size(); ++i)
    s[i] = {i < s.size() / 2 ? Body::off : Body::on, flags[i % 5], i % 4 == 1, i == 6};
  std::vector<drawing::RotorMarks> m;
  for (int r = 1; r <= shaft.rotor_count(); ++r) m.push_back({degrees(60 * r), degrees(60 * r + 180)});
  double y = 10;
  for (const bool behind : {false, true}) {
    const auto full = drawing::shaft_strip(shaft, s, m, {.width = 190, .greatest_height = 0, .from_behind = behind});
    append(page, full.list, {10, y});
    y += full.list.height + 8;
  }
  const auto low = drawing::shaft_strip(shaft, s, m, {.width = 190, .greatest_height = 24});
  append(page, low.list, {10, y});
  return page;
}

drawing::Plot resonance() {
  drawing::Curve curve{.id = "m", .name = "hanger M", .points = {}};
  for (int n = 0; n <= 160; ++n) {
    const double r = 5.0 * n / 690;
    curve.points.push_back({5.0 * n, 5.5 * r * r / std::hypot(1 - r * r, 0.14 * r)});
  }
  return {.title = "Hanger M, turning load",
          .question = "How far away is the peak? [invented]",
          .x = {.words = "shaft speed, /min", .from = 0, .to = 800},
          .y = {.words = "lbf", .from = 0, .to = 40},
          .curves = {curve},
          .keep_out = {{.from = 517, .to = 800, .words = {"keep out:", "within 25 %"}}},
          .here = drawing::PlotPlace{.x = 480, .y = 5.1, .words = {"work, 480 /min", "5 lbf"}}};
}

drawing::Plot way_in() {
  drawing::Curve trace{.id = "trace", .name = "", .points = {}};
  for (int i = 0; i <= 19; ++i) trace.points.push_back({1.0 * i, 48.0 * i - 20.0 * std::sin(i)});
  trace.points.push_back({19.05, 1740});
  return {.title = "Rotor 4, bearing in",
          .question = "Is the cross in the band? [invented]",
          .x = {.words = "way in, mm", .from = 0, .to = 20},
          .y = {.words = "lbf", .from = 0, .to = 2000},
          .curves = {trace},
          .bands = {{.id = "expected", .x = {0, 19}, .low = {0, 610}, .high = {0, 1220}}},
          .marks = {{.at = {18.8, 900}, .form = drawing::MarkForm::read, .id = "read", .words = "read 900"},
                    {.at = {7, 100}, .form = drawing::MarkForm::circle, .id = "sound"},
                    {.at = {9, 60}, .form = drawing::MarkForm::cross, .id = "failed"}}};
}

/// Plots, the couples head to tail in three patterns, and the balls of a loaded bearing.
drawing::DisplayList plots() {
  drawing::DisplayList page{210, 230, {}};
  drawing::append(page, drawing::plot(resonance(), {.width = 92, .height = 80}), {10, 10});
  drawing::append(page, drawing::plot(way_in(), {.width = 92, .height = 80}), {108, 10});
  double x = 10;
  for (const std::vector<double>& azimuths :
       {std::vector<double>{0, 180, 0, 180, 0}, {0, 120, 240, 0, 120}, {0, 120, 180, 240, 0}}) {
    drawing::CoupleArrows arrows{.rotors = {}, .floor = 0.07};
    for (const double a : azimuths) arrows.rotors.push_back({static_cast<int>(arrows.rotors.size()) + 1, 1, a});
    drawing::append(page, drawing::couple_arrows(arrows, 62, 50), {x, 95});
    x += 64;
  }
  drawing::BallLoads loads{.balls = {}, .ball_share = 0.2, .greatest_words = "1.9 kN"};
  for (int i = 0; i < 9; ++i)
    loads.balls.push_back({40.0 * i + 8, std::max(0.0, std::cos((40.0 * i + 8 - 180) * 0.0174533))});
  drawing::append(page, drawing::ball_loads(loads, 70), {10, 150});
  return page;
}

}  // namespace

int main(int count, char** arguments) {
  if (count != 2) return 2;
  const std::string folder = arguments[1];
  const auto measure = make_measure();
  if (!measure) return 1;
  const std::string created = "2026-02-03T14:20:00Z";
  for (const GalleryCase& c : gallery_cases()) {
    for (const auto& [paper, units, suffix] :
         {std::tuple{Paper::a4, UnitSystem::metric, "-a4"}, std::tuple{Paper::letter, UnitSystem::inch, "-letter"}})
      for (const NamedPages& s : gallery_sheets(c, paper, units, **measure))
        write(folder + "/" + c.name + "-" + s.name + suffix + ".pdf", render_pdf(s.pages, {s.title, created}));
    write(folder + "/" + c.name + "-signs.pdf",
          render_pdf(std::vector{signs(c.shaft), states(c.shaft)}, {"Signs", created}));
    write(folder + "/" + c.name + "-signs.svg", render_svg(signs(c.shaft)));
  }
  write(folder + "/plots.png", render_png(plots(), 110));
  const std::pair<Ending, const char*> endings[] = {
      {Ending::complete, "complete"}, {Ending::blocked, "blocked"}, {Ending::forced, "forced"}};
  for (const auto& [ending, name] : endings)
    for (const int rotors : {3, 9}) {
      const Head head = gallery_head(gallery_cases().front(), Paper::a4, UnitSystem::inch);
      write(folder + "/hand-over-" + name + "-" + std::to_string(rotors) + ".pdf",
            render_pdf(hand_over_pages(ending, rotors, head, **measure), {"Hand-over record", created}));
    }
  return 0;
}
