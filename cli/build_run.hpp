// One job built into a sink.
#pragma once
#include "cli/job_run.hpp"

namespace lamwright::cli {

// A job evaluated, with its outputs as the command line wants them.
struct Ready {
  Evaluation result;
  bool despite_fails = false;
  // Nothing is to be written where it has errors or, without --despite-fails, a failed check.
  bool sound() const { return result.errors.empty() && (despite_fails || !any_failed(result.findings)); }
};

// Throws UsageError.
Ready ready(const JobInput& input, const po::variables_map& values, const Registry& registry,
            Progress& progress);

// Writes what the outputs of a sound job want; loads the libraries that this takes.
Supply write(const Ready& job, Registry& registry, Progress& progress, Sink& sink);

}  // namespace lamwright::cli
