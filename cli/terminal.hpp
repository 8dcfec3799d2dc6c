// What people see: results on stdout, messages and progress on stderr.
#pragma once
#include <string>
#include <string_view>
#include <vector>

#include "kernel/plugin/exporter.hpp"

namespace lamwright::cli {

// Results. Throws Error (file) when stdout cannot take them (closed, disk full).
void print(std::string_view text);
// One message line on stderr, "lamwright: ..."; control characters become spaces.
void message(std::string_view text);

// Columns aligned by the number of code points; the last column is not padded.
std::string aligned(const std::vector<std::vector<std::string>>& rows);

// A line per stage on stderr when that is a terminal, nothing otherwise. Throws Cancelled after a signal.
// Notes are kept for the end, each once.
class StageProgress : public Progress {
 public:
  void step(std::string_view stage) override;
  void note(std::string_view sentence) override;
  const std::vector<std::string>& notes() const { return notes_; }

 private:
  std::vector<std::string> notes_;
};

}  // namespace lamwright::cli
