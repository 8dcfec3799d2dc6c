// Moves pieces that overlap until none does.
#pragma once
#include <cmath>
#include <functional>
#include <optional>

#include "kernel/nest/dice.hpp"
#include "kernel/nest/overlap.hpp"
#include "kernel/nest/sheet_row.hpp"

namespace lamwright::nesting {

// Pieces that overlap are moved one at a time to where they overlap least, overlaps that stay counting for
// more and more (guided local search, Egeblad, Nielsen and Odgaard 2007).
class Parting {
 public:
  Parting(const std::vector<Shape>& shapes, NoFit& no_fit, const std::function<void()>& step);

  struct Result {
    bool parted = false;
    double total = 0;        // sum of the overlaps
    std::vector<Laid> laid;  // where that was least
  };
  // Until nothing overlaps by more than a hair, nothing has been gained for long, or `most` work is done.
  // Pieces that stand out of their sheet are pushed in, or elsewhere where it has no room for them.
  Result part(std::vector<Laid> laid, const SheetRow& row, std::int64_t most);

  // Two pieces change places, or one goes anywhere.
  std::vector<Laid> disturbed(std::vector<Laid> laid, const SheetRow& row);

  std::int64_t work() const { return work_; }

 private:
  struct Place {
    int turn = 0;
    GridPoint at;
    double cost = INFINITY;
  };

  const Vec2& size(std::size_t piece, int turn) const { return shapes_[piece].size[turn]; }
  Vec2 middle(const Laid& laid) const;
  GridPoint centred(const Laid& laid, const Vec2& middle) const;  // its low corner then
  Laid pushed_in(Laid laid, const SheetRow& row);
  std::optional<GridPoint> anywhere(std::size_t piece, int turn, const SheetRow& row);
  std::optional<GridPoint> touching(std::size_t i, int turn, const SheetRow& row);
  void move_all(const SheetRow& row);
  Place least(std::size_t i, const Place& now, const SheetRow& row);
  Place descended(std::size_t i, Place from, const SheetRow& row);

  const std::vector<Shape>& shapes_;
  NoFit& no_fit_;
  const std::function<void()>& step_;
  Overlaps overlaps_;
  Dice dice_;
  std::int64_t work_ = 0;
};

}  // namespace lamwright::nesting
