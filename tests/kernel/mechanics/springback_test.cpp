#include "kernel/mechanics/springback.hpp"

#include <catch2/catch.hpp>

#include "kernel/profile/offset.hpp"
#include "tests/support/jobs.hpp"

using namespace lamwright;
using namespace lamwright::test;

namespace {

std::vector<Lamina> equal_plies(int n) {
  std::vector<Lamina> out;
  for (int i = 0; i < n; ++i) out.push_back({12000, i * 1.5, (i + 1) * 1.5});
  return out;
}

}  // namespace

TEST_CASE("n equal plies lose one over n squared") {
  for (const int n : {2, 3, 4, 6, 8, 10})
    CHECK(springback_share(equal_plies(n)) == Approx(1.0 / (n * n)).epsilon(1e-12));
  CHECK(springback_share(equal_plies(1)) == Approx(1));
}

TEST_CASE("Unequal plies lose their own share") {
  // 1.5 / 3 / 1.5 of one modulus: (2 * 1.5^3 + 3^3) / 6^3 = 0.15625.
  CHECK(springback_share({{1, 0, 1.5}, {1, 1.5, 4.5}, {1, 4.5, 6}}) == Approx(0.15625).epsilon(1e-12));
  const std::vector<Lamina> mixed{{11000, 0, 0.6}, {4000, 0.6, 5.6}, {4000, 5.6, 10.6}, {11000, 10.6, 11.2}};
  CHECK(springback_share(mixed) == Approx(0.118846).margin(5e-7));
  CHECK(neutral_height(mixed) == Approx(5.6));
}

TEST_CASE("More plies of the same total thickness never spring back more") {
  double last = 1;
  for (int n = 2; n <= 40; ++n) {
    std::vector<Lamina> plies;
    for (int i = 0; i < n; ++i) plies.push_back({10000, i * 12.0 / n, (i + 1) * 12.0 / n});
    const double share = springback_share(plies);
    CHECK(share < last);
    last = share;
  }
}

TEST_CASE("A wanted chord and rise is pressed tighter at unchanged length") {
  // Chord 1200, rise 150 along the neutral line, six equal plies: radius 1275 pressed at 1239.5833.
  const std::string text =
      job_text("width = 600\ntrim = 0\nface = \"centre\"\nprofile = {chord = 1200, rise = 150}", birch(6));
  const Evaluation result = evaluated(text);
  REQUIRE(result.panel);
  const Profile& pressed = result.panel->pressed;
  CHECK(result.panel->springback.share == Approx(1.0 / 36).epsilon(1e-12));
  CHECK(1 / pressed.runs().front().curvature == Approx(1239.5833).margin(1e-4));
  CHECK(chord(pressed) == Approx(1197.1737).margin(1e-4));
  CHECK(pressed.box().high.y() == Approx(154.1061).margin(1e-4));
  CHECK(pressed.girth() == Approx(result.panel->released.girth()));
}

TEST_CASE("A test piece overrides the computed share") {
  // Pressed at 600, released at 640, wanted 600: press at 562.5 (radii along the neutral line, so face =
  // centre).
  const std::string text =
      job_text("width = 600\nface = \"centre\"\nprofile = [{bend = 40, radius = 600}]", birch(6),
               "[press]\nspringback = {form_radius = 600, part_radius = 640}\n");
  const Evaluation result = evaluated(text);
  REQUIRE(result.panel);
  CHECK(1 / result.panel->pressed.runs()[1].curvature == Approx(562.5));
  const Evaluation inner =
      evaluated(job_text("width = 600\nprofile = [{bend = 40, radius = 600}]", birch(6),
                         "[press]\nspringback = {form_radius = 600, part_radius = 640}\n"));
  REQUIRE(inner.panel);
  CHECK(inner.panel->springback.share ==
        Approx(1 - 604.5 / 644.5));  // moved to the neutral line of a blank of 9
}

TEST_CASE("One ply alone is refused unless its springback is given") {
  CHECK(only_error(evaluated(job_text("width = 600\nprofile = [{bend = 40, radius = 600}]", birch(1)))) ==
        "job.toml: layup.plies: one ply alone springs back fully, nothing holds its curve; give at least two "
        "plies, or a measured press.springback");
  CHECK(evaluated(job_text("width = 600\nprofile = [{bend = 40, radius = 600}]", birch(1),
                           "[press]\nspringback = 0.2\n"))
            .plan);
}

TEST_CASE("Glue lines thicken the blank and its neutral line follows the stiff plies") {
  const Evaluation thick = evaluated(
      job_text("width = 600\nprofile = [{bend = 40, radius = 600}]",
               "glue_line = 0.1\nplies = [{timber = \"birch-yellow\", thickness = 1.2, count = 10}]"));
  REQUIRE(thick.panel);
  CHECK(thick.panel->thickness == Approx(12.9));  // 10 x 1.2 and 9 lines of 0.1
  const Evaluation lopsided =
      evaluated(job_text("width = 600\nprofile = [{bend = 40, radius = 600}]",
                         "glue_line = 0\nplies = [{timber = \"birch-yellow\", thickness = 2, grain = "
                         "\"across\"}, {timber = \"birch-yellow\", thickness = 2}]"));
  REQUIRE(lopsided.panel);
  // Across the grain E is a twentieth: (0.05 * 2 * 1 + 2 * 3) / (0.05 * 2 + 2) = 2.904762.
  CHECK(lopsided.panel->neutral_height == Approx(2.904762).margin(1e-6));
}
