// Sheets of a profile without a press, as drawn.
#include "exporters/drawing/profile_sheets.hpp"

#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>
#include <functional>

#include "exporters/drawing/curvature_comb.hpp"
#include "exporters/drawing/level_curve.hpp"
#include "exporters/drawing/run_marks.hpp"
#include "exporters/drawing/run_rows.hpp"
#include "exporters/drawing/sheet.hpp"
#include "exporters/drawing/view.hpp"
#include "exporters/svg/svg_writer.hpp"
#include "kernel/profile/offset.hpp"
#include "shared/number.hpp"
#include "shared/units.hpp"
#include "tests/exporters/drawing/circles.hpp"
#include "tests/exporters/drawing/fitted.hpp"
#include "tests/exporters/drawing/legible.hpp"
#include "tests/support/expect.hpp"
#include "tests/support/profiles.hpp"

using namespace lamwright;
using namespace lamwright::drawing;
using namespace lamwright::test;

namespace {

// Bends of both senses and straights between them.
Profile of_runs(int count) {
  std::vector<Run> runs;
  for (int i = 0; i < count; ++i)
    runs.push_back(i % 5 == 4 ? straight(30 + i) : bend(i % 7 == 3 ? -3 : 2 + i % 4, 300 + 37 * (i % 4) + i));
  return from_origin(runs, 60);
}

// The same shape with a chord of that length.
Profile sized(const Profile& profile, double chord) {
  const double scale = chord / lamwright::chord(profile);
  std::vector<Run> runs = profile.runs();
  for (Run& run : runs) run = {run.length * scale, run.curvature / scale};
  return {profile.start(), runs};
}

std::vector<NamedProfile> suite() {
  std::vector<NamedProfile> out = named_profiles();
  for (const int count : {1, 2, 6, 12, 13, 30, 60}) out.push_back({counted(count, "run"), of_runs(count)});
  for (const std::size_t i : {0, 3, 6, 8, 13})
    for (const double chord : {50.0, 20000.0})
      out.push_back({out[i].name + " of " + number(chord), sized(out[i].profile, chord)});
  out.push_back(
      {"ends that meet", from_origin({bend(180, 300), straight(90), bend(180, 300), straight(90)})});
  out.push_back(
      {"W", from_origin({bend(-60, 200), bend(100, 150), straight(50), bend(-80, 120), bend(90, 300)})});
  return out;
}
constexpr std::size_t kSuite = kNamedProfiles + 7 + 10 + 2;

ProfileReading reading_of(const Profile& profile) {
  ProfileReading out = fitted(profile, {41, 0.2, 0.5, {{6, -0.9}, {7, 2.4}}});
  out.notes = {
      "columns separated by semicolons, decimal commas, millimetres",
      "41 points fitted by so many runs: greatest distance 2.4, root mean square 0.42, noise 0.14 mm"};
  out.fit->notes = {"The tolerance of 0.3 is below three times the noise of 0.14; the fit keeps 0.5."};
  return out;
}

using Sheet = std::function<Drawing(const ProfileReading&, const ProfileSheetSpec&)>;

// Faults, texts too small to read outside the title block, and strokes beyond the frame.
void look(const Drawing& sheet, long& seen) {
  for (const std::string& fault : faults(sheet, seen)) FAIL_CHECK(fault);
  const Box2 frame = frame_of(sheet);
  const Box2 block{frame.high - Vec2(kTitleWidth, frame.size().y()),
                   {frame.high.x(), 10 + kTitleBlockHeight}};
  for (const Text& text : texts(sheet))
    if (!drawing::within(text_box(text), block) && text.height < 2.5)
      FAIL_CHECK(text.text << " is too small");
  for (const Item& item : sheet.items())
    if (sheet.pens()[item.pen].name != pens::kFrame)
      for (const Segment& s : strokes(item.shape))
        if (!drawing::within(lamwright::box(s), grown(frame, 1e-6))) FAIL_CHECK("a line beyond the frame");
}

void look_at_all(const Sheet& sheet) {
  long seen = 0;
  std::size_t drawn = 0;
  for (const NamedProfile& named : suite())
    for (const char* paper : {"a4", "a3"}) {
      CAPTURE(named.name, paper);
      look(sheet(reading_of(named.profile), {"Counter front, " + named.name, paper}), seen);
      ++drawn;
    }
  CHECK(drawn == 2 * kSuite);
  CHECK(seen > 100000);
}

// As a note beside the curve, else as a row of the table of runs.
bool told(const Drawing& sheet, const Profile& profile, std::size_t i) {
  const Run& run = profile.runs()[i];
  const std::string length = size_text(run.length);
  if (count_of(sheet, "no.") == 0) {
    const std::string name = run_title(profile, i) + ": ";
    if (run.straight()) return count_of(sheet, name + length) == 1;
    return count_of(sheet, name + "R" + radius_text(run) + ", " + turn_text(std::abs(run.turn()))) == 1 &&
           count_of(sheet, length + " long") >= 1;
  }
  return count_of(sheet, run_title(profile, i)) == 1 && count_of(sheet, length) >= 1 &&
         count_of(sheet, radius_text(run)) >= 1 &&
         (run.straight() || count_of(sheet, turn_text(run.turn())) >= 1);
}

// Notes on runs: with a leader, which is the only open path of its pen.
std::size_t leaders(const Drawing& sheet) {
  std::size_t count = 0;
  for (const Item& item : sheet.items())
    if (const auto* path = std::get_if<Path>(&item.shape); path && !path->closed)
      count += sheet.pens()[item.pen].name == pens::kDimension;
  return count;
}

}  // namespace

TEST_CASE("no text of a profile's sheet lies over another text, under a line or outside the frame") {
  look_at_all(profile_sheet);
}

TEST_CASE("no text of a fit's sheet lies over another text, under a line or outside the frame") {
  look_at_all(fit_sheet);
}

TEST_CASE(
    "a fit's sheet is legible from 3 points to 100000, exact, noisy or full of points that look wrong") {
  long seen = 0;
  int drawn = 0;
  for (const std::size_t count : {3, 7, 300, 301, 3000, 100000})
    for (const double wave : {0.0, 0.3, 40.0}) {
      FittedSpec spec{count, wave, 0.5};
      if (count > 300 && wave > 0)
        for (std::size_t i = 5; i < count; i += 49) spec.suspects.push_back({i, 0.5 + double(i % 7)});
      CAPTURE(count, wave);
      const Drawing sheet = fit_sheet(fitted(named_profiles()[3].profile, spec), {"Front", "a4"});
      look(sheet, seen);
      CHECK(sheet.items().size() < 2000);
      CHECK(count_of(sheet, std::to_string(count)) >= 1);
      ++drawn;
    }
  CHECK(drawn == 18);
  CHECK(seen > 100000);
}

TEST_CASE("girth, chord, rise, turn and every run are told as the profile has them") {
  std::size_t drawn = 0, runs = 0;
  for (const NamedProfile& named : suite()) {
    CAPTURE(named.name);
    const Profile& profile = named.profile;
    const Drawing sheet = profile_sheet(reading_of(profile), {"", "a4"});
    const LevelCurve curve(profile);
    CHECK(count_of(sheet, size_text(profile.girth())) >= 1);
    CHECK(count_of(sheet, turn_text(profile.turn())) >= 1);
    if (curve.open()) {
      CHECK(count_of(sheet, "chord " + size_text(chord(profile))) == 1);
      CHECK(count_of(sheet, size_text(curve.rise())) >= 1);
    }
    for (std::size_t i = 0; i < profile.runs().size(); ++i, ++runs) {
      CAPTURE(i);
      CHECK(told(sheet, profile, i));
    }
    ++drawn;
  }
  CHECK(drawn == kSuite);
  CHECK(runs > 150);
}

TEST_CASE("a crown with flats is told as worked by hand") {
  // 120 + 380 * 70 deg + 60 + 900 * 25 deg = 120 + 464.26 + 60 + 392.70 = 1036.96
  const Drawing sheet = profile_sheet(reading_of(named_profiles()[3].profile), {"Front", "a4"});
  for (const char* text : {"1037", "95°", "line 1: 120", "line 2: 60", "bend 1: R380, 70°", "464.3 long",
                           "bend 2: R900, 25°", "392.7 long", "10 mm of comb: radius 500", "1:5"})
    CHECK(count_of(sheet, text) == 1);
}

TEST_CASE("the comb on the sheet has the scale that is told") {
  std::size_t seen = 0;
  for (const NamedProfile& named : suite()) {
    CAPTURE(named.name);
    const Drawing sheet = profile_sheet(reading_of(named.profile), {"", "a4"});
    if (named.profile.straight()) {
      CHECK(says(sheet, "no comb"));
      continue;
    }
    double sharpest = 0, longest = 0, radius = 0;
    for (const Run& run : named.profile.runs()) sharpest = std::max(sharpest, std::abs(run.curvature));
    const std::string before = "10 mm of comb: radius ";
    for (const Text& text : texts(sheet))
      if (text.text.starts_with(before)) radius = std::stod(text.text.substr(before.size()));
    REQUIRE(radius > 0);
    for (const Segment& s : drawn_with(sheet, pens::kBlock))
      if (s.straight() && std::abs(s.length() - kCombSample) > 1e-9) longest = std::max(longest, s.length());
    // The only straight strokes of this pen are the teeth and the sample, which is 10 long.
    if (longest < kCombSample && std::abs(10 * radius * sharpest - 10) < 1e-6) longest = kCombSample;
    CHECK(longest == test::within(10 * radius * sharpest, 1e-6));
    ++seen;
  }
  CHECK(seen == kSuite - 1);
}

TEST_CASE("changes of shape and inflections are marked") {
  // The sample of the legend is drawn with the same marks.
  const Profile s = from_origin({bend(50, 400), straight(80), bend(-35, 500), straight(120)}, 28.6);
  const Drawing sheet = profile_sheet({s, {}, {}, {}, {}}, {"", "a4"});
  CHECK(circles(sheet, pens::kMark, 1.3) == 1 + 1);
  std::size_t ticks = 0;
  for (const Segment& stroke : drawn_with(sheet, pens::kPart))
    ticks += stroke.straight() && std::abs(stroke.length() - 3.6) < 1e-9;
  CHECK(ticks == 3 + 1);
}

TEST_CASE("the rise is dimensioned, of a hollow as a negative one") {
  // Radius and turn of an arc from chord and rise: chord^2 / (8 rise) + rise / 2, 4 atan(2 rise / chord).
  struct Arc {
    double chord, rise;
  };
  int seen = 0;
  for (const auto& [chord, rise] : {Arc{600, 60}, Arc{600, 200}, Arc{1200, 150}, Arc{400, 200}})
    for (const bool hollow : {false, true}) {
      CAPTURE(chord, rise, hollow);
      const double turn = degrees(4 * std::atan(2 * rise / chord));
      const double radius = chord * chord / (8 * rise) + rise / 2;
      const Profile arc = from_origin({bend(hollow ? -turn : turn, radius)});
      const Drawing sheet = profile_sheet({arc, {}, {}, {}, {}}, {"", "a4"});
      const std::string text = (hollow ? "-" : "") + number(rise);
      CHECK(count_of(sheet, text) == 1);
      CHECK(count_of(sheet, "rise " + text) == 1);
      ++seen;
    }
  CHECK(seen == 8);
}

TEST_CASE("runs on the curve are numbered from the first, and how many are left out is told") {
  CHECK(numbering_text(1, 40).empty());
  CHECK(numbering_text(2, 40) == "every 2nd run is numbered");
  CHECK(numbering_text(5, 40) == "every 5th run is numbered");
  CHECK(numbering_text(50, 40) == "only run 1 is numbered");
  CHECK(numbering_text(0, 40) == "no run is numbered");
  int thinned = 0;
  for (const int count : {13, 30, 60, 120}) {
    CAPTURE(count);
    const Profile profile = LevelCurve(of_runs(count)).profile();
    Drawing drawing("", {297, 210}, sheet_pens());
    const View view{0.02, {150, 100}};
    const std::size_t every = add_run_numbers(drawing, profile, view, {{20, 10}, {287, 200}});
    REQUIRE(every > 0);
    for (std::size_t i = 1; i <= std::size_t(count); ++i)
      CHECK(count_of(drawing, std::to_string(i)) == (i == 1 || i % every == 0 ? 1 : 0));
    thinned += every > 1;
  }
  CHECK(thinned >= 1);
}

TEST_CASE("a sheet tells when only some runs are numbered on its curve, and only then") {
  int told = 0, silent = 0;
  for (const int count : {6, 30, 60})
    for (const Sheet& sheet : {Sheet(profile_sheet), Sheet(fit_sheet)}) {
      const Profile profile = of_runs(count);
      const Drawing drawn = sheet(fitted(profile, {}), {"", "a4"});
      CAPTURE(count);
      const bool tells = says(drawn, "run is numbered") || says(drawn, "run 1 is numbered");
      CHECK(tells == (leaders(drawn) < profile.runs().size()));
      (tells ? told : silent) += 1;
    }
  CHECK(told >= 1);
  CHECK(silent >= 2);
}

TEST_CASE("more runs than a paper can list take a larger paper, and no run is left out") {
  const Profile profile = of_runs(60);
  const Drawing sheet = fit_sheet(reading_of(profile), {"", "a4"});
  CHECK(sheet.size().x() > 297);
  std::size_t seen = 0;
  for (std::size_t i = 0; i < profile.runs().size(); ++i) {
    CHECK(count_of(sheet, run_title(profile, i)) == 1);
    ++seen;
  }
  CHECK(seen == 60);
}

TEST_CASE("small profiles are enlarged and large ones reduced by the scales of the standard") {
  const Profile shape = named_profiles()[3].profile;
  CHECK(count_of(profile_sheet(reading_of(sized(shape, 50)), {"", "a4"}), "2:1") == 1);
  CHECK(count_of(profile_sheet(reading_of(sized(shape, 105)), {"", "a4"}), "1:1") == 1);
  CHECK(count_of(profile_sheet(reading_of(sized(shape, 20000)), {"", "a4"}), "1:100") == 1);
}

TEST_CASE("notes stand on the sheets, and very many of them are counted") {
  ProfileReading reading = reading_of(named_profiles()[0].profile);
  CHECK(says(profile_sheet(reading, {"", "a4"}), reading.notes[0]));
  CHECK(says(fit_sheet(reading, {"", "a4"}), reading.fit->notes[0]));
  for (int i = 0; i < 40; ++i) reading.notes.push_back("remark " + std::to_string(i));
  long seen = 0;
  const Drawing sheet = profile_sheet(reading, {"", "a4"});
  look(sheet, seen);
  CHECK(says(sheet, "more notes not shown"));
  CHECK(seen > 100);
}

TEST_CASE("a hostile title and hostile notes stay texts") {
  const std::string hostile = "</svg>\"'../ä板 & <script>";
  ProfileReading reading = reading_of(named_profiles()[0].profile);
  reading.notes = {hostile, std::string(2000, 'm')};
  reading.fit->notes = reading.notes;
  long seen = 0;
  for (const Sheet& sheet : {Sheet(profile_sheet), Sheet(fit_sheet)}) {
    const Drawing drawn = sheet(reading, {hostile, "a4"});
    look(drawn, seen);
    CHECK(count_of(drawn, hostile) == 2);
  }
  CHECK(seen > 1000);
}

TEST_CASE("the same reading gives the same sheets") {
  const ProfileReading reading = reading_of(of_runs(20));
  CHECK(svg_text(profile_sheet(reading, {"Front"})) == svg_text(profile_sheet(reading, {"Front"})));
  CHECK(svg_text(fit_sheet(reading, {"Front"})) == svg_text(fit_sheet(reading, {"Front"})));
}
