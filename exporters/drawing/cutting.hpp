// Cutting files: one flat part at true size for a router or laser, a layer to an operation.
#pragma once
#include "exporters/drawing/operations.hpp"
#include "kernel/part/part.hpp"

namespace lamwright::drawing {

struct CuttingOptions {
  bool labels = true;  // false: no layer LABEL
};

// The sheet is exactly the box of the outline, its lower left at the origin; the part lies with its far face
// up. Layers as in operations(); texts are single strokes. CHECK_100 holds two bars of exactly 100 for
// proving a print's size, where they fit clear of bores. Bores into an edge are not drawn: no router reaches
// them.
CuttingDrawing cutting_drawing(const Part& part, const CuttingOptions& options = {});

// What is to be drawn of the operations.
std::vector<Operation> chosen(std::vector<Operation> operations, const CuttingOptions& options);

}  // namespace lamwright::drawing
