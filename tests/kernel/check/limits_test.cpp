// The limits that stand by themselves, each with its figure worked out beside it.
#include <algorithm>
#include <cmath>

#include "kernel/check/structure.hpp"
#include "kernel/mechanics/sag.hpp"
#include "kernel/mechanics/timber.hpp"
#include "shared/units.hpp"
#include "tests/support/expect.hpp"
#include "tests/support/jobs.hpp"

using namespace lamwright;
using namespace lamwright::test;

namespace {

Evaluation crown(const std::string& more = "", const std::string& layup = birch(8)) {
  return evaluated(job_text("width = 920\nprofile = [{bend = 110, radius = 415}]", layup, more));
}

bool has(const Evaluation& result, const std::string& id) {
  return std::any_of(result.findings.begin(), result.findings.end(),
                     [&](const Finding& f) { return f.id == id; });
}

}  // namespace

TEST_CASE("Glue that wants little is squeezed out by much") {
  const Evaluation result = evaluated(job_text(
      "width = 450\nprofile = [{line = 340}, {bend = 90, radius = 80}, {line = 340}]",
      "glue = \"epoxy\"\ncover = 1\nplies = [{timber = \"birch-yellow\", thickness = 0.8, count = 12}]",
      "[press]\nmethod = \"two-part\"\n[caul]\nkind = {thickness = 16}\n"));
  INFO(only_error(result));
  REQUIRE(result.plan);
  const Finding& most = finding(result, "glue-most");
  CHECK(most.limit == result.job->layup.glue_row.pressure_high);
  CHECK(most.value == within(result.figures.pressure->sound_greatest, 1e-12));
  CHECK(most.verdict == Verdict::caution);
}

TEST_CASE("The end slat presses at its edge with four times its mean") {
  const Evaluation result = crown("[straps]\ntension = 2500\n[formers]\nspacing = {count = 7}\n");
  REQUIRE(result.plan);
  // Straps 150 apart, exit 25 degrees, slats 45 wide.
  const double force = 2 * 2500 * std::sin(radians(12.5)) / 150;
  CHECK(finding(result, "end-slat-left").value == within(4 * force / 45, 1e-9));
  CHECK(finding(result, "end-slat-left").limit ==
        within(design_strength(result.job->layup.cover_board.crush), 1e-12));
  CHECK(finding(result, "end-slat-right").verdict == Verdict::pass);
}

TEST_CASE("Board above the screws' tips is what the former's depth leaves") {
  const Evaluation deep =
      evaluated(job_text("width = 900\nprofile = [{bend = 30, radius = 1500}]", birch(8)));
  REQUIRE(deep.plan);
  // A shallow crown: min_depth 100 governs, screws reach 60.
  CHECK(finding(deep, "screw-tip").value == within(40, 1e-6));
  CHECK(finding(deep, "screw-tip").verdict == Verdict::pass);
  const Evaluation shallow =
      evaluated(job_text("width = 900\nprofile = [{bend = 30, radius = 1500}]", birch(8),
                         "[formers]\nmin_depth = 90\n[beams]\nscrew = {reach = 60}\n"));
  INFO(only_error(shallow));
  REQUIRE(shallow.plan);
  CHECK(finding(shallow, "screw-tip").value == within(30, 1e-6));
  CHECK(finding(shallow, "screw-tip").verdict == Verdict::caution);
}

TEST_CASE("Ratchets side by side are those of every second strap once they are staggered") {
  // 900 / 6 and 900 / 12 apart; a ratchet is 90 wide and 230 long, so that two need a run of 480.
  const Evaluation wide = crown("[formers]\nspacing = {count = 7}\n"),
                   deep = crown("[formers]\nmin_depth = 400\nspacing = {count = 13}\n");
  REQUIRE(wide.plan);
  REQUIRE(deep.plan);
  CHECK(finding(wide, "ratchet-spacing").value == within(150, 1e-9));
  CHECK(finding(wide, "ratchet-spacing").title == "Distance between ratchets side by side");
  CHECK(deep.plan->closures.front().left.run >= 480);
  CHECK(finding(deep, "ratchet-spacing").value == within(150, 1e-9));
  CHECK(finding(deep, "ratchet-spacing").verdict == Verdict::pass);
  CHECK(finding(deep, "ratchet-spacing").title ==
        "Distance between ratchets side by side, higher and lower by turns");
}

TEST_CASE("Ratchets that cannot sit one behind the other are held apart by their straps") {
  const Evaluation close = crown("[formers]\nspacing = {count = 13}\n");
  REQUIRE(close.plan);
  CHECK(close.plan->closures.front().left.run < 480);
  const Finding& beside = finding(close, "ratchet-spacing");
  CHECK(beside.value == within(75, 1e-9));
  CHECK(beside.limit == 90);
  CHECK(beside.verdict == Verdict::caution);
  CHECK(beside.advice ==
        "Put straps on every second former (beams.every = 2), or use one ratchet a strap, left and right by "
        "turns (straps.tighten = \"one-end\"): to sit higher and lower by turns they need free runs of 480.");
  // Either way out does.
  CHECK(finding(crown("[formers]\nspacing = {count = 13}\n[beams]\nevery = 2\n"), "ratchet-spacing").value ==
        within(150, 1e-9));
  const Evaluation one = crown("[formers]\nspacing = {count = 13}\n[straps]\ntighten = \"one-end\"\n");
  REQUIRE(one.plan);
  CHECK(finding(one, "ratchet-spacing").value == within(150, 1e-9));
  CHECK(finding(one, "ratchet-spacing").title ==
        "Distance between ratchets side by side, left and right by turns");
}

TEST_CASE("Where straps on every n-th former leave the last two near each other, fewer formers are advised") {
  // With 12 formers the eleventh and the last would both have one, 900 / 11 apart.
  const Evaluation even = crown("[formers]\nspacing = {count = 12}\n"),
                   taken = crown("[formers]\nspacing = {count = 11}\n[beams]\nevery = 2\n");
  REQUIRE(even.plan);
  REQUIRE(taken.plan);
  CHECK(finding(even, "ratchet-spacing").value == within(900.0 / 11, 1e-9));
  CHECK(holds(finding(even, "ratchet-spacing").advice,
              "Take 11 formers with straps on every second (formers.spacing = {count = 11}, beams.every = "
              "2), or use one ratchet"));
  CHECK(finding(taken, "ratchet-spacing").value == within(180, 1e-9));
  // Every third of 14: the thirteenth and the last, 900 / 13 apart.
  const Evaluation third = crown("[formers]\nspacing = {count = 14}\n[beams]\nevery = 3\n"),
                   fewer = crown("[formers]\nspacing = {count = 13}\n[beams]\nevery = 3\n");
  REQUIRE(third.plan);
  REQUIRE(fewer.plan);
  CHECK(finding(third, "ratchet-spacing").value == within(900.0 / 13, 1e-9));
  CHECK(holds(
      finding(third, "ratchet-spacing").advice,
      "Take 13 formers with straps on every third (formers.spacing = {count = 13}, beams.every = 3), "));
  CHECK(finding(fewer, "ratchet-spacing").value == within(225, 1e-9));
}

TEST_CASE("Where formers are spaced by themselves, advice on straps fixes their number") {
  // With a strap on every second of its three, automatic spacing would take more than three.
  const std::string panel = "width = 194\nprofile = [{bend = 84, radius = 900}]";
  const Evaluation automatic = evaluated(job_text(panel, birch(12)));
  const Evaluation advised =
      evaluated(job_text(panel, birch(12), "[formers]\nspacing = {count = 3}\n[beams]\nevery = 2\n"));
  REQUIRE(automatic.plan);
  REQUIRE(advised.plan);
  CHECK(automatic.plan->sections.size() == 3);
  CHECK(
      holds(finding(automatic, "ratchet-spacing").advice,
            "Take 3 formers with straps on every second (formers.spacing = {count = 3}, beams.every = 2), "));
  CHECK(finding(advised, "ratchet-spacing").verdict == Verdict::pass);
}

TEST_CASE("Ratchets far wider than straps stand apart are told to be spaced, not how") {
  // Two straps 5 beyond their own width apart, each between ratchets of 130.
  const Evaluation result = evaluated(job_text("width = 75\nprofile = [{bend = 60, radius = 415}]", birch(8),
                                               "[formers]\nspacing = {count = 2}\n"));
  INFO(only_error(result));
  REQUIRE(result.plan);
  const Finding& beside = finding(result, "ratchet-spacing");
  CHECK(beside.value == within(55, 1e-9));
  CHECK(beside.verdict == Verdict::caution);
  CHECK(holds(beside.advice, "Space the straps wider (formers.spacing, beams.every), or use one ratchet"));
}

TEST_CASE("A ratchet on a loop needs its thickness between two beams") {
  const auto pressed = [](int formers) {
    return evaluated(job_text(
        "width = 500\ntrim = 0\nprofile = [{line = 340}, {bend = 90, radius = 60}, {line = 340}]", birch(8),
        "[press]\nmethod = \"two-part\"\n[caul]\nkind = {thickness = 16, pitch = 24}\n[formers]\nspacing = "
        "{count = " +
            std::to_string(formers) + "}\n"));
  };
  // Straps 50 wide flush with the pack's edges: 450 / 6 and 450 / 5 apart, beams 46 wide.
  const Evaluation close = pressed(7), wide = pressed(6);
  INFO(only_error(close));
  REQUIRE(close.plan);
  REQUIRE(wide.plan);
  const Finding& room = finding(close, "ratchet-room");
  CHECK(room.value == within(29, 1e-9));
  CHECK(room.limit == 40);
  CHECK(room.verdict == Verdict::caution);
  CHECK(room.advice == "Put straps on every second former (beams.every = 2).");
  CHECK(finding(wide, "ratchet-room").value == within(44, 1e-9));
  CHECK(finding(wide, "ratchet-room").verdict == Verdict::pass);
  CHECK_FALSE(has(close, "ratchet-spacing"));
  CHECK_FALSE(has(crown(), "ratchet-room"));
}

TEST_CASE("A creeping glue is warned of holding thick plies, another glue is not") {
  const std::string thick =
      "cover = 3\nglue_line = 0\nplies = [{timber = \"birch-yellow\", thickness = 1.5, count = 5}]";
  const Evaluation creeps = crown("", thick), holds_on = crown("", "glue = \"epoxy\"\n" + thick);
  REQUIRE(creeps.plan);
  REQUIRE(holds_on.plan);
  // One part in 25 of the curve.
  CHECK(finding(creeps, "glue-creep").value == within(4, 1e-9));
  CHECK(finding(creeps, "glue-creep").verdict == Verdict::caution);
  CHECK(finding(crown(), "glue-creep").verdict == Verdict::pass);
  CHECK_FALSE(has(holds_on, "glue-creep"));
}

TEST_CASE("Closing takes five minutes and one a strap, with two people half of that") {
  const Evaluation result = crown("[formers]\nspacing = {count = 14}\n");
  REQUIRE(result.plan);
  const Finding& closed = finding(result, "closed-time");
  CHECK(closed.value == within(19, 1e-12));
  CHECK(closed.limit == result.job->layup.glue_row.closed);
  CHECK(closed.advice == "Tighten with two people (about 12 min), or use a slower glue (layup.glue).");
}

TEST_CASE("Sag of the slats is held against the job's own limit") {
  const std::string few =
      "spacing = {count = 4}\n[caul]\nkind = {thickness = 16, pitch = 50, coverage = 0.9}\n";
  const Evaluation strict = crown("[formers]\nsag = 0.01\n" + few), usual = crown("[formers]\n" + few);
  REQUIRE(strict.plan);
  REQUIRE(usual.plan);
  CHECK(finding(strict, "slat-sag").limit == 0.01);
  CHECK(finding(strict, "slat-sag").verdict == Verdict::caution);
  CHECK(finding(usual, "slat-sag").value == finding(strict, "slat-sag").value);
  CHECK(finding(usual, "slat-sag").limit == 0.2);
  // And bent by as much as they are loaded.
  const Evaluation pulled = crown("[straps]\ntension = 7000\n[formers]\n" + few);
  REQUIRE(pulled.plan);
  CHECK(finding(pulled, "slat-bending").value ==
        Approx(2 * finding(usual, "slat-bending").value).epsilon(1e-9));
  CHECK(finding(usual, "slat-bending").limit == within(40 * 0.9 / 1.3, 1e-12));
}

TEST_CASE("Cover sheet and outer ply sag over a gap as a clamped beam") {
  const Evaluation result = crown();
  REQUIRE(result.plan);
  const double pressure =
      *std::max_element(result.figures.pressure->along.begin(), result.figures.pressure->along.end());
  const double stiffness =
      result.job->layup.cover_board.along * second_moment(1, 3) + 15290 * second_moment(1, 1.5);
  CHECK(finding(result, "lagging-sag").value == within(pressure * std::pow(5, 4) / (384 * stiffness), 1e-12));
}

TEST_CASE("What one person cannot lift is told for part, upper half and panel") {
  const Evaluation result = evaluated(
      job_text("width = 900\nprofile = [{bend = 60, radius = 700}, {bend = -40, radius = 800}]", birch(20),
               "[caul]\nkind = {thickness = 28}\n[beams]\nsection = [60, 140]\nscrew = {length = 150}\n"));
  INFO(only_error(result));
  REQUIRE(result.plan);
  const Masses& masses = *result.figures.masses;
  CHECK(finding(result, "lift-upper").value == masses.upper);
  CHECK(finding(result, "lift-upper").verdict == Verdict::caution);
  CHECK(finding(result, "lift-panel").value == masses.panel);
  CHECK(finding(result, "lift-part").where == masses.heaviest_part);
  CHECK(finding(result, "lift-part").limit == 25);
}
