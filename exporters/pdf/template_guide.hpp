// The first pages of a file of templates: how to print and join the sheets, and which part is where.
#pragma once
#include <string>
#include <vector>

#include "exporters/drawing/drawing.hpp"

namespace lamwright {

struct GuideSpec {
  std::string paper = "a3";  // or "a4", lying
  std::string job;
  std::string date;  // may be empty
};

// One part of the table of contents, in the order of its sheets.
struct GuideRow {
  std::string part;
  std::string size;    // "1200.5 x 310"
  std::string pieces;  // how many are cut
  std::string sheets;  // "2 x 3 less 1": rows, columns
  int pages = 1;
};

// As many pages as the table needs; the numbers of pages in it count these. Each has check bars.
std::vector<drawing::Drawing> template_guide(const GuideSpec& spec, const std::vector<GuideRow>& rows);

}  // namespace lamwright
