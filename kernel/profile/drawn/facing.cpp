#include "kernel/profile/drawn/facing.hpp"

#include <cmath>

#include "shared/error.hpp"
#include "shared/number.hpp"
#include "shared/tolerance.hpp"
#include "shared/units.hpp"

namespace lamwright {
namespace {

constexpr double kAcross = 5;        // degrees
constexpr double kMostlyHollow = 3;  // times as much hollow as crown

void refuse_closed(const Vec2& chord, double girth) {
  if (chord.norm() > std::max(kSamePoint, 1e-3 * girth)) return;
  throw geometry_error("profile", "its ends meet; a panel has two ends",
                       "draw the face as an open curve from one end to the other");
}

bool sideways(Outer outer) { return outer == Outer::left || outer == Outer::right; }

// A chord that hardly leads the way in which it would have to be walked.
void ask_for_the_other_axis(const Vec2& chord, Outer outer) {
  const Vec2 size = chord.cwiseAbs();
  const double off =
      degrees(sideways(outer) ? std::atan2(size.y(), size.x()) : std::atan2(size.x(), size.y()));
  if (off >= kAcross) return;
  if (sideways(outer))
    throw geometry_error("profile", "runs straight across the drawing, so its outer face is up or down",
                         "say outer = \"up\" or outer = \"down\"");
  throw geometry_error("profile", "runs straight up the drawing, so its outer face may be either side",
                       "say outer = \"left\" or outer = \"right\"");
}

void ask_when_hollow(const Profile& profile) {
  double crown = 0, hollow = 0;
  for (const Run& run : profile.runs()) (run.turn() > 0 ? crown : hollow) += std::abs(run.turn());
  if (hollow <= kMostlyHollow * crown) return;
  throw geometry_error("profile",
                       "with its upper side as the outer face it is a hollow of " +
                           number(degrees(hollow), 1) + " degrees; turned over it is a crown",
                       "say outer = \"up\" for the hollow or outer = \"down\" for the crown");
}

bool runs_toward(const Vec2& chord, Outer outer) {
  switch (outer) {
    case Outer::left:
      return chord.y() > 0;
    case Outer::right:
      return chord.y() < 0;
    case Outer::down:
      return chord.x() < 0;
    default:
      return chord.x() > 0;
  }
}

}  // namespace

Profile facing(const Profile& drawn, Outer outer) {
  const Vec2 chord = drawn.end().point - drawn.start().point;
  refuse_closed(chord, drawn.girth());
  ask_for_the_other_axis(chord, outer);
  Profile out = runs_toward(chord, outer) ? drawn : drawn.reversed();
  if (outer == Outer::automatic) ask_when_hollow(out);
  return out;
}

}  // namespace lamwright
