// From the text of a job to everything that is known about it.
#pragma once
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "kernel/check/check.hpp"
#include "kernel/job/read_job.hpp"
#include "kernel/plugin/registry.hpp"

namespace lamwright {

// What could be worked out; later members are empty where an earlier step failed, and then `errors` says why.
struct Evaluation {
  std::optional<Job> job;         // nothing when the text has an error
  std::optional<Panel> panel;     // nothing when it collapses or crosses itself
  std::optional<PressPlan> plan;  // nothing when no press exists; slats and shop aids are in it
  std::vector<Finding> findings;  // in the order of the checks
  Figures figures;                // that the findings stand on
  std::vector<Error> errors;      // empty when everything could be worked out
};

// Never throws for what the text holds; Cancelled from `progress` passes through. `file` is the name for
// messages.
Evaluation evaluate(std::string_view text, const std::string& file, const Sources& sources,
                    const Registry& registry, Progress& progress);

}  // namespace lamwright
