// Locating pins between two moulds: the room to lift a pack over them, bores and recesses they want.
#include "kernel/press/two_part/pins.hpp"

#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>

#include "kernel/press/layers.hpp"
#include "tests/support/expect.hpp"
#include "tests/support/jobs.hpp"
#include "tests/support/two_part_jobs.hpp"

using namespace lamwright;
using namespace lamwright::test;

namespace {

// A flat panel from 12 plies of 1.5 between covers of 3: a pack of 24.
PressPlan flat(const std::string& trim, const std::string& caul) {
  return planned(job_text("width = 600\nprofile = [{line = 900}]\ntrim = " + trim, birch(12),
                          "[caul]\nkind = " + caul + "\n"));
}

std::string note_on_pins(const PressPlan& plan) {
  for (const std::string& note : plan.notes)
    if (holds(note, "ocating pin")) return note;
  return "";
}

const std::string kContinuous = "{thickness = 16}";

PressPlan moulded(const std::string& profile, int plies, const std::string& caul, const std::string& pull) {
  return planned(job_text(panel(profile, "trim = 15"), birch(plies),
                          test::two_part("pull = " + pull, "kind = " + caul)));
}

// One bend that only falls once the pull leans by 30 degrees: its pins stand in the middle of the girth,
// leaning from the pull as much as that does.
PressPlan slanting(const std::string& caul, const std::string& pull = "30") {
  return moulded("[{bend = 40, radius = 500}]", 6, caul, pull);
}

// Its pack lies on the ends of the lower mould, and its pins stand in the upper one.
PressPlan hollow(int turn, int plies) {
  return moulded("[{line = 200}, {bend = -" + std::to_string(turn) + ", radius = 500}, {line = 200}]", plies,
                 kContinuous, "0");
}

const std::string kSheathed = "\"sheathed\"\nsheathing = [18]";

}  // namespace

TEST_CASE("The press opens far enough to lift the pack over pins in the lower half") {
  // Worked by hand: pins stand 24 + 5 over the sheathing; the halves are 24 apart as it is, so that the pack
  // has as far to go as the upper half, and 20 of room.
  const PressPlan plan = flat("15", kSheathed);
  REQUIRE(plan.pins.size() == 2);
  REQUIRE(plan.pins.front().caul == Layer::Kind::bed_caul);
  CHECK(plan.opening.x() == 0);
  CHECK(plan.opening.y() == within(29 + 20, 1e-9));
  REQUIRE(plan.closures.size() >= 2);
  const Loop& loop = *plan.closures.front().loop;
  CHECK(loop.open_length == within(loop.length + 2 * 49, 1e-9));
}

TEST_CASE("Without pins the upper half lifts to clear the pack and no more") {
  const PressPlan plan = flat("0", kSheathed);
  REQUIRE(plan.pins.empty());
  REQUIRE(plan.crown);
  // The crowned edge bulges toward the pack in its middle, which stays where the flat one was.
  CHECK(plan.opening.y() == within(20, kRounding));
}

TEST_CASE("Pins in the upper half leave the stroke as it is: the pack hangs on them") {
  const PressPlan plan = hollow(6, 12);
  REQUIRE(plan.pins.size() == 2);
  REQUIRE(plan.pins.front().caul == Layer::Kind::top_caul);
  // 29 + 20 is what pins in the lower half would ask for.
  CHECK(plan.opening.y() < 49 - 1);
}

TEST_CASE("Pins that lean from the pull take a longer way to be lifted over") {
  // Worked by hand: 15 + 5 square to the pack, along a pull 60 degrees from there twice that.
  Panel pack = flat("15", kSheathed).panel;
  pack.thickness = 9;
  pack.cover = 3;
  const Profile neutral({{0, 0}, radians(60)}, {{100, 0}});
  const Vec2 at = neutral.point(50);
  Pin pin{{at.x(), at.y(), 7.5}, kPin, Layer::Kind::bed_caul};
  CHECK(two_part::room_over_pins(pack, neutral, {pin}) == within(40, 1e-9));
  pin.caul = Layer::Kind::top_caul;
  CHECK(two_part::room_over_pins(pack, neutral, {pin}) == 0);
  CHECK(two_part::room_over_pins(pack, neutral, {}) == 0);
}

TEST_CASE("A pin stands as far out of the pack as the stroke and its recess reckon with") {
  int seen = 0;
  for (const PressPlan& plan : {flat("15", kSheathed), slanting(kContinuous), hollow(60, 6)})
    for (const Pin& pin : plan.pins) {
      const Segment axis = pin_line(plan, pin);
      const double pack = plan.panel.thickness + 2 * plan.panel.cover;
      const Vec2 outer = pin.at.head<2>();
      const bool low = pin.caul == Layer::Kind::bed_caul;
      CHECK((low ? (axis.to - outer).norm() : (axis.from - outer).norm() - pack) == within(kPinProud, 1e-9));
      ++seen;
    }
  CHECK(seen == 6);
}

TEST_CASE("Continuous sheathing and cauls want a bore on the pins' own side and a recess opposite") {
  const PressPlan sheathed = flat("15", kSheathed);
  REQUIRE(sheathed.pins.size() == 2);
  for (const Pin& pin : sheathed.pins) {
    CHECK(pin.recess);
    CHECK(pin.recess_width == 5);
    CHECK(pin.recess_depth == 8);
  }
  CHECK(note_on_pins(sheathed) ==
        "Recess the upper sheathing opposite the locating pins, 5 wide and 8 deep, and bore the lower "
        "sheathing 4 wide for them: neither has a gap.");
  CHECK(note_on_pins(flat("15", "{thickness = 12}")) ==
        "Recess the top caul opposite the locating pins, 5 wide and 8 deep, and bore the bed caul 4 wide for "
        "them: neither has a gap.");
  CHECK(note_on_pins(hollow(60, 6)) ==
        "Recess the bed caul opposite the locating pins, 5 wide and 8 deep, and bore the top caul 4 wide for "
        "them: neither has a gap.");
}

TEST_CASE("A recess goes no deeper than the sheathing it is in, as long as the pin's tip keeps 1") {
  const auto depth = [](const std::string& sheathing) {
    return flat("15", "\"sheathed\"\nsheathing = " + sheathing).pins.at(0).recess_depth;
  };
  CHECK(depth("[3, 4]") == 7);
  CHECK(depth("[3, 3]") == 6);
  CHECK(depth("[3]") == 6);
  CHECK(depth("[9]") == 8);
}

TEST_CASE("A pin that leans from the pull gets a recess as wide as its way in") {
  // Worked by hand: on its way in the tip, 5 out of the pack, goes 5 tan 30 = 2.89 aside, and the recess has
  // its middle at the pin: 5 + 5.77, so 11. At 45 degrees 5 + 10.
  const PressPlan plan = slanting(kContinuous);
  REQUIRE(plan.pins.size() == 2);
  CHECK(plan.pins.front().recess_width == 11);
  CHECK(
      note_on_pins(plan) ==
      "Recess the top caul opposite the locating pins, 11 wide and 8 deep, and bore the bed caul 4 wide for "
      "them: neither has a gap. So wide lets them in aslant: they lean 30 degrees from the pull.");
  CHECK(slanting(kContinuous, "-30").pins.at(0).recess_width == 11);
  CHECK(slanting(kContinuous, "45").pins.at(0).recess_width == 15);
}

TEST_CASE("A leaning pin comes in between the slats opposite, or they are recessed") {
  int between = 0, recessed = 0;
  for (const double pull : {-35.0, -20.0, -8.0, 0.0, 8.0, 20.0, 35.0})
    for (const double coverage : {0.5, 0.7, 0.85}) {
      const PressPlan plan = slanting(
          "{thickness = 16, pitch = 24, coverage = " + std::to_string(coverage) + "}", std::to_string(pull));
      REQUIRE(plan.pins.size() == 2);
      const Pin& pin = plan.pins.front();
      const bool low = pin.caul == Layer::Kind::bed_caul;
      const Layer& opposite = *layer_of(plan, low ? Layer::Kind::top_caul : Layer::Kind::bed_caul);
      if (pin.recess) {
        CHECK(pin.recess_width >= 5);
        ++recessed;
        continue;
      }
      CHECK(pin.recess_width == 0);
      // The tip, moved back along the pull to where it meets the face opposite.
      const Segment axis = pin_line(plan, pin);
      const Vec2 tip = low ? axis.to : axis.from, out = (axis.to - axis.from).normalized();
      const Vec2 met = tip - Vec2(0, (low ? 1 : -1) * kPinProud / out.y());
      const Profile& face = opposite.inner;
      const double above = low ? 0 : opposite.thickness;
      const Vec2 foot = met - above * out;
      const double s = face.nearest(foot).station;
      for (const Slat& slat : opposite.slats)
        CHECK_FALSE((slat.to > s - kPin / 2 + 0.1 && slat.from < s + kPin / 2 - 0.1));
      ++between;
    }
  CHECK(between > 0);
  CHECK(recessed > 0);
  CHECK(between + recessed == 21);
}

TEST_CASE("Where the pack stands steeper than 60 degrees to the pull no pins are set, and it is told") {
  const PressPlan plan = slanting(kContinuous, "62");
  CHECK(plan.pins.empty());
  CHECK(note_on_pins(plan) ==
        "Locating pins would lean 62 degrees from the pull, over 60: hold pack and cauls by hand until the "
        "press has closed on them.");
  CHECK(slanting(kContinuous, "58").pins.size() == 2);
}
