#include "kernel/nest/true_shape.hpp"

#include <cmath>

#include "kernel/nest/search.hpp"
#include "kernel/nest/strip.hpp"
#include "shared/error.hpp"
#include "shared/number.hpp"

namespace lamwright {
namespace {

using nesting::Grid;
using nesting::Laid;
using nesting::SearchResult;
using nesting::SearchSpec;
using nesting::Shape;

// Tangents and chords stand off an arc by no more, mm: the cutter leaves as much.
constexpr double kArcExcess = 0.1;
// Units of the grid over the whole of a sheet: products of two lengths stay whole numbers.
constexpr double kUnits = 4e7;
// Edges looked at: about two seconds.
constexpr std::int64_t kEffort = 3'200'000'000;

double per_mm(double longest) { return std::pow(10, std::floor(std::log10(kUnits / longest))); }

bool fits(const Shape& shape, const Vec2& room) {
  for (int turn = 0; turn < 4; ++turn)
    if (shape.allowed[turn] && ((shape.size[turn] - room).array() <= 0.01).all()) return true;
  return false;
}

// Low corner of the true box when the piece is turned about its own (0, 0).
Vec2 turned_low(const Outline& outline, int quarters) {
  const Placing turn{quarters, {0, 0}};
  const Box2 box = outline.box();
  return turn.vector(box.low).cwiseMin(turn.vector(box.high));
}

struct Frame {
  double per_mm = 1;
  double margin = 0;
};

NestedAt placed(const Laid& laid, std::size_t piece, int sheet, const Outline& outline, const Frame& frame) {
  const Vec2 low = Vec2(static_cast<double>(laid.at.x), static_cast<double>(laid.at.y)) / frame.per_mm;
  const Vec2 margin(frame.margin, frame.margin);
  return {piece, sheet, {laid.turn, margin + low - turned_low(outline, laid.turn)}};
}

// The pieces of one nest on the grid; those that fit nowhere are left out.
struct OnGrid {
  SearchSpec spec;
  std::vector<std::size_t> piece;  // of each shape
  std::vector<std::size_t> oversize;
};

OnGrid on_grid(const std::vector<NestPiece>& pieces, const Vec2& room, double per_mm) {
  OnGrid out;
  for (std::size_t i = 0; i < pieces.size(); ++i) {
    Shape shape = nesting::shape(pieces[i].outline, pieces[i].turns, per_mm, kArcExcess);
    if (!fits(shape, room * per_mm)) {
      out.oversize.push_back(i);
      continue;
    }
    if (pieces[i].count <= 0) continue;
    out.spec.shapes.push_back(std::move(shape));
    out.spec.counts.push_back(pieces[i].count);
    out.piece.push_back(i);
  }
  out.spec.board.size = room * per_mm;
  return out;
}

std::vector<NestedAt> all_placed(const SearchResult& found, const OnGrid& grid,
                                 const std::vector<NestPiece>& pieces, const Frame& frame) {
  std::vector<NestedAt> out;
  for (std::size_t s = 0; s < found.sheets.size(); ++s) {
    std::vector<Laid> laid = found.sheets[s];
    std::stable_sort(laid.begin(), laid.end(), [](const Laid& a, const Laid& b) {
      return std::make_pair(a.at.x, a.at.y) < std::make_pair(b.at.x, b.at.y);
    });
    for (const Laid& l : laid) {
      const std::size_t piece = grid.piece[l.piece];
      out.push_back(placed(l, piece, static_cast<int>(s), pieces[piece].outline, frame));
    }
  }
  return out;
}

double right_end(const std::vector<NestedAt>& placed, const std::vector<NestPiece>& pieces, int sheet) {
  double out = 0;
  for (const NestedAt& at : placed) {
    const Outline& outline = pieces[at.piece].outline;
    const Vec2 size = outline.box().size();
    const double along = at.placing.quarters % 2 == 0 ? size.x() : size.y();
    if (at.sheet == sheet)
      out = std::max(out, turned_low(outline, at.placing.quarters).x() + at.placing.shift.x() + along);
  }
  return out;
}

// Pieces side by side, or three times the length without any waste: even poor layouts end before.
double strip_room(const std::vector<NestPiece>& pieces, double height) {
  double in_line = 0, longest = 0, area = 0;
  for (const NestPiece& p : pieces) {
    const double side = p.outline.box().size().maxCoeff();
    in_line += p.count * side;
    longest = std::max(longest, side);
    area += p.count * p.outline.area();
  }
  return std::min(in_line, 3 * area / height + 2 * longest);
}

Vec2 room(const NestSheet& sheet) {
  const Vec2 room = sheet.size - 2 * Vec2(sheet.margin, sheet.margin);
  if (!(room.x() > 0 && room.y() > 0))
    throw geometry_error("nest",
                         "a sheet of " + number(sheet.size.x()) + " x " + number(sheet.size.y()) +
                             " has no room inside margins of " + number(sheet.margin),
                         "take a larger sheet or a margin below " + number(sheet.size.minCoeff() / 2));
  return room;
}

}  // namespace

NestResult nest(const std::vector<NestPiece>& pieces, const NestSheet& sheet,
                const std::function<void()>& step) {
  const Vec2 inside = room(sheet);
  const Frame frame{per_mm(sheet.size.maxCoeff()), sheet.margin};
  OnGrid grid = on_grid(pieces, inside, frame.per_mm);
  grid.spec.board.most = sheet.most_sheets;
  grid.spec.spacing = static_cast<Grid>(std::ceil(sheet.spacing * frame.per_mm - 1e-5));
  grid.spec.effort = kEffort;
  grid.spec.step = step;
  NestResult out;
  out.oversize = grid.oversize;
  out.left_over.assign(pieces.size(), 0);
  if (grid.spec.shapes.empty()) return out;
  const SearchResult found = search(grid.spec);
  out.placed = all_placed(found, grid, pieces, frame);
  out.sheets = static_cast<int>(found.sheets.size());
  out.used = right_end(out.placed, pieces, out.sheets - 1);
  for (const std::size_t shape : found.left_over) ++out.left_over[grid.piece[shape]];
  return out;
}

StripPlan pack_strip(const std::vector<NestPiece>& pieces, double height, std::int64_t effort) {
  const double length = strip_room(pieces, height);
  const Frame frame{per_mm(std::max(length, height)), 0};
  OnGrid grid = on_grid(pieces, {length, height}, frame.per_mm);
  if (!grid.oversize.empty())
    throw geometry_error(pieces[grid.oversize.front()].name, "does not fit a strip of " + number(height),
                         "take a higher strip");
  grid.spec.effort = effort;
  const SearchResult found = search(grid.spec);
  StripPlan out;
  out.placed = all_placed(found, grid, pieces, frame);
  out.length = right_end(out.placed, pieces, 0);
  return out;
}

}  // namespace lamwright
