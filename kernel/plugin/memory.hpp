// Files that exist in memory only: those that a job names, and those that exporters write.
#pragma once
#include <map>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "kernel/job/read_job.hpp"
#include "kernel/plugin/exporter.hpp"

namespace lamwright {

// Files by the names that jobs give them.
class MemorySources : public Sources {
 public:
  // None unless given.
  explicit MemorySources(std::map<std::string, std::string> files = {}) : files_(std::move(files)) {}
  // Throws Error (file) for a name that is none of them.
  std::string read(const std::string& name) const override;

 private:
  std::map<std::string, std::string> files_;
};

// Keeps what is written; the same path written again replaces the file, and stands twice in `written`.
class MemorySink : public Sink {
 public:
  void write(const std::string& path, std::string_view bytes) override;
  const std::vector<std::string>& written() const override { return names_; }
  // By path.
  const std::map<std::string, std::string>& files() const& { return files_; }
  std::map<std::string, std::string> files() && { return std::move(files_); }  // of one that ends here

 private:
  std::vector<std::string> names_;
  std::map<std::string, std::string> files_;
};

}  // namespace lamwright
