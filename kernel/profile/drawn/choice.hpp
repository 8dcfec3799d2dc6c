// Which curves of a drawing are the profile.
#pragma once
#include "kernel/profile/drawn/drawn.hpp"

namespace lamwright {

// Empty texts choose nothing out: every curve of the drawing belongs to the profile.
struct Choice {
  std::string path;   // id of the curve, or of a group around it
  std::string layer;  // name of a layer or group around it
};

// The curves that meet both. Throws Error (geometry) when there are none, with the names that the drawing
// has and the nearest of them.
std::vector<DrawnCurve> chosen(const DrawnFile& file, const Choice& choice);

}  // namespace lamwright
