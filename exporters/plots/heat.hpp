// Tints of a map, from pale to deep.
#pragma once
#include <string>

namespace lamwright::plots {

// Of step i of `count`, "#rrggbb". Lightness falls by even steps (CIE 1976 L*) from 90 to 44, so that greys
// and eyes that tell few colours apart keep the order, and black lines still show on the deepest.
std::string heat(int i, int count);

}  // namespace lamwright::plots
