// paper_gallery FOLDER: draws every sheet of the invented shafts as PDF, A4 in millimetres and Letter in inches, and a
// page of signs. For whoever changes a sheet: look at it.
#include <cstdio>
#include <cstdlib>

#include "drawing/pen.h"
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
