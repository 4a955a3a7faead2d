// code_picture.h: the address of the page as a code to scan, on a terminal: the next tablet points its camera at it and is there.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace flatwise::cli {

/// Lines of half blocks, black on white whatever the terminal's colours are; empty where the text is too long for a code.
[[nodiscard]] std::string code_picture(const std::string& text);

/// The name or number by which another device reaches this one: the first name the server goes by, else the address it listens
/// at, else, where it listens at all of them, the first number of this machine that is not loopback; empty where there is none.
[[nodiscard]] std::string reachable_name(const std::string& listen, const std::vector<std::string>& names);

/// "http://192.0.2.7:8080/": that name in place of the one in `address`.
[[nodiscard]] std::string with_name(std::string_view address, const std::string& name);

}  // namespace flatwise::cli
