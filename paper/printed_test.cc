// Sheets as files, read by programs that read PDF and codes for a living: qpdf, poppler, zbar.
#include <gtest/gtest.h>

#include <set>

#include "drawing/pen.h"
#include "paper/render.h"
#include "paper/sheets_in_test.h"

namespace flatwise::paper {
namespace {

class PrintedOn : public testing::TestWithParam<std::tuple<int, Paper>> {};

// Source: ISO 216: A4 is 210 mm x 297 mm; ANSI/ASME Y14.1: Letter (A) is 8.5 in x 11 in.
// Tolerance: 0.01 pt, as pdfinfo writes it.
TEST_P(PrintedOn, IsCleanPdfOfItsPaper) {
  const GalleryCase& the_case = cases()[static_cast<std::size_t>(std::get<0>(GetParam()))];
  const Paper paper = std::get<1>(GetParam());
  const UnitSystem units = paper == Paper::a4 ? UnitSystem::metric : UnitSystem::inch;
  const Folder folder;
  for (const NamedPages& sheet : gallery_sheets(the_case, paper, units, fonts())) {
    const std::string file = folder.file(sheet.name + ".pdf");
    ASSERT_TRUE(write_file_atomically(file, pdf_of(sheet.pages)));
    const Ran check = run("qpdf --check " + file);
    EXPECT_EQ(check.status, 0) << check.output;
    EXPECT_NE(check.output.find("No syntax or stream encoding errors"), std::string::npos) << check.output;
    const std::string info = squeezed(run("pdfinfo " + file).output);
    EXPECT_NE(
        info.find(paper == Paper::a4 ? "Page size: 595.276 x 841.89 pts (A4)" : "Page size: 612 x 792 pts (letter)"),
        std::string::npos)
        << info;
    EXPECT_NE(info.find("Pages: " + std::to_string(sheet.pages.size())), std::string::npos) << info;
  }
}

INSTANTIATE_TEST_SUITE_P(Gallery, PrintedOn,
                         testing::Combine(testing::Range(0, 5), testing::Values(Paper::a4, Paper::letter)));

std::multiset<std::string> scanned(const std::string& image) {
  std::istringstream lines{run("zbarimg --quiet --nodbus --raw -Sdisable -Sqrcode.enable " + image).output};
  std::multiset<std::string> out;
  for (std::string line; std::getline(lines, line);) {
    if (line.rfind("flatwise:", 0) == 0) out.insert(line);  // The scanner also says what it misses on this machine.
  }
  return out;
}
std::multiset<std::string> wanted_codes(const DisplayList& page) {
  std::multiset<std::string> out;
  for (const drawing::Item& item : page.items)
    if (const auto* code = std::get_if<drawing::Code>(&item)) out.insert(code->text);
  return out;
}

TEST(Codes, AreReadFromAPrintAt200DotsAnInch) {
  const Folder folder;
  const auto sheets = gallery_sheets(cases()[0], Paper::a4, UnitSystem::metric, fonts());
  for (const NamedPages& sheet : sheets) {
    const std::string file = folder.file(sheet.name + ".pdf");
    ASSERT_TRUE(write_file_atomically(file, pdf_of({sheet.pages.front()})));
    ASSERT_EQ(run("pdftoppm -r 200 -png -singlefile " + file + ' ' + folder.file(sheet.name)).status, 0);
    const auto wanted = wanted_codes(sheet.pages.front());
    // What belongs to no job has nothing to scan.
    EXPECT_EQ(wanted.empty(), sheet.name == "study" || sheet.name == "pattern") << sheet.name;
    EXPECT_EQ(scanned(folder.file(sheet.name + ".png")), wanted) << sheet.name;
  }
}

// The reader bites: a code with its middle blotted out is not read.
TEST(Codes, AreNotReadWhenTheyAreSpoilt) {
  const Folder folder;
  auto page = gallery_sheets(cases()[0], Paper::a4, UnitSystem::metric, fonts()).front().pages.front();
  for (const drawing::Item& item : std::vector<drawing::Item>{page.items}) {
    const auto* code = std::get_if<drawing::Code>(&item);
    if (code == nullptr) continue;
    drawing::Pen{page}.box({code->at.x + 5, code->at.y + 5, 8, 8}, drawing::kGround);
  }
  const std::string file = folder.file("spoilt.png");
  ASSERT_TRUE(write_file_atomically(file, render_png(page, 200).value()));
  EXPECT_TRUE(scanned(file).empty());
}

}  // namespace
}  // namespace flatwise::paper
