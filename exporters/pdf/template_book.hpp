// Full-size templates of a press as pages to print: how to use them, then each part on as many sheets as it
// needs.
#pragma once
#include <vector>

#include "exporters/drawing/drawing.hpp"
#include "kernel/plugin/exporter.hpp"

namespace lamwright {

struct TemplateBook {
  std::vector<drawing::Drawing> pages;  // none when there is nothing to cut from a template
  std::vector<char32_t> missing;        // letters of the parts' marks that are drawn as boxes
};

// Every unique former in the plan's order, then the shop aids. Paper from job.outputs.paper.
TemplateBook template_book(const Job& job, const PressPlan& plan);

}  // namespace lamwright
