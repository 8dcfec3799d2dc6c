#include "cli/build_run.hpp"

#include <algorithm>
#include <thread>

#include "cli/build_options.hpp"
#include "cli/plugins.hpp"
#include "kernel/plugin/export_all.hpp"

namespace lamwright::cli {

Ready ready(const JobInput& input, const po::variables_map& values, const Registry& registry,
            Progress& progress) {
  Ready job{evaluated(input, registry, progress), values.count("despite-fails") > 0};
  if (!job.result.errors.empty()) return job;
  const std::vector<std::string> known = exporter_names(registry);
  OutputSpec& outputs = job.result.job->outputs;
  outputs = overridden(outputs, values, known);
  try {
    refuse_unknown(outputs.only, known, input.file);
  } catch (const Error& fault) {
    job.result.errors.push_back(fault);
  }
  return job;
}

Supply write(const Ready& job, Registry& registry, Progress& progress, Sink& sink) {
  load_wanted(job.result.job->outputs, registry);
  return export_all(job.result, registry, progress, sink, std::max(1u, std::thread::hardware_concurrency()));
}

}  // namespace lamwright::cli
