// The work at the press in numbered steps, in the order of doing, with the job's own figures.
#pragma once
#include <vector>

#include "exporters/html/told.hpp"
#include "kernel/plugin/exporter.hpp"

namespace lamwright::html {

struct Step {
  Markup title;                 // "Rig the lower half"
  std::vector<Markup> actions;  // sentences, each one thing to do or to look at
};

std::vector<Step> steps(const ExportInput& input, const Told& told);
// What can hurt, and that local rules and qualified judgement come first.
std::vector<Markup> cautions(const ExportInput& input, const Told& told);

}  // namespace lamwright::html
