#include "core/units/problem.h"

#include <cstdlib>
#include <stdexcept>

namespace flatwise {

void core_check_failed(const char* condition, const char* file, int line) {
#if defined(__cpp_exceptions)
  throw std::logic_error(std::string{file} + ":" + std::to_string(line) + ": broken invariant: " + condition);
#else
  (void)condition;
  (void)file;
  (void)line;
  std::abort();
#endif
}

Message message_of(const Problem& problem) {
  Message message{problem.code, problem.args};
  message.args.emplace_back("field", problem.field);
  message.args.emplace_back("given", problem.given);
  return message;
}

}  // namespace flatwise
