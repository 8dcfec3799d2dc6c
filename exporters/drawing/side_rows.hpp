// Upright dimension lines beside a view.
#pragma once
#include <vector>

#include "exporters/drawing/dimension.hpp"
#include "exporters/drawing/section_sheet.hpp"

namespace lamwright::drawing {

// Collects them, then draws the short ones nearest to the view, in as few rows as keep them apart.
class SideRows {
 public:
  void add(bool left, const Linear& size) { (left ? left_ : right_).push_back(size); }
  void draw(const SectionSheet& sheet) const;

 private:
  std::vector<Linear> left_, right_;
};

}  // namespace lamwright::drawing
