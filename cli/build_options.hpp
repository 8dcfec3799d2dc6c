// Options of `build` that stand for keys of the job file.
#pragma once
#include "cli/options.hpp"
#include "kernel/job/job.hpp"

namespace lamwright::cli {

std::vector<OptionRow> output_options();

// The job's outputs as the command line wants them; `exporters` are the names that --only may give. Throws
// UsageError for a value that no job file could hold.
OutputSpec overridden(OutputSpec outputs, const po::variables_map& values,
                      const std::vector<std::string>& exporters);

// Throws Error (job) when `only` names an exporter that there is not.
void refuse_unknown(const std::vector<std::string>& only, const std::vector<std::string>& known,
                    const std::string& job_file);

}  // namespace lamwright::cli
