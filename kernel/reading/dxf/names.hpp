// Names and values of a DXF file as UTF-8.
#pragma once
#include <string>
#include <string_view>

namespace lamwright::dxf_reading {

// Bytes that are UTF-8 stay, others are taken for Latin-1; \U+XXXX stands for a code point (two of them for
// one beyond the basic plane, as in UTF-16); control characters become "?".
std::string decoded(std::string_view bytes);

// As decoded, at most 40 characters: for messages.
std::string shown(std::string_view bytes);

}  // namespace lamwright::dxf_reading
