// The face that a job describes, as plots call it.
#pragma once
#include <string>

#include "kernel/panel/panel.hpp"

namespace lamwright::plots {

// "inner face", "outer face", "centre line"
inline std::string face_text(const Panel& panel) {
  return to_text(panel.face) + (panel.face == Face::centre ? " line" : " face");
}

}  // namespace lamwright::plots
