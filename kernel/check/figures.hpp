// What checks work out beside their verdicts: for summaries, drawings and the job sheet.
#pragma once
#include <optional>

#include "kernel/check/glue_work.hpp"
#include "kernel/check/masses.hpp"
#include "kernel/check/pressure.hpp"

namespace lamwright {

// Empty for a plan that was not checked.
struct Figures {
  std::optional<PressureMap> pressure;  // nothing where nothing presses, or no pressure balances the pull
  std::optional<GlueWork> glue;         // work and times
  std::optional<Masses> masses;         // what people have to lift
};

}  // namespace lamwright
