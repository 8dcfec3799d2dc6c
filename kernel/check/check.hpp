// All findings about a press plan, with the figures they stand on.
#pragma once
#include "kernel/check/figures.hpp"
#include "kernel/check/finding.hpp"

namespace lamwright {

struct Assessment {
  std::vector<Finding> findings;
  Figures figures;
};
Assessment assess(const Job& job, const PressPlan& plan);

}  // namespace lamwright
