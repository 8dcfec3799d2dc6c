// Where an arrangement still fits on one sheet: the corners of its free region, kept up to date as pieces are
// laid and taken up again in reverse order.
#pragma once
#include "kernel/nest/group.hpp"

namespace lamwright::nesting {

// The part of a unit that a piece may overhang for rounding (1e-6 mm on the usual grid).
inline constexpr double kFits = 0.01;

// Places of the low corner of a piece or group, inclusive: what lies within the sheet's margins.
struct Room {
  Grid right = -1;
  Grid top = -1;
  bool empty() const { return right < 0 || top < 0; }
};

struct Laid {
  std::size_t piece = 0;
  int turn = 0;
  GridPoint at;
};

struct Spot {
  GridPoint at;
  std::size_t born = 0;  // laid pieces when it came up
  std::size_t dead = 0;  // laid pieces when it was covered; kAlive while it is free
  static constexpr std::size_t kAlive = static_cast<std::size_t>(-1);
  bool alive() const { return dead == kAlive; }
};

class Spots {
 public:
  Spots(const Arrangement& arrangement, const Room& room);

  // Takes in what was laid since the last call, or forgets what was taken up. `work` counts edges looked at.
  void follow(const std::vector<Laid>& laid, NoFit& no_fit, std::int64_t& work);
  // Back to the first `count` pieces.
  void forget(std::size_t count);

  const std::vector<Spot>& spots() const { return spots_; }
  const std::vector<std::uint32_t>& alive() const { return alive_; }  // indices of spots, ascending

 private:
  struct Placed {
    const Zone* zone;
    GridPoint at;
    GridBox box;
    bool forbids(GridPoint p) const { return zone->forbids(p - at); }
  };

  using Near = std::vector<Placed>;

  void offer(GridPoint p);
  void list_alive();
  void take_in(const Laid& laid, NoFit& no_fit, std::int64_t& work);
  void cover(const Placed& zone, std::int64_t& work);
  void add_corners(const Placed& zone, const Near& near, std::int64_t& work);
  void add_on_border(const Placed& zone, const Near& near, std::int64_t& work);
  void add_crossings(const Placed& zone, std::size_t other, const Near& near, std::int64_t& work);
  void offer_near(const Vec2& p, const Placed& first, std::size_t second, const Near& near,
                  std::int64_t& work);
  bool inside(GridPoint p) const;
  bool free(GridPoint p, const Near& near, std::size_t but, std::int64_t& work) const;

  const Arrangement& arrangement_;
  Room room_;
  std::vector<Placed> zones_;
  std::vector<Spot> spots_;
  std::vector<std::uint32_t> alive_;
  std::size_t followed_ = 0;
  std::vector<GridEdge> own_, theirs_;  // edges in the part that two zones share; kept for their memory
};

}  // namespace lamwright::nesting
