// describe.h: completions and the man page, from the one table of verbs.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace CLI {
class App;
}

namespace flatwise::cli {

[[nodiscard]] std::string completions_for(const CLI::App& app, std::string_view shell);  ///< "bash", "zsh" or "fish".
[[nodiscard]] std::string man_page(const CLI::App& app);                                 ///< In the man(7) macros.
/// Every word that could stand on the line typed: verbs, and the options of the verb that was meant.
[[nodiscard]] std::vector<std::string> words_known(const CLI::App& app, const std::vector<std::string>& typed);
/// Names of the sheets, as `sheets --sheet` takes them.
[[nodiscard]] std::vector<std::string> sheet_names();

}  // namespace flatwise::cli
