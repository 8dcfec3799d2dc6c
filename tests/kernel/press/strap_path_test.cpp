#include "kernel/press/strap_path.hpp"

#include <catch2/catch.hpp>

#include "kernel/press/layers.hpp"
#include "kernel/profile/offset.hpp"
#include "tests/support/expect.hpp"
#include "tests/support/jobs.hpp"

using namespace lamwright;
using namespace lamwright::test;

TEST_CASE("A strap follows the top caul from mark to mark without a gap") {
  const PressPlan plan =
      planned(job_text("width = 600\ntrim = 0\nprofile = [{bend = 90, radius = 450}]", birch(7), kWorked));
  const Closure& closure = plan.closures.front();
  const auto path = strap_path(plan, closure);
  REQUIRE(path.size() == 3);  // leg, one bend, leg
  CHECK(same(path.front().from, closure.left.mark));
  CHECK(same(path.back().to, closure.right.mark));
  for (std::size_t i = 1; i < path.size(); ++i) CHECK(same(path[i].from, path[i - 1].to, 1e-9));
  CHECK_FALSE(path[1].straight());
}

TEST_CASE("A strap goes straight over a hollow of the caul") {
  const PressPlan plan = planned(job_text(
      "width = 600\ntrim = 0\nprofile = [{bend = 50, radius = 400}, {bend = -20, radius = 400}, {bend = 50, "
      "radius = 400}]",
      birch(5), "[press]\nmethod = \"one-part\"\nspringback = \"none\"\n[caul]\nkind = {thickness = 35}\n"));
  const Closure& closure = plan.closures.front();
  const auto path = strap_path(plan, closure);
  REQUIRE(path.size() == 5);  // leg, crown, bridge, crown, leg
  CHECK(path[2].straight());
  int bends = 0;
  for (const Segment& s : path) {
    CHECK(s.turn <= 0);
    bends += s.straight() ? 0 : 1;
  }
  CHECK(bends == 2);
  // It touches both crowns as their tangent: the profile is alike left and right, so the bridge is level.
  CHECK(path[1].tangent(1).dot(path[2].tangent(0)) == within(1, 1e-9));
  CHECK(path[2].from.y() == within(path[2].to.y(), 1e-6));
  const Layer* caul = layer_of(plan, Layer::Kind::top_caul);
  REQUIRE(caul);
  const Profile outer = offset(caul->inner, caul->thickness);
  CHECK(outer.point(outer.girth() / 2).y() < path[2].from.y() - 1);
}
