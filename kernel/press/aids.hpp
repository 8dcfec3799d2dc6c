// Check templates and the trim cradle: pieces cut with the press for the panel that comes out of it.
#pragma once
#include "kernel/job/job.hpp"
#include "kernel/press/plan.hpp"

namespace lamwright {

struct ShopAids {
  std::vector<ShopAid> aids;
  std::vector<std::string> notes;  // what could not be made, and why
};

// From the formers' board. Templates of the inner and the outer face of the finished panel as released:
// strips along the curve, their ends square to it where the panel ends. The cradle carries the released blank
// on its inner face, crown up, with a saw line square to the face at each trimmed end; one for every
// kCradleEvery of the width, at least two. A flat panel needs no template; without trim there is no cradle,
// nor where the panel's ends turn under.
ShopAids shop_aids(const Job& job, const Panel& panel);

// Depth of a template beside the curve, and of the cradle under it, mm. Common practice, no source.
inline constexpr double kTemplateDepth = 80, kCradleDepth = 60;
inline constexpr double kCradleEvery = 500;

}  // namespace lamwright
