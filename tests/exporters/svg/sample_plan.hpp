// A small press laid out by hand: one crown of 120 degrees, radius 400, on four formers. The figures are
// worked out from the layout rules alone, so that exporters are tested without any press method.
#pragma once
#include <map>
#include <string>
#include <vector>

#include "kernel/plugin/exporter.hpp"

namespace lamwright::sample {

Part former();
Part beam();
PressPlan plan(const std::string& title = "Reading-room desk front");
Job job();

// Keeps what an exporter writes.
class MemorySink : public Sink {
 public:
  void write(const std::string& path, std::string_view bytes) override;
  const std::vector<std::string>& written() const override { return paths_; }
  const std::string& at(const std::string& path) const { return files_.at(path); }

 private:
  std::vector<std::string> paths_;
  std::map<std::string, std::string> files_;
};

}  // namespace lamwright::sample
