// Texts and names as a DXF file holds them.
#pragma once
#include <string>
#include <string_view>
#include <vector>

#include "exporters/dxf/dxf_writer.hpp"

namespace lamwright::dxf {

// One line of ASCII that reads back as `utf8`: beyond ASCII as \U+XXXX (beyond the basic plane: U+FFFD), what
// would be taken for a control code is escaped, control characters are spaces.
std::string encoded(std::string_view utf8);

// A layer name for each of the names, all different, whatever the case of their letters. R2000: letters,
// digits, "_", "-", "$" and "."; R12: capitals, no ".", at most 31. Any other character is "_".
std::vector<std::string> layer_names(const std::vector<std::string>& names, DxfVersion version);

}  // namespace lamwright::dxf
