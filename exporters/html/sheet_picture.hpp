// A nested sheet of board as a small picture: outlines and names, nothing to measure from.
#pragma once
#include "exporters/drawing/drawing.hpp"
#include "kernel/supply/supply.hpp"

namespace lamwright::html {

drawing::Drawing sheet_picture(const CutSheet& sheet);

}  // namespace lamwright::html
