#include "kernel/press/slatted.hpp"

#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>
#include <map>

#include "tests/exporters/drawing/demo_jobs.hpp"
#include "tests/exporters/drawing/two_mould_jobs.hpp"
#include "tests/support/expect.hpp"

using namespace lamwright;
using namespace lamwright::test;

namespace {

struct Press {
  std::string name;
  Job job;
  PressPlan plan;
};

Press press(const std::string& name, const std::string& text) {
  Evaluation result = evaluated(text);
  if (!result.plan) throw std::runtime_error(name + ": no plan: " + only_error(result));
  return {name, *result.job, *result.plan};
}

// Six bed slats and more over a bend either way, with flats, tight for their width.
std::string bends_of(const std::string& profile, const std::string& caul) {
  return job_text("width = 430\nprofile = " + profile, birch(5),
                  "[press]\nspringback = \"none\"\n[caul]\n" + caul + "\n[formers]\nspacing = {count = 4}\n");
}

// Demos, presses of two moulds, and bends near the least radius of their slats.
const std::vector<Press>& presses() {
  static const std::vector<Press> all = [] {
    std::vector<Press> out;
    for (const Demo& demo : demo_jobs()) out.push_back({demo.name, *demo.result.job, *demo.result.plan});
    for (const DrawnJob& job : drawn_jobs()) out.push_back(press(job.name, job.text));
    const std::string narrow = "kind = \"slatted-narrow-20\"";
    out.push_back(
        press("tight hollow", bends_of("[{line = 200}, {bend = -60, radius = 160}, {line = 200}]", narrow)));
    out.push_back(
        press("tight crown", bends_of("[{line = 200}, {bend = 60, radius = 110}, {line = 200}]", narrow)));
    out.push_back(press("hollow after crown",
                        bends_of("[{bend = 40, radius = 300}, {bend = -50, radius = 180}]", narrow)));
    out.push_back(
        press("with a liner", bends_of("[{line = 90}, {bend = 70, radius = 300}]", narrow + "\nliner = 2")));
    return out;
  }();
  return all;
}

// What a slat lies against: the contact edge of its formers, or the outer cover sheet.
struct Against {
  Profile line;
  int side;     // of the line on which the slat lies: 1 outward
  double away;  // a liner's thickness
};

Against against(const Press& press, const Body& slat) {
  const PressPlan& plan = press.plan;
  const Section& section = plan.sections.front();
  if (slat.group == Group::lower) return {section.lower, 1, press.job.caul.liner};
  // An upper contact edge is drawn in the sense of the pack's outer face: the slat hangs below it.
  if (slat.group == Group::upper) return {*section.upper, -1, press.job.caul.liner};
  return {line_at(plan.panel, plan.neutral, plan.panel.thickness + plan.panel.cover, "cover"), 1, 0};
}

double signed_distance(const Against& it, const Vec2& p) {
  const Pose pose = it.line.at(it.line.nearest(p).station);
  return it.side * (p - pose.point).dot(pose.normal()) - it.away;
}

// Least distance of a slat's flat from its line, negative where it stands in it. The distance of a point that
// walks along a straight flat is least at the flat's ends or where the flat is square to a bend's radius.
double least_distance(const Press& press, const Body& slat) {
  const Part& part = press.plan.parts[slat.part];
  const Against it = against(press, slat);
  const double width = part.box().size().y(), z = it.side > 0 ? 0 : part.thickness();
  const Vec2 from = slat.placed.point({0, 0, z}).head<2>(), to = slat.placed.point({0, width, z}).head<2>();
  double least = std::min(signed_distance(it, from), signed_distance(it, to));
  for (std::size_t i = 0; i < it.line.runs().size(); ++i) {
    if (it.line.runs()[i].straight()) continue;
    const Vec2 centre = it.line.pose(i).point - it.line.pose(i).normal() / it.line.runs()[i].curvature;
    const double share = (centre - from).dot(to - from) / (width * width);
    if (share > 0 && share < 1) least = std::min(least, signed_distance(it, from + share * (to - from)));
  }
  return least;
}

bool is_slat(const Press& press, const Body& body) {
  return press.plan.parts[body.part].kind() == PartKind::slat;
}

struct Axis {
  Vec3 at, along;
};

// Of every bore for a use in bodies of a kind, in the press frame.
std::vector<Axis> axes(const PressPlan& plan, PartKind kind, BoreUse use, Group group) {
  std::vector<Axis> out;
  for (const Body& body : plan.bodies)
    if (plan.parts[body.part].kind() == kind && body.group == group)
      for (const Bore& bore : bores_for(plan.parts[body.part], use))
        out.push_back({body.placed.point(bore.at), body.placed.vector(bore.axis)});
  return out;
}

double off_axis(const Axis& axis, const Vec3& p) { return cross3(p - axis.at, axis.along).norm(); }

// The axis that passes nearest to where another begins.
const Axis& nearest(const std::vector<Axis>& all, const Axis& to) {
  return *std::min_element(all.begin(), all.end(), [&](const Axis& a, const Axis& b) {
    return std::pair(off_axis(to, a.at), std::abs(a.at.z() - to.at.z())) <
           std::pair(off_axis(to, b.at), std::abs(b.at.z() - to.at.z()));
  });
}

// Joints of runs that are screwed down.
std::size_t fixing_joints(const PressPlan& plan, Group group) {
  std::size_t out = 0;
  for (const PlannedCaul& caul : plan.cauls) {
    if ((caul.kind == Layer::Kind::bed_caul) != (group == Group::lower)) continue;
    for (const ScheduledRun& run : caul.schedule.runs)
      if (run.run.fixing && !run.pieces.empty()) out += run.pieces.size() - 1;
  }
  return out;
}

bool in_block(const PressPlan& plan, const Vec3& p) {
  return std::any_of(plan.bodies.begin(), plan.bodies.end(), [&](const Body& body) {
    const Part& part = plan.parts[body.part];
    if (part.kind() != PartKind::fixing_block) return false;
    const Vec3 at = part.sheet().local_point(body.placed.local_point(p));
    return at.z() > 0 && at.z() < part.thickness() && part.outline().contains(at.head<2>());
  });
}

// An arc pressed with a stock of slats that the job names.
std::string crown_with(const std::string& width, const std::string& slats, const std::string& more = "",
                       int formers = 5) {
  return job_text("width = " + width + "\nprofile = [{bend = 60, radius = 500}]", birch(6),
                  "[press]\nspringback = \"none\"\n[caul]\nslats = " + slats + "\n" + more +
                      "\n[formers]\nspacing = {count = " + std::to_string(formers) + "}\n");
}

std::size_t slat_bodies(const PressPlan& plan, Group group) {
  std::size_t out = 0;
  for (const Body& body : plan.bodies)
    if (plan.parts[body.part].kind() == PartKind::slat && body.group == group) ++out;
  return out;
}

// Pieces of a caul's schedule; a run that cannot be made counts as one.
std::size_t scheduled(const PlannedCaul& caul) {
  std::size_t out = 0;
  for (const ScheduledRun& run : caul.schedule.runs) out += std::max<std::size_t>(1, run.pieces.size());
  return out;
}

Group group_of(const PressPlan& plan, const PlannedCaul& caul) {
  if (caul.kind == Layer::Kind::bed_caul) return Group::lower;
  return plan.sections.front().upper ? Group::upper : Group::reference;
}

// Width stations of the joints of built slats, a row for each run from left to right.
std::vector<std::vector<double>> built_joints(const PressPlan& plan, Group group) {
  std::map<long, std::vector<double>> ends;  // by X of the run's corner, in thousandths
  for (const Body& body : plan.bodies)
    if (plan.parts[body.part].kind() == PartKind::slat && body.group == group)
      ends[std::lround(1000 * body.placed.origin.x())].push_back(body.placed.origin.z());
  std::vector<std::vector<double>> out;
  for (auto& [x, from] : ends) {
    std::sort(from.begin(), from.end());
    out.emplace_back(from.begin() + 1, from.end());
  }
  return out;
}

}  // namespace

TEST_CASE("no slat stands in what it lies against") {
  std::size_t slats = 0, lower = 0, upper = 0;
  for (const Press& press : presses()) {
    double least = INFINITY;
    for (const Body& body : press.plan.bodies) {
      if (!is_slat(press, body)) continue;
      ++slats;
      lower += body.group == Group::lower;
      upper += body.group == Group::upper;
      least = std::min(least, least_distance(press, body));
    }
    CAPTURE(press.name);
    CHECK(least >= -1e-6);
  }
  CHECK(slats > 800);
  CHECK(lower > 300);
  CHECK(upper > 200);
}

TEST_CASE("every slat touches what it lies against") {
  std::size_t slats = 0;
  for (const Press& press : presses()) {
    double farthest = -INFINITY;
    for (const Body& body : press.plan.bodies)
      if (is_slat(press, body)) {
        ++slats;
        farthest = std::max(farthest, least_distance(press, body));
      }
    CAPTURE(press.name);
    CHECK(farthest <= 1e-6);
  }
  CHECK(slats > 800);
}

TEST_CASE("a fixing slat's bores lie over the pilots of the formers, one over each") {
  std::size_t seen = 0, cauls = 0, upper = 0;
  for (const Press& press : presses())
    for (const auto& [group, kind] :
         {std::pair(Group::lower, PartKind::former_lower), std::pair(Group::upper, PartKind::former_upper)}) {
      if (fixing_joints(press.plan, group) > 0) continue;  // below
      const auto bores = axes(press.plan, PartKind::slat, BoreUse::caul_screw, group);
      if (bores.empty()) continue;
      const auto pilots = axes(press.plan, kind, BoreUse::caul_pilot, group);
      CAPTURE(press.name, int(group));
      CHECK(bores.size() == pilots.size());
      ++cauls;
      upper += group == Group::upper;
      double farthest = 0, leaning = 0;
      for (const Axis& pilot : pilots) {
        const Axis& bore = nearest(bores, pilot);
        farthest = std::max(farthest, off_axis(bore, pilot.at));
        leaning = std::max(leaning, cross3(pilot.along, bore.along).norm());
        ++seen;
      }
      // A pilot beside a slat's middle is not quite square to the slat: under 0.3 degrees here. Its mouth
      // lies under the bore, but for what that makes of a liner between them (2 thick).
      CHECK(leaning <= 0.005);
      CHECK(farthest <= 1e-6 + 2 * leaning * (press.name == "with a liner"));
    }
  CHECK(seen > 500);
  CHECK(cauls > 15);
  CHECK(upper > 5);
}

TEST_CASE(
    "where two slats meet on a former each is screwed into the block beside it, in line with the pilots") {
  const PressPlan plan = planned(crown_with("370", "[300, 200]", "", 3));
  const std::size_t joints = fixing_joints(plan, Group::lower);
  REQUIRE(joints > 0);
  const auto bores = axes(plan, PartKind::slat, BoreUse::caul_screw, Group::lower);
  const auto pilots = axes(plan, PartKind::former_lower, BoreUse::caul_pilot, Group::lower);
  // Two bores instead of the one over the pilot under each joint.
  CHECK(bores.size() == pilots.size() + joints);
  std::size_t over = 0, beside = 0;
  for (const Axis& bore : bores) {
    const Axis& pilot = nearest(pilots, bore);
    const double along = bore.at.z() - pilot.at.z();
    CHECK(off_axis(pilot, {bore.at.x(), bore.at.y(), pilot.at.z()}) <= 1e-6);
    if (std::abs(along) < 1e-6) {
      ++over;
      continue;
    }
    CHECK(std::abs(along) == within(18, 1e-6));  // block and board are both 18 thick
    CHECK(in_block(plan, pilot.at + 10 * pilot.along + Vec3(0, 0, along)));
    ++beside;
  }
  CHECK(beside == 2 * joints);
  CHECK(over == pilots.size() - joints);
}

TEST_CASE("as many caul screws are counted as slats are bored for") {
  std::size_t presses_seen = 0;
  const auto check = [&](const std::string& name, const PressPlan& plan) {
    std::size_t bores = 0, screws = 0;
    for (const Group group : {Group::lower, Group::upper})
      bores += axes(plan, PartKind::slat, BoreUse::caul_screw, group).size();
    for (const Hardware& piece : plan.hardware)
      if (piece.name.starts_with("screw 4 x ")) screws += std::size_t(piece.count);
    CAPTURE(name);
    CHECK(screws == bores);
    presses_seen += bores > 0;
  };
  for (const Press& press : presses())
    if (!press.plan.cauls.empty()) check(press.name, press.plan);
  check("joints on formers", planned(crown_with("370", "[300, 200]", "", 3)));
  CHECK(presses_seen > 20);
}

TEST_CASE("screw heads are sunk on the side of the pack") {
  std::size_t sunk = 0;
  for (const Press& press : presses())
    for (const Body& body : press.plan.bodies) {
      if (!is_slat(press, body)) continue;
      const Part& part = press.plan.parts[body.part];
      for (const Bore& bore : bores_for(part, BoreUse::caul_screw)) {
        const bool hung = body.group == Group::upper;
        CHECK(bore.at.z() == (hung ? 0 : part.thickness()));
        CHECK(bore.axis.z() == (hung ? 1 : -1));
        CHECK(bore.diameter == kSlatBore);
        if (!bore.counterbore) continue;
        CHECK(bore.counterbore->diameter == kSlatHead);
        CHECK(bore.counterbore->depth == kSlatHeadDepth);
        ++sunk;
      }
    }
  CHECK(sunk > 100);
}

TEST_CASE(
    "a bed caul is screwed to the lower former, a caul of the upper half to the upper one, a loose one to "
    "none") {
  std::size_t loose = 0;
  for (const Press& press : presses())
    for (const Body& body : press.plan.bodies) {
      if (!is_slat(press, body) || body.group != Group::reference) continue;
      CHECK(bores_for(press.plan.parts[body.part], BoreUse::caul_screw).empty());
      ++loose;
    }
  CHECK(loose > 50);
  for (const Press& press : presses())
    for (const Layer& layer : press.plan.layers)
      if (layer.kind == Layer::Kind::top_caul && !press.plan.sections.front().upper)
        CHECK(caul_screw_stations(press.plan, layer).empty());
}

TEST_CASE("there are as many slats as the schedules have pieces, and one for each run that the stock lacks") {
  std::size_t cauls = 0;
  for (const Press& press : presses())
    for (const PlannedCaul& caul : press.plan.cauls) {
      CAPTURE(press.name, to_text(caul.kind));
      CHECK(slat_bodies(press.plan, group_of(press.plan, caul)) == scheduled(caul));
      ++cauls;
    }
  CHECK(cauls > 20);
}

TEST_CASE("what the bed caul takes from a counted stock the top caul has no more") {
  // 12 runs fit on a girth of 523.6 at a pitch of 50 and some: a stock of 15 does for one caul only.
  const PressPlan plan = planned(crown_with("570", "[{length = 600, count = 15}]"));
  REQUIRE(plan.cauls.size() == 2);
  const PlannedCaul &bed = plan.cauls[0], &top = plan.cauls[1];
  REQUIRE(bed.kind == Layer::Kind::bed_caul);
  CHECK(bed.schedule.missing.empty());
  CHECK(bed.schedule.used.at(0) == int(bed.schedule.runs.size()));
  CHECK(top.stock.at(0).count == 15 - bed.schedule.used.at(0));
  CHECK(top.schedule.used.at(0) == top.stock.at(0).count);
  std::size_t lacking = 0;
  for (const ScheduledRun& run : top.schedule.runs) lacking += run.pieces.empty();
  CHECK(lacking == top.schedule.runs.size() - std::size_t(*top.stock.at(0).count));
  CHECK(lacking > 0);
  CHECK(!top.schedule.missing.empty());
  CHECK(slat_bodies(plan, Group::lower) == bed.schedule.runs.size());
  CHECK(slat_bodies(plan, Group::reference) == top.schedule.runs.size());
}

TEST_CASE("a run that is to be got is laid as one slat of the caul's length") {
  const PressPlan plan = planned(crown_with("570", "[{length = 500, count = 0}]"));
  std::size_t slats = 0;
  for (const Body& body : plan.bodies) {
    const Part& part = plan.parts[body.part];
    if (part.kind() != PartKind::slat) continue;
    CHECK(part.box().size().x() == 600);
    CHECK(body.placed.origin.z() == 0);
    ++slats;
  }
  CHECK(slats == scheduled(plan.cauls.at(0)) + scheduled(plan.cauls.at(1)));
}

TEST_CASE("in a caul wider than the longest slat the joints of neighbouring runs stand a bridge apart") {
  std::size_t pairs = 0, jointed = 0;
  for (const double bridge : {100.0, 160.0}) {
    const PressPlan plan = planned(crown_with("1370", "[900, 600, {length = 1400, count = 8}]",
                                              "bridge = " + std::to_string(int(bridge))));
    for (const Group group : {Group::lower, Group::reference}) {
      const auto joints = built_joints(plan, group);
      for (std::size_t i = 0; i < joints.size(); ++i) {
        jointed += !joints[i].empty();
        for (const double joint : joints[i]) {
          CHECK(joint >= bridge - 1e-6);
          CHECK(joint <= 1400 - bridge + 1e-6);
          if (i + 1 == joints.size()) continue;
          for (const double next : joints[i + 1]) {
            CAPTURE(bridge, int(group), i);
            CHECK(std::abs(joint - next) >= bridge - 1e-6);
            ++pairs;
          }
        }
      }
    }
  }
  CHECK(jointed > 20);
  CHECK(pairs > 10);
}

TEST_CASE("slats of one run lie end to end over the caul's whole width") {
  const PressPlan plan = planned(crown_with("1370", "[900, 600, {length = 1400, count = 8}]"));
  std::map<long, double> lengths;
  for (const Body& body : plan.bodies) {
    const Part& part = plan.parts[body.part];
    if (part.kind() == PartKind::slat && body.group == Group::lower)
      lengths[std::lround(1000 * body.placed.origin.x())] += part.box().size().x();
  }
  CHECK(lengths.size() == plan.cauls.at(0).schedule.runs.size());
  for (const auto& [x, length] : lengths) CHECK(length == within(1400, 1e-9));
}

TEST_CASE("a bed caul covers the whole line that it lies on") {
  std::size_t cauls = 0;
  for (const Press& press : presses())
    for (const Layer& layer : press.plan.layers) {
      if (layer.kind != Layer::Kind::bed_caul || layer.slats.empty()) continue;
      CAPTURE(press.name);
      CHECK(layer.slats.front().from == within(0, 1e-6));
      CHECK(layer.slats.back().to == within(layer.inner.girth(), 1e-6));
      ++cauls;
    }
  CHECK(cauls > 15);
}
