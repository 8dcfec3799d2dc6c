// What checks work out beside their verdicts: for summaries, drawings and the job sheet.
#pragma once
#include <optional>

#include "kernel/check/glue_work.hpp"
#include "kernel/check/masses.hpp"
#include "kernel/check/pressure.hpp"

namespace lamwright {

// Empty for a plan that was not checked.
struct Figures {
  std::optional<PressureMap> pressure;
  std::optional<GlueWork> glue;
  std::optional<Masses> masses;
};

}  // namespace lamwright
