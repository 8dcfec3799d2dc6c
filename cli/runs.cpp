#include "cli/runs.hpp"

#include <filesystem>
#include <set>

#include "cli/options.hpp"
#include "cli/plugins.hpp"
#include "cli/sweep.hpp"
#include "shared/text.hpp"

namespace lamwright::cli {
namespace {

constexpr std::size_t kLongestName = 100;

// Without what would break a list of files or lead elsewhere.
std::string folder_name(const std::string& job_file) {
  std::string name = std::filesystem::path(job_file).stem().string().substr(0, kLongestName);
  const bool plain = !utf8_fault(name);
  for (std::size_t i = 0; i < name.size(); ++i) {
    const auto c = static_cast<unsigned char>(name[i]);
    const bool dots = c == '.' && (i == 0 || name[i - 1] == '.');
    if (c < 0x20 || c == 0x7F || c == '/' || c == '\\' || dots || (c >= 0x80 && !plain)) name[i] = '_';
  }
  return name.empty() ? "job" : name;
}

std::string padded(std::size_t number, std::size_t most) {
  const std::string text = std::to_string(number);
  return std::string(std::to_string(most).size() - text.size(), '0') + text;
}

std::string told_apart(const std::string& name, std::set<std::string>& taken) {
  std::string other = name;
  for (int i = 2; !taken.insert(other).second; ++i) other = name + "-" + std::to_string(i);
  return other;
}

}  // namespace

ArgumentRow jobs_argument() { return {"job", "JOB", Completes::file, nullptr, true}; }

std::vector<OptionRow> job_options() { return {data_option(), set_option(), plugin_option()}; }

std::vector<Run> runs_of(const po::variables_map& values) {
  const std::vector<std::string> jobs = all_of(values, "job", "JOB");
  if (jobs.empty()) throw UsageError{"JOB is missing"};
  const auto series = combinations(all_of(values, "set", "--set KEY=VALUE"));
  const std::vector<std::string> data = data_files(values);
  std::set<std::string> taken;
  std::vector<Run> runs;
  for (const std::string& job : jobs) {
    const std::string name = told_apart(folder_name(job), taken);
    for (std::size_t i = 0; i < series.size(); ++i)
      runs.push_back(
          {series.size() == 1 ? name : told_apart(name + "-" + padded(i + 1, series.size()), taken),
           {job, data, series[i]}});
  }
  return runs;
}

}  // namespace lamwright::cli
