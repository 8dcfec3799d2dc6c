// A sink that keeps files in memory.
#pragma once
#include <map>
#include <string>
#include <vector>

#include "kernel/plugin/exporter.hpp"

namespace lamwright::test {

class MemorySink : public Sink {
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

}  // namespace lamwright::test
