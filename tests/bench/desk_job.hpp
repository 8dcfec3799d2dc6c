// The reading desk with a number of formers, and what a build needs round it.
#pragma once
#include <string>
#include <vector>

#include "kernel/plugin/evaluate.hpp"
#include "kernel/plugin/memory.hpp"

namespace lamwright::bench {

class CountingSink : public Sink {
 public:
  void write(const std::string& path, std::string_view bytes) override {
    names_.push_back(path);
    size_ += bytes.size();
  }
  const std::vector<std::string>& written() const override { return names_; }
  std::size_t size() const { return size_; }

 private:
  std::vector<std::string> names_;
  std::size_t size_ = 0;
};

inline std::string desk_job(int formers) {
  return "[panel]\nwidth = " + std::to_string(150 * formers) +
         "\nprofile = [{line = 120}, {bend = 70, radius = 380}, {line = 60}, {bend = 25, radius = 900}]\n"
         "[layup]\nplies = [{timber = \"birch-yellow\", thickness = 1.5, count = 7}]\n[formers]\nspacing = "
         "{count = " +
         std::to_string(formers) + "}\n";
}

}  // namespace lamwright::bench
