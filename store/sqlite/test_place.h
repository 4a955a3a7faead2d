// test_place.h: a folder that goes away with the test, as a Place of the contract.
#pragma once

#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <string>

#include "store/contract.h"
#include "store/sqlite/open.h"

namespace flatwise::store_sqlite {

class TestFolder {
 public:
  TestFolder() {
    std::string name = (std::filesystem::temp_directory_path() / "flatwise-store-XXXXXX").string();
    if (!mkdtemp(name.data())) std::abort();
    path_ = name;
  }
  TestFolder(const TestFolder&) = delete;
  TestFolder& operator=(const TestFolder&) = delete;
  ~TestFolder() {
    std::error_code error;
    std::filesystem::remove_all(path_, error);
  }
  [[nodiscard]] const std::filesystem::path& path() const { return path_; }

 private:
  std::filesystem::path path_;
};

class FolderPlace final : public store_contract::Place {
 public:
  explicit FolderPlace(Options options = {}) : options_{std::move(options)} {}
  job::Stored<std::unique_ptr<job::Store>> make(const job::Id& workshop, const Workshop& content) override {
    return make_store(folder_.path(), workshop, content, options_);
  }
  job::Stored<std::unique_ptr<job::Store>> open(const job::Id& workshop) override {
    Options options = options_;
    options.workshop = workshop;
    return open_store(folder_.path(), options);
  }
  void spoil_blob(const std::string& hash) override {
    std::ofstream{folder_.path() / "blobs" / hash.substr(0, 2) / hash} << "spoilt";
  }
  [[nodiscard]] const std::filesystem::path& folder() const { return folder_.path(); }

 private:
  TestFolder folder_;
  Options options_;
};

}  // namespace flatwise::store_sqlite
