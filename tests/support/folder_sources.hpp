// Files of a folder, for tests that read jobs as they lie there.
#pragma once
#include <filesystem>
#include <fstream>
#include <sstream>
#include <string>

#include "kernel/job/read_job.hpp"

namespace lamwright::test {

inline std::string file_text(const std::filesystem::path& path) {
  std::ifstream file(path);
  std::stringstream text;
  text << file.rdbuf();
  return text.str();
}

class FolderSources : public Sources {
 public:
  explicit FolderSources(std::filesystem::path folder) : folder_(std::move(folder)) {}
  std::string read(const std::string& name) const override { return file_text(folder_ / name); }

 private:
  std::filesystem::path folder_;
};

}  // namespace lamwright::test
