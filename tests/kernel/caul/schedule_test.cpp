#include "kernel/caul/schedule.hpp"

#include <catch2/catch.hpp>
#include <random>

#include "kernel/caul/joint_patterns.hpp"
#include "tests/kernel/caul/schedule_rules.hpp"

using namespace lamwright;

namespace {

// Runs 45 wide every 50, the edge pairs through.
ScheduleSpec caul(double length, int runs, std::vector<SlatStock> stock) {
  ScheduleSpec spec{length, {}, std::move(stock), {}, 18, 100};
  for (int i = 0; i < runs; ++i)
    spec.runs.push_back({{i * 50.0, i * 50.0 + 45}, 45, i < 2 || i >= runs - 2, false});
  return spec;
}

std::vector<SlatStock> rack() { return {{600, 45, {}}, {900, 45, {}}, {1200, 45, {}}}; }

std::vector<double> lengths(const ScheduledRun& run) {
  std::vector<double> out;
  for (const SlatPiece& piece : run.pieces) out.push_back(piece.length());
  return out;
}

using Lengths = std::vector<double>;
using Sentences = std::vector<std::string>;

}  // namespace

TEST_CASE("A run that one slat reaches is one slat cut to length") {
  const ScheduleSpec spec = caul(930, 10, rack());
  const CaulSchedule schedule = schedule_caul(spec, 5);
  CHECK(rules::broken(spec, schedule) == "");
  REQUIRE(schedule.runs.size() == 10);
  for (const ScheduledRun& run : schedule.runs) {
    REQUIRE(run.pieces.size() == 1);
    CHECK(run.pieces[0].stock == 2);
    CHECK(run.pieces[0].cut);
    CHECK_FALSE(run.pieces[0].ripped);
  }
  CHECK(schedule.used == std::vector<int>{0, 0, 10});
  CHECK(schedule.cuts == 10);
  CHECK(schedule.proven);
  CHECK(schedule.missing.empty());
  CHECK(std::isinf(schedule.covers_close));
  CHECK(std::isinf(schedule.covers_open));
}

TEST_CASE(
    "Two whole slats a run are turned about from run to run, and edge runs that no slat reaches are named") {
  const ScheduleSpec spec = caul(1500, 10, rack());  // 900 + 600 uncut; joints at 600 and 900, 300 apart
  const CaulSchedule schedule = schedule_caul(spec, 5);
  CHECK(rules::broken(spec, schedule) == "");
  REQUIRE(schedule.runs.size() == 10);
  for (std::size_t i = 2; i < 8; ++i)
    CHECK(lengths(schedule.runs[i]) == (lengths(schedule.runs[2]) == Lengths{900, 600}
                                            ? (i % 2 == 0 ? Lengths{900, 600} : Lengths{600, 900})
                                            : (i % 2 == 0 ? Lengths{600, 900} : Lengths{900, 600})));
  CHECK(schedule.used == std::vector<int>{6, 6, 0});
  CHECK(schedule.cuts == 0);
  CHECK(schedule.proven);
  CHECK(schedule.missing ==
        Sentences{"No slat 45 wide reaches 1500 for a through slat: the longest in stock is "
                  "1200; 4 are needed."});
}

TEST_CASE("Four long slats go to the edge pairs") {
  auto stock = rack();
  stock.push_back({1500, 45, 4});
  const ScheduleSpec spec = caul(1500, 10, stock);
  const CaulSchedule schedule = schedule_caul(spec, 5);
  CHECK(rules::broken(spec, schedule) == "");
  REQUIRE(schedule.runs.size() == 10);
  for (const std::size_t edge : {0, 1, 8, 9}) CHECK(lengths(schedule.runs[edge]) == Lengths{1500});
  CHECK(schedule.used == std::vector<int>{6, 6, 0, 4});
  CHECK(schedule.cuts == 0);
  CHECK(schedule.missing.empty());
}

TEST_CASE("Counted slats that run short are named, the edge pairs served first") {
  const ScheduleSpec spec = caul(1500, 8, {{600, 45, 3}, {900, 45, 2}, {1500, 45, 3}});
  const CaulSchedule schedule = schedule_caul(spec, 5);
  CHECK(rules::broken(spec, schedule) == "");
  // 3 long slats for 3 edge runs, 2 runs of 900 + 600; one edge run and two others lack a slat of 1500 each.
  CHECK(schedule.missing == Sentences{"3 slats of 1500 x 45 are missing."});
  CHECK(schedule.used == std::vector<int>{2, 2, 3});
  int edges = 0;
  for (const std::size_t edge : {0, 1, 6, 7}) edges += schedule.runs[edge].pieces.empty() ? 0 : 1;
  CHECK(edges == 3);
  // 5 rows of 45; open, four gaps of 5 between them.
  CHECK(schedule.covers_close == Approx(5 * 45));
  CHECK(schedule.covers_open == Approx(5 * 45 + 4 * 5));
}

TEST_CASE("A workshop's counted rack is used up as well as can be") {
  const ScheduleSpec spec = caul(1500, 40, {{600, 45, 30}, {900, 45, 40}, {1200, 45, 10}, {1500, 45, 6}});
  const CaulSchedule schedule = schedule_caul(spec, 5);
  CHECK(rules::broken(spec, schedule) == "");
  CHECK(schedule.missing.empty());
  CHECK(schedule.proven);
  // 6 runs in one length; of the other 34, two pieces each, 30 are 900 + 600 uncut, for there are no more of
  // 600; the last 4 take two slats too long together, one of them cut: 900 + 900 wastes 300, 1200 + 900 would
  // waste 600.
  CHECK(schedule.used == std::vector<int>{30, 38, 0, 6});
  CHECK(schedule.cuts == 4);
}

TEST_CASE("One slat too few is told in the singular") {
  const ScheduleSpec spec = caul(900, 5, {{900, 45, 4}});
  const CaulSchedule schedule = schedule_caul(spec, 0);
  CHECK(schedule.missing == Sentences{"1 slat of 900 x 45 is missing."});
}

TEST_CASE("A width that is not in stock is named") {
  ScheduleSpec spec = caul(900, 6, {{900, 45, {}}});
  for (const std::size_t i : {2, 3}) spec.runs[i].width = 20;
  const CaulSchedule schedule = schedule_caul(spec, 5);
  CHECK(schedule.missing == Sentences{"No slats 20 wide are in stock: 2 runs need them."});
  CHECK(schedule.runs[2].pieces.empty());
  CHECK(schedule.runs[1].pieces.size() == 1);
}

TEST_CASE("A fixing run that no slat reaches is jointed on a former, its neighbours clear of it") {
  ScheduleSpec spec = caul(1430, 9, {{600, 45, {}}, {900, 45, {}}, {1430, 45, 4}});
  spec.runs[4].fixing = true;
  spec.formers = {20, 367.5, 715, 1062.5, 1410};  // pieces up to 900: on 715 alone
  const CaulSchedule schedule = schedule_caul(spec, 5);
  CHECK(rules::broken(spec, schedule) == "");
  CHECK(schedule.missing.empty());
  CHECK(lengths(schedule.runs[4]) == Lengths{715, 715});
  // Beside it 900 + 530, one cut: its joint at 530 or 900 is 185 clear of 715.
  for (const std::size_t i : {3, 5}) {
    REQUIRE(schedule.runs[i].pieces.size() == 2);
    CHECK((schedule.runs[i].pieces[0].cut != schedule.runs[i].pieces[1].cut));
  }
}

TEST_CASE("A fixing run without a former to meet on lacks a slat in one length") {
  ScheduleSpec spec = caul(1430, 9, {{600, 45, {}}, {900, 45, {}}, {1430, 45, 4}});
  spec.runs[4].fixing = true;
  spec.formers = {20, 1410};
  const CaulSchedule schedule = schedule_caul(spec, 5);
  CHECK(schedule.missing == Sentences{"1 slat of 1430 x 45 is missing."});
}

TEST_CASE("Runs whose joints would meet take one more piece") {
  // 760 twice is 1520: joints of two pieces lie between 740 and 760, so every second run is 100 + 760 + 640.
  const ScheduleSpec spec = caul(1500, 9, {{760, 45, {}}, {1500, 45, 4}});
  const CaulSchedule schedule = schedule_caul(spec, 5);
  CHECK(rules::broken(spec, schedule) == "");
  CHECK(schedule.missing.empty());
  CHECK(schedule.used == std::vector<int>{3 * 2 + 2 * 3, 4});
  CHECK(schedule.proven);
}

TEST_CASE("Too short a run for staggered joints is told") {
  // Joints keep 100 from the ends of 350 and lie where two pieces up to 200 meet: from 150 to 200, never 100
  // apart.
  const ScheduleSpec spec = caul(350, 7, {{200, 45, {}}});
  const CaulSchedule schedule = schedule_caul(spec, 5);
  CHECK(rules::broken(spec, schedule) == "");
  REQUIRE(schedule.missing.size() == 2);
  CHECK(schedule.missing[1] ==
        "1 run of slats up to 200 x 45 cannot be jointed 100 clear of the ends and of the joints beside.");
}

TEST_CASE("The last run, narrower than its slat, is ripped") {
  ScheduleSpec spec = caul(900, 5, {{900, 45, {}}});
  spec.runs.back().slat.to -= 12;
  const CaulSchedule schedule = schedule_caul(spec, 5);
  CHECK(schedule.runs.back().pieces.at(0).ripped);
  CHECK_FALSE(schedule.runs.front().pieces.at(0).ripped);
  CHECK(rules::broken(spec, schedule) == "");
}

namespace {

class Dice {
 public:
  explicit Dice(unsigned seed) : engine_(seed) {}
  int between(int low, int high) {
    return low + static_cast<int>(engine_() % static_cast<unsigned>(high - low + 1));
  }
  bool one_in(int n) { return between(1, n) == 1; }

 private:
  std::mt19937 engine_;
};

std::optional<int> some_count(Dice& dice, int most) {
  return dice.one_in(3) ? std::nullopt : std::optional(dice.between(0, most));
}

ScheduleSpec workshop(Dice& dice) {
  ScheduleSpec spec{
      dice.between(500, 2400) + dice.between(0, 1) * 0.5, {}, {}, {}, 18, 60.0 + 10 * dice.between(0, 6)};
  const double widths[] = {45, 20};
  const int kinds = dice.between(1, 4), runs = dice.between(1, 14), narrow = dice.one_in(4) ? runs / 2 : runs;
  for (int i = 0; i < kinds; ++i)
    spec.stock.push_back({50.0 * dice.between(6, 30), widths[dice.one_in(4)], some_count(dice, 30)});
  for (double at = 20; at < spec.length; at += 150 + 10 * dice.between(0, 20)) spec.formers.push_back(at);
  for (int i = 0; i < runs; ++i)
    spec.runs.push_back(
        {{i * 50.0, i * 50.0 + 45}, widths[i >= narrow], i < 2 || i >= runs - 2, dice.one_in(6)});
  return spec;
}

// Small enough to try everything: whole lengths up to 10.
ScheduleSpec tiny(Dice& dice) {
  ScheduleSpec spec{double(dice.between(5, 10)), {}, {}, {}, 1, double(dice.between(2, 3))};
  const int kinds = dice.between(1, 3), runs = dice.between(1, 4);
  for (int i = 0; i < kinds; ++i) spec.stock.push_back({double(dice.between(3, 10)), 1, some_count(dice, 4)});
  for (int at = 1; at < spec.length; ++at)
    if (dice.one_in(3)) spec.formers.push_back(at);
  for (int i = 0; i < runs; ++i)
    spec.runs.push_back({{double(i), i + 1.0}, 1, dice.one_in(4), dice.one_in(3)});
  return spec;
}

}  // namespace

TEST_CASE("Random cauls keep every rule") {
  int seen = 0, made = 0, staggered = 0;
  for (unsigned seed = 1; seed <= 200; ++seed) {
    INFO("seed " << seed);
    Dice dice(seed);
    const ScheduleSpec spec = workshop(dice);
    const CaulSchedule schedule = schedule_caul(spec, 5);
    CHECK(rules::broken(spec, schedule) == "");
    ++seen;
    made += schedule.missing.empty() ? 1 : 0;
    for (std::size_t i = 1; i < schedule.runs.size(); ++i)
      staggered += schedule.runs[i].pieces.size() > 1 && schedule.runs[i - 1].pieces.size() > 1 ? 1 : 0;
  }
  CHECK(seen == 200);
  CHECK(made >= 30);
  CHECK(staggered >= 100);
}

TEST_CASE("Small cauls are as cheap as trying everything finds") {
  int proven = 0, jointed = 0;
  for (unsigned seed = 1; seed <= 600; ++seed) {
    INFO("seed " << seed);
    Dice dice(seed);
    const ScheduleSpec spec = tiny(dice);
    const CaulSchedule schedule = schedule_caul(spec, 0);
    CHECK(rules::broken(spec, schedule) == "");
    const rules::Score least = rules::Everything(spec).least(), got = rules::score(spec, schedule);
    CHECK_FALSE(got < least);
    if (!schedule.proven) continue;
    ++proven;
    CHECK(got == least);
    jointed += got[3] > static_cast<double>(spec.runs.size()) ? 1 : 0;
  }
  CHECK(proven >= 580);
  CHECK(jointed >= 70);
}

TEST_CASE("The same caul gives the same schedule, and mirrored cauls cost the same") {
  int seen = 0;
  for (unsigned seed = 1; seed <= 12; ++seed) {
    Dice dice(seed);
    ScheduleSpec spec = workshop(dice);
    const CaulSchedule first = schedule_caul(spec, 5), again = schedule_caul(spec, 5);
    REQUIRE(first.runs.size() == again.runs.size());
    for (std::size_t i = 0; i < first.runs.size(); ++i)
      CHECK(lengths(first.runs[i]) == lengths(again.runs[i]));
    std::reverse(spec.runs.begin(), spec.runs.end());
    const CaulSchedule mirrored = schedule_caul(spec, 5);
    if (first.proven && mirrored.proven) {
      ++seen;
      CHECK(rules::score(spec, first)[3] == rules::score(spec, mirrored)[3]);
      CHECK(first.cuts == mirrored.cuts);
    }
  }
  CHECK(seen >= 6);
}

// Handfuls of seven out of 40 lengths are more than 40 million: listed, they would fill the memory.
TEST_CASE("A stock of very many lengths is scheduled, though not proven") {
  std::vector<SlatStock> stock;
  for (int i = 0; i < 40; ++i) stock.push_back({150.0 + 13 * i, 45, {}});
  const ScheduleSpec spec = caul(2400, 12, stock);
  const CaulSchedule schedule = schedule_caul(spec, 5);
  CHECK(rules::broken(spec, schedule) == "");
  CHECK_FALSE(schedule.proven);
  int jointed = 0;
  for (const ScheduledRun& run : schedule.runs) jointed += run.pieces.size() >= 4 ? 1 : 0;
  CHECK(jointed == 8);  // 2400 takes four of at most 657; the edge pairs want one length and go without
}

TEST_CASE("Runs stagger when no joint of one comes nearer than the bridge to any of the other") {
  CHECK(staggered({}, {500}, 100));
  CHECK(staggered({100, 500, 900}, {300, 700}, 100));
  CHECK(staggered({100, 200, 300}, {400, 500}, 100));
  CHECK_FALSE(staggered({100, 200, 300}, {399, 500}, 100));
  CHECK_FALSE(staggered({100, 500, 900}, {300, 950}, 100));
  CHECK_FALSE(staggered({450}, {100, 500, 900}, 100));
  CHECK_FALSE(staggered({500}, {500}, 100));
}
