#include "kernel/press/aids.hpp"

#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>

#include "kernel/press/labels.hpp"
#include "kernel/profile/offset.hpp"
#include "tests/exporters/drawing/demo_jobs.hpp"
#include "tests/support/expect.hpp"

using namespace lamwright;
using namespace lamwright::test;

namespace {

struct Made {
  std::string name;
  Job job;
  Panel panel;
  ShopAids aids;
};

Made made(const std::string& name, const std::string& panel, const std::string& more = "") {
  const Evaluation result = evaluated(test::job_text(panel, birch(6), more));
  if (!result.panel) throw std::runtime_error(name + ": no panel: " + only_error(result));
  return {name, *result.job, *result.panel, shop_aids(*result.job, *result.panel)};
}

const std::vector<Made>& panels() {
  static const std::vector<Made> all = [] {
    std::vector<Made> out;
    for (const Demo& demo : demo_jobs())
      out.push_back(
          {demo.name, *demo.result.job, *demo.result.panel, shop_aids(*demo.result.job, *demo.result.panel)});
    for (const std::string face : {"inner", "outer", "centre"})
      out.push_back(made("crown with flats, " + face,
                         "width = 600\nface = \"" + face +
                             "\"\nprofile = [{line = 120}, {bend = 70, radius = 380}, {line = 60}, "
                             "{bend = 25, radius = 900}]"));
    out.push_back(made("S",
                       "width = 600\nprofile = [{bend = 40, radius = 400}, {line = 80}, "
                       "{bend = -50, radius = 300}]"));
    out.push_back(made("hollow", "width = 600\nprofile = [{bend = -60, radius = 500}]"));
    return out;
  }();
  return all;
}

const ShopAid* aid_for(const ShopAids& aids, ShopAid::Use use) {
  for (const ShopAid& aid : aids.aids)
    if (aid.use == use) return &aid;
  return nullptr;
}

// The panel's face as it is released, chord level with its middle at the zero point.
Profile released_face(const Panel& panel, double height) {
  return levelled(offset(panel.released, height - panel.face_height()));
}

// Greatest distance of the curve from the part's edge.
double off_edge(const Part& part, const Profile& curve) {
  double most = 0;
  for (int i = 0; i <= 400; ++i) {
    const Vec2 p = curve.point(curve.girth() * i / 400);
    double least = INFINITY;
    for (const Segment& s : part.outline().segments()) least = std::min(least, distance(s, p));
    most = std::max(most, least);
  }
  return most;
}

std::vector<Segment> saw_lines(const Part& part) {
  std::vector<Segment> out;
  for (const Mark& mark : part.marks())
    if (mark.kind == Mark::Kind::saw_line) out.push_back(mark.lines.at(0));
  return out;
}

}  // namespace

TEST_CASE("a template is cut to the released face that it checks") {
  std::size_t templates = 0;
  for (const Made& one : panels())
    for (const bool outer : {false, true}) {
      const ShopAid* aid = aid_for(one.aids, outer ? ShopAid::Use::check_outer : ShopAid::Use::check_inner);
      if (!aid) continue;
      CAPTURE(one.name, outer);
      CHECK(off_edge(aid->part, released_face(one.panel, outer ? one.panel.thickness : 0)) <= 1e-9);
      CHECK(aid->part.kind() == PartKind::shape_template);
      CHECK(aid->part.name() == (outer ? "template-outer" : "template-inner"));
      CHECK(aid->part.thickness() == one.job.formers.thickness);
      CHECK(aid->part.board());
      CHECK(aid->count == 1);
      ++templates;
    }
  CHECK(templates >= 28);
}

TEST_CASE("the wood of a template lies beside the panel, not in it") {
  std::size_t seen = 0;
  for (const Made& one : panels())
    for (const bool outer : {false, true}) {
      const ShopAid* aid = aid_for(one.aids, outer ? ShopAid::Use::check_outer : ShopAid::Use::check_inner);
      if (!aid) continue;
      const Profile face = released_face(one.panel, outer ? one.panel.thickness : 0);
      for (int i = 1; i < 20; ++i) {
        const Pose pose = face.at(face.girth() * i / 20);
        const double out = outer ? 1 : -1;
        CAPTURE(one.name, outer, i);
        CHECK(aid->part.outline().contains(pose.point + out * pose.normal()));
        CHECK(!aid->part.outline().contains(pose.point - out * pose.normal()));
        ++seen;
      }
    }
  CHECK(seen > 500);
}

TEST_CASE("the two templates of a panel fit its thickness: their edges are parallel and that far apart") {
  std::size_t pairs = 0;
  for (const Made& one : panels()) {
    const ShopAid* inner = aid_for(one.aids, ShopAid::Use::check_inner);
    const ShopAid* outer = aid_for(one.aids, ShopAid::Use::check_outer);
    if (!inner || !outer) continue;
    CAPTURE(one.name);
    // Each lies with its own chord level: the outer one is laid on the inner one's left end, square to it.
    const double t = one.panel.thickness;
    const Profile in = released_face(one.panel, 0), own = released_face(one.panel, t);
    REQUIRE(off_edge(outer->part, own) <= 1e-9);
    REQUIRE(off_edge(inner->part, in) <= 1e-9);
    const Profile out = own.posed({in.start().point + t * in.start().normal(), in.start().heading});
    double most = 0;
    for (int i = 0; i <= 200; ++i) {
      const Pose pose = in.at(in.girth() * i / 200);
      most = std::max(most, out.nearest(pose.point + t * pose.normal()).distance);
      most = std::max(most, std::abs(out.nearest(pose.point).distance - t));
    }
    CHECK(most <= 1e-9);
    ++pairs;
  }
  CHECK(pairs >= 14);
}

TEST_CASE("a template is kTemplateDepth deep, less where a bend leaves no room on its inside") {
  // Beside a crown of 60 on its inner side 0.6 x 60 = 36 is left.
  const Made tight =
      made("L", "width = 400\nprofile = [{line = 200}, {bend = 90, radius = 60}, {line = 200}]");
  const Made wide = made("arc", "width = 400\nprofile = [{bend = 40, radius = 900}]");
  const auto deep = [](const Made& one) {
    const ShopAid* aid = aid_for(one.aids, ShopAid::Use::check_inner);
    REQUIRE(aid);
    const Pose pose = released_face(one.panel, 0).at(0);
    // The end is square to the face where the panel ends.
    double length = 0;
    for (const Segment& s : aid->part.outline().segments())
      if ((s.from - pose.point).norm() < 1e-9 || (s.to - pose.point).norm() < 1e-9)
        if (s.straight() && std::abs((s.to - s.from).normalized().dot(pose.tangent())) < 1e-9)
          length = s.length();
    return length;
  };
  CHECK(deep(tight) == within(36, 1e-9));
  CHECK(deep(wide) == within(kTemplateDepth, 1e-9));
}

TEST_CASE("a face whose bend is too tight for a strip of 20 has no template, and the note says why") {
  // Inside a crown of 30: 0.6 x 30 = 18.
  const Made one =
      made("tight", "width = 400\nprofile = [{line = 100}, {bend = 60, radius = 30}, {line = 100}]",
           "[press]\nspringback = \"none\"\n");
  CHECK(!aid_for(one.aids, ShopAid::Use::check_inner));
  CHECK(aid_for(one.aids, ShopAid::Use::check_outer));
  REQUIRE(one.aids.notes.size() == 1);
  CHECK(one.aids.notes[0] ==
        "No check template of the inner face: a bend of the inner face is too tight for a strip of 20 beside "
        "it; check the panel with a former.");
}

TEST_CASE("the cradle's saw lines stand where the trim ends, square to the face, and go into the wood") {
  std::size_t cradles = 0;
  for (const Made& one : panels()) {
    const ShopAid* aid = aid_for(one.aids, ShopAid::Use::trim_cradle);
    if (!aid) continue;
    CAPTURE(one.name);
    const double trim = one.panel.trim;
    const Profile finished = released_face(one.panel, 0);
    const Profile blank = levelled(extended(finished, trim, trim));
    CHECK(off_edge(aid->part, blank) <= 1e-9);
    const auto lines = saw_lines(aid->part);
    REQUIRE(lines.size() == 2);
    for (const Segment& saw : lines) {
      const auto at = blank.nearest(saw.from);
      CHECK(at.distance <= 1e-9);
      const double from_end = std::min(at.station, blank.girth() - at.station);
      CHECK(from_end == within(trim, 1e-9));
      const Vec2 along = (saw.to - saw.from).normalized();
      CHECK(along.dot(blank.at(at.station).tangent()) == within(0, 1e-9));
      CHECK(along.dot(blank.at(at.station).normal()) == within(-1, 1e-9));
      CHECK(aid->part.outline().contains(saw.from + along));
    }
    // What is left between the saw lines is the finished panel.
    CHECK((lines[1].from - lines[0].from).norm() == within(chord(finished), 1e-9));
    ++cradles;
  }
  CHECK(cradles >= 12);
}

TEST_CASE("the cradle's base is level, kCradleDepth under the lowest point of the face") {
  std::size_t cradles = 0;
  for (const Made& one : panels()) {
    const ShopAid* aid = aid_for(one.aids, ShopAid::Use::trim_cradle);
    if (!aid) continue;
    const Profile blank = levelled(extended(released_face(one.panel, 0), one.panel.trim, one.panel.trim));
    const Box2 box = aid->part.outline().box();
    CAPTURE(one.name);
    CHECK(box.low.y() == within(blank.box().low.y() - kCradleDepth, 1e-9));
    CHECK(box.low.x() == within(blank.start().point.x(), 1e-9));
    CHECK(box.high.x() == within(blank.end().point.x(), 1e-9));
    ++cradles;
  }
  CHECK(cradles >= 12);
}

TEST_CASE("there is a cradle for every 500 of the width and one more, at least two") {
  const auto count = [](const std::string& width) {
    const Made one = made(width, "trim = 20\nprofile = [{bend = 40, radius = 900}]\nwidth = " + width);
    return aid_for(one.aids, ShopAid::Use::trim_cradle)->count;
  };
  CHECK(count("100") == 2);
  CHECK(count("460") == 2);  // 500 with trim
  CHECK(count("461") == 3);
  CHECK(count("960") == 3);
  CHECK(count("961") == 4);
}

TEST_CASE("a panel whose ends turn under has templates but no cradle, and the note says why") {
  const Made one = made("turned under", "width = 400\nprofile = [{bend = 230, radius = 400}]");
  CHECK(aid_for(one.aids, ShopAid::Use::check_inner));
  CHECK(!aid_for(one.aids, ShopAid::Use::trim_cradle));
  REQUIRE(one.aids.notes.size() == 1);
  CHECK(one.aids.notes[0] ==
        "No trim cradle: the panel's ends turn under, so it could not be laid on a cradle; trim it on its "
        "inner face with a fence.");
}

TEST_CASE("without trim there is no cradle and nothing is said about it") {
  const Made one = made("no trim", "width = 400\ntrim = 0\nprofile = [{bend = 60, radius = 400}]");
  CHECK(one.aids.aids.size() == 2);
  CHECK(!aid_for(one.aids, ShopAid::Use::trim_cradle));
  CHECK(one.aids.notes.empty());
}

TEST_CASE("a flat panel needs no aids") {
  const Made one = made("flat", "width = 700\nprofile = [{line = 900}]");
  CHECK(one.aids.aids.empty());
  CHECK(one.aids.notes.empty());
}

TEST_CASE("a job can go without aids, and they are no bodies of the press") {
  const std::string text = "width = 400\nprofile = [{bend = 60, radius = 400}]";
  CHECK(planned(test::job_text(text, birch(6), "[outputs]\naids = false\n")).aids.empty());
  const PressPlan plan = planned(test::job_text(text, birch(6)));
  CHECK(plan.aids.size() == 3);
  for (const Part& part : plan.parts) {
    CHECK(part.kind() != PartKind::shape_template);
    CHECK(part.kind() != PartKind::cradle);
  }
}

TEST_CASE("templates and cradle carry their sides, and where there is room their use and the job") {
  std::size_t aids = 0, complete = 0, labels = 0;
  for (const Made& one : panels())
    for (const ShopAid& aid : one.aids.aids) {
      CAPTURE(one.name, aid.part.name());
      std::vector<std::string> texts;
      for (const Mark& mark : aid.part.marks()) {
        if (mark.kind != Mark::Kind::label) continue;
        texts.push_back(mark.text);
        CHECK(aid.part.outline().contains(mark.at));
        ++labels;
      }
      const auto says = [&](const std::string& text) {
        return std::count(texts.begin(), texts.end(), text) == 1;
      };
      CHECK(says("L"));
      CHECK(says("R"));
      const std::string use = aid.use == ShopAid::Use::trim_cradle   ? "trim cradle"
                              : aid.use == ShopAid::Use::check_outer ? "check, outer face, as released"
                                                                     : "check, inner face, as released";
      complete += says(use) && says(lamwright::job_text(one.job));
      ++aids;
    }
  CHECK(aids >= 40);
  CHECK(complete + 4 >= aids);  // narrow strips inside the bends of an L have no room for a line of text
  CHECK(labels >= 150);
}
