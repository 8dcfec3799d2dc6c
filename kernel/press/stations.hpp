// Where formers stand along the width.
#pragma once
#include <string>
#include <vector>

#include "kernel/job/job.hpp"
#include "kernel/press/plan.hpp"

namespace lamwright {

struct StationSpec {
  double pack_width = 0;
  double board = 0;   // thickness of a former
  double widest = 0;  // of board, beam and strap: flush with the pack's edges
  double beam = 0;    // width of beams and bearers
  double strap = 0;   // width of a strap
  bool strapped = true;
  SpacingSpec spacing;
  int every = 1;
  bool every_given = false;
  bool stack = false;  // boards face to face: the pitch is the board
};
StationSpec station_spec(const Job& job, const Panel& panel, bool strapped);

struct Stations {
  Spacing spacing;
  std::vector<double> mid_planes;
  std::vector<bool> strapped;  // first, every n-th and always the last
  std::vector<bool> borne;     // has a beam or bearer under it; boards stacked closer than bearers share them
};

// Equal pitch = (pack width - widest) / (n - 1). Straps need a pitch of widest + 5; where formers stand
// closer, a strap goes on every n-th only, unless the job fixes `every`. A stack covers the pack with whole
// boards, in the middle of its width; straps and beams go on those nearest to where they would stand alone.
// Throws Error (geometry) when boards
// or straps do not fit: says how many fit.
Stations stations(const StationSpec& spec);

// Pitch that automatic spacing stays below until the width is computed from stiffness. Common practice, no
// source.
inline constexpr double kAutomaticPitch = 300;

}  // namespace lamwright
