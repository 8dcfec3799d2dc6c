#include "tests/exporters/svg/sample_plan.hpp"

#include <cmath>

#include "shared/units.hpp"

namespace lamwright::sample {
namespace {

constexpr double kTurn = radians(120);
constexpr double kBoard = 18, kBeamWidth = 46, kBeamDepth = 90, kPackWidth = 930;
// Widest piece is the strap of 50: mid-planes from 25 to 905.
constexpr double kStations[] = {25, 25 + 880.0 / 3, 25 + 2 * 880.0 / 3, 905};

// Contact edge: 25 straight, radius 362 through 120 degrees, 25 straight; its left end at (-326.0012,
// 123.3980).
Profile contact() {
  const Profile bend({{0, 0}, kTurn / 2}, {{25, 0}, {362 * kTurn, 1 / 362.0}, {25, 0}});
  return bend.moved(Vec2(-362 * std::sqrt(3) / 2 - 12.5, 123.3980142) - bend.start().point);
}

// The arc of that radius about the bend's centre.
Profile bend(double radius) {
  const Profile edge = contact();
  const Pose begin = edge.pose(1);
  return {{begin.point + (radius - 362) * begin.normal(), begin.heading}, {{radius * kTurn, 1 / radius}}};
}

std::vector<BoreSpec> former_bores() {
  std::vector<BoreSpec> bores;
  for (const double x : {0.0, 150.0, -150.0})
    bores.push_back({BoreUse::foot_pilot, 3.5, 60, std::nullopt, {x, 0, kBoard / 2}, {0, 1, 0}});
  const Profile edge = contact();
  for (const double share : {0.02, 0.5, 0.98}) {
    const Pose pose = edge.at(share * edge.girth());
    const Vec2 in = -pose.normal();
    bores.push_back({BoreUse::caul_pilot,
                     3,
                     30,
                     std::nullopt,
                     {pose.point.x(), pose.point.y(), kBoard / 2},
                     {in.x(), in.y(), 0}});
  }
  for (const double x : {-190.0, 190.0})
    bores.push_back({BoreUse::clamp, 35, std::nullopt, std::nullopt, {x, 150, kBoard}, {0, 0, -1}});
  bores.push_back({BoreUse::clamp, 8, 12, Counterbore{16, 4}, {60, 180, kBoard}, {0, 0, -1}});
  return bores;
}

std::vector<Slat> slats(const Profile& line, double pitch, double width) {
  std::vector<Slat> out;
  const double middle = line.girth() / 2;
  const int each = static_cast<int>((middle - width / 2) / pitch);
  for (int i = -each; i <= each; ++i)
    out.push_back({middle + i * pitch - width / 2, middle + i * pitch + width / 2});
  return out;
}

Panel panel() {
  Panel panel{.width = 900,
              .trim = 15,
              .count = 1,
              .face = Face::inner,
              .thickness = 12,
              .glue_line = 0,
              .cover = 3,
              .cover_stock = "hardboard",
              .glue = "pvac-d3",
              .neutral_height = 6,
              .plies = {},
              .springback = {},
              .released = bend(400),
              .pressed = bend(406)};
  for (int i = 0; i < 8; ++i)
    panel.plies.push_back({"birch", 1.5, 0, 12000, 600, i * 1.5, i * 1.5 + 1.5, 690, {}});
  return panel;
}

Part block() {
  PartSpec spec{"spacer-block",
                PartKind::spacer_block,
                "softwood 45 x 70",
                rectangle({0, 0}, {880.0 / 3 - kBoard, 70}),
                45,
                {},
                {},
                {},
                false};
  return make_part(std::move(spec));
}

StrapEnd strap_end(double side) {
  return {{side * 389.7114, 189.0487}, {side * 411.5004, -60}, 250, radians(25), std::nullopt};
}

Frame at(double x, double y, double z) { return {{x, y, z}, {1, 0, 0}, {0, 1, 0}}; }

void add_bodies(PressPlan& plan) {
  int count = 0;
  for (const double z : kStations) {
    const std::string number = "-0" + std::to_string(++count);
    plan.bodies.push_back({1, at(0, -kBeamDepth, z - kBeamWidth / 2), Group::lower, "beam" + number});
    plan.bodies.push_back({0, at(0, 0, z - kBoard / 2), Group::lower, "former-lower" + number});
    if (count == 4) break;
    for (const double x : {-260.0, 0.0, 230.0})
      plan.bodies.push_back({2,
                             {{x, x == 0 ? 220.0 : 60.0, z + kBoard / 2}, {0, 0, 1}, {0, 1, 0}},
                             Group::lower,
                             "spacer-block" + number});
  }
}

void add_closures(PressPlan& plan) {
  for (const double z : kStations) {
    plan.sections.push_back({z, contact(), std::nullopt, true});
    plan.closures.push_back({z, strap_end(-1), strap_end(1), 2500, "strap-50", 50, 230, false});
  }
}

}  // namespace

Part former() {
  std::vector<Segment> loop = segments(contact());
  const Vec2 left = loop.front().from, right = loop.back().to;
  loop.push_back(line(right, {right.x(), 0}));
  loop.push_back(line({right.x(), 0}, {left.x(), 0}));
  loop.push_back(line({left.x(), 0}, left));
  PartSpec spec{"former-lower",
                PartKind::former_lower,
                "plywood 18",
                Outline(loop, "former-lower"),
                kBoard,
                {},
                former_bores(),
                {},
                true};
  spec.marks.push_back({Mark::Kind::centre_line, {line({0, 0}, {0, 60})}, {}, {0, 0}, 0, 0});
  spec.marks.push_back({Mark::Kind::label, {}, "station __ of 4", {-100, 20}, 0, 10});
  return make_part(std::move(spec));
}

Part beam() {
  PartSpec spec{"beam",
                PartKind::beam,
                "D40 46 x 90",
                rectangle({-521.5004, 0}, {521.5004, kBeamDepth}),
                kBeamWidth,
                {},
                {},
                {},
                false};
  for (const double x : {-150.0, 0.0, 150.0})
    spec.bores.push_back(
        {BoreUse::foot_screw, 6, std::nullopt, Counterbore{16, 50}, {x, 0, kBeamWidth / 2}, {0, 1, 0}});
  for (const double middle : {-411.5004, 411.5004})
    for (int i = -2; i <= 2; ++i)
      spec.bores.push_back(
          {BoreUse::strap, 12, std::nullopt, std::nullopt, {middle + 25 * i, 30, 0}, {0, 0, 1}});
  return make_part(std::move(spec));
}

// Only what a press cannot do without; members added to the plan later keep their own defaults.
#pragma GCC diagnostic push
#pragma GCC diagnostic ignored "-Wmissing-field-initializers"
PressPlan plan(const std::string& title) {
  PressPlan plan{.title = title,
                 .date = "2024-05-02",
                 .number = "1a2b3c4d",
                 .method = "one-part",
                 .reason = "one crown, no hollow",
                 .panel = panel(),
                 .neutral = bend(406)};
  plan.parts = {former(), beam(), block()};
  plan.beam_depth = kBeamDepth;
  plan.min_depth = 100;
  plan.strap_free = 250;
  add_bodies(plan);
  add_closures(plan);
  plan.layers = {{Layer::Kind::bed_caul, contact(), 35, slats(contact(), 30, 28)},
                 {Layer::Kind::cover, bend(397), 3, {}},
                 {Layer::Kind::panel, bend(400), 12, {}},
                 {Layer::Kind::cover, bend(412), 3, {}},
                 {Layer::Kind::top_caul, bend(415), 35, slats(bend(415), 30, 28)}};
  return plan;
}

Job job() {
  const Profile face({{0, 0}, 0}, {{400 * kTurn, 1 / 400.0}});
  Job job{.title = "Reading-room desk front",
          .number = "1a2b3c4d",
          .panel = {.width = 900, .trim = 15, .profile = face}};
  job.outputs.paper = "a3";
  return job;
}
#pragma GCC diagnostic pop

}  // namespace lamwright::sample
