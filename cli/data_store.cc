#include <fcntl.h>
#include <sys/file.h>
#include <unistd.h>

#include <cerrno>
#include <cstdlib>
#include <cstring>
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

namespace fs = std::filesystem;

/// A folder of our own making in which the record grows: 0700 from its first moment, under a name that nobody had, and gone
/// with what is left in it. Inside the place it is for where that is there, so that no border of a file system lies between.
class Growing {
 public:
  explicit Growing(const fs::path& place) {
    std::error_code ignored;
    const bool there = fs::is_directory(place, ignored);
    if (!there) fs::create_directories(place.parent_path(), ignored);
    std::string name = there ? (place / ".growing-XXXXXX").string() : place.string() + ".growing-XXXXXX";
    if (::mkdtemp(name.data()) == nullptr)
      wrong_ = std::strerror(errno);
    else
      path_ = name;
  }
  Growing(const Growing&) = delete;
  Growing& operator=(const Growing&) = delete;
  ~Growing() {
    std::error_code ignored;
    if (!path_.empty()) fs::remove_all(path_, ignored);
  }
  [[nodiscard]] const fs::path& path() const { return path_; }
  [[nodiscard]] const std::string& wrong() const { return wrong_; }  ///< Why there is none; empty: there is.

 private:
  fs::path path_;
  std::string wrong_;
};

/// Held while a record is made: who comes second waits, and then finds it made. Ends with the program, however that ends.
class Turn {
 public:
  explicit Turn(const fs::path& place) {
    std::error_code ignored;
    fs::create_directories(place.parent_path(), ignored);
    // The folder round it is there before the record is; where that is closed to us the record's own must be.
    for (const fs::path& folder : {place.parent_path(), place}) {
      if (held_ < 0) held_ = ::open(folder.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC);
      if (held_ < 0 && wrong_.empty()) wrong_ = std::strerror(errno);
    }
    if (held_ < 0) return;
    wrong_.clear();
    while (::flock(held_, LOCK_EX) != 0)
      if (errno != EINTR) {
        wrong_ = std::strerror(errno);
        return;
      }
  }
  Turn(const Turn&) = delete;
  Turn& operator=(const Turn&) = delete;
  ~Turn() {
    if (held_ >= 0) ::close(held_);
  }
  [[nodiscard]] const std::string& wrong() const { return wrong_; }  ///< Why it cannot be held; empty: it is.

 private:
  int held_ = -1;
  std::string wrong_;
};

/// Puts the record where it belongs, the database last: with it the place is a record. What is wrong, if anything.
std::error_code put_there(const fs::path& grown, const fs::path& place) {
  std::error_code wrong;
  if (!fs::is_directory(place)) {
    fs::rename(grown, place, wrong);
    return wrong;
  }
  for (const fs::path& part : {fs::path{"blobs"}, store_sqlite::database_file({}).filename()})
    if (!wrong && fs::exists(grown / part)) fs::rename(grown / part, place / part, wrong);
  return wrong;
}

/// Where a folder stands, without the bar behind its name.
fs::path plain(const std::string& folder) {
  const fs::path whole = fs::absolute(folder).lexically_normal();
  return whole.has_filename() ? whole : whole.parent_path();
}

}  // namespace

Result<std::unique_ptr<job::Store>> open_data(const std::string& folder) {
  auto store = store_sqlite::open_store(folder);
  if (!store) return tl::unexpected(server::store_problem(folder, store.error()));
  return *std::move(store);
}

Results<void> make_data(const Context& context, const std::string& folder, const std::string& demo) {
  std::error_code ignored;
  if (fs::exists(store_sqlite::database_file(folder), ignored)) return {};
  const auto texts = demo_texts(context, demo);  // Read first: without them nothing is made.
  if (!texts) return tl::unexpected(texts.error());
  const auto failed = [&](const std::string& why) {
    return tl::unexpected(Problems{server::store_problem(folder, {job::StoreFault::Kind::failed, why})});
  };
  const Turn turn{plain(folder)};
  if (!turn.wrong().empty()) return failed(turn.wrong());
  if (fs::exists(store_sqlite::database_file(folder), ignored)) return {};  // Another start made it while we waited.
  // Filled beside its place and then put there, so that a demo that was cut short is never taken for a record.
  const Growing growing{plain(folder)};
  if (!growing.wrong().empty()) return failed(growing.wrong());
  {
    auto store = store_sqlite::make_store(growing.path(), desk::demo_workshop_id(), {});
    if (!store) return tl::unexpected(Problems{server::store_problem(folder, store.error())});
    const auto filled = desk::fill_demo(**store, *texts);
    if (!filled && filled.error().fault)
      return tl::unexpected(Problems{server::store_problem(folder, *filled.error().fault)});
    if (!filled) return tl::unexpected(filled.error().problems);
  }
  if (const std::error_code wrong = put_there(growing.path(), plain(folder))) return failed(wrong.message());
  if (!context.json)
    *context.out << printable(say(Message{Code{"cli.serve.made"}, {{"folder", folder}}}, context.voice)) << std::endl;
  return {};
}

}  // namespace flatwise::cli
