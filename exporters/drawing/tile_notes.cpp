#include "exporters/drawing/tile_notes.hpp"

#include <array>

#include "exporters/drawing/check_bars.hpp"
#include "exporters/drawing/clearance.hpp"
#include "exporters/drawing/text.hpp"
#include "exporters/drawing/view.hpp"
#include "shared/units.hpp"

namespace lamwright::drawing {
namespace {

constexpr double kArrow = 3;  // before a note

struct Side {
  Vec2 outward;
  Tile step;  // to the neighbour
  const char* where;
  // The right and the lower edge are cut off and laid over the neighbour.
  bool cut;
};

const std::array<Side, 4>& sides() {
  static const std::array<Side, 4> kSides{{{{1, 0}, {0, 1}, "right", true},
                                           {{0, -1}, {1, 0}, "below", true},
                                           {{-1, 0}, {0, -1}, "left", false},
                                           {{0, 1}, {-1, 0}, "above", false}}};
  return kSides;
}

Tile next(const Tile& tile, const Tile& step) { return {tile.row + step.row, tile.column + step.column}; }

Box2 cell_on_page(const TileGrid& grid) { return grown(window_on_page(grid.page), -kTileOverlap / 2); }

// Middle of a side of the cell.
Vec2 middle_of(const Box2& cell, const Side& side) {
  return (cell.low + cell.high) / 2 + side.outward.cwiseProduct(cell.size()) / 2;
}

void add_target(Drawing& page, const Vec2& at) {
  constexpr double kArm = 4, kRadius = 2;
  page.add(kRegisterPen, line(at - Vec2(kArm, 0), at + Vec2(kArm, 0)));
  page.add(kRegisterPen, line(at - Vec2(0, kArm), at + Vec2(0, kArm)));
  page.add(kRegisterPen, Circle{at, kRadius, {}});
}

// Filled triangle on a strip, its point outward.
Path arrow(const Vec2& middle, const Vec2& outward) {
  constexpr double kHalf = 1.1;
  const Vec2 across = left_of(outward);
  return polygon({middle + kHalf * outward, middle - kHalf * outward + kHalf * across,
                  middle - kHalf * outward - kHalf * across},
                 "#000000");
}

// Where the notes of a side stand: along the outer half of the overlap.
struct Strip {
  Vec2 start{0, 0};
  Vec2 along{0, 0};  // as they are read
  double length = 0;

  // Its letters begin at a distance from the start.
  Text text(const std::string& words, double at) const {
    return {start + at * along - kSmallHeight / 2 * left_of(along), words, kSmallHeight, Anchor::left,
            along.x() == 0 ? kPi / 2 : 0};
  }
};

Strip strip_of(const Box2& cell, const Side& side) {
  const Vec2 along = side.outward.y() == 0 ? Vec2(0, 1) : Vec2(1, 0);
  const double length = along.dot(cell.size());
  return {middle_of(cell, side) + kTileOverlap / 4 * side.outward - along * (length / 2), along, length};
}

// The first place clear of other things, for the whole note or for the code alone.
Text neighbour_note(const Clearance& taken, const Strip& strip, const Side& side, const std::string& code) {
  constexpr double kStep = 2;
  const std::string name = code + " " + side.where;
  for (const std::string& words : {name + (side.cut ? ": cut here, lay over" : ": comes over this"), name})
    for (double at = kArrow + 5; at + text_width(words, kSmallHeight) < strip.length; at += kStep)
      if (const Text text = strip.text(words, at); taken.free(text, kArrow + 1)) return text;
  return strip.text(name, kArrow + 5);
}

void add_neighbour_code(Drawing& page, const Box2& cell, const Side& side, const std::string& code) {
  const Strip strip = strip_of(cell, side);
  const Text text = neighbour_note(page.taken(), strip, side, code);
  page.add(kTilePen, text);
  const double at = (text.at - strip.start).dot(strip.along);
  page.add(kTilePen, arrow(strip.start + (at - kArrow / 2 - 0.5) * strip.along, side.outward));
}

}  // namespace

std::vector<Pen> tile_pens() {
  const std::string ink = "#000000", grey = "#707070";
  return {{kOverviewFillPen, 0, {}, ink}, {kOverviewPen, 0.18, {}, grey}, {kSheetTrimPen, 0.18, {2, 1}, grey},
          {kRegisterPen, 0.18, {}, ink},  {kTilePen, 0.18, {}, ink},      {kCheckPen, 0.18, {}, "#b0005a"}};
}

void add_tile_head(Drawing& page, const Tile& tile, const TileTitle& title) {
  const Box2 window = window_on_page(page.size());
  const Vec2 corner{window.low.x(), window.high.y() + 1};
  constexpr double kCode = 18, kJob = 62;  // widths of the code and, at the right, of the job
  const double room = window.size().x() - kCode - kJob;
  page.add(kTilePen, fitted(corner + Vec2(0, 1), tile_code(tile), kCode - 2, {kTitleHeight, kTextHeight}));
  const std::string of = ", page " + std::to_string(title.page) + " of " + std::to_string(title.pages);
  page.add(kTilePen, fitted(corner + Vec2(kCode, 4.5), title.part + of, room - 2,
                            {kTextHeight, kSmallHeight, kLabelHeight}));
  page.add(kTilePen, fitted(corner + Vec2(kCode, 0.5), "scale 1:1, print at 100 %, do not fit to page",
                            room - 2, {kSmallHeight, kLabelHeight}));
  Text job = fitted({window.high.x(), corner.y() + 4.5}, title.job, kJob, {kSmallHeight, kLabelHeight});
  job.anchor = Anchor::right;
  page.add(kTilePen, job);
}

void add_tile_joints(Drawing& page, const TileGrid& grid, const Tile& tile) {
  const Box2 cell = cell_on_page(grid);
  for (const Side& side : sides()) {
    if (!grid.holds(next(tile, side.step))) continue;
    const Vec2 middle = middle_of(cell, side);
    const Vec2 half = left_of(side.outward).cwiseProduct(window_on_page(grid.page).size()) / 2;
    page.add(kSheetTrimPen, line(middle - half, middle + half));
    add_target(page, middle);
  }
  for (const int x : {-1, 1})
    for (const int row : {-1, 1})
      if (grid.holds(next(tile, {row, 0})) || grid.holds(next(tile, {0, x})) ||
          grid.holds(next(tile, {row, x})))
        add_target(page, {x < 0 ? cell.low.x() : cell.high.x(), row > 0 ? cell.low.y() : cell.high.y()});
}

void add_neighbour_codes(Drawing& page, const TileGrid& grid, const Tile& tile) {
  for (const Side& side : sides())
    if (const Tile to = next(tile, side.step); grid.holds(to))
      add_neighbour_code(page, cell_on_page(grid), side, tile_code(to));
}

}  // namespace lamwright::drawing
