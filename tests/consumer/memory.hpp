// What the kernel is given instead of files.
#pragma once
#include <map>
#include <string>
#include <vector>

#include "kernel/plugin/evaluate.hpp"
#include "shared/error.hpp"

namespace consumer {

class NoSources : public lamwright::Sources {
 public:
  std::string read(const std::string& name) const override {
    throw lamwright::file_error(name, "there are no files here");
  }
};

class MemorySink : public lamwright::Sink {
 public:
  void write(const std::string& path, std::string_view bytes) override {
    names_.push_back(path);
    files[path] = bytes;
  }
  const std::vector<std::string>& written() const override { return names_; }
  std::map<std::string, std::string> files;

 private:
  std::vector<std::string> names_;
};

inline lamwright::Evaluation evaluated(const std::string& job, const lamwright::Registry& registry) {
  lamwright::Progress progress;
  return evaluate(job, "job.toml", NoSources(), registry, progress);
}

// What that exporter of the registry writes of the plan, checked but without nested sheets.
inline MemorySink written(const lamwright::Evaluation& result, const lamwright::Exporter& exporter) {
  lamwright::Progress progress;
  MemorySink sink;
  exporter.write({*result.job, *result.plan, result.findings, progress, result.figures}, sink);
  return sink;
}

}  // namespace consumer
