// Nothing in a press stands in anything else: bodies, rollers, straps and texts of whole plans.
#include <algorithm>
#include <catch2/catch.hpp>

#include "shared/units.hpp"
#include "tests/support/expect.hpp"
#include "tests/support/jobs.hpp"

using namespace lamwright;
using namespace lamwright::test;

namespace {

// A body as an outline in the plane of the formers and a stretch of the width.
struct Slice {
  std::string name;
  Outline outline;
  double near, far;
};

bool lies_flat(const Body& body, const Part& part) {
  return std::abs(body.placed.vector(part.sheet().z()).z()) > 0.999;
}

// A block or bar along or across the press, however it leans: the hull of its box's corners.
Outline silhouette(const Body& body, const Part::Box& box) {
  std::vector<Vec2> corners;
  for (const double x : {box.low.x(), box.high.x()})
    for (const double y : {box.low.y(), box.high.y()})
      for (const double z : {box.low.z(), box.high.z()})
        corners.push_back(body.placed.point({x, y, z}).head<2>());
  const Vec2 middle = body.placed.point((box.low + box.high) / 2).head<2>();
  std::vector<Vec2> hull;
  for (const Vec2& p : corners) {
    const bool twin =
        std::any_of(hull.begin(), hull.end(), [&](const Vec2& q) { return (p - q).norm() < 1e-6; });
    if (!twin) hull.push_back(p);
  }
  std::sort(hull.begin(), hull.end(), [&](const Vec2& a, const Vec2& b) {
    const Vec2 u = a - middle, v = b - middle;
    return std::atan2(u.y(), u.x()) < std::atan2(v.y(), v.x());
  });
  if (hull.size() != 4) throw std::runtime_error(body.name + " lies across the press");
  return polygon(hull, body.name);
}

Slice slice_of(const PressPlan& plan, const Body& body) {
  const Part& part = plan.parts[body.part];
  const Part::Box box = part.box();
  Vec3 low = Vec3::Constant(INFINITY), high = -low;
  for (const double x : {box.low.x(), box.high.x()})
    for (const double y : {box.low.y(), box.high.y()})
      for (const double z : {box.low.z(), box.high.z()}) {
        const Vec3 p = body.placed.point({x, y, z});
        low = low.cwiseMin(p);
        high = high.cwiseMax(p);
      }
  if (!lies_flat(body, part)) return {body.name, silhouette(body, box), low.z(), high.z()};
  std::vector<Segment> loop;
  const auto placed = [&](const Vec2& p) {
    return Vec2(body.placed.point(part.sheet().point({p.x(), p.y(), 0})).head<2>());
  };
  for (const Segment& s : part.outline().segments()) {
    Segment moved = s;
    moved.from = placed(s.from);
    moved.to = placed(s.to);
    moved.centre = placed(s.centre);
    if (body.placed.vector(part.sheet().z()).z() < 0) moved.turn = -s.turn;  // lies on its far face
    loop.push_back(moved);
  }
  return {body.name, Outline(std::move(loop), body.name), low.z(), high.z()};
}

// Deepest point of a's edge inside b, mm.
double depth_in(const Outline& a, const Outline& b) {
  double deepest = 0;
  for (const Segment& s : a.segments()) {
    const int steps = std::max(2, int(s.length() / 6));
    for (int i = 0; i < steps; ++i) {
      const Vec2 p = s.point((i + 0.5) / steps);
      if (b.contains(p)) deepest = std::max(deepest, b.distance(p));
    }
  }
  return deepest;
}

bool boxes_apart(const Outline& a, const Outline& b) {
  const Box2 p = a.box(), q = b.box();
  return (p.low.array() > q.high.array() - 0.01).any() || (q.low.array() > p.high.array() - 0.01).any();
}

// Flat slats on a bend: in a hollow neighbours meet on their narrow side, which is a caution of its own, and what lies over
// them is held off by facets that the covers take up. They never stand in what they are screwed to.
bool slat_gives(const Slice& a, const Slice& b) {
  const auto soft = [](const Slice& s) {
    return s.name.starts_with("slat") || s.name.starts_with("panel") || s.name.starts_with("pressing-beam");
  };
  const bool slat = a.name.starts_with("slat") || b.name.starts_with("slat");
  return slat && soft(a) && soft(b);
}

// With the upper half lifted by `lift`.
std::vector<std::string> overlaps(const PressPlan& plan, const Vec2& lift = {0, 0}) {
  std::vector<Slice> slices;
  for (Body body : plan.bodies) {
    if (body.group == Group::upper) body.placed.origin += Vec3(lift.x(), lift.y(), 0);
    slices.push_back(slice_of(plan, body));
  }
  std::vector<std::string> found;
  for (std::size_t i = 0; i < slices.size(); ++i)
    for (std::size_t j = i + 1; j < slices.size(); ++j) {
      const Slice &a = slices[i], &b = slices[j];
      if (std::min(a.far, b.far) - std::max(a.near, b.near) < 0.01 || boxes_apart(a.outline, b.outline))
        continue;
      const auto in_groove = [](const Slice& p, const Slice& q) {
        return p.name.starts_with("former-") && q.name.starts_with("bearer");
      };
      if (plan.spacing.every > 1 && (in_groove(a, b) || in_groove(b, a))) continue;  // let into its groove
      if (slat_gives(a, b)) continue;
      if (std::max(depth_in(a.outline, b.outline), depth_in(b.outline, a.outline)) > 0.05)
        found.push_back(a.name + " in " + b.name);
    }
  return found;
}

const std::string kTwoPart = "[press]\nmethod = \"two-part\"\n";

// Jobs of all kinds; each names what it is there for.
std::vector<std::pair<std::string, std::string>> jobs() {
  const std::string thin = "[caul]\nkind = {thickness = 15, pitch = 30}\n";
  return {
      {"crown", job_text("width = 900\nprofile = [{bend = 110, radius = 415}]", birch(8))},
      {"crown and flats", job_text("width = 900\nprofile = [{line = 120}, {bend = 70, radius = 380}, {line = "
                                   "60}, {bend = 25, radius = 900}]",
                                   birch(7))},
      {"half round", job_text("width = 700\nprofile = [{bend = 180, radius = 320}]", birch(6))},
      {"L", job_text("width = 600\nprofile = [{line = 350}, {bend = 90, radius = 200}, {line = 350}]",
                     birch(6), "[straps]\nexit = 20\n")},
      {"unequal L",
       job_text("width = 400\nprofile = [{line = 300}, {bend = 45, radius = 1000}, {line = 700}]", birch(6),
                thin)},
      {"U", job_text("width = 450\nprofile = [{line = 250}, {bend = 90, radius = 200}, {line = 220}, {bend = "
                     "90, radius = 200}, {line = 250}]",
                     birch(6))},
      {"tight crown, formers close", job_text("width = 400\nprofile = [{bend = 45, radius = 200}]", birch(6),
                                              thin + "[formers]\nspacing = 60\n")},
      {"formers between straps",
       job_text("width = 900\nprofile = [{bend = 80, radius = 400}]", birch(6), "[formers]\nspacing = 52\n")},
      {"flats over close formers",
       job_text("width = 500\nprofile = [{line = 150}, {bend = 100, radius = 300}]", birch(6),
                "[formers]\nspacing = 52\npressing_beam = [70, 70]\n")},
      {"guide rollers", job_text("width = 600\nprofile = [{bend = 110, radius = 415}]", birch(8),
                                 "[press]\nguide_rollers = true\n")},
      {"guide rollers, shallow", job_text("width = 600\nprofile = [{bend = 60, radius = 900}]", birch(8),
                                          "[press]\nguide_rollers = true\n")},
      {"grooved bearers",
       job_text("width = 800\nprofile = [{bend = 100, radius = 450}]", birch(8),
                "[beams]\nevery = 2\n[formers]\nspacing = {count = 5}\ngroove_depth = 12\n")},
      {"sheathed", job_text("width = 600\nprofile = [{bend = 90, radius = 400}]", birch(6),
                            "[caul]\nkind = \"sheathed\"\nsheathing = [3, 3]\n")},
      {"stack of boards", job_text("width = 330\ntrim = 0\nprofile = [{bend = 60, radius = 300}]", birch(6),
                                   "[caul]\nkind = \"bare\"\n[formers]\nspacing = 18.5\n")},
      {"L between two moulds",
       job_text("width = 500\nprofile = [{line = 340}, {bend = 90, radius = 60}, {line = "
                "340}]",
                birch(8), kTwoPart + "[caul]\nkind = {thickness = 16, pitch = 24}\n")},
      {"unequal L on leaning beams",
       job_text("width = 500\nprofile = [{line = 500}, {bend = 90, radius = 60}, {line = 200}]", birch(8),
                kTwoPart + "beam_tilt = 20\n[caul]\nkind = {thickness = 16, pitch = 24}\n")},
      {"unequal L on leaning beams, pinned",
       job_text("width = 500\nprofile = [{line = 200}, {bend = 90, radius = 60}, {line = 500}]", birch(8),
                kTwoPart + "beam_tilt = -15\n[caul]\nkind = {thickness = 16, pitch = 24}\n[straps]\nanchor = "
                           "\"pin\"\n")},
      {"S", job_text("width = 600\nprofile = [{bend = 45, radius = 500}, {line = 80}, {bend = -40, radius = "
                     "550}]",
                     birch(7))},
      {"hollow with steep ends",
       job_text("width = 600\nprofile = [{line = 100}, {bend = -150, radius = 400}, {line = 100}]",
                birch(6))},
      {"shallow U between two moulds",
       job_text("width = 500\nprofile = [{line = 120}, {bend = 60, radius = 200}, {line = 200}, {bend = 60, "
                "radius = 200}, {line = 120}]",
                birch(6), kTwoPart)},
      {"sheathed S",
       job_text("width = 600\nprofile = [{bend = 40, radius = 600}, {bend = -40, radius = 600}]", birch(6),
                "[caul]\nkind = \"sheathed\"\nsheathing = [3, 3]\nliner = 1\n")},
      {"stack of boards for an S",
       job_text("width = 330\nprofile = [{bend = 40, radius = 300}, {bend = -40, radius = 300}]", birch(6),
                "[caul]\nkind = \"bare\"\n[formers]\nspacing = 18\n")},
      {"S on plain and grooved bearers",
       job_text("width = 800\nprofile = [{bend = 40, radius = 600}, {bend = -40, radius = 600}]", birch(6),
                "[beams]\nevery = 2\n[formers]\nspacing = {count = 5}\ngroove_depth = 12\n")},
      {"flat", job_text("width = 600\nprofile = [{line = 900}]", birch(7))},
      {"thin boards", job_text("width = 600\nprofile = [{bend = 90, radius = 400}]", birch(6),
                               "[formers]\nboard = {nominal = 12}\n")},
  };
}

// The roller and the strap beyond it keep out of the former.
void require_clear_of_former(const PressPlan& plan, const StrapEnd& strap) {
  for (const Part& part : plan.parts) {
    if (part.kind() != PartKind::former_lower) continue;
    const auto outside = [&](const Vec2& p, double away) {
      return !part.outline().contains(p) && part.outline().distance(p) >= away - 1e-6;
    };
    const Vec2 last = strap.roller ? strap.roller->on : strap.mark;
    for (int i = 0; i <= 40; ++i) CHECK(outside(strap.leaves + i / 40.0 * (last - strap.leaves), 1.5));
    if (!strap.roller) continue;
    CHECK(outside(strap.roller->axis, strap.roller->diameter / 2 + 4.9));
    for (int i = 0; i <= 40; ++i)
      CHECK(outside(strap.roller->off + i / 40.0 * (strap.mark - strap.roller->off), 1.5));
  }
}

}  // namespace

TEST_CASE("No body of a press stands in another") {
  int seen = 0;
  for (const auto& [name, text] : jobs()) {
    INFO(name);
    const PressPlan plan = planned(text);
    std::string all;
    for (const std::string& overlap : overlaps(plan)) all += overlap + "; ";
    CHECK(all == "");
    ++seen;
  }
  CHECK(seen == 25);
}

TEST_CASE("The upper half lifts off without touching anything and clears the panel when it is open") {
  int opened = 0;
  for (const auto& [name, text] : jobs()) {
    INFO(name);
    const PressPlan plan = planned(text);
    if (plan.opening.norm() == 0) continue;
    for (const double share : {0.02, 0.2, 0.5, 1.0}) CHECK(overlaps(plan, share * plan.opening).empty());
    double lowest = INFINITY, highest = -INFINITY;
    for (const Body& body : plan.bodies) {
      const Slice slice = slice_of(plan, body);
      if (body.group == Group::upper && plan.parts[body.part].kind() == PartKind::former_upper)
        lowest = std::min(lowest, slice.outline.box().low.y());
      if (body.group == Group::panel) highest = std::max(highest, slice.outline.box().high.y());
    }
    CHECK(lowest + plan.opening.y() >= highest + 20);
    ++opened;
  }
  CHECK(opened == 10);
}

TEST_CASE("Strap loops pass beside everything that they draw together") {
  int loops = 0;
  for (const auto& [name, text] : jobs()) {
    INFO(name);
    const PressPlan plan = planned(text);
    if (plan.closures.empty() || !plan.closures.front().loop) continue;
    const Closure& closure = plan.closures.front();
    const double half = closure.width / 2;
    double nearest = INFINITY;  // over both sides: one of them sets the reach
    for (const Body& body : plan.bodies) {
      const PartKind kind = plan.parts[body.part].kind();
      if (kind == PartKind::beam || kind == PartKind::bearer || kind == PartKind::stop) continue;
      const Box2 box = slice_of(plan, body).outline.box();
      nearest = std::min({nearest, box.low.x() - (closure.left.mark.x() + half),
                          closure.right.mark.x() - half - box.high.x()});
    }
    CHECK(nearest == within(10, 1e-6));
    ++loops;
  }
  CHECK(loops == 10);
}

TEST_CASE("The check for overlaps finds one") {
  PressPlan plan = planned(jobs().front().second);
  Body moved = plan.bodies.front();
  moved.placed.origin += Vec3(7, 3, 2);
  plan.bodies.push_back(moved);
  CHECK_FALSE(overlaps(plan).empty());
}

TEST_CASE("Straps and guide rollers keep out of the formers") {
  int rollers = 0;
  for (const auto& [name, text] : jobs()) {
    INFO(name);
    const PressPlan plan = planned(text);
    if (plan.closures.empty() || plan.closures.front().loop) continue;
    for (const StrapEnd* end : {&plan.closures.front().left, &plan.closures.front().right}) {
      require_clear_of_former(plan, *end);
      rollers += end->roller ? 1 : 0;
    }
  }
  CHECK(rollers == 4);
}

TEST_CASE("Texts on parts stand on the wood and beside its holes") {
  int texts = 0;
  for (const auto& [name, job] : jobs()) {
    INFO(name);
    for (const Part& part :
         planned("title = \"The long counter beside the newspapers, with a very long name\"\n" + job).parts)
      for (const Mark& mark : part.marks()) {
        if (mark.text.empty()) continue;
        const double width = 0.6 * mark.height * double(mark.text.size());
        for (const Vec2& p : {mark.at, Vec2(mark.at + Vec2(width, 0)), Vec2(mark.at + Vec2(0, mark.height)),
                              Vec2(mark.at + Vec2(width, mark.height))})
          CHECK(part.outline().contains(p));
        ++texts;
      }
  }
  CHECK(texts > 140);
}

namespace {

bool between_slats(const PressPlan& plan, Layer::Kind caul, const Pin& pin) {
  for (const Layer& layer : plan.layers) {
    if (layer.kind != caul) continue;
    const double s = layer.inner.nearest(pin.at.head<2>()).station;
    for (const Slat& slat : layer.slats)
      if (slat.to > s - pin.diameter / 2 + 1e-9 && slat.from < s + pin.diameter / 2 - 1e-9) return false;
  }
  return true;
}

bool tells_of_recess(const PressPlan& plan) {
  return std::any_of(plan.notes.begin(), plan.notes.end(), [](const std::string& note) {
    return note.find("Recess the ") == 0 && holds(note, " opposite the locating pins, ");
  });
}

}  // namespace

TEST_CASE("Locating pins stand between slats of their caul; without a gap opposite, a recess is asked for") {
  int pins = 0, recessed = 0;
  for (const auto& [name, text] : jobs()) {
    INFO(name);
    const PressPlan plan = planned(text);
    for (const Pin& pin : plan.pins) {
      CHECK(between_slats(plan, pin.caul, pin));
      const bool bed = pin.caul == Layer::Kind::bed_caul;
      if (plan.seated && !pin.recess)
        CHECK(between_slats(plan, bed ? Layer::Kind::top_caul : Layer::Kind::bed_caul, pin));
      if (plan.seated) CHECK(pin.recess == tells_of_recess(plan));
      CHECK((pin.recess ? pin.recess_width >= kPinGap && pin.recess_depth > kPinProud
                        : pin.recess_width == 0 && pin.recess_depth == 0));
      ++pins;
      recessed += pin.recess;
    }
  }
  CHECK(pins >= 30);
  CHECK(recessed > 0);
  CHECK(recessed < pins);
}

TEST_CASE("A strap that would cut into the pack is a fail") {
  // No trim, a thin caul of wide slats and an exit of 30: the strap falls through the pack's end.
  const Evaluation result =
      evaluated(job_text("width = 600\ntrim = 0\nprofile = [{bend = 100, radius = 430}]", birch(8),
                         "[caul]\nkind = {thickness = 15, pitch = 50}\n[straps]\nexit = 30\n"));
  INFO(only_error(result));
  REQUIRE(result.plan);
  const auto cut = std::find_if(result.findings.begin(), result.findings.end(),
                                [](const Finding& f) { return f.id == "strap-clears-pack-left"; });
  REQUIRE(cut != result.findings.end());
  CHECK((cut->verdict == Verdict::fail) == (cut->value < 0));
  CHECK(result.plan->uncovered_left > 0);
}

TEST_CASE("A panel that grips a mould without straps is refused") {
  const std::string message =
      only_error(evaluated(job_text("width = 600\nprofile = [{bend = 226, radius = 300}]", birch(8),
                                    "[press]\nspringback = \"none\"\n[caul]\nkind = \"bare\"\n")));
  CHECK(message ==
        "job.toml: left end of the panel: turns 23 degrees past the vertical and grips the mould; at most 10 "
        "come off it; make the panel in two pieces, or turn less");
}

TEST_CASE("A hollow forced onto one mould fails with the height of the strap over it") {
  const Evaluation result =
      evaluated(job_text("width = 600\nprofile = [{bend = 60, radius = 400}, {bend = -15, radius = 900}, "
                         "{bend = 50, radius = 400}]",
                         birch(6), "[press]\nmethod = \"one-part\"\n"));
  INFO(only_error(result));
  REQUIRE(result.plan);
  const auto hollow = std::find_if(result.findings.begin(), result.findings.end(),
                                   [](const Finding& f) { return f.id == "strap-over-hollow"; });
  REQUIRE(hollow != result.findings.end());
  CHECK(hollow->verdict == Verdict::fail);
  // More than the hollow alone: the string bridges from crown to crown, over part of both.
  const double alone = 900 * (1 - std::cos(radians(7.5)));
  CHECK(hollow->value > alone);
  CHECK(hollow->value < 3 * alone);
}
