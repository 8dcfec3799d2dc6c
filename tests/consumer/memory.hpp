// What the kernel is given instead of files.
#pragma once
#include <string>

#include "kernel/plugin/evaluate.hpp"
#include "kernel/plugin/memory.hpp"

namespace consumer {

inline lamwright::Evaluation evaluated(const std::string& job, const lamwright::Registry& registry) {
  lamwright::Progress progress;
  return evaluate(job, "job.toml", lamwright::MemorySources(), registry, progress);
}

// What that exporter of the registry writes of the plan, checked but without nested sheets.
inline lamwright::MemorySink written(const lamwright::Evaluation& result,
                                     const lamwright::Exporter& exporter) {
  lamwright::Progress progress;
  lamwright::MemorySink sink;
  exporter.write({*result.job, *result.plan, result.findings, progress, result.figures}, sink);
  return sink;
}

}  // namespace consumer
