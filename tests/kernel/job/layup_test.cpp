#include <cmath>

#include "kernel/job/read_layup.hpp"
#include "tests/support/expect.hpp"
#include "tests/support/jobs.hpp"

using namespace lamwright;
using namespace lamwright::test;

namespace {

// A timber and a plywood of three of its veneers, the middle one across: E 12 000 along, 600 across.
const std::string kRows =
    kPlainTimber +
    "[boards.ply]\nkind = \"plywood\"\nnominal = 4\nthickness = 4\nE_along = 9000\nE_across = 3000\nstrength "
    "= 40\n"
    "crush = 4\ndensity = 650\nsheet = [2440, 1220]\nuses = 5\nveneers = [1, 2, 1]\nveneer_timber = "
    "\"plain\"\n"
    "source = \"test\"\n";

Evaluation laid(const std::string& layup, const std::string& more = "") {
  return evaluated("data = \"rows.toml\"\n" + job_text("width = 400\nprofile = [{bend = 40, radius = 1500}]",
                                                       "glue_line = 0\ncover = 1\n" + layup, more),
                   MemorySources(std::map<std::string, std::string>{{"rows.toml", kRows}}));
}

}  // namespace

TEST_CASE("A plywood ply bends as one sheet of its own veneers") {
  const Evaluation result = laid("plies = [{board = \"ply\", count = 2}]");
  INFO(only_error(result));
  REQUIRE(result.panel);
  const Panel& panel = *result.panel;
  CHECK(panel.thickness == within(8, 1e-12));
  // One sheet per mm: 12 000 (4^3 - 2^3) / 12 + 600 x 2^3 / 12 = 56 400; two of them loose.
  CHECK(panel.loose == within(2 * 56400, 1e-6));
  // Bonded: each sheet also 2 from the middle, with E t = 12 000 x 2 + 600 x 2 = 25 200.
  const double bonded = 2 * (56400 + 25200 * 4);
  CHECK(panel.bonded == within(bonded, 1e-6));
  CHECK(panel.springback.share == within(2 * 56400 / bonded, 1e-12));
  CHECK(panel.neutral_height == within(4, 1e-12));
  CHECK(panel.plies.front().veneers.size() == 3);
  CHECK(panel.mass_per_area == within(8 * 0.65, 1e-12));
}

TEST_CASE("A plywood turned across bends by its middle veneer") {
  const Evaluation result = laid("plies = [{board = \"ply\", count = 2, grain = \"across\"}]");
  REQUIRE(result.panel);
  // 600 (4^3 - 2^3) / 12 + 12 000 x 2^3 / 12 = 10 800.
  CHECK(result.panel->loose == within(2 * 10800, 1e-6));
}

TEST_CASE("A board's thickness in the job scales its veneers") {
  const Evaluation result = laid("plies = [{board = \"ply\", thickness = 3, count = 2}]");
  REQUIRE(result.panel);
  CHECK(result.panel->thickness == within(6, 1e-12));
  CHECK(result.panel->loose == within(2 * 56400 * std::pow(0.75, 3), 1e-6));
  CHECK(result.panel->plies.back().veneers.back().to == within(6, 1e-12));
}

TEST_CASE("One sheet of plywood alone springs back fully") {
  CHECK(only_error(laid("plies = [{board = \"ply\"}]")) ==
        "job.toml: layup.plies: one ply alone springs back fully, nothing holds its curve; give at least two "
        "plies, or "
        "a measured press.springback");
}

TEST_CASE("The neutral line of an unsymmetric pack lies nearer to its stiff side") {
  const Evaluation result = laid(
      "plies = [{timber = \"plain\", thickness = 2, count = 2}, {timber = \"plain\", thickness = 2, grain = "
      "\"across\", count = 2}]");
  REQUIRE(result.panel);
  // (12 000 x 4 x 2 + 600 x 4 x 6) / (12 000 x 4 + 600 x 4).
  CHECK(result.panel->neutral_height == within(110400.0 / 50400, 1e-9));
}

TEST_CASE("A ply is of timber or of a board, counted or to a total, not both") {
  CHECK(only_error(laid("plies = [{timber = \"plain\", board = \"ply\", thickness = 2}]")) ==
        "job.toml:8:37: layup.plies[0].board: is given beside timber; give one of them");
  CHECK(only_error(laid("plies = [{timber = \"plain\", thickness = 2, count = 3, total = 6}]")) ==
        "job.toml:8:63: layup.plies[0].total: is given beside count; give one of them");
  const Evaluation total = laid("plies = [{timber = \"plain\", thickness = 2, total = 9}]");
  REQUIRE(total.job);
  // 9 / 2 = 4.5 rounds away from zero: five sheets, 1 more than asked.
  CHECK(total.job->layup.plies.size() == 5);
}

TEST_CASE("Where only a thickness is known, cover and sheathing take figures of their kind") {
  const Evaluation result = laid("plies = [{timber = \"plain\", thickness = 1, count = 6}]",
                                 "[caul]\nkind = \"sheathed\"\nsheathing = [5, 12]\n");
  INFO(only_error(result));
  REQUIRE(result.job);
  CHECK(result.job->layup.cover_board.kind == "hardboard");
  CHECK(result.job->layup.cover_board.thickness == 1);
  REQUIRE(result.job->caul.sheathing_bends.size() == 2);
  CHECK(result.job->caul.sheathing_bends[0].table.empty());        // bending plywood states its radius
  CHECK_FALSE(result.job->caul.sheathing_bends[1].table.empty());  // plywood goes by the table
}
