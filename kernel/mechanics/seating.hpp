// How the rigid upper half of a two-part mould seats on a curved bed that pushes but never pulls.
#pragma once
#include <Eigen/Core>
#include <optional>
#include <vector>

#include "kernel/profile/profile.hpp"

namespace lamwright {

// The bed lies along `line` (neutral line of the blank), posed so that the pull axis is vertical: the upper
// half is pulled straight down. `at` is the X of the pull line, counted from the middle of the line's chord,
// right positive, mm. `pull` > 0 is the force per mm of width, N/mm; `stiffness` > 0 the bed's, N/mm3. The
// half is free to slide and to tilt. Everything is closed form on each run: no sampling.
//
// Source: equilibrium of a rigid body on a Winkler bed without tension, p = k (u . n + phi (r x n)).
struct SeatingSpec {
  Profile line;          // pull axis vertical
  double at = 0;         // mm
  double pull = 1;       // N/mm
  double stiffness = 1;  // N/mm3; pressures do not depend on it, tilt and slide do
};

// Whether the bed carries the pull. A single arc lets the half roll about its centre, a single flat lets it
// slide: held only when the pull is balanced there. `tips`: no pressure of the bed balances the pull.
enum class Hold { held, rolls, slides, tips };
std::string to_text(Hold hold);  // "held", "rolls", "slides", "tips"

// Pressure in MPa. With a hold other than `held` there is no equilibrium: pressures are 0.
class Seating {
 public:
  Hold hold() const { return hold_; }                  // other than held: the figures below are 0
  double least() const { return least_; }              // over the girth, lifted stretches count as 0
  double mean() const { return mean_; }                // over the girth
  double greatest() const { return greatest_; }        // extremes inside arcs included
  double least_at() const { return least_at_; }        // stations where they are met, the first of several
  double greatest_at() const { return greatest_at_; }  // station, the first of several
  double spread() const;                               // (greatest - least) / mean; infinite when not held
  double tilt() const { return tilt_; }                // of the half, radians, anticlockwise
  Vec2 slide() const { return slide_; }                // of the half at the middle of the chord, mm
  // Where the bed would have to pull, left to right.
  const std::vector<Stretch>& lifted() const { return lifted_; }
  double pressure(double station) const;  // at a station of the line; 0 where lifted

 private:
  friend Seating seat(const SeatingSpec&);
  explicit Seating(Profile line) : line_(std::move(line)) {}
  Profile line_;
  Eigen::Vector3d rate_{0, 0, 0};  // pressure = rate . (normal, moment arm of the normal / chord)
  Hold hold_ = Hold::tips;
  double least_ = 0, mean_ = 0, greatest_ = 0, tilt_ = 0;
  double least_at_ = 0, greatest_at_ = 0;
  Vec2 slide_{0, 0};
  std::vector<Stretch> lifted_;
};

// Throws Error (internal) unless pull and stiffness are positive and the ends of the line are apart.
Seating seat(const SeatingSpec& spec);

// The positions of the pull line (X from the chord's middle, left end first) between which no stretch lifts;
// nothing when there are none. Not asked: `spec.at`.
std::optional<Stretch> full_contact(const SeatingSpec& spec);

// Force of a guide on the half, N per mm of width, positive to the right, when the half is held sideways at
// the height of the chord's middle and is free to tilt. Nothing when that half is not held.
std::optional<double> side_thrust(const SeatingSpec& spec);

}  // namespace lamwright
