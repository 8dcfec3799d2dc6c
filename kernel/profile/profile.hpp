// The profile: a pose and a list of runs of constant curvature. The one shape that the kernel knows.
#pragma once
#include <string>
#include <vector>

#include "kernel/profile/vector.hpp"

namespace lamwright {

// A point and the direction of travel there (radians, anticlockwise from X). The outer side is on the left.
struct Pose {
  Vec2 point{0, 0};    // mm
  double heading = 0;  // radians, not wrapped to one turn

  Vec2 tangent() const { return direction(heading); }  // unit, the way of travel
  Vec2 normal() const { return left_of(tangent()); }   // unit, to the outer side
};

// A stretch of constant curvature. length > 0 in mm; curvature in 1/mm: > 0 a crown (bulges to the outer
// side, heading falls), < 0 a hollow, 0 a straight line.
struct Run {
  double length = 0;     // mm
  double curvature = 0;  // 1/mm

  double turn() const { return length * curvature; }  // radians, positive for a crown
  bool straight() const { return curvature == 0; }    // exactly 0: a nearly straight run is a bend
};

// Between two girth stations, mm.
struct Stretch {
  double from = 0;  // not beyond `to`
  double to = 0;    // mm
};

// The pose after walking s along a run that begins at `from`.
Pose walked(const Pose& from, double curvature, double s);

// A tangent-continuous (G1) chain of lines and arcs, drawn left to right with the outer face up. Immutable.
// Girth stations s run from 0 to girth(); values outside by rounding are clamped.
class Profile {
 public:
  // Neighbouring runs of equal curvature merge. Throws Error (geometry) when there is no run, or a run is not
  // finite, not longer than 0, or turns through a full circle or more.
  Profile(Pose start, std::vector<Run> runs);

  const Pose& start() const { return poses_.front(); }  // as given
  // Reached by walking the runs; its heading is start's less turn().
  const Pose& end() const { return poses_.back(); }
  const std::vector<Run>& runs() const { return runs_; }  // at least one, neighbours unlike
  double girth() const { return stations_.back(); }       // mm
  double turn() const;                                    // sum over the runs, radians

  // Station and pose where run i begins; i = runs().size() is the end.
  double station(std::size_t i) const { return stations_[i]; }
  const Pose& pose(std::size_t i) const { return poses_[i]; }  // i up to runs().size(), not checked
  std::size_t run_at(double s) const;  // the run that holds s; at a joint the later one, at the end the last

  // Closed form; s is clamped to the profile.
  Pose at(double s) const;
  Vec2 point(double s) const { return at(s).point; }        // mm
  double heading(double s) const { return at(s).heading; }  // radians
  // 1/mm; at a joint that of the later run.
  double curvature(double s) const { return runs_[run_at(s)].curvature; }

  std::vector<double> shape_changes() const;  // stations where the curvature changes at all
  // Stations where the sense changes from crown to hollow or back; for a straight between the senses, its
  // middle.
  std::vector<double> inflections() const;
  bool hollow() const;    // has a hollow bend
  bool straight() const;  // has no bend at all

  // The point of a profile that lies nearest to another one.
  struct Nearest {
    double station;   // mm
    double distance;  // mm, never negative
  };
  // Closed form, of several the first. Seen from its centre an arc is as far off everywhere: its start.
  Nearest nearest(const Vec2& to) const;

  Box2 box() const;  // exact, bulges of arcs included

  Profile posed(const Pose& start) const { return {start, runs_}; }  // same runs, other start
  // Shifted, not turned.
  Profile moved(const Vec2& by) const { return posed({start().point + by, start().heading}); }
  Profile reversed() const;  // the same points walked the other way; crowns become hollows
  Profile mirrored() const;  // reflected in the line X = 0 and walked left to right again

 private:
  std::vector<Run> runs_;
  std::vector<Pose> poses_;
  std::vector<double> stations_;
};

// "bend 2" or "line 1": how messages call run i, counting each kind from 1.
std::string run_name(const Profile& profile, std::size_t i);

// "(12.5, 0)", to a thousandth.
std::string point_text(const Vec2& p);

// A run as text: "line 120" or "bend 70 deg R380".
std::string run_text(const Run& run);

}  // namespace lamwright
