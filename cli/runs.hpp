// The runs that a command line asks for: each job with each combination of values.
#pragma once
#include <string>
#include <vector>

#include "cli/job_run.hpp"

namespace lamwright::cli {

struct Run {
  std::string name;  // of its folder: the job file's name without its end, numbered in a series
  JobInput input;
};

// JOB... as an argument of a command.
ArgumentRow jobs_argument();
// --data, --set, --plugin.
std::vector<OptionRow> job_options();

// In the order given, combinations of one job together. Names are told apart and safe as folder names. Throws
// UsageError.
std::vector<Run> runs_of(const po::variables_map& values);

}  // namespace lamwright::cli
