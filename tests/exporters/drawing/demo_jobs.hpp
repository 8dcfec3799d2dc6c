// The demo jobs and their sheets, read from fixtures/jobs.
#pragma once
#include <algorithm>
#include <filesystem>
#include <fstream>
#include <sstream>
#include <string>
#include <vector>

#include "tests/exporters/drawing/sheet_values.hpp"
#include "tests/support/folder_sources.hpp"
#include "tests/support/jobs.hpp"
#include "tests/support/source_folder.hpp"

namespace lamwright::test {

inline std::vector<drawing::NamedDrawing> all_sheets_of(const Evaluation& result) {
  Progress quiet;
  return values(drawing::sheets({*result.job, *result.plan, result.findings, quiet, result.figures}));
}

struct Demo {
  std::string name;
  Evaluation result;
  std::vector<drawing::NamedDrawing> sheets;
};

inline std::vector<Demo> evaluated_demos(const std::string& paper) {
  const std::filesystem::path jobs = test::demo_job_folder();
  const FolderSources sources(jobs);
  std::vector<Demo> out;
  for (const auto& entry : std::filesystem::directory_iterator(jobs)) {
    if (entry.path().extension() != ".toml") continue;
    Evaluation result =
        evaluated(file_text(entry.path()) + "\n[outputs]\npaper = \"" + paper + "\"\n", sources);
    if (!result.plan) continue;
    const auto sheets = all_sheets_of(result);
    out.push_back({entry.path().stem().string(), std::move(result), sheets});
  }
  std::sort(out.begin(), out.end(), [](const Demo& a, const Demo& b) { return a.name < b.name; });
  return out;
}
// Those that can be pressed, by name, on A3 or A4. Drawn once: they take a second or two.
inline const std::vector<Demo>& demo_jobs(const std::string& paper = "a3") {
  static const std::vector<Demo> on_a3 = evaluated_demos("a3"), on_a4 = evaluated_demos("a4");
  return paper == "a4" ? on_a4 : on_a3;
}
inline constexpr std::size_t kDemoJobs = 11;  // at least

// The sheet of that name, or null.
inline const drawing::Drawing* find_sheet(const std::vector<drawing::NamedDrawing>& set,
                                          const std::string& name) {
  for (const drawing::NamedDrawing& sheet : set)
    if (sheet.name == name) return &sheet.drawing;
  return nullptr;
}

}  // namespace lamwright::test
