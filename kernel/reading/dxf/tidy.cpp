#include "kernel/reading/dxf/tidy.hpp"

#include <algorithm>
#include <cmath>

#include "kernel/reading/dxf/polyline.hpp"
#include "shared/units.hpp"

namespace lamwright::dxf_reading {
namespace {

// What no saw can follow and no file of six decimals or more means.
constexpr double kShort = 1e-3;

// mm. Centres of greater circles cannot be told to a millionth.
constexpr double kGreatestRadius = 1e9;

bool near(const Vec2& a, const Vec2& b) { return (a - b).norm() < kShort; }

// So flat an arc as a curve of its ends and the point where its tangents meet.
Bezier flat_arc(const Segment& s) {
  const Vec2 chord = s.to - s.from;
  const Vec2 corner = s.from + chord / 2 - left_of(chord) * (std::tan(s.turn / 2) / 2);
  return {{s.from, corner, s.to}, {1, std::cos(s.turn / 2), 1}};
}

std::vector<DrawnPiece> halves(const Segment& s) {
  const Vec2 middle = s.point(0.5);
  return {Segment{s.from, middle, s.turn / 2, s.centre, s.radius},
          Segment{middle, s.to, s.turn / 2, s.centre, s.radius}};
}

// An arc that comes round to where it began is two, as a circle is.
std::vector<DrawnPiece> well_made(const DrawnPiece& piece) {
  const auto* arc = std::get_if<Segment>(&piece);
  if (!arc || arc->straight()) return {piece};
  if (arc->radius > kGreatestRadius) return {flat_arc(*arc)};
  if (std::abs(arc->turn) > kPi && near(arc->from, arc->to)) return halves(*arc);
  return {piece};
}

std::vector<DrawnPiece> well_made(const std::vector<DrawnPiece>& pieces) {
  std::vector<DrawnPiece> out;
  for (const DrawnPiece& piece : pieces)
    for (DrawnPiece& part : well_made(piece)) out.push_back(std::move(part));
  return out;
}

bool stays(const Segment& s, const Vec2& at) { return near(s.to, at) && s.length() < 2 * kShort; }

bool stays(const Bezier& curve, const Vec2& at) {
  return std::all_of(curve.poles.begin(), curve.poles.end(),
                     [&](const Vec2& pole) { return near(pole, at); });
}

bool stays(const DrawnPiece& piece, const Vec2& at) {
  return std::visit([&](const auto& p) { return stays(p, at); }, piece);
}

std::vector<DrawnPiece> begun_at(const Segment& s, const Vec2& start) {
  if (s.straight()) return {line(start, s.to)};
  if (std::abs(s.turn) <= kPi) return {bulged({start, std::tan(s.turn / 4)}, s.to)};
  // Ends of so long an arc lie near each other: its radius must not hang on them.
  const Vec2 middle = s.point(0.5);
  return {bulged({start, std::tan(s.turn / 8)}, middle),
          Segment{middle, s.to, s.turn / 2, s.centre, s.radius}};
}

std::vector<DrawnPiece> begun_at(Bezier curve, const Vec2& start) {
  curve.poles.front() = start;
  return {curve};
}

std::vector<DrawnPiece> begun_at(const DrawnPiece& piece, const Vec2& start) {
  if (first_point(piece) == start) return {piece};
  return std::visit([&](const auto& p) { return begun_at(p, start); }, piece);
}

// Moves the end of the last piece back to the start of the first.
std::size_t close(std::vector<DrawnPiece>& pieces) {
  const Vec2 start = first_point(pieces.front());
  std::size_t dropped = 0;
  for (; !pieces.empty() && stays(reversed(pieces.back()), start); ++dropped) pieces.pop_back();
  if (pieces.empty()) return dropped;
  std::vector<DrawnPiece> ending = begun_at(reversed(pieces.back()), start);
  pieces.pop_back();
  for (auto piece = ending.rbegin(); piece != ending.rend(); ++piece) pieces.push_back(reversed(*piece));
  return dropped;
}

}  // namespace

Tidied tidied(const Outline& outline) {
  Tidied out;
  std::vector<DrawnPiece>& kept = out.outline.pieces;
  Vec2 at = first_point(outline.pieces.front());
  for (const DrawnPiece& piece : well_made(outline.pieces)) {
    if (stays(piece, at)) {
      ++out.merged;
      continue;
    }
    for (const DrawnPiece& part : begun_at(piece, at)) kept.push_back(part);
    at = last_point(kept.back());
  }
  if (kept.empty()) return out;
  out.outline.closed = outline.closed || near(at, first_point(kept.front()));
  if (out.outline.closed) out.merged += close(kept);
  return out;
}

}  // namespace lamwright::dxf_reading
