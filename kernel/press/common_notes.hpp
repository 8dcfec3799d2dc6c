// Sentences for people that belong to no press method.
#pragma once
#include <optional>
#include <string>
#include <vector>

#include "kernel/job/job.hpp"
#include "kernel/panel/panel.hpp"

namespace lamwright {

// What the trade's rule says of a single arc: the form's rise is the wanted rise over (1 - share lost), at
// the same chord. Close to the rule by curvature for shallow arcs, not the same. Of the described face.
struct RiseRule {
  double rise = 0, radius = 0;  // of the form by the trade's rule
  double by_curvature = 0;      // the form's radius as this program makes it
};
// Nothing for other shapes, or without computed springback.
std::optional<RiseRule> rise_rule(const Job& job, const Panel& panel);

std::vector<std::string> common_notes(const Job& job, const Panel& panel);

}  // namespace lamwright
