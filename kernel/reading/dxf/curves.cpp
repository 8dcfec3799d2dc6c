#include "kernel/reading/dxf/curves.hpp"

#include <algorithm>
#include <cmath>

#include "kernel/reading/dxf/limits.hpp"
#include "kernel/reading/dxf/names.hpp"
#include "kernel/reading/dxf/placed.hpp"
#include "kernel/reading/dxf/tidy.hpp"

namespace lamwright::dxf_reading {
namespace {

// Where a list of items is placed.
struct Placing {
  Affine map;
  std::string layer = "0";           // what layer 0 means
  std::string handles;               // of the inserts around, each with a slash
  std::vector<const Block*> around;  // the outermost first
};

bool within_reach(const Vec2& p) { return std::abs(p.x()) <= kFarthest && std::abs(p.y()) <= kFarthest; }

bool within_reach(const Segment& s) {
  if (!std::isfinite(s.radius) || !s.centre.allFinite() || !s.from.allFinite() || !s.to.allFinite())
    return false;
  const Box2 around = box(s);
  return within_reach(around.low) && within_reach(around.high);
}

bool within_reach(const Bezier& curve) {
  return std::all_of(curve.poles.begin(), curve.poles.end(), [](const Vec2& p) { return within_reach(p); });
}

std::string described(const Item& item, const std::string& layer, const Placing& placing) {
  std::string out = item.kind + " on layer " + shown(layer) + " (line " + std::to_string(item.line);
  if (!placing.around.empty()) out += ", block " + shown(placing.around.back()->name);
  return out + ")";
}

class CurveMaker {
 public:
  CurveMaker(Document& document, const std::string& file, Tally& tally)
      : document_(document), file_(file), tally_(tally) {}

  std::vector<DrawnCurve> made(double mm_per_unit) && {
    Placing placing;
    placing.map = scaled(mm_per_unit, mm_per_unit);
    for (Records records : document_.entities) place(read(records, "ENDSEC"), placing);
    return std::move(curves_);
  }

 private:
  std::vector<Item> read(Records& records, std::string_view end) {
    return read_items(records, end, document_.layers, tally_, read_);
  }

  void place(const std::vector<Item>& items, const Placing& placing) {
    for (const Item& item : items) {
      const std::string& layer = item.layer == "0" ? placing.layer : item.layer;
      const LayerState state = document_.layers.state(layer);
      const auto* outline = std::get_if<Outline>(&item.content);
      if (state == LayerState::frozen || (outline && state == LayerState::off))
        count(tally_.hidden, layer);
      else if (outline)
        draw(item, *outline, layer, placing);
      else
        insert(item, std::get<Insert>(item.content), layer, placing);
    }
  }

  void draw(const Item& item, const Outline& outline, const std::string& layer, const Placing& placing) {
    const Outline here{placed(outline.pieces, placing.map), outline.closed};
    count_pieces(here.pieces.size(), item);
    ensure_reach(here, item);
    Tidied neat = tidied(here);
    if (neat.outline.pieces.empty()) {
      ++tally_.without_length;
      return;
    }
    tally_.repeated_points += neat.merged;
    const std::string id = item.handle.empty() ? "" : placing.handles + item.handle;
    curves_.push_back(
        {id, {layer}, described(item, layer, placing), std::move(neat.outline.pieces), neat.outline.closed});
  }

  void insert(const Item& item, const Insert& insert, const std::string& layer, const Placing& placing) {
    Block* block = document_.blocks.find(insert.block);
    if (!block) return count(tally_.missing_blocks, insert.block);
    Placing within{placing.map, layer, placing.handles, placing.around};
    within.around.push_back(block);
    if (!item.handle.empty()) within.handles += item.handle + "/";
    ensure_no_loop(item, *block, placing);
    if (!block->items) block->items = read(block->content, "ENDBLK");
    for (int row = 0; row < insert.rows; ++row)
      for (int column = 0; column < insert.columns; ++column) {
        count_pieces(1, item);
        within.map = placing.map * insert.at(column, row) * moved(-block->base);
        place(*block->items, within);
      }
  }

  void ensure_no_loop(const Item& item, const Block& block, const Placing& placing) const {
    const std::string name = "block \"" + shown(block.name) + "\" ";
    if (std::find(placing.around.begin(), placing.around.end(), &block) != placing.around.end())
      throw fault(file_, item.line, name + "holds itself", "take the INSERT out of it");
    if (placing.around.size() >= kMostLevels)
      throw fault(file_, item.line, name + "lies more than 32 blocks deep", "explode the outer blocks");
  }

  void count_pieces(std::size_t more, const Item& item) {
    placed_ += more;
    ensure_pieces(placed_, file_, item.line);
  }

  void ensure_reach(const Outline& outline, const Item& item) const {
    for (const DrawnPiece& piece : outline.pieces)
      if (!std::visit([](const auto& p) { return within_reach(p); }, piece))
        throw fault(file_, item.line, item.kind + ": reaches beyond 1e7 mm from the origin",
                    "move the drawing to the origin, or check its unit");
  }

  Document& document_;
  const std::string& file_;
  Tally& tally_;
  std::vector<DrawnCurve> curves_;
  std::size_t read_ = 0, placed_ = 0;
};

}  // namespace

std::vector<DrawnCurve> curves(Document& document, double mm_per_unit, const std::string& file,
                               Tally& tally) {
  return CurveMaker(document, file, tally).made(mm_per_unit);
}

}  // namespace lamwright::dxf_reading
