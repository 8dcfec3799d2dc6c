#include "exporters/scene/scene.hpp"

#include <catch2/catch.hpp>
#include <cmath>
#include <map>
#include <set>

#include "kernel/press/layers.hpp"
#include "kernel/press/strap_path.hpp"
#include "shared/units.hpp"
#include "tests/exporters/scene/suite.hpp"
#include "tests/support/expect.hpp"

using namespace lamwright;
using namespace lamwright::test;
using scene::Kind;
using scene::Piece;
using scene::Scene;

namespace {

// CIE 1976 lightness of an sRGB colour (CIE 15:2004, 8.2.1; IEC 61966-2-1).
double lightness(const std::string& colour) {
  const double weights[] = {0.2126, 0.7152, 0.0722};
  double y = 0;
  for (int i = 0; i < 3; ++i) {
    const double share = std::stoi(colour.substr(std::size_t(1 + 2 * i), 2), nullptr, 16) / 255.0;
    y += weights[i] * (share <= 0.04045 ? share / 12.92 : std::pow((share + 0.055) / 1.055, 2.4));
  }
  return 116 * std::cbrt(y) - 16;
}

std::size_t sheets(const PressPlan& plan) {
  return std::size_t(std::count_if(plan.layers.begin(), plan.layers.end(), [](const Layer& layer) {
    return layer.kind != Layer::Kind::panel && layer.slats.empty();
  }));
}

}  // namespace

TEST_CASE("Every kind of piece has a title and a grey of its own") {
  std::set<std::string> titles;
  std::vector<double> greys;
  for (std::size_t i = 0; i < scene::kKinds; ++i) {
    titles.insert(scene::title(Kind(i)));
    greys.push_back(lightness(scene::colour(Kind(i))));
  }
  CHECK(titles.size() == 10);
  std::sort(greys.begin(), greys.end());
  REQUIRE(greys.size() == 10);
  // Two per cent of the scale is what an eye tells apart side by side; twice that on a page.
  for (std::size_t i = 1; i < greys.size(); ++i) CHECK(greys[i] - greys[i - 1] > 4);
}

TEST_CASE("A scene holds each body of the plan, each sheet, strap and pin once, by kind and name") {
  std::size_t seen = 0;
  for (const Shown& press : shown_presses()) {
    INFO(press.name);
    std::map<std::string, const Piece*> named;
    for (const Piece& one : press.scene.pieces) named[one.name] = &one;
    CHECK(named.size() == press.scene.pieces.size());
    for (const Body& body : press.plan.bodies) {
      REQUIRE(named.count(body.name) == 1);
      const Piece& one = *named[body.name];
      CHECK(press.scene.shapes[one.shape].name == press.plan.parts[body.part].name());
      CHECK(press.scene.shapes[one.shape].stock == press.plan.parts[body.part].stock());
      CHECK(same(one.placed.origin, body.placed.origin));
      ++seen;
    }
    CHECK(press.scene.pieces.size() - press.plan.bodies.size() - pieces(press.scene, Kind::strap).size() -
              pieces(press.scene, Kind::block, "roller").size() ==
          sheets(press.plan) + press.plan.pins.size());
    CHECK(std::is_sorted(press.scene.pieces.begin(), press.scene.pieces.end(),
                         [](const Piece& a, const Piece& b) {
                           return std::make_pair(a.kind, a.name) < std::make_pair(b.kind, b.name);
                         }));
  }
  CHECK(seen > 500);
}

TEST_CASE("Slats under the pack and over it are told apart, on one mould and between two") {
  int seen = 0;
  for (const char* name : {"one mould", "one mould, flats", "two moulds"}) {
    const Shown& press = shown_press(name);
    const auto below = pieces(press.scene, Kind::bed_caul), above = pieces(press.scene, Kind::top_caul);
    REQUIRE(press.plan.cauls.size() == 2);
    const auto count = [](const PlannedCaul& caul) {
      std::size_t sum = 0;
      for (const ScheduledRun& run : caul.schedule.runs) sum += std::max<std::size_t>(1, run.pieces.size());
      return sum;
    };
    CHECK(below.size() == count(press.plan.cauls[0]));
    CHECK(above.size() == count(press.plan.cauls[1]));
    // Seen from the panel: along the blank's normal at the slat's middle.
    const double depth = press.plan.panel.thickness + press.plan.panel.cover;
    for (const auto* side : {&below, &above})
      for (const Piece* slat : *side) {
        const Part::Box box = room(press.scene, *slat);
        const Vec2 middle = ((box.low + box.high) / 2).head<2>();
        const Profile& line = press.plan.neutral;
        const Pose at = line.at(line.nearest(middle).station);
        CHECK(((middle - at.point).dot(at.normal()) > 0) == (side == &above));
        CHECK((middle - at.point).norm() < depth + 60);
        ++seen;
      }
  }
  CHECK(seen > 100);
}

TEST_CASE("Sheets that are laid in are as wide as the pack and as thick as they are") {
  int seen = 0;
  for (const Shown& press : shown_presses()) {
    INFO(press.name);
    for (const Layer& layer : press.plan.layers) {
      if (layer.kind == Layer::Kind::panel || !layer.slats.empty()) continue;
      const double face = Outline(layer_loop(layer), "layer").area();
      // Chords keep within 0.1 of arcs that are 50 and more in radius.
      const double volume = face * press.plan.panel.blank_width();
      CHECK(std::any_of(press.scene.shapes.begin(), press.scene.shapes.end(), [&](const scene::Shape& shape) {
        return shape.name.rfind(to_text(layer.kind), 0) == 0 &&
               std::abs(shape.mesh.volume() - volume) < 0.01 * volume;
      }));
      ++seen;
    }
  }
  CHECK(seen >= 25);
  const Scene& lined = shown_press("two moulds, bare with a liner").scene;
  std::vector<std::string> names;
  for (const Piece* one : pieces(lined, Kind::cover)) names.push_back(one->name);
  CHECK(names ==
        std::vector<std::string>{"cover-lower-01", "cover-upper-01", "liner-lower-01", "liner-upper-01"});
  CHECK(pieces(shown_press("one mould, continuous caul").scene, Kind::top_caul).front()->name ==
        "top-caul-01");
}

TEST_CASE("Equal pieces share a shape") {
  const Shown& press = shown_press("one mould");
  const auto straps = pieces(press.scene, Kind::strap, "strap");
  REQUIRE(straps.size() == 4);
  for (const Piece* strap : straps) CHECK(strap->shape == straps.front()->shape);
  std::set<std::size_t> used;
  for (const Piece& one : press.scene.pieces) used.insert(one.shape);
  CHECK(used.size() == press.scene.shapes.size());
}

TEST_CASE("Over a single mould everything above the lower cover lifts layer by layer") {
  const Shown& press = shown_press("one mould");
  const double step = piece(press.scene, "panel-01").opens.y();
  CHECK(step >= 60);
  const auto lifts = [&](const Piece& one, double steps) {
    return same(one.opens, Vec3(0, steps * step, 0));
  };
  for (const Kind kind : {Kind::beam, Kind::former, Kind::block, Kind::bed_caul}) {
    REQUIRE_FALSE(pieces(press.scene, kind).empty());
    for (const Piece* one : pieces(press.scene, kind)) CHECK(lifts(*one, 0));
  }
  CHECK(lifts(piece(press.scene, "cover-lower-01"), 0));
  CHECK(lifts(piece(press.scene, "cover-upper-01"), 2));
  for (const Piece* one : pieces(press.scene, Kind::top_caul)) CHECK(lifts(*one, 3));
  for (const Piece* one : pieces(press.scene, Kind::strap)) CHECK(lifts(*one, 4));
  for (const Piece* one : pieces(press.scene, Kind::pin)) CHECK(lifts(*one, 3));
  CHECK(pieces(press.scene, Kind::pin).size() == 2);

  double high = -INFINITY, low = INFINITY;
  for (const Body& body : press.plan.bodies) {
    const Part::Box box = room(press.scene, piece(press.scene, body.name));
    high = std::max(high, box.high.y());
    low = std::min(low, box.low.y());
  }
  CHECK(step == Approx((high - low) / 5).epsilon(0.001));  // chords of the mesh against the part's own box
}

TEST_CASE("Pressing beams lift over the straps, for they lie on them") {
  const Shown& press = shown_press("one mould, flats");
  const double step = piece(press.scene, "panel-01").opens.y();
  const auto beams = pieces(press.scene, Kind::pressing_beam);
  REQUIRE_FALSE(beams.empty());
  for (const Piece* one : beams) CHECK(one->opens.y() == Approx(5 * step));
  for (const Piece* one : pieces(press.scene, Kind::strap)) CHECK(one->opens.y() == Approx(4 * step));
}

TEST_CASE(
    "Two halves part by the opening, with the panel in the middle of the gap and the loops off the beams") {
  int seen = 0;
  for (const char* name : {"two moulds", "two moulds, bare with a liner", "two moulds, leaning", "flat"}) {
    INFO(name);
    const Shown& press = shown_press(name);
    const Vec3 whole{press.plan.opening.x(), press.plan.opening.y(), 0};
    REQUIRE(whole.norm() > 10);
    for (const Body& body : press.plan.bodies) {
      const double share = body.group == Group::upper ? 1 : body.group == Group::panel ? 0.5 : 0;
      CHECK(same(piece(press.scene, body.name).opens, share * whole));
      ++seen;
    }
    if (press.plan.panel.cover > 0) {
      CHECK(same(piece(press.scene, "cover-lower-01").opens, Vec3(0, 0, 0)));
      CHECK(same(piece(press.scene, "cover-upper-01").opens, whole));
    }
    double left = INFINITY, right = -INFINITY;
    for (const Piece* one : pieces(press.scene, Kind::beam)) {
      left = std::min(left, room(press.scene, *one).low.x());
      right = std::max(right, room(press.scene, *one).high.x());
    }
    const auto straps = pieces(press.scene, Kind::strap);
    CHECK(straps.size() == 4 * press.plan.closures.size());  // two loops a station, a ratchet each
    for (const Piece* strap : straps) {
      const Part::Box box = room(press.scene, *strap);
      CHECK((box.high.x() + strap->opens.x() < left || box.low.x() + strap->opens.x() > right));
    }
  }
  CHECK(seen > 100);
}

TEST_CASE(
    "A strap lies on its line in the plane of its former and a ratchet where the section has its room") {
  int seen = 0;
  for (const char* name : {"one mould", "one mould, flats", "one mould, rollers"}) {
    const Shown& press = shown_press(name);
    const auto straps = pieces(press.scene, Kind::strap, "strap"),
               ratchets = pieces(press.scene, Kind::strap, "ratchet");
    REQUIRE(straps.size() == press.plan.closures.size());
    REQUIRE(ratchets.size() == 2 * straps.size());
    for (std::size_t i = 0; i < straps.size(); ++i) {
      const Closure& closure = press.plan.closures[i];
      const auto path = strap_path(press.plan, closure);
      for (const Vec3& p : points(press.scene, *straps[i])) {
        double away = INFINITY;
        for (const Segment& s : path) away = std::min(away, distance(s, p.head<2>()));
        CHECK((away < 0.15 || away == Approx(2).margin(0.15)));  // chords keep within 0.1 of the arcs
        CHECK(std::abs(p.z() - closure.z) == Approx(closure.width / 2));
      }
      for (const std::size_t end : {2 * i, 2 * i + 1}) {
        const Vec2 mark = end % 2 == 0 ? closure.left.mark : closure.right.mark;
        for (const Vec3& p : points(press.scene, *ratchets[end])) {
          CHECK((p.head<2>() - mark).norm() < std::hypot(ratchet_space(press.plan, closure), 30) + 1e-6);
          CHECK(std::abs(p.z() - closure.z) == Approx(closure.width / 2 + 10));
        }
        CHECK(press.scene.shapes[ratchets[end]->shape].mesh.volume() ==
              Approx(closure.ratchet * 40 * (closure.width + 20)));
      }
      ++seen;
    }
  }
  CHECK(seen > 8);
}

TEST_CASE("Rollers are round bars where the straps turn") {
  const Shown& press = shown_press("one mould, rollers");
  const auto rollers = pieces(press.scene, Kind::block, "roller");
  REQUIRE(rollers.size() == 2 * press.plan.closures.size());
  const Closure& closure = press.plan.closures.front();
  REQUIRE(closure.right.roller);
  for (const Vec3& p : points(press.scene, *rollers[1]))
    CHECK((p.head<2>() - closure.right.roller->axis).norm() <= closure.right.roller->diameter / 2 + 1e-9);
}

TEST_CASE("Pins stand square to the panel, of their diameter") {
  int seen = 0;
  for (const Shown& press : shown_presses()) {
    const auto bars = pieces(press.scene, Kind::pin);
    REQUIRE(bars.size() == press.plan.pins.size());
    for (std::size_t i = 0; i < bars.size(); ++i) {
      const Pin& pin = press.plan.pins[i];
      const Segment axis = pin_line(press.plan, pin);
      for (const Vec3& p : points(press.scene, *bars[i])) {
        const Vec2 from = p.head<2>() - axis.from;
        CHECK(std::hypot(cross(axis.tangent(0), from), p.z() - pin.at.z()) <= pin.diameter / 2 + 1e-9);
        const double along = axis.tangent(0).dot(from);
        CHECK((std::abs(along) < 1e-9 || along == Approx(axis.length())));
      }
      ++seen;
    }
  }
  CHECK(seen >= 4);
}

TEST_CASE("A part alone stands in its own frame") {
  const PressPlan& plan = shown_press("one mould").plan;
  const Scene alone = scene::scene_of(plan.parts.front());
  REQUIRE(alone.shapes.size() == 1);
  REQUIRE(alone.pieces.size() == 1);
  CHECK(alone.shapes[0].name == plan.parts.front().name());
  CHECK(same(alone.pieces[0].placed.origin, Vec3(0, 0, 0)));
  CHECK(same(alone.pieces[0].opens, Vec3(0, 0, 0)));
  CHECK(alone.shapes[0].mesh.volume() == Approx(plan.parts.front().volume()).epsilon(0.005));
}
