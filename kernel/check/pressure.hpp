// How hard the pack is pressed, over girth and width.
#pragma once
#include <cmath>
#include <optional>
#include <vector>

#include "kernel/check/strap_pull.hpp"
#include "kernel/job/job.hpp"
#include "kernel/mechanics/spreading.hpp"
#include "kernel/press/plan.hpp"

namespace lamwright {

// MPa on the blank's outer face. A joint between two runs stands twice in `girth`, for pressure jumps there:
// once as the end of one run, once as the start of the next.
struct PressureMap {
  std::vector<double> girth;                   // stations on the outer face
  std::vector<double> width;                   // stations from the pack's near edge
  std::vector<std::vector<double>> value;      // [girth][width]; 0 where the pack is not pressed
  std::vector<double> along;                   // mean over the width at each girth station
  std::vector<std::size_t> run;                // of the profile, that each girth station belongs to
  double least = 0, mean = 0, greatest = 0;    // over the blank
  double sound_least = 0, sound_greatest = 0;  // over the finished panel
  double least_girth = 0, least_width = 0;     // where the finished panel is pressed least
  // Over the finished panel; infinite where there is no such place.
  double strapped_least = INFINITY,
         clamped_least = INFINITY;                // of it under straps, and on flats under clamps
  double greatest_girth = 0, greatest_width = 0;  // where the finished panel is pressed most
  Spreading straps;                               // along the width under straps or loops, per N/mm each
};
// Greatest mean pressure over the width at stations that straps press; flats under clamps left out.
double hardest_strapped(const PressPlan& plan, const PressureMap& map);
// The same as it arrives `depth` further in, where the girth round a crown is shorter.
double hardest_inside(const PressPlan& plan, const PressureMap& map, double depth);

// Nothing where the plan knows of nothing that presses, or no pressure balances the pull.
std::optional<PressureMap> pressure_map(const Job& job, const PressPlan& plan);

}  // namespace lamwright
