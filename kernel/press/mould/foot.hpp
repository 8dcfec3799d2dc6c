// Where foot screws go: through a beam or bearer into the foot of a former.
#pragma once
#include <functional>

#include "kernel/job/job.hpp"
#include "kernel/press/mould/mould.hpp"

namespace lamwright {

// A bore in the former that a screw's pilot must keep clear of: a round hole where `from` and `to` are one
// point.
struct Obstacle {
  Vec2 from{0, 0}, to{0, 0};
  double radius = 0;
};

struct FootSpec {
  const Job& job;
  const Mould& mould;
  double from = 0, to = 0;  // the stretch of the foot that stands on the beam, X
  std::vector<Obstacle> obstacles;
  // Another rule for a station, as of the upper mould that takes the same beam turned over; may be empty.
  std::function<bool(double)> also;
};

// Stations that a foot screw may take, and the stations that it does take.
class FootScrews {
 public:
  explicit FootScrews(const FootSpec& spec);

  double from() const { return from_; }
  double to() const { return to_; }
  // Whether a pilot at a station stands in wood all the way up and clear of the obstacles.
  bool stands(double x) const;
  // The screw that never moves: at X = 0, or where the foot has no room there (a very unequal L) in the
  // middle of the wood that reaches up between the sides.
  double centre() const { return centre_; }
  // From the centre outward at the job's pitch. Screws that do not stand move by the least that clears,
  // inward first; those for which there is no place are left out. Screws keep `apart` from `holes` in the
  // beam.
  std::vector<double> laid() const;
  std::vector<double> moved(const std::vector<double>& screws, const std::vector<double>& holes,
                            double apart) const;

 private:
  std::vector<double> wished() const;
  bool inside_sides(double x) const;

  FootSpec spec_;
  double from_, to_;  // where screws may stand
  double pilot_;      // radius
  double centre_;
  double between_;  // least distance between two screws
};

inline constexpr double kScrewFromEnd = 40;

}  // namespace lamwright
