#include "kernel/nest/spots.hpp"

#include <cmath>
#include <optional>

namespace lamwright::nesting {
namespace {

// Where two edges cross inside both; touching ends are corners and offered as such.
std::optional<Vec2> crossing(const GridEdge& e, const GridEdge& f) {
  const GridPoint along = e.to - e.from, across = f.to - f.from;
  const Grid from = cross(along, f.from - e.from), to = cross(along, f.to - e.from);
  if ((from > 0) == (to > 0) || from == 0 || to == 0) return std::nullopt;
  const Grid first = cross(across, e.from - f.from), last = cross(across, e.to - f.from);
  if ((first > 0) == (last > 0) || first == 0 || last == 0) return std::nullopt;
  const double share = static_cast<double>(from) / (static_cast<double>(from) - static_cast<double>(to));
  return Vec2(static_cast<double>(f.from.x) + share * static_cast<double>(across.x),
              static_cast<double>(f.from.y) + share * static_cast<double>(across.y));
}

void edges_near(const Zone& zone, GridPoint at, const GridBox& box, std::vector<GridEdge>& out) {
  out.clear();
  const GridBox there = box.moved(GridPoint{0, 0} - at);
  for (const GridEdge& e : zone.edges())
    if (e.box.meets(there)) out.push_back(e.moved(at));
}

}  // namespace

Spots::Spots(const Arrangement& arrangement, const Room& room) : arrangement_(arrangement), room_(room) {
  if (room.empty()) return;
  for (const GridPoint p : {GridPoint{0, 0}, {room.right, 0}, {0, room.top}, {room.right, room.top}})
    offer(p);
}

void Spots::offer(GridPoint p) {
  alive_.push_back(static_cast<std::uint32_t>(spots_.size()));
  spots_.push_back({p, followed_, Spot::kAlive});
}

void Spots::follow(const std::vector<Laid>& laid, NoFit& no_fit, std::int64_t& work) {
  while (followed_ < laid.size() && (followed_ == 0 || !alive_.empty()))
    take_in(laid[followed_], no_fit, work);
}

void Spots::list_alive() {
  alive_.clear();
  for (std::size_t i = 0; i < spots_.size(); ++i)
    if (spots_[i].alive()) alive_.push_back(static_cast<std::uint32_t>(i));
}

void Spots::forget(std::size_t count) {
  if (followed_ <= count) return;
  followed_ = count;
  zones_.resize(count * arrangement_.members.size());
  spots_.erase(
      std::remove_if(spots_.begin(), spots_.end(), [count](const Spot& s) { return s.born > count; }),
      spots_.end());
  for (Spot& s : spots_)
    if (!s.alive() && s.dead > count) s.dead = Spot::kAlive;
  list_alive();
}

void Spots::take_in(const Laid& laid, NoFit& no_fit, std::int64_t& work) {
  ++followed_;
  for (const Member& m : arrangement_.members) {
    const Zone& zone = no_fit.zone(laid.piece, laid.turn, m.piece, m.turn);
    const GridPoint at = laid.at - m.at;
    const Placed placed{&zone, at, zone.box().moved(at)};
    cover(placed, work);
    Near near;
    for (const Placed& other : zones_)
      if (other.box.meets(placed.box)) near.push_back(other);
    add_corners(placed, near, work);
    add_on_border(placed, near, work);
    for (std::size_t other = 0; other < near.size(); ++other) add_crossings(placed, other, near, work);
    zones_.push_back(placed);
  }
}

void Spots::cover(const Placed& zone, std::int64_t& work) {
  bool unseen = false;
  const auto covered = [&](std::uint32_t i) {
    Spot& s = spots_[i];
    if (!zone.box.inside(s.at)) return false;
    work += static_cast<std::int64_t>(zone.zone->edges().size());
    if (!zone.forbids(s.at)) return false;
    s.dead = followed_;
    unseen = unseen || s.born == followed_;
    return true;
  };
  alive_.erase(std::remove_if(alive_.begin(), alive_.end(), covered), alive_.end());
  if (!unseen) return;
  // Came up and went with the same piece: nobody ever saw it.
  spots_.erase(std::remove_if(spots_.begin(), spots_.end(),
                              [](const Spot& s) { return !s.alive() && s.dead == s.born; }),
               spots_.end());
  list_alive();
}

bool Spots::inside(GridPoint p) const {
  return p.x >= 0 && p.y >= 0 && p.x <= room_.right && p.y <= room_.top;
}

// Of all near zones but one.
bool Spots::free(GridPoint p, const Near& near, std::size_t but, std::int64_t& work) const {
  for (std::size_t i = 0; i < near.size(); ++i) {
    if (i == but || !near[i].box.inside(p)) continue;
    work += static_cast<std::int64_t>(near[i].zone->edges().size());
    if (near[i].forbids(p)) return false;
  }
  return true;
}

void Spots::add_corners(const Placed& zone, const Near& near, std::int64_t& work) {
  for (const GridEdge& e : zone.zone->edges()) {
    const GridPoint p = e.from + zone.at;
    if (inside(p) && free(p, near, near.size(), work)) offer(p);
  }
}

// A crossing seldom lies on the grid: of the grid's points round it the first that both zones leave free.
void Spots::offer_near(const Vec2& p, const Placed& first, std::size_t second, const Near& near,
                       std::int64_t& work) {
  const Vec2 down(std::floor(p.x()), std::floor(p.y())), up(std::ceil(p.x()), std::ceil(p.y()));
  const Vec2 middle(std::round(p.x()), std::round(p.y()));
  if (up.x() < 0 || up.y() < 0 || down.x() > static_cast<double>(room_.right) ||
      down.y() > static_cast<double>(room_.top))
    return;
  bool clear = false;
  for (const Vec2& q : {middle, down, up, Vec2(down.x(), up.y()), Vec2(up.x(), down.y())}) {
    const GridPoint at{static_cast<Grid>(q.x()), static_cast<Grid>(q.y())};
    if (!clear && !free(at, near, second, work)) return;
    clear = true;
    if (!inside(at) || first.forbids(at) || !free(at, near, near.size(), work)) continue;
    offer(at);
    return;
  }
}

void Spots::add_on_border(const Placed& zone, const Near& near, std::int64_t& work) {
  const auto offer = [&](const GridEdge& e, int axis, Grid off) {
    const GridPoint from = e.from + zone.at, to = e.to + zone.at;
    const Grid a = axis == 0 ? from.x : from.y, b = axis == 0 ? to.x : to.y;
    if ((a < off) == (b < off) || a == b) return;
    const double share = static_cast<double>(off - a) / static_cast<double>(b - a);
    const Grid u = axis == 0 ? from.y : from.x, v = axis == 0 ? to.y : to.x;
    const double at = static_cast<double>(u) + share * static_cast<double>(v - u),
                 line = static_cast<double>(off);
    offer_near(axis == 0 ? Vec2(line, at) : Vec2(at, line), zone, near.size(), near, work);
  };
  for (const GridEdge& e : zone.zone->edges())
    for (int axis = 0; axis < 2; ++axis) {
      offer(e, axis, 0);
      offer(e, axis, axis == 0 ? room_.right : room_.top);
    }
}

void Spots::add_crossings(const Placed& zone, std::size_t other, const Near& near, std::int64_t& work) {
  const Placed& second = near[other];
  const GridBox shared = zone.box.shared(second.box);
  edges_near(*zone.zone, zone.at, shared, own_);
  edges_near(*second.zone, second.at, shared, theirs_);
  work += static_cast<std::int64_t>(zone.zone->edges().size() + second.zone->edges().size() +
                                    own_.size() * theirs_.size());
  for (const GridEdge& e : own_)
    for (const GridEdge& f : theirs_) {
      if (!e.box.meets(f.box)) continue;
      if (const auto p = crossing(e, f)) offer_near(*p, zone, other, near, work);
    }
}

}  // namespace lamwright::nesting
