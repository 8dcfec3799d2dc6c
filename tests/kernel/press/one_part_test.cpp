#include <algorithm>
#include <catch2/catch.hpp>
#include <set>

#include "kernel/profile/offset.hpp"
#include "shared/number.hpp"
#include "shared/units.hpp"
#include "tests/support/jobs.hpp"

using namespace lamwright;
using namespace lamwright::test;

namespace {

std::string crown(double turn, double radius, double width = 900, double trim = 15) {
  return "width = " + number(width) + "\ntrim = " + number(trim) + "\nprofile = [{bend = " + number(turn) +
         ", radius = " + number(radius) + "}]";
}

const Part& former_of(const PressPlan& plan) {
  for (const Part& part : plan.parts)
    if (part.kind() == PartKind::former_lower) return part;
  throw std::runtime_error("no former");
}

std::size_t bodies_of(const PressPlan& plan, PartKind kind) {
  return std::size_t(std::count_if(plan.bodies.begin(), plan.bodies.end(),
                                   [&](const Body& body) { return plan.parts[body.part].kind() == kind; }));
}

// Least distance inside the right strap line of the former's points below the contact edge's end.
double side_clearance(const PressPlan& plan) {
  const StrapEnd& strap = plan.closures.front().right;
  const Vec2 down = (strap.mark - strap.leaves).normalized();
  double least = INFINITY;
  for (const Segment& s : former_of(plan).outline().segments())
    for (const Vec2& p : {s.from, s.to}) least = std::min(least, inside_strap(p, strap.leaves, down, 1));
  return least;
}

}  // namespace

TEST_CASE("Contact edges are the inner face less cover, caul and liner, carried on past the pack") {
  const PressPlan plan = planned(job_text(crown(90, 400), birch(6),
                                          "[press]\nspringback = \"none\"\n[caul]\nkind = {thickness = "
                                          "20}\nliner = 2\n[formers]\nextend = 30\n"));
  const auto& runs = plan.sections.front().lower.runs();
  REQUIRE(runs.size() == 3);
  CHECK(runs[0].length == Approx(15 + 30));
  CHECK(1 / runs[1].curvature == Approx(400 - 3 - 20 - 2));
  CHECK(runs[2].length == Approx(15 + 30));
}

TEST_CASE("Sheathing and liners move the contact edge; a sheathed mould has no straps unless asked for") {
  const std::string sheathed =
      "[press]\nspringback = \"none\"\n[caul]\nkind = \"sheathed\"\nsheathing = [3, 3]\n[formers]\nspacing = "
      "{max_clear = 76.2}\n";
  const PressPlan plan = planned(
      job_text("width = 1016\ntrim = 0\nprofile = [{bend = 60, radius = 600}]",
               "glue_line = 0\ncover = 0\nplies = [{timber = \"birch-yellow\", thickness = 1.5, count = 6}]",
               sheathed));
  CHECK(1 / plan.sections.front().lower.runs()[1].curvature == Approx(594));  // face R600, two sheets of 3
  CHECK(plan.closures.empty());
  CHECK(plan.sections.size() == 12);  // boards flush: 1016 wide, 18 thick, at most 76.2 clear
  CHECK(plan.spacing.clear == Approx(72.7273).margin(1e-4));
  CHECK(bodies_of(plan, PartKind::beam) == 0);
  CHECK(bodies_of(plan, PartKind::bearer) == 12);
}

TEST_CASE("A slatted caul without straps is refused") {
  CHECK(only_error(evaluated(job_text(crown(90, 400), birch(6), "[straps]\nkind = \"none\"\n"))) ==
        "job.toml: straps.kind: \"none\" leaves nothing that presses the pack into a slatted caul; take it "
        "out, or use a sheathed or bare mould");
}

TEST_CASE("The top caul keeps whole slats inside the pack and the strap leaves at the last one's edge") {
  // One bend, no trim: no change of shape, so open lagging throughout. Girth of the cover's outer face:
  // (400 + 12 + 3) * pi / 2 = 651.88; from the middle outward 22.5, then 50 a slat: 6 each side reach 322.5.
  const PressPlan plan = planned(job_text(
      crown(90, 400, 900, 0), birch(8),
      "[press]\nspringback = \"none\"\n[caul]\nkind = {thickness = 28, pitch = 50, coverage = 0.9}\n"));
  const auto top = std::find_if(plan.layers.begin(), plan.layers.end(),
                                [](const Layer& l) { return l.kind == Layer::Kind::top_caul; });
  REQUIRE(top != plan.layers.end());
  REQUIRE(top->slats.size() == 13);
  CHECK(top->slats.front().from == Approx(651.8805 / 2 - 322.5).margin(1e-3));
  CHECK(plan.uncovered_left == Approx(651.8805 / 2 - 322.5).margin(1e-3));
  const double station = 651.8805 / 2 + 322.5;
  const Pose pose = top->inner.at(station);
  const Vec2 leaves = pose.point + 28 * pose.normal();
  CHECK((plan.closures.front().right.leaves - leaves).norm() == Approx(0).margin(1e-3));
}

TEST_CASE("The bed caul covers the whole contact edge with its last slats cut flush") {
  const PressPlan plan = planned(job_text(crown(100, 450), birch(7)));
  const auto bed = std::find_if(plan.layers.begin(), plan.layers.end(),
                                [](const Layer& l) { return l.kind == Layer::Kind::bed_caul; });
  REQUIRE(bed != plan.layers.end());
  CHECK(bed->slats.front().from == Approx(0).margin(1e-9));
  CHECK(bed->slats.back().to == Approx(plan.sections.front().lower.girth()));
}

TEST_CASE("Under a shape that turns past the strap the sides lean with the strap, thirty inside it") {
  const PressPlan plan = planned(job_text(crown(180, 300), birch(6)));
  CHECK(plan.foot_sloped);
  CHECK(plan.foot_width >= std::max(150.0, plan.former_height / 3));
  CHECK(side_clearance(plan) >= 30 - 1e-6);
  // The side is parallel to the strap.
  const StrapEnd& strap = plan.closures.front().right;
  const Vec2 down = (strap.mark - strap.leaves).normalized();
  bool parallel = false;
  for (const Segment& s : former_of(plan).outline().segments())
    parallel = parallel || (s.straight() && std::abs(cross(s.tangent(0), down)) < 1e-9 && s.length() > 50);
  CHECK(parallel);
}

TEST_CASE("A contact edge's end too near the strap is drawn in before the plan is refused") {
  const PressPlan near =
      planned(job_text(crown(80, 130, 150, 12), birch(5),
                       "[caul]\nkind = {thickness = 15}\n[formers]\nspacing = {count = 2}\n"));
  const double extend = near.sections.front().lower.runs().front().length - 12;
  CHECK(extend < 25);
  CHECK(extend > 0);
  CHECK(side_clearance(near) == Approx(30).margin(1e-6));
  // Stack 3 + 8 + 7.5 + 3 + 8 = 29.5 along the normal: cos 25 of it is 26.7.
  const std::string refused =
      only_error(evaluated(job_text(crown(80, 130, 150, 12), birch(5),
                                    "[caul]\nkind = {thickness = 8}\n[formers]\nspacing = {count = 2}\n")));
  CHECK(refused ==
        "job.toml: left side of the former: the strap line passes 26.7 from the contact edge's end; 30 are "
        "needed beside the ratchet; use a thicker caul, or one whose slats reach nearer to the pack's end");
}

TEST_CASE(
    "Where sloped sides leave no foot a guide roller is tried, then the plan is refused with the angle") {
  const std::string message = only_error(evaluated(job_text(crown(240, 150), birch(6))));
  INFO(message);
  CHECK(message.find("former: between straps that leave at 25 degrees its foot is only") !=
        std::string::npos);
  CHECK(message.find("allowed 20 to 30") != std::string::npos);
}

TEST_CASE("A narrow square-sided foot steps out to 150 where that stays inside the strap") {
  // Contact edge R112 (150 - 3 - 35): 2 (112 sin 20 + 25 cos 20) = 123.6 wide.
  const PressPlan plan = planned(job_text(crown(40, 150, 400, 0), birch(8), kWorked));
  CHECK_FALSE(plan.foot_sloped);
  CHECK(plan.foot_width == Approx(150));
  const Part& former = former_of(plan);
  CHECK(former.outline().contains({74, 30}));
  CHECK_FALSE(former.outline().contains({74, 65}));
  CHECK(side_clearance(plan) >= 10);
}

TEST_CASE(
    "A continuous caul has its datum at the middle of the girth, a slatted one on an L at the bend's "
    "middle") {
  const std::string ell =
      "width = 500\ntrim = 0\nprofile = [{line = 500}, {bend = 80, radius = 200}, {line = 150}]";
  const auto datum_pilots = [&](const std::string& caul) {
    const PressPlan plan =
        planned(job_text(ell, birch(6), "[press]\nspringback = \"none\"\n[caul]\nkind = " + caul + "\n"));
    std::vector<double> stations;
    for (const Bore& bore : bores_for(former_of(plan), BoreUse::caul_pilot))
      stations.push_back(plan.sections.front().lower.nearest(bore.at.head<2>()).station);
    return std::pair(plan, stations);
  };
  const auto holds_station = [](const std::vector<double>& stations, double s) {
    return std::any_of(stations.begin(), stations.end(), [&](double x) { return std::abs(x - s) < 1e-6; });
  };
  const auto [continuous, at] = datum_pilots("{thickness = 28}");
  const double middle = continuous.neutral.girth() / 2;  // 467.8 round the neutral line: in the first flat
  CHECK(holds_station(at, 25 + middle));
  const auto [slatted, under] = datum_pilots("{thickness = 28, pitch = 50, coverage = 0.9}");
  const Profile& contact = slatted.sections.front().lower;
  CHECK(holds_station(under, (contact.station(1) + contact.station(2)) / 2));
}

TEST_CASE("Guide rollers make the former smaller and keep the ratchet's run beyond them") {
  const std::string job = crown(100, 450);
  const PressPlan plain = planned(job_text(job, birch(8)));
  const PressPlan rolled = planned(job_text(job, birch(8), "[press]\nguide_rollers = true\n"));
  CHECK(former_of(rolled).box().size().y() < former_of(plain).box().size().y());
  CHECK(rolled.sections.front().lower.box().low.y() == Approx(100));  // the least depth governs
  const StrapEnd& strap = rolled.closures.front().right;
  REQUIRE(strap.roller);
  CHECK(strap.run >= 250 - 1e-6);
  CHECK((strap.mark - strap.roller->off).norm() == Approx(strap.run));
  CHECK((strap.roller->on - strap.roller->axis).norm() == Approx(30));
  CHECK((strap.roller->off - strap.roller->axis).norm() == Approx(30));
  // Both legs touch the roller as tangents.
  CHECK((strap.roller->on - strap.roller->axis).dot(strap.leaves - strap.roller->on) ==
        Approx(0).margin(1e-6));
  CHECK(strap.mark.y() == Approx(-60));
  CHECK(strap.mark.x() < strap.roller->axis.x());
}

TEST_CASE("A former's foot carries its guide rollers, five beside them and ten inside the strap") {
  const std::string more = "[press]\nguide_rollers = true\n";
  // Straps that leave flat, steep, leaning in; one that meets its roller far out; a thin one left at 20.
  const std::vector<std::string> jobs{
      job_text(crown(60, 900, 600), birch(8), more), job_text(crown(110, 415, 600), birch(8), more),
      job_text(crown(180, 415, 600), birch(8), more),
      job_text("width = 600\nprofile = [{line = 200}, {bend = 10, radius = 500}, {line = 60}]", birch(4),
               more),
      job_text(crown(20, 900, 600), birch(4), more + "[straps]\nkind = \"strap-25\"\nexit = 20\n")};
  int seen = 0, reached = 0, cut_back = 0;
  for (const std::string& job : jobs) {
    const PressPlan plan = planned(job);
    const Outline& outline = former_of(plan).outline();
    const Closure& closure = plan.closures.front();
    const double beside = closure.left.roller->diameter / 2 + 5;
    CHECK(plan.foot_width ==
          Approx(closure.right.roller->axis.x() - closure.left.roller->axis.x() - 2 * beside));
    const Profile& contact = plan.sections.front().lower;
    for (const int side : {-1, 1}) {
      const StrapEnd& end = side < 0 ? closure.left : closure.right;
      CHECK_FALSE(outline.contains(end.roller->axis));
      CHECK(outline.distance(end.roller->axis) == Approx(beside));
      const Vec2 down = (end.roller->on - end.leaves).normalized();
      for (const Segment& s : outline.segments())
        CHECK(inside_strap(s.from, end.leaves, down, side) >= 10 - 1e-6);
      const double top = side * (side < 0 ? contact.start() : contact.end()).point.x();
      (top < side * end.roller->axis.x() - beside ? reached : cut_back)++;
      ++seen;
    }
  }
  CHECK(seen == 10);
  CHECK(reached >= 4);
  CHECK(cut_back >= 4);
}

TEST_CASE("Ratchets are staggered where two fit one behind the other, not where straps have one each") {
  // A ratchet is 230 long and 90 wide; 13 straps stand 75 apart. Two ratchets and 20 to spare: 480.
  const auto staggered = [](const std::string& more) {
    const PressPlan plan =
        planned(job_text(crown(110, 415, 920), birch(8), "[formers]\nspacing = {count = 13}\n" + more));
    return std::pair(std::count_if(plan.closures.begin(), plan.closures.end(),
                                   [](const Closure& c) { return c.staggered; }),
                     std::min(plan.closures.front().left.run, plan.closures.front().right.run));
  };
  const auto [shallow, short_run] = staggered("");
  CHECK(short_run < 480);
  CHECK(shallow == 0);
  const auto [deep, long_run] = staggered("min_depth = 400\n");
  CHECK(long_run >= 480);
  CHECK(deep == 6);
  CHECK(staggered("min_depth = 400\n[straps]\ntighten = \"one-end\"\n").first == 0);
}

TEST_CASE("Beams are bored as the rules say") {
  const PressPlan plan = planned(job_text(crown(120, 400, 900, 0), birch(8), kWorked));
  const Part& beam = part_named(plan, "beam");
  const auto screws = bores_for(beam, BoreUse::foot_screw);
  std::set<double> at;
  for (const Bore& bore : screws) {
    at.insert(bore.at.x());
    CHECK(bore.diameter == 6);
    REQUIRE(bore.counterbore);
    CHECK(bore.counterbore->diameter == 16);
    CHECK(bore.counterbore->depth == 50);  // 90 + 60 - 100
    CHECK(bore.at.y() == 0);
    CHECK(bore.axis.y() == 1);
  }
  CHECK(at == std::set<double>{-150, 0, 150});
  const auto holes = bores_for(beam, BoreUse::strap);
  REQUIRE(holes.size() == 10);
  const double mark = plan.closures.front().right.mark.x();
  int on_mark = 0;
  for (const Bore& bore : holes) {
    CHECK(bore.diameter == 12);
    CHECK(bore.at.y() == 30);
    if (std::abs(bore.at.x() - mark) < 1e-9) ++on_mark;
  }
  CHECK(on_mark == 1);
  CHECK(beam.box().high.x() == Approx(mark + 50 + 60));
  const auto pilots = bores_for(former_of(plan), BoreUse::foot_pilot);
  REQUIRE(pilots.size() == 3);
  for (const Bore& bore : pilots) {
    CHECK(bore.diameter == 3.5);
    CHECK(bore.depth == 60.0);
  }
}

TEST_CASE("Strap holes that meet a foot screw move outward by the least that clears") {
  // Over a range of radii some rows fall on a screw; in each plan any two bores keep 5 of wood (make_part
  // refuses otherwise), marks are bores, and the exit stays within 20 to 30.
  int moved = 0, seen = 0;
  for (double radius = 250; radius <= 420; radius += 5) {
    const PressPlan plan = planned(job_text(crown(188, radius), birch(6), "[formers]\nmin_depth = 140\n"));
    ++seen;
    const Closure& strap = plan.closures.front();
    const Part& beam = part_named(plan, "beam");
    for (const StrapEnd* end : {&strap.left, &strap.right}) {
      const auto holes = bores_for(beam, BoreUse::strap);
      CHECK(std::any_of(holes.begin(), holes.end(),
                        [&](const Bore& b) { return std::abs(b.at.x() - end->mark.x()) < 1e-9; }));
      CHECK(degrees(end->exit) >= 20 - 1e-6);
      CHECK(degrees(end->exit) <= 30 + 1e-6);
      if (std::abs(degrees(end->exit) - 25) > 1e-6) ++moved;
    }
  }
  CHECK(seen == 35);
  CHECK(moved > 0);
}

TEST_CASE("Caul-screw pilots lie under the datum slat, at changes of shape and at both ends") {
  const PressPlan plan =
      planned(job_text("width = 900\ntrim = 15\nprofile = [{line = 120}, {bend = 70, radius = 380}, {line = "
                       "60}, {bend = 25, radius = 900}]",
                       birch(7), kWorked));
  const Profile& contact = plan.sections.front().lower;
  std::vector<double> stations;
  for (const Bore& bore : bores_for(former_of(plan), BoreUse::caul_pilot)) {
    CHECK(bore.diameter == 3);
    CHECK(bore.depth == 30.0);
    const auto nearest = contact.nearest({bore.at.x(), bore.at.y()});
    CHECK(nearest.distance == Approx(0).margin(1e-9));
    CHECK(bore.axis.head<2>().dot(contact.at(nearest.station).normal()) == Approx(-1));
    stations.push_back(nearest.station);
  }
  std::sort(stations.begin(), stations.end());
  // Continuous caul: 15 inside each end of the pack, the changes of shape, the middle of the girth. The
  // change before the last trim lies 15 inside the pack too, so both are one.
  REQUIRE(stations.size() == 6);
  CHECK(stations[0] == Approx(25 + 15));
  CHECK(stations[1] == Approx(contact.station(1)));
  CHECK(stations[3] == Approx(contact.station(2)));
  CHECK(stations[4] == Approx(contact.station(3)));
  CHECK(stations[5] == Approx(contact.girth() - 40));
}

TEST_CASE("Thin boards get fixing blocks on both sides of each caul screw, thick ones none") {
  const std::string job =
      crown(100, 450, 900, 0);  // no trim: pilots stand far apart, so no two blocks are one
  const PressPlan thin = planned(job_text(job, birch(8)));
  const auto pilots = bores_for(former_of(thin), BoreUse::caul_pilot).size();
  CHECK(pilots > 0);
  CHECK(bodies_of(thin, PartKind::fixing_block) == 2 * pilots * thin.sections.size());
  const PressPlan thick = planned(job_text(job, birch(8), "[formers]\nboard = {nominal = 36}\n"));
  CHECK(bodies_of(thick, PartKind::fixing_block) == 0);
}

TEST_CASE("Spacer blocks span the clear distance between formers in rows at most 300 apart") {
  const PressPlan plan = planned(job_text(crown(100, 450), birch(8)));
  const Part& block = part_named(plan, "spacer-block");
  CHECK(block.box().size().x() == Approx(plan.spacing.clear));
  const std::size_t gaps = plan.sections.size() - 1;
  CHECK(bodies_of(plan, PartKind::spacer_block) % gaps == 0);
  const double rows = double(bodies_of(plan, PartKind::spacer_block)) / double(gaps);
  CHECK(plan.sections.front().lower.girth() / rows <= 300);
  for (const Body& body : plan.bodies) {
    if (plan.parts[body.part].kind() != PartKind::spacer_block) continue;
    const Part::Box box = plan.parts[body.part].box();
    const Vec3 a = body.placed.point(box.low), b = body.placed.point(box.high);
    const Vec3 low = a.cwiseMin(b), high = a.cwiseMax(b);
    CHECK(high.z() - low.z() == Approx(plan.spacing.clear));
    for (const double x : {low.x(), high.x()})
      for (const double y : {low.y(), high.y()}) {
        CHECK(former_of(plan).outline().contains({x, y}));
        CHECK(plan.sections.front().lower.nearest({x, y}).distance >= 5);
      }
  }
}

TEST_CASE("Flats are pressed by beams of their own length over clamp holes of 35") {
  const PressPlan plan =
      planned(job_text("width = 450\nprofile = [{line = 250}, {bend = 90, radius = 180}, {line = 220}, {bend "
                       "= 90, radius = 180}, {line = 250}]",
                       birch(6)));
  REQUIRE(plan.flats.size() == 3);
  CHECK(plan.flats[0].clamps.size() == 2);  // 265 long: ceil(265 / 200)
  CHECK(plan.flats[1].clamps.size() == 2);  // 220
  const Profile& contact = plan.sections.front().lower;
  for (const FlatPressed& flat : plan.flats) {
    const double length = flat.to - flat.from;
    for (std::size_t i = 0; i < flat.clamps.size(); ++i) {
      const Pose pose = plan.neutral.at(flat.from + (double(i) + 0.5) * length / double(flat.clamps.size()));
      CHECK((flat.clamps[i] - pose.point).dot(pose.tangent()) == Approx(0).margin(1e-9));
      CHECK(contact.nearest(flat.clamps[i]).distance >= 50);
    }
  }
  CHECK(bodies_of(plan, PartKind::pressing_beam) == 3 * plan.sections.size());
  CHECK(plan.reason.find("3 flats") != std::string::npos);
}

TEST_CASE("A flat counts from 60 on, rounding aside") {
  const auto flats = [](double line) {
    return planned(job_text("width = 450\ntrim = 0\nprofile = [{bend = 40, radius = 400}, {line = " +
                                number(line, 9) + "}, {bend = 40, radius = 400}]",
                            birch(6)))
        .flats.size();
  };
  CHECK(flats(60) == 1);
  CHECK(flats(59.9999999) == 1);
  CHECK(flats(59.9) == 0);
}

TEST_CASE("Formers between straps stand on plain bearers of the beams' depth") {
  const PressPlan plan =
      planned(job_text(crown(100, 450), birch(8), "[beams]\nevery = 2\n[formers]\nspacing = {count = 5}\n"));
  CHECK(bodies_of(plan, PartKind::beam) == 3);
  CHECK(bodies_of(plan, PartKind::bearer) == 2);
  CHECK(bodies_of(plan, PartKind::former_lower) == 5);
  CHECK(part_named(plan, "bearer").box().size().y() == 90);
  CHECK(bores_for(part_named(plan, "bearer"), BoreUse::strap).empty());
  CHECK(part_named(plan, "former-lower").name() == "former-lower");  // one part for all
}

TEST_CASE("A grooved bearer takes a longer foot without screws") {
  const PressPlan plan =
      planned(job_text(crown(100, 450), birch(8),
                       "[beams]\nevery = 2\n[formers]\nspacing = {count = 5}\ngroove_depth = 12\n"));
  const Part& on_beam = part_named(plan, "former-lower-1");
  const Part& in_groove = part_named(plan, "former-lower-2");
  CHECK(in_groove.box().size().y() == Approx(on_beam.box().size().y() + 12));
  CHECK(in_groove.box().low.y() == Approx(-12));
  CHECK(bores_for(in_groove, BoreUse::foot_pilot).empty());
  CHECK(bores_for(on_beam, BoreUse::foot_pilot).size() >= 3);
  const Part& bearer = part_named(plan, "bearer");
  CHECK(bearer.bores().empty());
  CHECK(bearer.box().size().y() == Approx(90));
  const double length = bearer.box().size().x();
  CHECK(bearer.volume() == Approx((46 * 90 - 18 * 12) * length));
}

TEST_CASE("A mirrored job gives the mirrored press") {
  const std::string a =
      "width = 900\ntrim = 15\nprofile = [{line = 120}, {bend = 70, radius = 380}, {line = 60}, {bend = 25, "
      "radius = 900}]";
  const std::string b =
      "width = 900\ntrim = 15\nprofile = [{bend = 25, radius = 900}, {line = 60}, {bend = 70, radius = 380}, "
      "{line = 120}]";
  const PressPlan one = planned(job_text(a, birch(7), kWorked)),
                  other = planned(job_text(b, birch(7), kWorked));
  const StrapEnd &left = one.closures.front().left, &right = other.closures.front().right;
  CHECK(left.mark.x() == Approx(-right.mark.x()));
  CHECK(left.leaves.x() == Approx(-right.leaves.x()));
  CHECK(left.run == Approx(right.run));
  CHECK(former_of(one).volume() == Approx(former_of(other).volume()));
}

TEST_CASE("Locating pins stand in the trim beside the datum slat, none without trim") {
  const PressPlan plan = planned(job_text(crown(100, 450), birch(8)));
  REQUIRE(plan.pins.size() == 2);
  CHECK(plan.pins[0].at.z() == Approx(7.5));
  CHECK(plan.pins[1].at.z() == Approx(930 - 7.5));
  CHECK(plan.pins[0].at.x() > 22.5);
  const PressPlan bare = planned(job_text(crown(100, 450, 900, 0), birch(8)));
  CHECK(bare.pins.empty());
  CHECK(std::any_of(bare.notes.begin(), bare.notes.end(), [](const std::string& n) {
    return n.find("Trim below 6, so no locating pins") != std::string::npos;
  }));
}

TEST_CASE("A radius smaller than cover and caul is refused with the bend and the way out") {
  // Springback none: inner face R30, cover 3 and caul 35 lie 38 inside it.
  CHECK(only_error(evaluated(job_text("width = 300\nprofile = [{line = 150}, {bend = 60, radius = 400}, "
                                      "{line = 150}, {bend = 90, radius = 30}, {line = 150}]",
                                      birch(5), kWorked))) ==
        "job.toml: bend 2 (radius 30): the lower contact edge lies 38 inside it and collapses; thickest "
        "stack that fits is 29.9, or raise the radius to 38.1");
}

TEST_CASE("Marks on a former carry what is needed to rig it again") {
  const PressPlan plan = planned("title = \"Seat\"\n" + job_text(crown(100, 450), birch(8)));
  const auto& marks = former_of(plan).marks();
  const auto count = [&](Mark::Kind kind) {
    return std::count_if(marks.begin(), marks.end(), [&](const Mark& m) { return m.kind == kind; });
  };
  CHECK(count(Mark::Kind::centre_line) == 1);
  CHECK(count(Mark::Kind::blank_end) == 2);
  CHECK(count(Mark::Kind::trim_line) == 2);
  const auto says = [&](const std::string& text) {
    return std::any_of(marks.begin(), marks.end(),
                       [&](const Mark& m) { return m.text.find(text) != std::string::npos; });
  };
  CHECK(says("L"));
  CHECK(says("R"));
  CHECK(says("Seat"));
  CHECK(says("station __ of " + std::to_string(plan.sections.size())));
}

TEST_CASE("Bodies are named and ordered by Z, then X") {
  const PressPlan plan = planned(job_text(crown(100, 450), birch(8)));
  double last = -INFINITY;
  std::set<std::string> names;
  for (const Body& body : plan.bodies) {
    const Part::Box box = plan.parts[body.part].box();
    const double z = body.placed.point((box.low + box.high) / 2).z();
    CHECK(z >= last - 1e-3);
    last = z;
    names.insert(body.name);
  }
  CHECK(names.size() == plan.bodies.size());
  CHECK(names.count("former-lower-01") == 1);
  CHECK(names.count("beam-04") == 1);
}
