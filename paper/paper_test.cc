// The printed sheets: checked from outside, by programs that read PDF and codes for a living (qpdf, poppler, zbar), and
// by measuring what was laid out.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <array>
#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <set>
#include <sstream>

#include "drawing/pen.h"
#include "drawing/signs.h"
#include "paper/render.h"
#include "paper/sheets_in_test.h"

namespace flatwise::paper {
namespace {

// ---- what is laid out -------------------------------------------------------------------------------------------

struct Extent {
  double left, top, right, bottom;
};
Extent extent(const drawing::Path& path) {
  Extent e{1e9, 1e9, -1e9, -1e9};
  for (const drawing::Point p : path.points)
    e = {std::min(e.left, p.x), std::min(e.top, p.y), std::max(e.right, p.x), std::max(e.bottom, p.y)};
  return e;
}
Extent extent(const drawing::Arc& arc) {
  return {arc.centre.x - arc.radius, arc.centre.y - arc.radius, arc.centre.x + arc.radius, arc.centre.y + arc.radius};
}
Extent extent(const drawing::Code& code) {
  return {code.at.x, code.at.y, code.at.x + code.side, code.at.y + code.side};
}
Extent extent_of(const drawing::Text& text, const TextMeasure& measure) {
  const double width = measure.width(text.text, text.size, text.bold);
  const double left =
      text.at.x -
      (text.anchor == drawing::Anchor::start ? 0 : (text.anchor == drawing::Anchor::middle ? width / 2 : width));
  return {left, text.at.y - 0.72 * text.size, left + width, text.at.y + 0.2 * text.size};
}
Extent extent(const drawing::Item& item, const TextMeasure& measure) {
  if (const auto* text = std::get_if<drawing::Text>(&item)) return extent_of(*text, measure);
  if (const auto* path = std::get_if<drawing::Path>(&item)) return extent(*path);
  if (const auto* arc = std::get_if<drawing::Arc>(&item)) return extent(*arc);
  return extent(std::get<drawing::Code>(item));
}

// What stands outside the margins, as words. Lines may reach over by half the widest stroke.
std::vector<std::string> over_margins(const DisplayList& page, const TextMeasure& measure) {
  constexpr double kStroke = 0.5;
  std::vector<std::string> out;
  for (const drawing::Item& item : page.items) {
    const Extent e = extent(item, measure);
    if (e.left >= kMargin - kStroke && e.right <= page.width - kMargin + kStroke && e.top >= kMargin - kStroke &&
        e.bottom <= page.height - kMargin + kStroke)
      continue;
    const auto* text = std::get_if<drawing::Text>(&item);
    out.push_back((text != nullptr ? text->text : "a line") + " at " + std::to_string(e.left) + ", " +
                  std::to_string(e.top));
  }
  return out;
}

// Pairs of texts that stand on each other by more than a hair.
std::vector<std::string> collisions(const DisplayList& page, const TextMeasure& measure) {
  constexpr double kHair = 0.25;
  std::vector<std::pair<Extent, std::string>> texts;
  for (const drawing::Item& item : page.items)
    if (const auto* text = std::get_if<drawing::Text>(&item); text != nullptr && !text->text.empty())
      texts.emplace_back(extent_of(*text, measure), text->text);
  std::vector<std::string> out;
  for (std::size_t i = 0; i < texts.size(); ++i) {
    for (std::size_t k = i + 1; k < texts.size(); ++k) {
      const Extent& a = texts[i].first;
      const Extent& b = texts[k].first;
      const double wide = std::min(a.right, b.right) - std::max(a.left, b.left);
      const double high = std::min(a.bottom, b.bottom) - std::max(a.top, b.top);
      if (wide > kHair && high > kHair) out.push_back(texts[i].second + " / " + texts[k].second);
    }
  }
  return out;
}

/// A language whose words run wider: every sheet is laid out for it by the same code.
class Wider final : public TextMeasure {
 public:
  explicit Wider(double by) : by_{by} {}
  [[nodiscard]] double width(std::string_view text, double size, bool bold) const override {
    return by_ * fonts().width(text, size, bold);
  }

 private:
  double by_;
};

class EverySheet : public testing::TestWithParam<std::tuple<int, Paper>> {
 protected:
  [[nodiscard]] const GalleryCase& the_case() const {
    return cases()[static_cast<std::size_t>(std::get<0>(GetParam()))];
  }
  [[nodiscard]] Paper paper() const { return std::get<1>(GetParam()); }
  [[nodiscard]] UnitSystem units() const { return paper() == Paper::a4 ? UnitSystem::metric : UnitSystem::inch; }
};

TEST_P(EverySheet, StaysInsideTheMarginsAndNoTextStandsOnAnother) {
  for (const double wider : {1.0, 1.3}) {
    const Wider measure{wider};
    for (const NamedPages& sheet : gallery_sheets(the_case(), paper(), units(), measure)) {
      ASSERT_FALSE(sheet.pages.empty());
      for (std::size_t i = 0; i < sheet.pages.size(); ++i) {
        EXPECT_THAT(over_margins(sheet.pages[i], measure), testing::IsEmpty())
            << sheet.name << ' ' << i << ' ' << wider;
        EXPECT_THAT(collisions(sheet.pages[i], measure), testing::IsEmpty()) << sheet.name << ' ' << i << ' ' << wider;
      }
    }
  }
}

TEST_P(EverySheet, SaysThatItIsInvented) {
  for (const NamedPages& sheet : gallery_sheets(the_case(), paper(), units(), fonts())) {
    for (const DisplayList& page : sheet.pages) {
      const bool said = std::any_of(page.items.begin(), page.items.end(), [](const drawing::Item& item) {
        const auto* text = std::get_if<drawing::Text>(&item);
        return text != nullptr && (text->text.find("no real shaft") != std::string::npos ||
                                   text->text.find("(demo)") != std::string::npos);
      });
      EXPECT_TRUE(said) << sheet.name;
    }
  }
}

INSTANTIATE_TEST_SUITE_P(Gallery, EverySheet,
                         testing::Combine(testing::Range(0, 5), testing::Values(Paper::a4, Paper::letter)));

// The checks above bite: a text pushed out, and one written over another, are both found.
TEST(LayoutChecks, FindWhatIsWrong) {
  auto pages = gallery_sheets(cases()[0], Paper::a4, UnitSystem::metric, fonts()).front().pages;
  drawing::Pen pen{pages[0]};
  pen.text({190, 100}, "runs out of the page", {.size = 4});
  EXPECT_EQ(over_margins(pages[0], fonts()).size(), 1U);
  pen.text({13, 18}, "over the title", {.size = 4});
  EXPECT_GE(collisions(pages[0], fonts()).size(), 1U);
}

// ---- what can be read -------------------------------------------------------------------------------------------

std::string text_of(const Pages& pages, const Folder& folder) {
  const std::string file = folder.file("text.pdf");
  EXPECT_TRUE(write_file_atomically(file, pdf_of(pages)));
  return run("pdftotext -layout " + file + " -").output;
}

TEST(MapSheet, HasALineForEveryRotor) {
  const Folder folder;
  for (const GalleryCase& c : cases()) {
    const auto sheets = gallery_sheets(c, Paper::a4, UnitSystem::metric, fonts());
    std::istringstream lines{text_of(sheets[0].pages, folder)};
    std::set<std::string> seen;
    for (std::string line; std::getline(lines, line);) seen.insert(squeezed(line));
    for (const auto& m : c.map.rotors) {
      std::string wanted =
          std::to_string(m.rotor) + ' ' + std::to_string(m.flat_a) + ' ' + std::to_string(m.flat_b) + ' ';
      const bool stayed = c.stayed[static_cast<std::size_t>(m.rotor - 1)];
      wanted += stayed ? "stayed " + std::to_string(m.flat_a) + ' ' + std::to_string(m.flat_b) : "to set";
      EXPECT_TRUE(seen.contains(wanted)) << c.name << ": " << wanted;
    }
  }
}

TEST(MapSheet, ShowsOneViewFromTheOtherEnd) {
  const Folder folder;
  const GalleryCase& c = cases()[0];
  const Head head = gallery_head(c, Paper::a4, UnitSystem::metric);
  for (const End end : {End::a, End::b}) {
    const std::string text = text_of(
        map_sheet({.head = head, .shaft = &c.shaft, .map = &c.map, .stayed = {}, .off = {}, .read = {}, .stand = end},
                  fonts()),
        folder);
    EXPECT_NE(text.find(end == End::a ? "Flats count clockwise" : "Flats count anticlockwise"), std::string::npos);
    EXPECT_NE(text.find(end == End::a ? "seen from end B" : "seen from end A"), std::string::npos);
  }
}

// A rotor that stayed but was read wrong is not settled: it keeps its boxes and shows the stopped bar.
TEST(MapSheet, DoesNotSettleWhatWasReadWrong) {
  const GalleryCase& c = cases()[0];
  const auto boxes = [&](std::vector<drawing::PairMarks> read) {
    const auto pages = map_sheet({.head = gallery_head(c, Paper::a4, UnitSystem::metric),
                                  .shaft = &c.shaft,
                                  .map = &c.map,
                                  .stayed = c.stayed,
                                  .off = {},
                                  .read = std::move(read)},
                                 fonts());
    int count = 0;
    for (const drawing::Item& item : pages[0].items) {
      const auto* path = std::get_if<drawing::Path>(&item);
      if (path == nullptr || !path->closed) continue;
      const Extent e = extent(*path);
      count += std::abs(e.right - e.left - drawing::kTickSide) < 1e-9 &&
               std::abs(e.bottom - e.top - e.right + e.left) < 1e-9;
    }
    return count;
  };
  auto read = read_of(c);
  EXPECT_EQ(boxes(read), 2 * 4);  // Rotors 1 to 4 are to be set.
  read[6].flat_b = 2;
  EXPECT_EQ(boxes(read), 2 * 5);
}

struct Found {
  std::size_t page = 0;
  double y = -1;
};
Found find_text(const Pages& pages, const std::string& begins) {
  for (std::size_t i = 0; i < pages.size(); ++i)
    for (const drawing::Item& item : pages[i].items)
      if (const auto* text = std::get_if<drawing::Text>(&item);
          text != nullptr && !text->text.empty() && begins.rfind(text->text, 0) == 0 && text->text.size() > 5)
        return {i, text->at.y};
  return {};
}

TEST(TearDownSheet, PutsEveryCautionAboveItsStepOnTheSamePage) {
  for (const GalleryCase& c : cases()) {
    const Head head = gallery_head(c, Paper::letter, UnitSystem::inch);
    const auto pages = tear_down_sheet(
        {.head = head, .shaft = &c.shaft, .plan = &c.plan, .steps = c.steps, .marks = marks_of(c)}, fonts());
    std::set<std::string> said;
    for (const teardown::Step& step : c.steps) {
      const Found what = find_text(pages, say(step.what, head.voice));
      ASSERT_GT(what.y, 0) << say(step.what, head.voice);
      for (const Message& caution : step.cautions) {
        if (!said.insert(say(caution, head.voice)).second) continue;  // Found by its first place only.
        const Found above = find_text(pages, say(caution, head.voice));
        ASSERT_GT(above.y, 0) << say(caution, head.voice);
        EXPECT_EQ(above.page, what.page);
        EXPECT_LT(above.y, what.y);
      }
    }
  }
}

TEST(TearDownSheet, NumbersEveryStepOnceAndHasATickForEach) {
  const GalleryCase& c = cases()[0];
  const auto pages = tear_down_sheet({.head = gallery_head(c, Paper::a4, UnitSystem::metric),
                                      .shaft = &c.shaft,
                                      .plan = &c.plan,
                                      .steps = c.steps,
                                      .marks = {}},
                                     fonts());
  std::size_t ticks = 0;
  std::size_t stops = 0;
  for (const DisplayList& page : pages) {
    for (const drawing::Item& item : page.items) {
      const auto* path = std::get_if<drawing::Path>(&item);
      if (path == nullptr || !path->closed) continue;
      const Extent e = extent(*path);
      ticks += std::abs(e.right - e.left - drawing::kTickSide) < 1e-9 &&
                       std::abs(e.bottom - e.top - drawing::kTickSide) < 1e-9
                   ? 1
                   : 0;
      stops += path->id == "stop" && e.right - e.left > 100 ? 1 : 0;
    }
  }
  const auto stop = static_cast<std::size_t>(
      std::count_if(c.steps.begin(), c.steps.end(), [](const teardown::Step& s) { return s.stop; }));
  EXPECT_EQ(stops, stop);
  EXPECT_EQ(ticks, c.steps.size() - stop);
}

// Limits 3.9352 to 3.9366 in: all readings near them begin 3.9, three digits are to be written in each of 2 x 4 blanks.
TEST(BenchSheet, HasABoxForEveryDigitThatIsNotKnown) {
  const GalleryCase& c = cases()[0];
  for (const auto& [units, wanted] : {std::pair{UnitSystem::inch, 3 * 8}, std::pair{UnitSystem::metric, 6 * 8}}) {
    const auto pages = bench_sheet(
        {.head = gallery_head(c, Paper::a4, units), .shaft = &c.shaft, .rotors = {3}, .gauge = {}, .setting_ring = {}},
        fonts());
    ASSERT_EQ(pages.size(), 1U);
    int boxes = 0;
    for (const drawing::Item& item : pages[0].items) {
      const auto* path = std::get_if<drawing::Path>(&item);
      if (path == nullptr || !path->closed) continue;
      const Extent e = extent(*path);
      if (std::abs(e.bottom - e.top - drawing::kDigitHeight) > 1e-9) continue;
      ++boxes;
      EXPECT_GE(e.right - e.left, 4.9);  // As large as a carpenter's pencil.
    }
    EXPECT_EQ(boxes, wanted);
  }
}

TEST(BenchSheet, ShowsTheLimitsInBothUnits) {
  const Folder folder;
  const GalleryCase& c = cases()[0];
  const std::string text = squeezed(text_of(bench_sheet({.head = gallery_head(c, Paper::letter, UnitSystem::inch),
                                                         .shaft = &c.shaft,
                                                         .rotors = {3},
                                                         .gauge = {},
                                                         .setting_ring = {}},
                                                        fonts()),
                                            folder));
  // Source: 99.955 mm / 25.4 = 3.93524 in, 99.990 mm / 25.4 = 3.93661 in.
  // Tolerance: the four decimals shown.
  EXPECT_NE(text.find("3.9352 to 3.9366"), std::string::npos) << text;
  EXPECT_NE(text.find("99.955 to 99.990"), std::string::npos) << text;
}

TEST(BenchSheet, CountsItsPagesThrough) {
  const Folder folder;
  const GalleryCase& c = cases()[0];
  std::string text = text_of(bench_sheet({.head = gallery_head(c, Paper::a4, UnitSystem::metric),
                                          .shaft = &c.shaft,
                                          .rotors = {1, 2, 4},
                                          .gauge = {},
                                          .setting_ring = {}},
                                         fonts()),
                             folder);
  std::erase(text, ' ');
  for (const char* count : {"1/3", "2/3", "3/3"}) EXPECT_NE(text.find(count), std::string::npos) << count;
}

// ---- codes ------------------------------------------------------------------------------------------------------

TEST(Codes, AreAtLeast18MillimetresAndKeepTheirQuietZoneClear) {
  for (const GalleryCase& c : cases()) {
    for (const NamedPages& sheet : gallery_sheets(c, Paper::letter, UnitSystem::inch, fonts())) {
      for (const DisplayList& page : sheet.pages) {
        for (const drawing::Item& item : page.items) {
          const auto* code = std::get_if<drawing::Code>(&item);
          if (code == nullptr) continue;
          EXPECT_GE(code->side, 18);
          const auto modules = code_modules(code->text);
          ASSERT_TRUE(modules.has_value());
          const double quiet = kQuietModules * code->side / modules->side;
          const Extent zone{code->at.x - quiet, code->at.y - quiet, code->at.x + code->side + quiet,
                            code->at.y + code->side + quiet};
          for (const drawing::Item& other : page.items) {
            const auto* text = std::get_if<drawing::Text>(&other);
            if (text == nullptr) continue;
            const Extent e = extent_of(*text, fonts());
            EXPECT_FALSE(e.left < zone.right && e.right > zone.left && e.top < zone.bottom && e.bottom > zone.top)
                << sheet.name << ": " << text->text;
          }
        }
      }
    }
  }
}

// Source: ISO/IEC 18004: version 1 is 21 modules a side; finder patterns fill three corners, their 7 x 7 rings dark.
// Tolerance: exact.
TEST(Codes, JoinTheirModulesWithoutLoss) {
  const auto code = code_modules("flatwise");
  ASSERT_TRUE(code.has_value());
  EXPECT_EQ(code->side, 21);
  std::vector<int> times(static_cast<std::size_t>(code->side * code->side));
  for (const ModuleBox& box : code->dark)
    for (int y = box.y; y < box.y + box.height; ++y)
      for (int x = box.x; x < box.x + box.width; ++x) ++times[static_cast<std::size_t>(y * code->side + x)];
  EXPECT_EQ(*std::max_element(times.begin(), times.end()), 1);  // Never twice.
  for (int i = 0; i < 7; ++i)
    for (const int at : {i, i * 21, 14 + i, i * 21 + 20, 14 * 21 + i * 21, 20 * 21 + i})
      EXPECT_EQ(times[static_cast<std::size_t>(at)], 1) << at;
  EXPECT_EQ(times[22], 0);  // Inside the ring.
}

TEST(Codes, SayJobAndPlaceAndNothingThatBreaksThem) {
  Head head;
  head.job = "31; b=c";
  EXPECT_EQ(code_text(head, "sheet", "map"), "flatwise:job=31__b_c;sheet=map");
}

TEST(Codes, RefuseWhatDoesNotFit) {
  EXPECT_FALSE(code_modules(std::string(3000, 'x')).has_value());
  EXPECT_FALSE(code_modules("").has_value());
}

// ---- rendering --------------------------------------------------------------------------------------------------

TEST(Render, GivesTheSameBytesForTheSamePages) {
  const auto once = gallery_sheets(cases()[1], Paper::a4, UnitSystem::metric, fonts());
  const auto again = gallery_sheets(cases()[1], Paper::a4, UnitSystem::metric, fonts());
  for (std::size_t i = 0; i < once.size(); ++i) {
    EXPECT_EQ(pdf_of(once[i].pages), pdf_of(again[i].pages)) << once[i].name;
    EXPECT_EQ(render_svg(once[i].pages[0]).value(), render_svg(again[i].pages[0]).value());
    EXPECT_EQ(render_png(once[i].pages[0], 60).value(), render_png(again[i].pages[0], 60).value());
  }
  const auto later = render_pdf(once[0].pages, {"Sheet", "2026-02-03T14:21:00Z"});
  EXPECT_NE(pdf_of(once[0].pages), later.value());
}

TEST(Render, EmbedsOnlyOurFonts) {
  const Folder folder;
  const std::string file = folder.file("map.pdf");
  ASSERT_TRUE(
      write_file_atomically(file, pdf_of(gallery_sheets(cases()[0], Paper::a4, UnitSystem::metric, fonts())[0].pages)));
  std::istringstream lines{run("pdffonts " + file).output};
  int fonts_seen = 0;
  for (std::string line; std::getline(lines, line);) {
    if (line.find('+') == std::string::npos) continue;
    ++fonts_seen;
    EXPECT_TRUE(line.find("B612") != std::string::npos || line.find("DejaVu") != std::string::npos) << line;
  }
  EXPECT_GE(fonts_seen, 2);
}

DisplayList with_text(const std::string& text) {
  DisplayList page{100, 40, {}};
  drawing::Pen{page}.text({10, 20}, text, {.size = 4});
  return page;
}

TEST(Render, RefusesACharacterNoFontOfOursHasAndNamesIt) {
  for (const char* unknown : {"漢", "𒀀", "\xF3\xB0\x80\x80"}) {
    const auto pdf = render_pdf(std::vector{with_text(std::string{"Shaft "} + unknown)}, {"x", kCreated});
    ASSERT_FALSE(pdf.has_value()) << unknown;
    EXPECT_EQ(pdf.error().code, Code{"paper.glyph_missing"});
    EXPECT_EQ(std::get<std::string>(pdf.error().args.at(0).value), unknown);
  }
  EXPECT_TRUE(
      render_pdf(std::vector{with_text("Ø ± × ° ′ ″ ½ − ≤ ≥ α γ δ φ µ · ñ ¿ ü √ Σ")}, {"x", kCreated}).has_value());
}

TEST(Render, RefusesWhatIsNoText) {
  const auto svg = render_svg(with_text("Sha\xFFt"));
  ASSERT_FALSE(svg.has_value());
  EXPECT_EQ(svg.error().code, Code{"paper.not_utf8"});
}

TEST(Render, RefusesPagesAndResolutionsThatCannotBe) {
  EXPECT_EQ(render_pdf({}, {"x", kCreated}).error().code, Code{"paper.no_pages"});
  for (const double width : {0.0, -1.0, 3000.0, std::numeric_limits<double>::quiet_NaN()})
    EXPECT_FALSE(render_svg(DisplayList{width, 100, {}}).has_value()) << width;
  for (const double dpi : {0.0, 19.0, 601.0, std::numeric_limits<double>::quiet_NaN()})
    EXPECT_FALSE(render_png(with_text("a"), dpi).has_value()) << dpi;
}

TEST(Render, IsBlackAndWhiteOnly) {
  const auto svg = render_svg(gallery_sheets(cases()[0], Paper::a4, UnitSystem::metric, fonts())[0].pages[0]);
  ASSERT_TRUE(svg.has_value());
  for (std::size_t at = svg->find("rgb("); at != std::string::npos; at = svg->find("rgb(", at + 1)) {
    const std::string colour = svg->substr(at, svg->find(')', at) - at + 1);
    EXPECT_TRUE(colour == "rgb(0%,0%,0%)" || colour == "rgb(100%,100%,100%)") << colour;
  }
}

// ---- words to lines ---------------------------------------------------------------------------------------------

/// Every character one unit wide for size 1.
class Typewriter final : public TextMeasure {
 public:
  [[nodiscard]] double width(std::string_view text, double size, bool) const override {
    const auto characters =
        std::count_if(text.begin(), text.end(), [](char c) { return (static_cast<unsigned char>(c) & 0xC0) != 0x80; });
    return size * static_cast<double>(characters);
  }
};

TEST(BreakLines, BreaksAtSpacesAndInsideWordsThatAreTooWide) {
  const Typewriter measure;
  using Lines = std::vector<std::string>;
  EXPECT_EQ(break_lines(measure, "turn half B one flat", {1, false, 10}), (Lines{"turn half", "B one flat"}));
  EXPECT_EQ(break_lines(measure, "Gewindeschneiden", {1, false, 6}), (Lines{"Gewind", "eschne", "iden"}));
  EXPECT_EQ(break_lines(measure, "a Gewindeschneiden b", {1, false, 8}), (Lines{"a", "Gewindes", "chneiden", "b"}));
  EXPECT_EQ(break_lines(measure, "", {1, false, 6}), Lines{""});
  EXPECT_EQ(break_lines(measure, "ñandú", {1, false, 2}), (Lines{"ña", "nd", "ú"}));  // Never inside a character.
  EXPECT_EQ(break_lines(measure, "900\u00A0ft·lb", {1, false, 9}), Lines{"900\u00A0ft·lb"});  // No-break space holds.
  EXPECT_EQ(break_lines(measure, "abc", {1, false, 0.5}), (Lines{"a", "b", "c"}));            // Hopeless: still ends.
}

TEST(BreakLines, LosesNothingAndKeepsTheWidth) {
  const std::string text =
      "Read the marks of every rotor again before anything more goes on. That it slid together proves nothing.";
  for (double width = 12; width < 120; width += 3.7) {
    std::string joined;
    for (const std::string& line : break_lines(fonts(), text, {3.9, false, width})) {
      EXPECT_LE(fonts().width(line, 3.9, false), width);
      joined += line;
    }
    std::string plain = text;
    std::erase(plain, ' ');
    std::erase(joined, ' ');
    EXPECT_EQ(joined, plain);
  }
}

// Source: design measure of the font: every digit is 0.65 em in both weights (read off the font's own tables).
// Tolerance: 0.005 em.
TEST(Measure, GivesDigitsOneWidthInBothWeights) {
  for (char digit = '0'; digit <= '9'; ++digit)
    for (const bool bold : {false, true}) EXPECT_NEAR(fonts().width(std::string{digit}, 10, bold), 6.5, 0.05) << digit;
}

TEST(SizeToFit, ShrinksToTheWidthButNotBelowTheLeast) {
  const Typewriter measure;
  EXPECT_EQ(size_to_fit(measure, "abcd", {4, false, 100}, 1), 4);
  EXPECT_EQ(size_to_fit(measure, "abcd", {4, false, 8}, 1), 2);
  EXPECT_EQ(size_to_fit(measure, "abcd", {4, false, 1}, 1), 1);
}

// ---- files ------------------------------------------------------------------------------------------------------

std::string contents(const std::string& path) {
  std::ifstream in{path, std::ios::binary};
  return {std::istreambuf_iterator<char>{in}, {}};
}

TEST(WriteFile, ReplacesWholeAndLeavesNothingBeside) {
  const Folder folder;
  const std::string file = folder.file("map.pdf");
  ASSERT_TRUE(write_file_atomically(file, "first"));
  ASSERT_TRUE(write_file_atomically(file, "second, longer"));
  EXPECT_EQ(contents(file), "second, longer");
  EXPECT_EQ(folder.files(), 1U);
}

TEST(WriteFile, SaysWhyItCannotAndLeavesWhatWasThere) {
  const Folder folder;
  const auto nowhere = write_file_atomically(folder.file("no/such/map.pdf"), "x");
  ASSERT_FALSE(nowhere.has_value());
  EXPECT_EQ(nowhere.error().code, Code{"paper.not_written"});
  ASSERT_TRUE(fs::create_directory(folder.file("taken")));
  std::ofstream{folder.file("taken") + "/inside"} << "x";
  EXPECT_FALSE(write_file_atomically(folder.file("taken"), "x").has_value());  // A folder is not replaced by a file.
  EXPECT_EQ(folder.files(), 1U);
}

// ---- workings ---------------------------------------------------------------------------------------------------

WorkingPtr some_working(const std::string& formula) {
  Working w;
  w.figure = "bar-pull";
  w.formula = formula;
  w.inputs = {{"torque", "T", any(foot_pounds(1000)), {OriginKind::given, "shaft.toml:12"}, {}, "1000 ft·lb", {}},
              {"length", "L", any(inches(60)), {OriginKind::measured, "bar 3"}, {}, {}, {}},
              {"angle", "β", any(degrees(90)), {OriginKind::assumed, "square to the bar"}, {}, {}, {}}};
  w.outputs = {{"pull", "P", any(pounds_force(200)), {}}};
  w.sources = {"common practice"};
  return std::make_shared<const Working>(std::move(w));
}

TEST(WorkingSheet, ShowsResultFormulaOriginsAndSourceAndBreaksLongOnes) {
  const Folder folder;
  Head head = gallery_head(cases()[0], Paper::a4, UnitSystem::inch);
  std::vector<WorkingPtr> workings(12, some_working("P = T / (L sin β)"));
  workings.push_back(some_working("P = " + std::string(300, 'T') + " / L"));
  const auto pages = working_sheet({head, workings}, fonts());
  EXPECT_GT(pages.size(), 1U);
  for (const DisplayList& page : pages) {
    EXPECT_THAT(over_margins(page, fonts()), testing::IsEmpty());
    EXPECT_THAT(collisions(page, fonts()), testing::IsEmpty());
  }
  const std::string text = squeezed(text_of(pages, folder));
  for (const char* wanted : {"P = T / (L sin β)", "1000 ft·lb", "given, shaft.toml:12", "measured, bar 3",
                             "assumed, square to the bar", "common practice", "200"})
    EXPECT_NE(text.find(wanted), std::string::npos) << wanted;
}

TEST(WorkingSheet, SetsWhatWasAssumedBold) {
  const auto pages = working_sheet(
      {gallery_head(cases()[0], Paper::a4, UnitSystem::inch), {some_working("P = T / (L sin β)")}}, fonts());
  for (const drawing::Item& item : pages[0].items) {
    const auto* text = std::get_if<drawing::Text>(&item);
    if (text == nullptr) continue;
    if (text->text == "β" || text->text == "L") {
      EXPECT_EQ(text->bold, text->text == "β");
    }
  }
}

}  // namespace
}  // namespace flatwise::paper
