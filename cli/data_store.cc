#include <filesystem>
#include <ostream>

#include "cli/data.h"
#include "cli/files.h"
#include "cli/text.h"
#include "desk/demo.h"
#include "server/answers.h"
#include "server/serve.h"
#include "store/sqlite/open.h"

namespace flatwise::cli {
namespace {

using Problems = std::vector<Problem>;

Results<desk::DemoTexts> demo_texts(const Context& context, const std::string& folder) {
  if (folder.empty()) return desk::demo_built_in();
  desk::DemoTexts texts;
  Problems problems;
  for (const std::string_view name : desk::demo_files()) {
    auto text = read_text(context, folder + "/" + std::string{name});
    if (text)
      texts[std::string{name}] = *std::move(text);
    else
      problems.push_back(std::move(text.error()));
  }
  if (!problems.empty()) return tl::unexpected(std::move(problems));
  return texts;
}

}  // namespace

Result<std::unique_ptr<job::Store>> open_data(const std::string& folder) {
  auto store = store_sqlite::open_store(folder);
  if (!store) return tl::unexpected(server::store_problem(folder, store.error()));
  return *std::move(store);
}

Results<void> make_data(const Context& context, const std::string& folder, const std::string& demo) {
  namespace fs = std::filesystem;
  std::error_code ignored;
  if (fs::exists(store_sqlite::database_file(folder), ignored)) return {};
  const auto texts = demo_texts(context, demo);  // Read first: without them nothing is made.
  if (!texts) return tl::unexpected(texts.error());
  // Filled beside its place and then put there, so that a demo that was cut short is never taken for a record.
  const std::string growing = folder + ".new";
  fs::remove_all(growing, ignored);
  {
    auto store = store_sqlite::make_store(growing, desk::demo_workshop_id(), {});
    if (!store) return tl::unexpected(Problems{server::store_problem(folder, store.error())});
    const auto filled = desk::fill_demo(**store, *texts);
    if (!filled && filled.error().fault)
      return tl::unexpected(Problems{server::store_problem(folder, *filled.error().fault)});
    if (!filled) return tl::unexpected(filled.error().problems);
  }
  fs::create_directories(folder, ignored);
  std::error_code wrong;
  for (const auto& entry : fs::directory_iterator{growing, wrong})
    if (!wrong) fs::rename(entry.path(), fs::path{folder} / entry.path().filename(), wrong);
  if (wrong)
    return tl::unexpected(Problems{server::store_problem(folder, {job::StoreFault::Kind::failed, wrong.message()})});
  fs::remove_all(growing, ignored);
  if (!context.json)
    *context.out << printable(say(Message{Code{"cli.serve.made"}, {{"folder", folder}}}, context.voice)) << std::endl;
  return {};
}

}  // namespace flatwise::cli
