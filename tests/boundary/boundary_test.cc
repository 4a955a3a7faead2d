// boundary_test.cc: the tree keeps its order, and proof that the checks bite: each on planted violations and on what
// comes close to one without being one.
#include "tests/boundary/boundary.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace boundary {
namespace {

using ::testing::ElementsAre;
using ::testing::HasSubstr;
using ::testing::IsEmpty;

const std::filesystem::path& root() {
  static const std::filesystem::path path{FLATWISE_SOURCE_DIR};
  return path;
}
const std::vector<Source>& tree() {
  static const std::vector<Source> sources = read_sources(root());
  return sources;
}
Order order() { return read_order(read_text(root() / "tests/boundary/order.txt")); }

/// "path:line" of each violation, for short expectations.
std::vector<std::string> places(const std::vector<Violation>& violations) {
  std::vector<std::string> out;
  for (const auto& v : violations) out.push_back(v.path + ":" + std::to_string(v.line));
  return out;
}
std::vector<Source> one(std::string path, std::string_view text) { return {read_source(std::move(path), text)}; }

TEST(Tree, IsRead) { EXPECT_GT(tree().size(), 20U); }
TEST(Tree, IncludesKeepTheOrder) { EXPECT_EQ(told(check_includes(order(), tree())), ""); }
TEST(Tree, CoreIsPure) { EXPECT_EQ(told(check_core_is_pure(tree())), ""); }
TEST(Tree, SentencesStandInTheDictionaries) { EXPECT_EQ(told(check_sentences(tree())), ""); }
TEST(Tree, NumericTestsNameSourceAndTolerance) { EXPECT_EQ(told(check_numeric_tests(tree())), ""); }
TEST(Tree, NoTestIsSwitchedOff) { EXPECT_EQ(told(check_no_test_is_off(tree())), ""); }
TEST(Tree, EveryFolderHasItsReadme) { EXPECT_EQ(told(check_readmes(root(), tree())), ""); }

TEST(OrderTable, RefusesAFolderUsedBeforeItIsListed) {
  EXPECT_THAT(told(read_order("a: b<\nb:\n").mistakes), HasSubstr("b is used before it is listed"));
}
TEST(OrderTable, RefusesAFolderListedTwice) {
  EXPECT_THAT(told(read_order("a:\na:\n").mistakes), HasSubstr("a is listed twice"));
}
TEST(OrderTable, AFolderWithAllThatItMayUse) {
  const Order table = read_order("# a comment\n\na: <tl/>\nb: a\nc: b<\n");
  EXPECT_THAT(table.folders.at("c").folders, ElementsAre("a", "b"));
  EXPECT_THAT(table.folders.at("b").libraries, IsEmpty()) << "without '<' only the folder itself";
}

TEST(Includes, UpwardIsCaughtWithItsLine) {
  const auto found = check_includes(order(), one("core/units/a.h", "// why\n#include \"core/shaft/shaft.h\"\n"));
  EXPECT_EQ(told(found), "core/units/a.h:2: core/units may not use core/shaft (\"core/shaft/shaft.h\")\n");
}
TEST(Includes, SidewaysIsCaught) {
  EXPECT_THAT(places(check_includes(order(), one("core/fits/a.cc", "#include \"core/fasteners/torque.h\"\n"))),
              ElementsAre("core/fits/a.cc:1"));
}
TEST(Includes, DownwardAndOwnAreFine) {
  EXPECT_THAT(check_includes(order(), one("core/fits/a.cc",
                                          "#include \"core/fits/a.h\"\n#include \"core/units/quantity.h\"\n"
                                          "#include <span>\n#include <Eigen/Dense>\n#include <boost/math/x.hpp>\n")),
              IsEmpty());
}
TEST(Includes, LibrariesStayWhereTheyBelong) {
  EXPECT_THAT(places(check_includes(order(), one("core/fits/a.cc",
                                                 "#include <fmt/format.h>\n#include <toml++/toml.h>\n"
                                                 "#include <CLI/CLI.hpp>\n#include <cairo.h>\n"))),
              ElementsAre("core/fits/a.cc:1", "core/fits/a.cc:2", "core/fits/a.cc:3", "core/fits/a.cc:4"));
  EXPECT_THAT(places(check_includes(order(), one("job/a.cc", "#include <nlohmann/json.hpp>\n"))),
              ElementsAre("job/a.cc:1"));
  EXPECT_THAT(check_includes(order(), one("wire/a.cc", "#include <nlohmann/json.hpp>\n")), IsEmpty());
}
TEST(Includes, ImpureStandardHeadersAreCaughtInTheCoreOnly) {
  const std::string text =
      "#include <fstream>\n#include <chrono>\n#include <mutex>\n#include <random>\n#include <regex>\n";
  EXPECT_EQ(check_includes(order(), one("core/fits/a.cc", text)).size(), 5U);
  EXPECT_THAT(check_includes(order(), one("definition/a.cc", text)), IsEmpty());
  EXPECT_THAT(check_includes(order(), one("core/fits/a_test.cc", text)), IsEmpty());
}
TEST(Includes, TheSystemIsForTheEdges) {
  EXPECT_THAT(check_includes(order(), one("cli/a.cc", "#include <fcntl.h>\n#include <sys/stat.h>\n")), IsEmpty());
  EXPECT_EQ(check_includes(order(), one("core/fits/a.cc", "#include <fcntl.h>\n#include <sys/stat.h>\n")).size(), 2U);
}
TEST(Includes, ACommentOrAStringIsNoInclude) {
  EXPECT_THAT(check_includes(order(), one("core/units/a.h",
                                          "/*\n#include \"cli/main.h\"\n*/\n// #include <mutex>\n"
                                          "const char* const k = R\"x(\n#include <mutex>\n)x\";\n")),
              IsEmpty());
}
TEST(Includes, TestsMayUseGoogleTestButNotTheFoldersAbove) {
  EXPECT_THAT(check_includes(order(), one("core/units/a_test.cc", "#include <gtest/gtest.h>\n")), IsEmpty());
  EXPECT_THAT(places(check_includes(order(), one("core/units/a.cc", "#include <gtest/gtest.h>\n"))),
              ElementsAre("core/units/a.cc:1"));
  EXPECT_THAT(places(check_includes(order(), one("core/units/a_test.cc", "#include \"job/bench.h\"\n"))),
              ElementsAre("core/units/a_test.cc:1"));
}
TEST(Includes, AnUnlistedFolderIsCaught) {
  EXPECT_THAT(told(check_includes(order(), one("misc/a.cc", ""))), HasSubstr("order.txt does not list"));
  EXPECT_THAT(told(check_includes(order(), one("core/misc/a.cc", ""))), HasSubstr("order.txt does not list"));
}

struct Impure {
  const char* name;
  const char* line;
};
class CoreIsPure : public ::testing::TestWithParam<Impure> {};
TEST_P(CoreIsPure, CatchesThePlantedLine) {
  const std::string text = std::string{"namespace flatwise {\nvoid f() {\n"} + GetParam().line + "\n}\n}\n";
  EXPECT_THAT(places(check_core_is_pure(one("core/fits/a.cc", text))), ElementsAre("core/fits/a.cc:3"));
  EXPECT_THAT(check_core_is_pure(one("cli/a.cc", text)), IsEmpty()) << "only the core is held to it";
}
INSTANTIATE_TEST_SUITE_P(
    Planted, CoreIsPure,
    ::testing::Values(Impure{"Throw", "throw 1;"}, Impure{"Try", "try { g(); } finally_();"},
                      Impure{"Cout", "std::cout << 1;"}, Impure{"Printf", "std::printf(\"%d\", 1);"},
                      Impure{"Getenv", "auto* p = std::getenv(\"HOME\");"}, Impure{"Time", "auto t = time(nullptr);"},
                      Impure{"Clock", "auto t = std::chrono::steady_clock::now();"}, Impure{"Rand", "int i = rand();"},
                      Impure{"Stod", "double d = std::stod(text);"}, Impure{"Strtod", "double d = strtod(p, &e);"},
                      Impure{"Views", "for (auto x : list | std::views::reverse) g(x);"},
                      Impure{"Static", "static int calls = 0;"},
                      Impure{"StaticBraces", "static std::vector<int> seen{};"},
                      Impure{"ThreadLocal", "thread_local int n = 0;"}),
    [](const auto& planted) { return std::string{planted.param.name}; });

TEST(CoreIsPureAtNamespaceLevel, CatchesAGlobalThatCanChange) {
  EXPECT_THAT(places(check_core_is_pure(one("core/fits/a.cc",
                                            "namespace flatwise {\nint calls = 0;\n"
                                            "std::vector<int> seen;\ndouble last{1};\n}\n"))),
              ElementsAre("core/fits/a.cc:2", "core/fits/a.cc:3", "core/fits/a.cc:4"));
}
TEST(CoreIsPureAtNamespaceLevel, LetsConstantsTypesAndFunctionsBe) {
  EXPECT_THAT(
      told(check_core_is_pure(one(
          "core/fits/a.cc",
          "#include <span>\nnamespace flatwise {\nconstexpr int kA = 1;\ninline constexpr double kB{2};\n"
          "const std::vector<int> kList{1, 2};\nstruct P {\n  double x = 0;\n  static P at(int i);\n};\n"
          "int f(int a);\nint g(int a) {\n  static const std::vector<int> list = {1};\n  static constexpr int k = 2;\n"
          "  double time = 1.0; return retry(a) + runtime(time);\n}\nusing T = int;\n"
          "// throw, try and std::cout in a comment\nconst char* const kText = \"throw time(0)\";\n}\n"))),
      "");
}
TEST(CoreIsPureAtNamespaceLevel, TheOneThrowIsCoreChecks) {
  EXPECT_THAT(check_core_is_pure(one("core/units/problem.cc",
                                     "namespace flatwise {\n[[noreturn]] void core_check_failed("
                                     "const char* c, const char* f, int l) {\n"
                                     "  throw std::logic_error{c};\n}\n}\n")),
              IsEmpty());
}

TEST(Sentences, AreCaughtOutsideTheDictionaries) {
  EXPECT_THAT(places(check_sentences(one("job/a.cc", "auto s = \"Turn the half one flat.\";\n"))),
              ElementsAre("job/a.cc:1"));
  EXPECT_THAT(check_sentences(one("job/a.cc", "auto s = \"job.turn_half\"; // Turn the half one flat.\n")), IsEmpty());
  EXPECT_THAT(check_sentences(one("core/fits/a.cc", "auto s = \"p = E d / (2 D)\";\n")), IsEmpty());
}

TEST(NumericTests, WithoutSourceOrToleranceIsCaught) {
  const std::string body = "TEST(A, B) {\n  EXPECT_NEAR(f(), 1.0, 1e-9);\n}\n";
  EXPECT_THAT(places(check_numeric_tests(one("core/a_test.cc", body))), ElementsAre("core/a_test.cc:1"));
  EXPECT_THAT(places(check_numeric_tests(one("core/a_test.cc", "// Source: ISO 286-1 table 1.\n" + body))),
              ElementsAre("core/a_test.cc:2"));
  EXPECT_THAT(
      check_numeric_tests(one("core/a_test.cc", "// Source: ISO 286-1 table 1.\n// Tolerance: as published.\n" + body)),
      IsEmpty());
  EXPECT_THAT(places(check_numeric_tests(one("core/a_test.cc", "// Source: x\n// Tolerance: y\n\n" + body))),
              ElementsAre("core/a_test.cc:4"))
      << "the block must stand directly above";
}
TEST(NumericTests, AHelperThatComparesCounts) {
  EXPECT_THAT(places(check_numeric_tests(one("core/a_test.cc",
                                             "void expect_close(double a) {\n  EXPECT_NEAR(a, 1, 0.1);\n}\n"
                                             "TEST(A, B) {\n  expect_close(f());\n}\n"))),
              ElementsAre("core/a_test.cc:4"));
}
TEST(NumericTests, TheBlockOfTheFixtureServesItsTests) {
  EXPECT_THAT(check_numeric_tests(one("core/a_test.cc",
                                      "// Source: table.\n// Tolerance: last digit.\nclass Row : public T {};\n"
                                      "TEST_P(Row, Matches) {\n  EXPECT_NEAR(1, 1, 1);\n}\n")),
              IsEmpty());
}
TEST(NumericTests, ExactTestsNeedNone) {
  EXPECT_THAT(check_numeric_tests(one("core/a_test.cc", "TEST(A, B) {\n  EXPECT_EQ(f(), 1);\n}\n")), IsEmpty());
}

TEST(SwitchedOff, IsCaught) {
  // Spelt in two pieces, so that this file is not its own finding.
  EXPECT_EQ(check_no_test_is_off(one("a_test.cc", std::string{"TEST(A, DIS"} + "ABLED_B) {}\n")).size(), 1U);
  EXPECT_EQ(check_no_test_is_off(one("a_test.cc", std::string{"TEST(A, B) { GTEST"} + "_SKIP(); }\n")).size(), 1U);
}

TEST(LongOnes, AreToldFromFortyOneLinesAndFourHundredAndOne) {
  const auto function = [](int lines) {
    std::string text = "void f() {\n";
    for (int i = 2; i < lines; ++i) text += "  g();\n";
    return text + "}\n";
  };
  EXPECT_THAT(long_ones(one("cli/a.cc", function(40))), IsEmpty());
  EXPECT_EQ(told(long_ones(one("cli/a.cc", function(41)))), "cli/a.cc:1: f has 41 lines\n");
  EXPECT_EQ(long_ones(one("cli/a.cc", std::string(401, '\n'))).size(), 1U);
}

// The whole way: files in a folder, read from the disk, as the tree is.
TEST(PlantedTree, IsCaughtFromTheDisk) {
  const auto folder = std::filesystem::path{::testing::TempDir()} / "flatwise_planted_tree";
  std::filesystem::remove_all(folder);
  std::filesystem::create_directories(folder / "core/units");
  std::filesystem::create_directories(folder / "build");
  const auto write = [&](const char* path, std::string_view text) {
    std::FILE* file = std::fopen((folder / path).c_str(), "wb");
    ASSERT_NE(file, nullptr);
    ASSERT_EQ(std::fwrite(text.data(), 1, text.size(), file), text.size());
    ASSERT_EQ(std::fclose(file), 0);
  };
  write("core/units/a.cc", "#include <iostream>\n#include \"words/words.h\"\nint calls = 0;\n");
  write("build/made.cc", "#include \"words/words.h\"\n");
  const auto sources = read_sources(folder);
  ASSERT_EQ(sources.size(), 1U) << "what is built is not looked at";
  EXPECT_THAT(places(check_includes(order(), sources)), ElementsAre("core/units/a.cc:1", "core/units/a.cc:2"));
  EXPECT_THAT(places(check_core_is_pure(sources)), ElementsAre("core/units/a.cc:3"));
  EXPECT_THAT(places(check_readmes(folder, sources)), ElementsAre("core/units:0"));
  std::filesystem::remove_all(folder);
}

}  // namespace
}  // namespace boundary
