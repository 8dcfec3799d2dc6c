// The named profiles over which invariants are held: every shape a workshop presses, and awkward ones.
#pragma once
#include <cmath>
#include <string>
#include <vector>

#include "kernel/profile/profile.hpp"
#include "shared/units.hpp"

namespace lamwright::test {

inline Run straight(double length) { return {length, 0}; }
// A bend in degrees: positive a crown, negative a hollow; the radius is always positive.
inline Run bend(double turn_deg, double radius) {
  return {radius * radians(std::abs(turn_deg)), (turn_deg < 0 ? -1 : 1) / radius};
}
inline Profile from_origin(std::vector<Run> runs, double heading_deg = 0) {
  return {{{0, 0}, radians(heading_deg)}, std::move(runs)};
}

struct NamedProfile {
  std::string name;
  Profile profile;
  double room_in = 0;   // parallels nearer than this exist on the inner side (least crown radius, or any)
  double room_out = 0;  // the same on the outer side (least hollow radius, or any)
  double clear = 0;     // parallels nearer than this on either side keep their distance to the whole curve
};

// Runs, a heading that puts the chord about level, and the distances that fit. `clear` is at most half of the
// narrowest passage between two stretches of the curve.
inline std::vector<NamedProfile> named_profiles() {
  const double any = 1e6;
  std::vector<Run> ellipse_like;
  for (const double radius : {80.0, 250.0, 1250.0, 250.0, 80.0}) ellipse_like.push_back(bend(30, radius));
  std::vector<Run> measured;
  for (int i = 0; i < 24; ++i) measured.push_back(bend(i % 7 == 3 ? -1.5 : 4 + i % 5, 300 + 37 * (i % 4)));
  return {
      {"single crown", from_origin({bend(56.14, 1275)}, 28.07), 1275, any, 200},
      {"single hollow", from_origin({bend(-56.14, 1275)}, -28.07), any, 1275, 200},
      {"half circle", from_origin({bend(180, 600)}, 90), 600, any, 200},
      {"crown with flats", from_origin({straight(120), bend(70, 380), straight(60), bend(25, 900)}, 51.5),
       380, any, 150},
      {"L", from_origin({straight(340), bend(90, 60), straight(340)}, 45), 60, any, 50},
      {"L tight", from_origin({straight(88), bend(90, 12), straight(88)}, 45), 12, any, 10},
      {"U", from_origin({straight(300), bend(90, 80), straight(200), bend(90, 80), straight(300)}, 90), 80,
       any, 70},
      {"S", from_origin({bend(60, 600), bend(-60, 600)}, 30), 600, 600, 100},
      {"S with a straight between",
       from_origin({bend(50, 400), straight(80), bend(-35, 500), straight(120)}, 28.6), 400, 500, 100},
      {"shallow crown", from_origin({bend(3, 20000)}, 1.5), 20000, any, 200},
      {"ellipse-like", from_origin(ellipse_like, 75), 80, any, 70},
      {"measured points", from_origin(measured, 70), 300, 337, 50},
      {"flat", from_origin({straight(900)}), any, any, 200},
      {"spiral past a full turn", from_origin({bend(200, 100), bend(200, 300)}, 90), 100, any, 20},
  };
}
inline constexpr std::size_t kNamedProfiles = 14;

}  // namespace lamwright::test
