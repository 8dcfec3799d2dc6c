#include <algorithm>

#include "kernel/nest/rectangles.hpp"
#include "shared/error.hpp"
#include "shared/tolerance.hpp"

namespace lamwright {
namespace {

struct SheetPart {
  Box2 box;
  std::vector<Box2> pieces;
  int depth = 0;
};

// Halves a sheet's parts until each holds one piece that fills it.
class Sawing {
 public:
  Sawing(int sheet, double kerf) : sheet_(sheet), kerf_(kerf) {}

  void saw(const SheetPart& part) {
    if (part.pieces.empty()) return;
    for (const int axis : {0, 1})
      for (const Box2& piece : part.pieces)
        if (const double at = piece.high[axis]; parts(part, axis, at)) return halve(part, axis, at);
    ensure(part.pieces.size() == 1, "a guillotine plan can be sawn from edge to edge");
  }

  std::vector<SawCut> cuts() const { return cuts_; }

 private:
  bool below(const Box2& piece, int axis, double at) const { return piece.high[axis] <= at + kSamePoint; }
  bool beyond(const Box2& piece, int axis, double at) const {
    return piece.low[axis] >= at + kerf_ - kSamePoint;
  }

  // A cut here crosses no piece and takes something off.
  bool parts(const SheetPart& part, int axis, double at) const {
    return at < part.box.high[axis] - kSamePoint &&
           std::all_of(part.pieces.begin(), part.pieces.end(),
                       [&](const Box2& p) { return below(p, axis, at) || beyond(p, axis, at); });
  }

  void halve(const SheetPart& part, int axis, double at) {
    SawCut cut{sheet_, part.box.low, part.box.high, part.depth};
    cut.from[axis] = cut.to[axis] = at;
    cuts_.push_back(cut);
    SheetPart low{part.box, {}, part.depth + 1}, high = low;
    low.box.high[axis] = at;
    high.box.low[axis] = std::min(at + kerf_, part.box.high[axis]);
    for (const Box2& piece : part.pieces) (below(piece, axis, at) ? low : high).pieces.push_back(piece);
    saw(low);
    saw(high);
  }

  int sheet_;
  double kerf_;
  std::vector<SawCut> cuts_;
};

Box2 box_of(const RectangleAt& at, const Vec2& size) {
  return {at.low, at.low + (at.turned ? Vec2(size.y(), size.x()) : size)};
}

}  // namespace

std::vector<SawCut> saw_cuts(const std::vector<WantedRectangle>& wanted, const RectangleSheet& sheet,
                             const RectanglePlan& plan) {
  std::vector<SawCut> all;
  const Vec2 margin = Vec2::Constant(sheet.margin);
  for (int n = 0; n < plan.sheets; ++n) {
    SheetPart whole{{margin, sheet.size - margin}, {}, 0};
    for (const RectangleAt& at : plan.placed)
      if (at.sheet == n) whole.pieces.push_back(box_of(at, wanted.at(at.piece).size));
    Sawing sawing(n, sheet.kerf);
    sawing.saw(whole);
    const std::vector<SawCut> cuts = sawing.cuts();
    all.insert(all.end(), cuts.begin(), cuts.end());
  }
  return all;
}

}  // namespace lamwright
