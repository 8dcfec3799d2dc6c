// Where formers stand along the width.
#pragma once
#include <string>
#include <vector>

#include "kernel/job/job.hpp"
#include "kernel/press/plan.hpp"
#include "kernel/press/slat_bed.hpp"

namespace lamwright {

// What automatic spacing is worked out from: the cauls, and the load of one strap on them.
struct SlatLoad {
  SpreadingSpec slats;
  Moulds moulds = Moulds::lower;
  double width = 0;  // of the load along the press
  double force = 0;  // N per mm of girth where it is greatest
  double even = 0;   // MPa all over instead, of a mould without straps
};

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
  bool stack = false;                           // boards face to face: the pitch is the board
  std::optional<SlatLoad> load = std::nullopt;  // without it automatic spacing is kAutomaticPitch
};
StationSpec station_spec(const Job& job, const Panel& panel, bool strapped, Moulds moulds);

struct Stations {
  Spacing spacing;
  std::vector<double> mid_planes;
  std::vector<bool> strapped;  // first, every n-th and always the last
  std::vector<bool> borne;     // has a beam or bearer under it; boards stacked closer than bearers share them
};

// Equal pitch = (pack width - widest) / (n - 1). Straps need a pitch of widest + 5; where formers stand
// closer, a strap goes on every n-th only, unless the job fixes `every`. A stack covers the pack with whole
// boards, in the middle of its width; straps and beams go on those nearest to where they would stand alone.
// Automatic spacing is the widest that keeps least over mean pressure along the width at `even` or better and
// the slats' sag at `sag` or less, and is never wider than kAutomaticPitch; where no spacing does, the
// closest. Throws Error (geometry) when boards or straps do not fit: says how many fit.
Stations stations(const StationSpec& spec);

// How the slats with formers and straps there press along the width.
Spreading spreading(const SlatLoad& load, const std::vector<double>& planes,
                    const std::vector<bool>& strapped);

// Pitch that automatic spacing never exceeds. Common practice, no source.
inline constexpr double kAutomaticPitch = 300;

}  // namespace lamwright
