#include "cli/doubts.h"

#include <algorithm>
#include <vector>

#include "cli/render.h"
#include "cli/text.h"

namespace flatwise::cli {

std::string doubts_text(const Context& context, std::span<const doubt::ToldDoubt> told) {
  std::string out, better;
  std::vector<std::string> fields;
  for (const doubt::ToldDoubt& one : told) {
    const std::string& field = one.doubt.shares.front().field;
    const bool said = std::ranges::find(fields, field) != fields.end();
    for (const Message& message : doubt::says(one)) {
      if (message.code == Code{"doubt.measure_first"}) {
        if (!said) better += wrap(say(message, context.voice), context.width) + "\n";
        fields.push_back(field);
      } else {
        out += wrap(say(message, context.voice), context.width) + "\n";
      }
    }
  }
  return out.empty() ? out : out + better + "\n";
}

std::string with_doubt(const Context& context, AnyQuantity value, std::span<const doubt::ToldDoubt> told,
                       std::string_view key) {
  const auto it = std::ranges::find(told, key, [](const auto& one) -> std::string_view { return one.figure.key; });
  return render_value(context, value, it == told.end() ? std::nullopt : std::optional{it->doubt.u});
}

}  // namespace flatwise::cli
