// All file access of the program.
#pragma once
#include <filesystem>
#include <string>
#include <vector>

#include "kernel/job/read_job.hpp"

namespace lamwright::cli {

// Whole contents; at most 64 MB. Throws Error (file).
std::string read_file(const std::filesystem::path& path);

// Files that a job names lie relative to the job file, `data` files relative to where the program runs; the
// day comes from SOURCE_DATE_EPOCH.
class FileSources : public Sources {
 public:
  explicit FileSources(const std::filesystem::path& job, std::vector<std::string> data = {},
                       std::vector<Setting> settings = {})
      : folder_(job.parent_path()), data_(std::move(data)), settings_(std::move(settings)) {}
  std::string read(const std::string& name) const override { return read_file(folder_ / name); }
  std::string date() const override;
  std::vector<DataText> data() const override;
  std::vector<Setting> settings() const override { return settings_; }

 private:
  std::filesystem::path folder_;
  std::vector<std::string> data_;
  std::vector<Setting> settings_;
};

}  // namespace lamwright::cli
