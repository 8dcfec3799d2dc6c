#include "kernel/reading/svg/pen.hpp"

#include <cmath>

#include "kernel/reading/svg/arc_pieces.hpp"
#include "kernel/reading/svg/flat_bezier.hpp"
#include "shared/number.hpp"
#include "shared/tolerance.hpp"

namespace lamwright::svg_reading {
namespace {

constexpr double kShort = 1e-4;       // mm
constexpr double kTinyRadius = 1e-3;  // mm
constexpr double kFlatRise = 1e-3;    // mm, of an arc of an enormous radius over its chord

double length(const std::vector<Vec2>& poles) {
  double out = 0;
  for (std::size_t i = 1; i < poles.size(); ++i) out += (poles[i] - poles[i - 1]).norm();
  return out;
}

bool near(const Vec2& a, const Vec2& b) { return (a - b).norm() <= kSamePoint; }

DrawnPiece ended_at(const DrawnPiece& piece, const Vec2& end) {
  if (const auto* segment = std::get_if<Segment>(&piece)) {
    if (segment->straight()) return line(segment->from, end);
    return arc_between(segment->from, end, segment->centre, segment->turn);
  }
  Bezier out = std::get<Bezier>(piece);
  out.poles.back() = end;
  return out;
}

class Pen {
 public:
  Pen(const Affine& to_mm, const Artist& artist, Limits& limits, Notes& notes)
      : to_mm_(to_mm), artist_(artist), limits_(limits), notes_(notes) {}

  void operator()(const MoveTo& step) {
    finish();
    start_ = at_ = mapped(step.to);
  }
  void operator()(const LineTo& step) { draw_line(mapped(step.to)); }
  void operator()(const QuadraticTo& step) { draw({{at_, mapped(step.pole), mapped(step.to)}, {}}); }
  void operator()(const CubicTo& step) {
    draw({{at_, mapped(step.first_pole), mapped(step.second_pole), mapped(step.to)}, {}});
  }
  void operator()(const ArcTo& step) { draw(under(to_mm_, step.arc), mapped(step.to)); }
  void operator()(const Close&) { draw_line(start_); }

  std::vector<DrawnCurve> finished() {
    finish();
    for (std::size_t i = 0; curves_.size() > 1 && i < curves_.size(); ++i)
      curves_[i].what += ", subpath " + std::to_string(i + 1);
    return std::move(curves_);
  }

 private:
  Vec2 checked(const Vec2& p) const {
    const double farthest = p.cwiseAbs().maxCoeff();
    // Negated: no number is too far as well.
    if (!(std::abs(p.x()) <= kMostReach && std::abs(p.y()) <= kMostReach))
      throw job_error(artist_.where, "reaches " + number(farthest, 0) + " mm from the origin",
                      "allowed 10000000 mm; look for a wrong unit, scale or transform");
    return p;
  }
  Vec2 mapped(const Vec2& p) const { return checked(to_mm_(p)); }

  void add(DrawnPiece piece) {
    limits_.piece(artist_.where.line);
    at_ = last_point(piece);
    pieces_.push_back(std::move(piece));
  }

  void draw_line(const Vec2& to) {
    drew_ = true;
    if (!near(to, at_)) add(line(at_, to));
  }

  void shorten(const Vec2& to) {
    notes_.count(Change::shortened, artist_.what);
    draw_line(to);
  }

  void draw(Bezier curve) {
    drew_ = true;
    curve.poles.front() = at_;
    const double way = length(curve.poles);
    if (way <= kSamePoint) return;
    if (way < kShort) return shorten(curve.poles.back());
    const auto stops = straight_stops(curve);
    if (!stops) return add(std::move(curve));
    for (const Vec2& stop : *stops) draw_line(stop);
  }

  void draw(const EllipticArc& arc, const Vec2& to) {
    drew_ = true;
    const double radius = reach(arc);
    if (radius < kTinyRadius || radius * std::abs(arc.turn) < kShort) return shorten(to);
    if (!(radius <= kMostRadius)) return draw_enormous(radius, arc.turn, to);
    for (const DrawnPiece& piece : pieces(arc, at_, to)) draw(piece);
  }

  void draw(const DrawnPiece& piece) {
    if (const auto* bezier = std::get_if<Bezier>(&piece)) {
      for (const Vec2& pole : bezier->poles) checked(pole);
      return draw(*bezier);
    }
    for (const double share : {0.5, 1.0}) checked(std::get<Segment>(piece).point(share));
    add(piece);
  }

  void draw_enormous(double radius, double turn, const Vec2& to) {
    // r (1 - cos(turn / 2)) is no more than this.
    if (!(radius * turn * turn / 8 <= kFlatRise))
      throw job_error(artist_.where, "has an arc of radius " + number(radius, 0) + " mm",
                      "allowed 1000000000 mm; look for a wrong unit, scale or transform");
    shorten(to);
  }

  void finish() {
    const bool closed = drew_ && close_gap();
    if (drew_ && pieces_.empty()) notes_.count(Change::vanished, artist_.what);
    if (!pieces_.empty()) {
      curves_.push_back({artist_.id, artist_.layers, artist_.what, std::move(pieces_), closed});
      for (const auto& layer : artist_.layers)
        limits_.read(sizeof layer + layer.size(), false, artist_.where.line);
    }
    pieces_.clear();
    drew_ = false;
  }

  // Whether the ends are one; then they are so to the last bit.
  bool close_gap() {
    if (!near(at_, start_)) return false;
    while (!pieces_.empty() && near(first_point(pieces_.back()), start_) && is_line(pieces_.back()))
      pieces_.pop_back();
    if (pieces_.empty()) return false;
    pieces_.back() = ended_at(pieces_.back(), start_);
    return true;
  }

  static bool is_line(const DrawnPiece& piece) {
    const auto* segment = std::get_if<Segment>(&piece);
    return segment && segment->straight();
  }

  const Affine& to_mm_;
  const Artist& artist_;
  Limits& limits_;
  Notes& notes_;
  std::vector<DrawnCurve> curves_;
  std::vector<DrawnPiece> pieces_;
  bool drew_ = false;  // whatever became of what was drawn
  Vec2 start_{0, 0}, at_{0, 0};
};

}  // namespace

std::vector<DrawnCurve> drawn(const PathSteps& steps, const Affine& to_mm, const Artist& artist,
                              Limits& limits, Notes& notes) {
  Pen pen(to_mm, artist, limits, notes);
  for (const PathStep& step : steps) std::visit(pen, step);
  return pen.finished();
}

}  // namespace lamwright::svg_reading
