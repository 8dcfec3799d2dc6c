// What was left out of a drawing or mended in it, counted for the user.
#pragma once
#include <cstddef>
#include <map>
#include <string>
#include <vector>

namespace lamwright::dxf_reading {

using Counts = std::map<std::string, std::size_t>;

// One more of a name; the names beyond the thousandth count as "others".
void count(Counts& counts, const std::string& name);

struct Tally {
  Counts kinds;           // no curves: by type
  Counts hidden;          // by layer that is off or frozen
  Counts missing_blocks;  // inserted by a name that no block has
  std::size_t invisible = 0;
  std::size_t on_paper = 0;
  std::size_t without_length = 0;
  std::size_t repeated_points = 0;
  std::size_t fit_points_only = 0;  // splines that were drawn through points

  std::vector<std::string> notes() const;
};

}  // namespace lamwright::dxf_reading
