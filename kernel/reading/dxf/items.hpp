// The entities of a drawing or block that can become curves.
#pragma once
#include <string>
#include <variant>
#include <vector>

#include "kernel/reading/dxf/insert.hpp"
#include "kernel/reading/dxf/layers.hpp"
#include "kernel/reading/dxf/outline.hpp"
#include "kernel/reading/dxf/tally.hpp"

namespace lamwright::dxf_reading {

struct Item {
  std::string kind;    // "ARC"
  std::string layer;   // as written
  std::string handle;  // empty when it has none
  int line = 0;
  std::variant<Outline, Insert> content;
};

// Reads entities up to the next record of type `end`, which stays. What draws no curve, does not show or
// stands on paper goes to the tally. `pieces` grows by what the items hold (an insert counts as one) and may
// not pass the limit. Throws Error (job) where the file ends first, and for a faulty entity.
std::vector<Item> read_items(Records& records, std::string_view end, const Layers& layers, Tally& tally,
                             std::size_t& pieces);

}  // namespace lamwright::dxf_reading
