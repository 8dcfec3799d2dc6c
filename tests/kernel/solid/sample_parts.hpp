// Parts for the tests of solids and of STEP files: boards, beams, blocks, formers and panels as a press has
// them.
#pragma once
#include <string>
#include <utility>
#include <vector>

#include "kernel/part/part.hpp"
#include "kernel/profile/offset.hpp"
#include "tests/support/profiles.hpp"

namespace lamwright::test {

inline PartSpec spec_of(std::string name, PartKind kind, Outline outline, double thickness,
                        Frame sheet = {}) {
  return {std::move(name), kind, "board 18", std::move(outline), thickness, sheet, {}, {}, false};
}

inline PartSpec board(std::string name = "board") {
  return spec_of(std::move(name), PartKind::spacer_block, rectangle({0, 0}, {1200, 120}), 18);
}

// A bore of 10 through with a counterbore 20 x 6 from the far face, at (600, 60).
inline Part counterbored_board() {
  PartSpec spec = board();
  spec.bores = {{BoreUse::foot_screw, 10, {}, Counterbore{20, 6}, {600, 60, 18}, {0, 0, -1}}};
  return make_part(spec);
}

// X along it, Y up from its underside, Z across its width: `screws` counterbored bores from below every 150,
// and five strap bores across at each end.
inline Part beam(std::string name = "beam", int screws = 5) {
  const double length = 150.0 * (screws + 1) + 400;
  PartSpec spec = spec_of(std::move(name), PartKind::beam, rectangle({-length / 2, 0}, {length / 2, 90}), 46);
  for (int i = 0; i < screws; ++i)
    spec.bores.push_back({BoreUse::foot_screw,
                          6,
                          {},
                          Counterbore{16, 50},
                          {150 * (i - (screws - 1) / 2.0), 0, 23},
                          {0, 1, 0}});
  for (int side : {-1, 1})
    for (int i = 0; i < 5; ++i)
      spec.bores.push_back(
          {BoreUse::strap, 12, {}, {}, {side * (length / 2 - 60 - 25 * i), 30, 0}, {0, 0, 1}});
  return make_part(spec);
}

inline Part spacer(std::string name = "spacer-block") {
  return make_part(spec_of(std::move(name), PartKind::spacer_block, rectangle({0, 0}, {132, 70}), 45));
}

// The board under a contact edge that is drawn left to right: square sides down to a base 100 under its
// lowest point.
inline Outline former_outline(const Profile& contact) {
  const double base = contact.box().low.y() - 100;
  const Vec2 left{contact.start().point.x(), base}, right{contact.end().point.x(), base};
  std::vector<Segment> loop{line(left, right), line(right, contact.end().point)};
  const std::vector<Segment> edge = segments(contact);
  for (auto s = edge.rbegin(); s != edge.rend(); ++s) loop.push_back(s->reversed());
  loop.push_back(line(contact.start().point, left));
  return {loop, "former"};
}

// A caul-screw pilot square to the contact edge at a station of it.
inline BoreSpec pilot(const Profile& contact, double station) {
  const Pose at = contact.at(station);
  const Vec2 in = -at.normal();
  return {BoreUse::caul_pilot, 3, 30, {}, {at.point.x(), at.point.y(), 9}, {in.x(), in.y(), 0}};
}

// Crowns, a flat and a hollow, about level.
inline Profile waved_contact() {
  return {{{-330, 0}, radians(28)},
          {straight(80), bend(50, 300), bend(-35, 260), straight(120), bend(20, 400)}};
}

inline BoreSpec foot_pilot(double x, double base) {
  return {BoreUse::foot_pilot, 3.5, 60, {}, {x, base, 9}, {0, 1, 0}};
}

// With every kind of pilot: on a crown, in a hollow, on a flat, on the joint of line and arc and of two arcs;
// foot pilots from below and a clamp hole.
inline Part former(std::string name = "former-lower") {
  const Profile contact = waved_contact();
  PartSpec spec = spec_of(std::move(name), PartKind::former_lower, former_outline(contact), 18);
  spec.board = true;
  for (const double s : {contact.station(1), 200.0, contact.station(2), 420.0, 560.0})
    spec.bores.push_back(pilot(contact, s));
  const double base = contact.box().low.y() - 100;
  for (const double x : {-150.0, 0.0, 150.0}) spec.bores.push_back(foot_pilot(x, base));
  spec.bores.push_back({BoreUse::clamp, 35, {}, {}, {-40, base + 90, 18}, {0, 0, -1}});
  return make_part(spec);
}

inline Part plain_former(const Profile& contact, std::string name = "former-lower") {
  return make_part(spec_of(std::move(name), PartKind::former_lower, former_outline(contact), 18));
}

// The strip between a profile and its parallel, `width` wide: a panel.
inline Part panel(const Profile& inner, double thickness, double width, std::string name = "panel") {
  const Profile outer = offset(inner, thickness);
  std::vector<Segment> loop = segments(inner);
  loop.push_back(line(inner.end().point, outer.end().point));
  const std::vector<Segment> back = segments(outer);
  for (auto s = back.rbegin(); s != back.rend(); ++s) loop.push_back(s->reversed());
  loop.push_back(line(outer.start().point, inner.start().point));
  return make_part(spec_of(std::move(name), PartKind::panel, Outline(loop, "panel"), width));
}

// 20 x 20 through bores of 8 in a square plate 400 x 400 x 18.
inline Part plate_of_400_holes() {
  PartSpec spec = spec_of("plate", PartKind::fixing_block, rectangle({0, 0}, {400, 400}), 18);
  for (int i = 0; i < 20; ++i)
    for (int j = 0; j < 20; ++j)
      spec.bores.push_back({BoreUse::clamp, 8, {}, {}, {10.0 + 20 * i, 10.0 + 20 * j, 0}, {0, 0, 1}});
  return make_part(spec);
}

}  // namespace lamwright::test
