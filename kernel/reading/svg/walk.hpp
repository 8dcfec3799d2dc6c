// Goes through the document and draws what is displayed.
#pragma once
#include "kernel/profile/drawn/drawn.hpp"
#include "kernel/reading/svg/document.hpp"
#include "kernel/reading/svg/notes.hpp"
#include "kernel/reading/svg/true_size.hpp"

namespace lamwright::svg_reading {

// Curves in the order of the document. Throws Error (job) as read_svg does.
std::vector<DrawnCurve> walk(const Document& document, const Sheet& sheet, const std::string& file,
                             Notes& notes);

}  // namespace lamwright::svg_reading
