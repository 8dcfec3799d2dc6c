#include "kernel/profile/drawn/samples.hpp"

#include <algorithm>
#include <cmath>

#include "shared/error.hpp"

namespace lamwright {
namespace {

constexpr std::size_t kSteps = 128;  // chords by which a Bezier is measured

// Stations along a piece at equal steps of its parameter, from 0.
std::vector<double> stations(const Bezier& curve) {
  std::vector<double> out{0};
  Vec2 before = curve.point(0);
  for (std::size_t i = 1; i <= kSteps; ++i) {
    const double t = double(i) / kSteps;
    const Vec2 at = curve.point(t), half = curve.point(t - 0.5 / kSteps);
    const double chord = (at - before).norm();
    // Richardson's extrapolation of one chord and two.
    const double two = (at - half).norm() + (half - before).norm();
    out.push_back(out.back() + two + (two - chord) / 3);
    before = at;
  }
  return out;
}

class Measured {
 public:
  explicit Measured(const DrawnPiece& piece) : piece_(piece) {
    if (const auto* curve = std::get_if<Bezier>(&piece)) stations_ = stations(*curve);
  }
  double length() const { return stations_.empty() ? std::get<Segment>(piece_).length() : stations_.back(); }
  Vec2 point(double s) const {
    if (stations_.empty()) return std::get<Segment>(piece_).point(length() > 0 ? s / length() : 0);
    return std::get<Bezier>(piece_).point(parameter(s));
  }

 private:
  double parameter(double s) const {
    const auto above = std::upper_bound(stations_.begin(), stations_.end(), s);
    if (above == stations_.end()) return 1;
    const auto i = std::size_t(std::max<std::ptrdiff_t>(above - stations_.begin() - 1, 0));
    const double share = (s - stations_[i]) / (stations_[i + 1] - stations_[i]);
    return (double(i) + share) / kSteps;
  }

  const DrawnPiece& piece_;
  std::vector<double> stations_;
};

}  // namespace

double length(const DrawnPiece& piece) { return Measured(piece).length(); }

std::vector<Vec2> samples(const std::vector<DrawnPiece>& chain, std::size_t count) {
  ensure(count >= 2 && !chain.empty(), "samples of a chain need two points and a piece");
  std::vector<Measured> measured(chain.begin(), chain.end());
  double total = 0;
  for (const Measured& piece : measured) total += piece.length();
  std::vector<Vec2> out;
  double begins = 0;
  std::size_t on = 0;
  for (std::size_t i = 0; i + 1 < count; ++i) {
    const double s = total * double(i) / double(count - 1);
    while (on + 1 < measured.size() && s >= begins + measured[on].length()) begins += measured[on++].length();
    out.push_back(measured[on].point(s - begins));
  }
  out.push_back(last_point(chain.back()));
  return out;
}

Deviation deviation(const std::vector<DrawnPiece>& chain, const Profile& from, std::size_t count) {
  Deviation out;
  for (const Vec2& point : samples(chain, count)) {
    const double distance = from.nearest(point).distance;
    if (distance > out.distance) out = {distance, point};
  }
  return out;
}

}  // namespace lamwright
