// main.cc: the boundary checks by themselves, for the hook before a commit: boundary [ROOT]. With --long also tells of
// long functions and files, which is advice.
#include <cstdio>
#include <string>

#include "tests/boundary/boundary.h"

int main(int argc, char** argv) {
  std::filesystem::path root = ".";
  bool tell_long = false;
  for (int i = 1; i < argc; ++i) {
    if (std::string{argv[i]} == "--long") {
      tell_long = true;
    } else {
      root = argv[i];
    }
  }
  const auto sources = boundary::read_sources(root);
  const auto order = boundary::read_order(boundary::read_text(root / "tests/boundary/order.txt"));
  std::string text;
  text += told(boundary::check_includes(order, sources));
  text += told(boundary::check_core_is_pure(sources));
  text += told(boundary::check_sentences(sources));
  text += told(boundary::check_numeric_tests(sources));
  text += told(boundary::check_no_test_is_off(sources));
  text += told(boundary::check_readmes(root, sources));
  std::fputs(text.c_str(), stdout);
  if (tell_long) std::fputs(told(boundary::long_ones(sources)).c_str(), stdout);
  return text.empty() && !sources.empty() ? 0 : 1;
}
