// What `build` and `check` share: a job read, evaluated, and its errors told.
#pragma once
#include <string>
#include <vector>

#include "cli/options.hpp"
#include "kernel/plugin/evaluate.hpp"

namespace lamwright::cli {

// Exit status of an error.
int status_of(const Error& error);

// The option --data, which may be given several times, and the files that were given, in order. Throws
// UsageError for an empty name.
OptionRow data_option();
std::vector<std::string> data_files(const po::variables_map& values);

// What a job is read from: its file, files of trade rows on top, values in place of its own.
struct JobInput {
  std::string file;
  std::vector<std::string> data;
  std::vector<Setting> settings;
};

// Reads and evaluates; a file that cannot be read is among the errors.
Evaluation evaluated(const JobInput& input, const Registry& registry, Progress& progress);
// Tells every error on stderr; the status of the first.
int tell(const std::vector<Error>& errors);

// Findings as an aligned table, worst first, advice beneath.
std::string findings_table(const std::vector<Finding>& findings);
// A figure as people read it, with fewer decimals the larger it is; "unknown" for none.
std::string with_unit(double value, const std::string& unit);
// "at least 0.6", "at most 15 mm".
std::string limit_text(const Finding& finding);
// Gluing and masses, a line each; empty without a plan.
std::string work_text(const Evaluation& result);
// "12 pass, 1 caution, 0 fail"
std::string verdict_counts(const std::vector<Finding>& findings);

}  // namespace lamwright::cli
