#include "exporters/drawing/tiling.hpp"

#include <algorithm>
#include <cmath>

#include "exporters/drawing/check_bars.hpp"
#include "exporters/drawing/clearance.hpp"
#include "exporters/drawing/clip.hpp"
#include "exporters/drawing/lettering.hpp"
#include "exporters/drawing/text.hpp"
#include "exporters/drawing/tile_notes.hpp"
#include "exporters/drawing/view.hpp"
#include "shared/number.hpp"
#include "shared/tolerance.hpp"

namespace lamwright::drawing {
namespace {

std::string letter_pen(const Pen& pen, double height) { return pen.name + "_TEXT_" + number(height); }

// Of the drawing, each followed by those for its texts where these are drawn as strokes; then the page's own.
std::vector<Pen> pens_for(const Drawing& full_size) {
  std::vector<Pen> out;
  const auto known = [&](const std::string& name) {
    return std::any_of(out.begin(), out.end(), [&](const Pen& pen) { return pen.name == name; });
  };
  for (std::size_t i = 0; i < full_size.pens().size(); ++i) {
    const Pen& pen = full_size.pens()[i];
    if (pen.name == kCheckPen) continue;
    out.push_back(pen);
    for (const Item& item : full_size.items())
      if (const auto* text = std::get_if<Text>(&item.shape); text && item.pen == i)
        if (const std::string name = letter_pen(pen, text->height); !known(name))
          out.push_back({name, stroke_width(text->height), {}, pen.colour});
  }
  const std::vector<Pen> own = tile_pens();
  out.insert(out.end(), own.begin(), own.end());
  return out;
}

Path shifted(const Path& path, const Vec2& by) {
  Path out{{}, path.closed, {}};
  for (const Segment& s : path.segments) out.segments.push_back(moved(s, by));
  return out;
}

// The share of a drawing that one page shows.
class Share {
 public:
  Share(Drawing& page, const Box2& window)
      : page_(page), window_(window), shift_(window_on_page(page.size()).low - window.low) {}

  void add(const Pen& pen, const Shape& shape) {
    std::visit([&](const auto& s) { put(pen, s); }, shape);
  }

 private:
  void put(const std::string& pen, const Path& path) {
    if (path.segments.empty()) return;
    for (const Path& piece : clipped(path, window_)) page_.add(pen, shifted(piece, shift_));
  }

  void put(const Pen& pen, const Path& path) { put(pen.name, path); }

  void put(const Pen& pen, const Segment& segment) {
    for (const Segment& piece : clipped(segment, window_)) page_.add(pen.name, moved(piece, shift_));
  }

  void put(const Pen& pen, const Circle& circle) {
    const Vec2 r{circle.radius, circle.radius};
    if (within({circle.centre - r, circle.centre + r}, window_))
      page_.add(pen.name, Circle{circle.centre + shift_, circle.radius, {}});
    else
      put(pen, Path{strokes(circle), true, {}});
  }

  void put(const Pen& pen, const Area& area) {
    for (const Path& loop : area.loops) put(pen, loop);
  }

  void put(const Pen& pen, const Text& text) {
    const Box2 box = text_box(text);
    if (!overlap(box, window_)) return;
    if (within(box, window_)) {
      Text whole = text;
      whole.at += shift_;
      page_.add(pen.name, whole);
      return;
    }
    for (const Path& stroke : lettered(text).strokes) put(letter_pen(pen, text.height), stroke);
  }

  Drawing& page_;
  Box2 window_;
  Vec2 shift_;
};

// What is to be shared out, by place.
class Shared {
 public:
  explicit Shared(const Drawing& drawing) : drawing_(drawing), boxes_({{0, 0}, drawing.size()}) {
    for (const Item& item : drawing.items()) {
      const auto box = box_of(item.shape);
      if (!box || drawing.pens()[item.pen].name == kCheckPen) continue;
      items_.push_back(&item);
      boxes_.add(*box);
    }
  }

  // In the order of the drawing.
  std::vector<const Item*> in(const Box2& window) const {
    std::vector<const Item*> out;
    boxes_.any(window, [&](std::size_t i) {
      out.push_back(items_[i]);
      return false;
    });
    std::sort(out.begin(), out.end());
    return out;
  }
  const Drawing& drawing() const { return drawing_; }

 private:
  const Drawing& drawing_;
  BoxIndex boxes_;
  std::vector<const Item*> items_;
};

Drawing page_of(const Shared& shared, const TileGrid& grid, const Tile& tile, const TileTitle& title) {
  const Drawing& full_size = shared.drawing();
  Drawing page(title.part + " " + tile_code(tile), grid.page, pens_for(full_size));
  const Box2 window = grid.window_of(tile);
  Share share(page, window);
  for (const Item* item : shared.in(grown(window, kSamePoint)))
    share.add(full_size.pens()[item->pen], item->shape);
  add_tile_head(page, tile, title);
  add_tile_joints(page, grid, tile);
  add_check_bars(page, grown(window_on_page(grid.page), -kTileOverlap / 2));
  add_neighbour_codes(page, grid, tile);
  if (grid.used.size() > 1) add_overview(page, grid, tile, full_size);
  return page;
}

}  // namespace

std::vector<Drawing> tiled(const Drawing& full_size, const TileSpec& spec) {
  const TileGrid grid = tile_grid(full_size, spec.paper);
  const std::vector<Tile> tiles = grid.tiles();
  const Shared shared(full_size);
  std::vector<Drawing> out;
  for (std::size_t i = 0; i < tiles.size(); ++i)
    out.push_back(
        page_of(shared, grid, tiles[i],
                {full_size.title(), spec.job, static_cast<int>(i) + 1, static_cast<int>(tiles.size())}));
  return out;
}

}  // namespace lamwright::drawing
