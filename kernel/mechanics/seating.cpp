#include "kernel/mechanics/seating.hpp"

#include <Eigen/Eigenvalues>
#include <algorithm>
#include <array>
#include <cmath>

#include "kernel/mechanics/pull.hpp"
#include "kernel/profile/offset.hpp"
#include "shared/error.hpp"
#include "shared/tolerance.hpp"
#include "shared/units.hpp"

namespace lamwright {
namespace {

using Eigen::Matrix3d;
using Eigen::Vector3d;

// Eigenvalues below this share of the greatest are a motion that the bed does not resist: of profiles that a
// workshop draws the least that is not 0 is above 1e-7 (an arc of 5 degrees with a flat of 1 mm).
constexpr double kFree = 1e-11;
// A pull is balanced against a free motion when its work on that motion is this small a share.
constexpr double kBalanced = 1e-7;

// Everything below is in the bed's own measure: the origin at the middle of the chord, lengths over the
// chord. The shape at a station is g = (normal, moment arm of the normal); pressure is rate . g.
struct Bed {
  const Profile& line;
  Vec2 middle;
  double chord;

  explicit Bed(const Profile& along)
      : line(along), middle((along.start().point + along.end().point) / 2), chord(lamwright::chord(along)) {}

  Vec2 place(const Vec2& p) const { return (p - middle) / chord; }
  Vector3d shape(const Pose& pose) const {
    const Vec2 n = pose.normal();
    return {n.x(), n.y(), cross(place(pose.point), n)};
  }
};

// sin(x) / x.
double sinc(double x) { return std::abs(x) < 1e-4 ? 1 - x * x / 6 : std::sin(x) / x; }

// Integrals of g and of g g^T over a stretch of one run, closed form.
struct Moments {
  Vector3d first = Vector3d::Zero();
  Matrix3d second = Matrix3d::Zero();
};

// On an arc r = centre + n / k, so that r x n = centre x n and g is linear in n alone.
Moments over_arc(const Bed& bed, const Pose& from, double curvature, double length) {
  const Vec2 centre = bed.place(from.point - from.normal() / curvature);
  Eigen::Matrix<double, 3, 2> to_shape;
  to_shape << 1, 0, 0, 1, -centre.y(), centre.x();
  const double turn = curvature * length;
  const double middle = from.heading + kPi / 2 - turn / 2;  // angle of the normal half way
  const Vec2 n = length * sinc(turn / 2) * direction(middle);
  const Vec2 twice = length / 2 * sinc(turn) * direction(2 * middle);
  Eigen::Matrix2d nn;
  nn << length / 2 + twice.x(), twice.y(), twice.y(), length / 2 - twice.x();
  return {to_shape * n, to_shape * nn * to_shape.transpose()};
}

// On a straight run the arm grows by the length walked.
Moments over_line(const Bed& bed, const Pose& from, double length) {
  const Vector3d middle = bed.shape(walked(from, 0, length / 2));
  Moments out{length * middle, length * middle * middle.transpose()};
  out.second(2, 2) += length * std::pow(length / bed.chord, 2) / 12;
  return out;
}

Moments over(const Bed& bed, std::size_t run, double from, double to) {
  const Pose pose = walked(bed.line.pose(run), bed.line.runs()[run].curvature, from - bed.line.station(run));
  const double k = bed.line.runs()[run].curvature;
  return k == 0 ? over_line(bed, pose, to - from) : over_arc(bed, pose, k, to - from);
}

// Stations inside a run where the pressure is 0, and where inside an arc it has an extreme.
struct Marks {
  std::vector<double> zeros, extremes;
};

Marks marks_on_arc(const Bed& bed, std::size_t run, const Vector3d& rate) {
  const Pose from = bed.line.pose(run);
  const double k = bed.line.runs()[run].curvature, length = bed.line.runs()[run].length;
  const Vec2 centre = bed.place(from.point - from.normal() / k);
  const Vec2 wave = rate.head<2>() + rate.z() * Vec2(-centre.y(), centre.x());  // p = wave . n
  const double crest = std::atan2(wave.y(), wave.x()), start = from.heading + kPi / 2;
  Marks out;
  const double sense = k > 0 ? 1 : -1, sweep = std::abs(k) * length;
  for (int quarter = 0; quarter < 4; ++quarter) {
    // How far the normal turns from the run's start to the crest, the trough and the zeros between them.
    double turned = std::fmod(sense * (start - crest - quarter * kPi / 2), 2 * kPi);
    if (turned < 0) turned += 2 * kPi;
    if (turned <= 0 || turned >= sweep) continue;
    (quarter % 2 == 0 ? out.extremes : out.zeros).push_back(bed.line.station(run) + turned / std::abs(k));
  }
  return out;
}

Marks marks_on_line(const Bed& bed, std::size_t run, const Vector3d& rate) {
  const double a = rate.dot(bed.shape(bed.line.pose(run))), b = rate.dot(bed.shape(bed.line.pose(run + 1)));
  if (a * b >= 0) return {};
  return {{bed.line.station(run) + bed.line.runs()[run].length * a / (a - b)}, {}};
}

Marks marks_on(const Bed& bed, std::size_t run, const Vector3d& rate) {
  return bed.line.runs()[run].straight() ? marks_on_line(bed, run, rate) : marks_on_arc(bed, run, rate);
}

Pose pose_on(const Bed& bed, std::size_t run, double station) {
  return walked(bed.line.pose(run), bed.line.runs()[run].curvature, station - bed.line.station(run));
}

// The stretches of each run between the zeros of the pressure, and whether it pushes there.
struct Piece {
  std::size_t run;
  double from, to;
  bool pushes;
};

std::vector<Piece> pieces(const Bed& bed, const Vector3d& rate) {
  std::vector<Piece> out;
  for (std::size_t run = 0; run < bed.line.runs().size(); ++run) {
    std::vector<double> cuts = marks_on(bed, run, rate).zeros;
    cuts.push_back(bed.line.station(run));
    cuts.push_back(bed.line.station(run + 1));
    std::sort(cuts.begin(), cuts.end());
    for (std::size_t i = 0; i + 1 < cuts.size(); ++i) {
      if (cuts[i + 1] <= cuts[i]) continue;
      const double middle = (cuts[i] + cuts[i + 1]) / 2;
      out.push_back({run, cuts[i], cuts[i + 1], rate.dot(bed.shape(pose_on(bed, run, middle))) > 0});
    }
  }
  return out;
}

// Where the bed pushes: its stiffness, the load it carries (second * rate) and the pressure summed up.
Moments pushing(const Bed& bed, const Vector3d& rate) {
  Moments sum;
  for (const Piece& piece : pieces(bed, rate)) {
    if (!piece.pushes) continue;
    const Moments part = over(bed, piece.run, piece.from, piece.to);
    sum.first += part.first;
    sum.second += part.second;
  }
  return sum;
}

Moments whole(const Bed& bed) {
  Moments sum;
  for (std::size_t run = 0; run < bed.line.runs().size(); ++run) {
    const Moments part = over(bed, run, bed.line.station(run), bed.line.station(run + 1));
    sum.first += part.first;
    sum.second += part.second;
  }
  return sum;
}

// Least-norm solution of a symmetric system, and the share of the right side that no solution reaches.
struct Solved {
  Vector3d x = Vector3d::Zero();
  Vector3d unreached = Vector3d::Zero();
  int rank = 0;
};

Solved solve(const Matrix3d& matrix, const Vector3d& right) {
  const Eigen::SelfAdjointEigenSolver<Matrix3d> eigen(matrix);
  Solved out;
  for (int i = 0; i < 3; ++i) {
    const Vector3d v = eigen.eigenvectors().col(i);
    if (eigen.eigenvalues()[i] > kFree * eigen.eigenvalues()[2]) {
      out.x += v * (v.dot(right) / eigen.eigenvalues()[i]);
      ++out.rank;
    } else {
      out.unreached += v * v.dot(right);
    }
  }
  // One refinement: the condition of a shallow curve is poor and statics should hold to rounding.
  if (out.rank == 3) {
    const Vector3d rest = right - matrix * out.x;
    for (int i = 0; i < 3; ++i) {
      const Vector3d v = eigen.eigenvectors().col(i);
      out.x += v * (v.dot(rest) / eigen.eigenvalues()[i]);
    }
  }
  return out;
}

bool pushes_all_over(const Bed& bed, const Vector3d& rate) {
  const auto all = pieces(bed, rate);
  return std::all_of(all.begin(), all.end(), [](const Piece& piece) { return piece.pushes; });
}

// Energy of the bed less the work of the load: convex, least in equilibrium.
double energy(const Bed& bed, const Vector3d& rate, const Vector3d& load) {
  return rate.dot(pushing(bed, rate).second * rate) / 2 - rate.dot(load);
}

// The equilibrium without tension by Newton's method on that energy, with halved steps where a whole one
// would raise it. `free` is 1 for motions that the half can make and 0 for those that a guide holds. Nothing
// when there is none: the energy then falls for ever.
std::optional<Vector3d> without_tension(const Bed& bed, Vector3d rate, const Vector3d& load,
                                        const Vector3d& free) {
  constexpr int kMostSteps = 200;
  const double enough = 1e-13 * load.norm();
  double best = INFINITY;
  for (int step = 0; step < kMostSteps; ++step) {
    const Matrix3d stiffness = pushing(bed, rate).second;
    const Vector3d rest = free.cwiseProduct(load - stiffness * rate);
    if (rest.norm() <= enough) return rate;
    if (stiffness.trace() <= 0) return std::nullopt;
    // Rounding is reached when the rest no longer shrinks although it is small.
    if (rest.norm() <= 1e-10 * load.norm() && rest.norm() >= best) return rate;
    best = std::min(best, rest.norm());
    Matrix3d moving = free.asDiagonal() * stiffness * free.asDiagonal();
    // A tiny spring on every motion, a stiff one on those held: solvable however little of the bed touches.
    moving.diagonal() += stiffness.trace() * (1e-13 * free + (Vector3d::Ones() - free));
    const Vector3d move = moving.ldlt().solve(rest);
    const double before = energy(bed, rate, load), slope = -rest.dot(move);
    // Where the step's gain is lost in the energy's rounding the valley is reached: the whole step is right.
    const bool near = -slope < 1e-10 * std::abs(before);
    double share = 1;
    while (!near && share > 1e-9 && energy(bed, rate + share * move, load) > before + 1e-4 * share * slope)
      share /= 2;
    rate += share * move;
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

struct Extremes {
  double least = INFINITY, greatest = -INFINITY;
};

// Of the pressure of a bed that pulls too: negative where it does.
Extremes extremes(const Bed& bed, const Vector3d& rate) {
  Extremes out;
  const auto take = [&](std::size_t run, double station) {
    const double p = rate.dot(bed.shape(pose_on(bed, run, station)));
    out.least = std::min(out.least, p);
    out.greatest = std::max(out.greatest, p);
  };
  for (std::size_t run = 0; run < bed.line.runs().size(); ++run) {
    take(run, bed.line.station(run));
    take(run, bed.line.station(run + 1));
    for (const double s : marks_on(bed, run, rate).extremes) take(run, s);
  }
  return out;
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

// Golden-section search for the least value of a function that falls, then rises.
template <typename Function>
double lowest_at(double from, double to, Function value) {
  constexpr double kGolden = 0.6180339887498949;
  double a = to - kGolden * (to - from), b = from + kGolden * (to - from);
  double at_a = value(a), at_b = value(b);
  const double enough = 1e-11 * (to - from);
  while (to - from > enough) {
    if (at_a < at_b) {
      to = b;
      b = a;
      at_b = at_a;
      a = to - kGolden * (to - from);
      at_a = value(a);
    } else {
      from = a;
      a = b;
      at_a = at_b;
      b = from + kGolden * (to - from);
      at_b = value(b);
    }
  }
  return at_a < at_b ? a : b;
}

// Pressures of a bed that could pull too, over pulls of any axis and position: linear in the load, so that
// their spread has one valley along each. Worked out once for the line as it lies, the pull turned instead.
struct AnyPull {
  Bed bed;
  Moments all;
  Matrix3d compliance;  // load to rate

  explicit AnyPull(const Profile& level) : bed(level), all(whole(bed)) {
    for (int i = 0; i < 3; ++i) compliance.col(i) = solve(all.second, Vector3d::Unit(i)).x;
  }

  double spread(double axis, double at) const {
    const Vector3d rate = compliance * Vector3d(std::sin(axis), std::cos(axis), at / bed.chord);
    const Extremes found = extremes(bed, rate);
    const double mean = rate.dot(all.first) / bed.line.girth();
    // Without a positive mean there is no pressure to compare: a slope that leads back to the middle.
    return mean > 0 ? (found.greatest - found.least) / mean : 1e12 * (1 + std::abs(at) / bed.chord);
  }
  double best_at(double axis) const {
    return lowest_at(-bed.chord / 2, bed.chord / 2, [&](double at) { return spread(axis, at); });
  }
};

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
  if (pull.rank < 3) {
    if (hold_of({0, 1, 0}, pull) != Hold::held || !pushes_all_over(bed, pull.x)) return std::nullopt;
    // A flat carries a pull beside its middle; an arc rolls.
    if (hold_of({0, 0, 1}, shift) != Hold::held) return Stretch{0, 0};
  }
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

PullChoice pull_choice(const Profile& level, double axis, double at) {
  const Profile line = pull_upright(level, axis);
  const Seating seating = seat({line, at, chord(line), 1});
  return {axis, at, seating.least(), seating.mean(), seating.greatest()};
}

PullChoice best_position(const Profile& level, double axis) {
  const Profile upright = pull_upright(level, axis), line = pull_upright(level, 0);
  const AnyPull pulls(line);
  const auto linear = [&](double at) { return pulls.spread(axis, at); };
  if (const auto room = full_contact({upright, 0, 1, 1}); room && room->to > room->from)
    return pull_choice(level, axis, lowest_at(room->from, room->to, linear));
  // Something lifts wherever the pull goes, and a bed without tension may have several valleys: looked for
  // between the neighbours of the best of some places.
  constexpr int kPlaces = 64;
  const double step = chord(level) / kPlaces;
  const auto spread = [&](double at) { return pull_choice(level, axis, at).spread(); };
  double best = 0, least = INFINITY;
  for (int i = -kPlaces / 2; i <= kPlaces / 2; ++i)
    if (const double here = spread(i * step); here < least) {
      least = here;
      best = i * step;
    }
  return pull_choice(level, axis, lowest_at(best - step, best + step, spread));
}

std::optional<PullChoice> best_pull(const Profile& level, double from, double to) {
  const Profile line = pull_upright(level, 0);
  const AnyPull pulls(line);
  if (solve(pulls.all.second, {0, 1, 0}).rank < 3) return std::nullopt;
  return best_position(
      level, lowest_at(from, to, [&](double axis) { return pulls.spread(axis, pulls.best_at(axis)); }));
}

}  // namespace lamwright
