#include "kernel/mechanics/seating.hpp"

#include <Eigen/Cholesky>
#include <algorithm>
#include <cmath>

#include "kernel/mechanics/curved_bed.hpp"
#include "kernel/profile/offset.hpp"
#include "shared/error.hpp"
#include "shared/tolerance.hpp"
#include "shared/units.hpp"

namespace lamwright {
namespace {

using namespace curved_bed;

// A pull is balanced against a free motion when its work on that motion is this small a share.
constexpr double kBalanced = 1e-7;

// Energy of the bed less the work of the load: convex, least in equilibrium.
double energy(const Bed& bed, const Vector3d& rate, const Vector3d& load) {
  return rate.dot(pushing(bed, rate).second * rate) / 2 - rate.dot(load);
}

// The equilibrium without tension by Newton's method on that energy, damped until a step lowers it. `free` is
// 1 for motions that the half can make and 0 for those that a guide holds. Nothing when there is none: the
// energy then falls for ever, until nothing touches any more or the steps run out.
std::optional<Vector3d> without_tension(const Bed& bed, Vector3d rate, const Vector3d& load,
                                        const Vector3d& free) {
  constexpr int kMostSteps = 400;
  constexpr double kLeastDamping = 1e-13, kFirstDamping = 1e-9, kTenfold = 10;
  const double enough = 1e-13 * load.norm();
  double best = INFINITY, damping = kLeastDamping;
  for (int step = 0; step < kMostSteps; ++step) {
    const Matrix3d stiffness = pushing(bed, rate).second;
    const Vector3d rest = free.cwiseProduct(load - stiffness * rate);
    if (rest.norm() <= enough) return rate;
    if (stiffness.trace() <= 0) return std::nullopt;
    // Rounding is reached when the rest no longer shrinks although it is small.
    if (rest.norm() <= 1e-10 * load.norm() && rest.norm() >= best) return rate;
    best = std::min(best, rest.norm());
    Matrix3d moving = free.asDiagonal() * stiffness * free.asDiagonal();
    // A spring on every free motion, a stiff one on those held: solvable however little of the bed touches.
    moving.diagonal() += stiffness.trace() * (damping * free + (Vector3d::Ones() - free));
    const Vector3d move = moving.ldlt().solve(rest);
    const double before = energy(bed, rate, load), slope = -rest.dot(move);
    // Where the step's gain is lost in the energy's rounding the valley is reached: the whole step is right.
    const bool near = -slope < 1e-10 * std::abs(before);
    if (near || energy(bed, rate + move, load) <= before + 1e-4 * slope) {
      rate += move;
      damping = std::max(kLeastDamping, damping / kTenfold);
    } else {
      damping = std::max(kFirstDamping, damping * kTenfold);
    }
    if (!rate.allFinite()) return std::nullopt;
  }
  return std::nullopt;
}

Vector3d load_of(const Bed& bed, const SeatingSpec& spec) {
  return spec.pull * Vector3d(0, 1, spec.at / bed.chord);
}

void check(const SeatingSpec& spec) {
  ensure(spec.pull > 0 && spec.stiffness > 0, "pull and stiffness of a bed are positive");
  ensure(chord(spec.line) > kSamePoint, "the ends of a bed are apart");
}

// Where the bed would have to pull by more than rounding: a wall along the pull has no pressure, but is not
// lifted.
std::vector<Stretch> lifted_in(const Bed& bed, const Vector3d& rate, double greatest) {
  constexpr double kNothing = 1e-9;
  std::vector<Stretch> out;
  for (const Piece& piece : pieces(bed, rate)) {
    const double middle = (piece.from + piece.to) / 2;
    if (rate.dot(bed.shape(pose_on(bed, piece.run, middle))) >= -kNothing * greatest) continue;
    if (!out.empty() && out.back().to == piece.from)
      out.back().to = piece.to;
    else
      out.push_back({piece.from, piece.to});
  }
  return out;
}

Hold hold_of(const Vector3d& load, const Solved& full) {
  if (full.rank == 3 || full.unreached.norm() <= kBalanced * load.norm()) return Hold::held;
  // The motion that is free has a turn in it, or none.
  return std::abs(full.unreached.z()) > 1e-6 * full.unreached.norm() ? Hold::rolls : Hold::slides;
}

// The one position of a pull that a single arc balances, if it then presses all over.
std::optional<Stretch> through_centre(const Bed& bed, const Matrix3d& stiffness) {
  const Vector3d free = solve(stiffness, {0, 0, 1}).unreached;  // the motion that nothing resists
  const double at = -free.y() / free.z();
  const Solved balanced = solve(stiffness, {0, 1, at});
  if (hold_of({0, 1, at}, balanced) != Hold::held || !pushes_all_over(bed, balanced.x)) return std::nullopt;
  return Stretch{at * bed.chord, at * bed.chord};
}

}  // namespace

std::string to_text(Hold hold) {
  switch (hold) {
    case Hold::held:
      return "held";
    case Hold::rolls:
      return "rolls";
    case Hold::slides:
      return "slides";
    case Hold::tips:
      return "tips";
  }
  return {};
}

double Seating::spread() const {
  return hold_ == Hold::held && mean_ > 0 ? (greatest_ - least_) / mean_ : INFINITY;
}

double Seating::pressure(double station) const {
  return std::max(0.0, rate_.dot(Bed(line_).shape(line_.at(station))));
}

Seating seat(const SeatingSpec& spec) {
  check(spec);
  const Bed bed(spec.line);
  const Vector3d load = load_of(bed, spec);
  const Solved full = solve(whole(bed).second, load);
  Seating out(spec.line);
  out.hold_ = hold_of(load, full);
  if (out.hold_ != Hold::held) return out;
  std::optional<Vector3d> rate = full.x;
  if (!pushes_all_over(bed, full.x)) rate = without_tension(bed, full.x, load, {1, 1, 1});
  if (!rate) {
    out.hold_ = Hold::tips;
    return out;
  }
  const Extremes found = extremes(bed, *rate);
  out.rate_ = *rate;
  out.least_ = std::max(0.0, found.least);
  out.greatest_ = std::max(0.0, found.greatest);
  out.least_at_ = found.least_at;
  out.greatest_at_ = found.greatest_at;
  out.mean_ = rate->dot(pushing(bed, *rate).first) / spec.line.girth();
  out.lifted_ = lifted_in(bed, *rate, out.greatest_);
  // The bed gives way against the pressure: the half moves by -rate / k.
  out.slide_ = -rate->head<2>() / spec.stiffness;
  out.tilt_ = -rate->z() / spec.stiffness / bed.chord;
  return out;
}

std::optional<Stretch> full_contact(const SeatingSpec& spec) {
  check(spec);
  const Bed bed(spec.line);
  const Matrix3d stiffness = whole(bed).second;
  const Solved pull = solve(stiffness, {0, 1, 0}), shift = solve(stiffness, {0, 0, 1});
  // A flat carries a pull beside its middle; an arc only one through its centre.
  if (pull.rank < 3 && hold_of({0, 0, 1}, shift) != Hold::held) return through_centre(bed, stiffness);
  if (pull.rank < 3 && hold_of({0, 1, 0}, pull) != Hold::held) return std::nullopt;
  // On a run of less than half a turn the pressure is positive when it is at both ends.
  double low = -INFINITY, high = INFINITY;
  for (std::size_t i = 0; i <= bed.line.runs().size(); ++i) {
    const Vector3d g = bed.shape(bed.line.pose(i));
    const double fixed = pull.x.dot(g), per = shift.x.dot(g) / bed.chord;
    if (per > 0) low = std::max(low, -fixed / per);
    if (per < 0) high = std::min(high, -fixed / per);
    if (per == 0 && fixed < 0) return std::nullopt;
  }
  for (const Run& run : bed.line.runs())
    if (std::abs(run.turn()) >= kPi) return std::nullopt;
  if (!(low <= high)) return std::nullopt;
  return Stretch{low, high};
}

std::optional<double> side_thrust(const SeatingSpec& spec) {
  check(spec);
  const Bed bed(spec.line);
  const Vector3d load = load_of(bed, spec);
  const auto rate = without_tension(bed, {0, spec.pull, 0}, load, {0, 1, 1});
  if (!rate) return std::nullopt;
  return -(pushing(bed, *rate).second * *rate).x();
}

}  // namespace lamwright
