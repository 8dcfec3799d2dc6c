// The frame of a one-part press: where straps leave and hook, where the base lies, how the former's sides
// run.
#pragma once
#include "kernel/press/mould/curves.hpp"
#include "kernel/press/mould/mould.hpp"

namespace lamwright::one_part {

// One end of the press. side = -1 left, +1 right.
struct End {
  int side = 1;
  Pose caul;               // end of the top caul's outer line, heading as the profile runs
  Vec2 down{0, -1};        // direction of the strap from there
  StrapEnd strap;          // empty without straps
  double extend = 0;       // contact edge carried on past the pack
  std::vector<Vec2> edge;  // the former's side: from the contact edge's end to the foot's corner at Y = 0
  bool sloped = false;
  bool stepped = false;
};

struct PressFrame {
  PressCurves curves;  // moved so that the base is at Y = 0
  Profile contact;     // contact edge with both extensions
  End left;
  End right;
  double strap_free = 0;
  double height = 0;  // of the former
  bool rollers = false;

  double foot_left() const { return left.edge.back().x(); }
  double foot_right() const { return right.edge.back().x(); }
  double foot() const { return foot_right() - foot_left(); }
  bool sloped() const { return left.sloped || right.sloped; }
  Mould mould() const { return {contact, left.extend, right.extend, left.edge, right.edge}; }
};

// Throws Error (geometry) where no former fits inside the straps: names the angle that fails.
PressFrame press_frame(const Job& job, const PressCurves& curves, bool strapped);

// Whether a side (points from the contact edge's end down) keeps 10 inside the strap and 30 beside the
// ratchet.
bool side_clears(const std::vector<Vec2>& side, const End& end, double free);

inline constexpr double kStrapClear = 10;    // former's side inside the strap line
inline constexpr double kRatchetClear = 30;  // the same beside the ratchet
inline constexpr double kRatchetSpare = 20;  // free length beyond the ratchet's own
inline constexpr double kRollerClear = 5;    // between a guide roller and the former
inline constexpr double kLeastFoot = 150;
inline constexpr double kFootStep = 60;  // height at which a narrow square-sided foot steps out

}  // namespace lamwright::one_part
