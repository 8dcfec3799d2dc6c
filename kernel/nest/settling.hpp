// Pieces that overlap by a hair made to clear each other to the last unit.
#pragma once
#include <optional>

#include "kernel/nest/overlap.hpp"
#include "kernel/nest/sheet_row.hpp"

namespace lamwright::nesting {

// From left to right each piece goes no farther right than it must to clear those before it; then each slides
// left until it meets another. Nothing when a piece then stands out of its sheet.
std::optional<std::vector<Laid>> settled(std::vector<Laid> laid, const std::vector<Shape>& shapes,
                                         const SheetRow& row, NoFit& no_fit);

}  // namespace lamwright::nesting
