// Where a part's name is written on a nested sheet.
#pragma once
#include <optional>
#include <vector>

#include "exporters/drawing/operations.hpp"
#include "kernel/supply/supply.hpp"

namespace lamwright::drawing {

// As large as there is room for, level or upright, near the middle of the part; clear of its outline, bores
// and marks, or at least of what is cut. `drawn` are the part's operations as it lies. Nothing when the part
// is too small.
std::optional<Operation> piece_name(const SheetPiece& piece, const std::vector<Operation>& drawn);

}  // namespace lamwright::drawing
