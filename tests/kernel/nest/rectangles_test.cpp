#include "kernel/nest/rectangles.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <random>

#include "tests/support/expect.hpp"

using namespace lamwright;
using namespace lamwright::test;

namespace {

using Wanted = std::vector<WantedRectangle>;

// Places are summed from sizes rounded to 1e-8; some tens of terms.
constexpr double kPlace = 2e-6;
const RectangleSheet kBoard{{2440, 1220}, 4, 0};

std::vector<Box2> boxes_on(const RectanglePlan& plan, const Wanted& wanted, int sheet) {
  std::vector<Box2> boxes;
  for (const RectangleAt& at : plan.placed) {
    if (at.sheet != sheet) continue;
    const Vec2 size = wanted.at(at.piece).size;
    boxes.push_back({at.low, at.low + (at.turned ? Vec2(size.y(), size.x()) : size)});
  }
  return boxes;
}

// Whether cuts from edge to edge, each a kerf wide, take these apart. Any cut that is free now stays so in
// both halves, so the first one found will do.
bool can_be_sawn(std::vector<Box2> boxes, double kerf) {
  if (boxes.size() < 2) return true;
  for (const int axis : {0, 1}) {
    std::sort(boxes.begin(), boxes.end(),
              [=](const Box2& a, const Box2& b) { return a.low[axis] < b.low[axis]; });
    double reach = boxes[0].high[axis];
    for (std::size_t n = 1; n < boxes.size(); ++n) {
      if (boxes[n].low[axis] >= reach + kerf - kPlace)
        return can_be_sawn({boxes.begin(), boxes.begin() + long(n)}, kerf) &&
               can_be_sawn({boxes.begin() + long(n), boxes.end()}, kerf);
      reach = std::max(reach, boxes[n].high[axis]);
    }
  }
  return false;
}

void check_rest(const RectanglePlan& plan, const std::vector<Box2>& last, const RectangleSheet& sheet) {
  if (plan.rest_size.isZero()) return;
  const Box2 rest{plan.rest_low, plan.rest_low + plan.rest_size};
  CHECK((rest.low.array() >= sheet.margin - kPlace).all());
  CHECK((rest.high.array() <= sheet.size.array() - sheet.margin + kPlace).all());
  std::vector<Box2> with_rest = last;
  with_rest.push_back(rest);
  CHECK(can_be_sawn(with_rest, sheet.kerf));
}

void check_counts(const RectanglePlan& plan, const Wanted& wanted) {
  std::vector<int> placed(wanted.size(), 0);
  for (const RectangleAt& at : plan.placed) {
    ++placed.at(at.piece);
    if (at.turned) CHECK(wanted[at.piece].turns);
  }
  for (std::size_t w = 0; w < wanted.size(); ++w) {
    const bool oversize = std::count(plan.oversize.begin(), plan.oversize.end(), w) > 0;
    CHECK(placed[w] == (oversize ? 0 : wanted[w].count));
  }
}

// Everything a saw and a parts list can hold against a plan.
void check_sound(const RectanglePlan& plan, const Wanted& wanted, const RectangleSheet& sheet) {
  check_counts(plan, wanted);
  double area = 0;
  for (int n = 0; n < plan.sheets; ++n) {
    CAPTURE(n);
    const std::vector<Box2> boxes = boxes_on(plan, wanted, n);
    CHECK_FALSE(boxes.empty());
    CHECK(can_be_sawn(boxes, sheet.kerf));
    for (const Box2& box : boxes) {
      CHECK((box.low.array() >= sheet.margin - kPlace).all());
      CHECK((box.high.array() <= sheet.size.array() - sheet.margin + kPlace).all());
      area += box.size().prod();
    }
    if (n == plan.sheets - 1) check_rest(plan, boxes, sheet);
  }
  CHECK(std::is_sorted(plan.placed.begin(), plan.placed.end(),
                       [](const RectangleAt& a, const RectangleAt& b) { return a.sheet < b.sheet; }));
  if (plan.sheets > 0) CHECK(plan.yield == within(area / plan.sheets / sheet.size.prod(), 1e-9));
  CHECK(plan.least_sheets <= plan.sheets);
}

// Saws a field in two until `pieces` are left of it; no kerf, so nothing is lost.
void split(const Vec2& size, int pieces, std::mt19937& random, Wanted& wanted) {
  const int axis = size.x() > size.y() ? 0 : 1;
  if (pieces == 1) return wanted.push_back({"piece", size, 1, false});
  const int low_pieces = 1 + int(random() % unsigned(pieces - 1));
  Vec2 low = size, high = size;
  low[axis] = std::clamp(std::round(size[axis] * low_pieces / pieces), 1.0, size[axis] - 1);
  high[axis] -= low[axis];
  split(low, low_pieces, random, wanted);
  split(high, pieces - low_pieces, random, wanted);
}

// The most pieces of one size that guillotine cuts at whole millimetres give, by trying every cut.
class EveryCut {
 public:
  EveryCut(int width, int height, int kerf, bool turns) : w_(width), h_(height), kerf_(kerf), turns_(turns) {}

  int most(int x, int y) {
    if (std::min(x, y) < std::min(w_, h_)) return 0;
    const auto [known, fresh] = most_.try_emplace({x, y}, 0);
    if (!fresh) return known->second;
    int best = (w_ <= x && h_ <= y) || (turns_ && h_ <= x && w_ <= y) ? 1 : 0;
    for (int cut = 1; cut < x; ++cut) best = std::max(best, most(cut, y) + most(x - cut - kerf_, y));
    for (int cut = 1; cut < y; ++cut) best = std::max(best, most(x, cut) + most(x, y - cut - kerf_));
    return most_[{x, y}] = best;
  }

 private:
  int w_, h_, kerf_;
  bool turns_;
  std::map<std::pair<int, int>, int> most_;
};

}  // namespace

TEST_CASE("Eight squares of 600 fill one board") {
  // Worked by hand: 4 x 600 + 3 x 4 = 2412 of 2440, 2 x 600 + 4 = 1204 of 1220.
  const Wanted wanted{{"square", {600, 600}, 8, false}};
  const RectanglePlan plan = cut_rectangles(wanted, kBoard);
  check_sound(plan, wanted, kBoard);
  CHECK(plan.sheets == 1);
  CHECK(plan.least_sheets == 1);
  CHECK(plan.yield == within(8 * 360000 / (2440.0 * 1220), 1e-12));
  // Four cuts across part the columns from each other and from a strip of 24; each column takes two more.
  CHECK(saw_cuts(wanted, kBoard, plan).size() == 12);
}

TEST_CASE("The ninth square needs a second board and leaves the greatest rest there") {
  // Worked by hand: one square on the last board, cut off over its full width: 2440 - 604 = 1836 by 1220.
  const Wanted wanted{{"square", {600, 600}, 9, false}};
  const RectanglePlan plan = cut_rectangles(wanted, kBoard);
  check_sound(plan, wanted, kBoard);
  CHECK(plan.sheets == 2);
  CHECK(plan.rest_size.x() == within(1836, kPlace));
  CHECK(plan.rest_size.y() == within(1220, kPlace));
}

TEST_CASE("A gap on an early board is still found for a small piece after thousands of squares") {
  // Worked by hand: 500 boards of eight, the last square alone; beside it, or in strips of 24, there is room.
  const Wanted wanted{{"square", {600, 600}, 4001, false}, {"strip", {20, 1200}, 500, false}};
  const RectanglePlan plan = cut_rectangles(wanted, kBoard);
  CHECK(plan.sheets == 501);
  CHECK(plan.placed.size() == 4501);
  CHECK(plan.least_sheets <= 501);
}

TEST_CASE("The kerf and the margin decide whether a third piece fits") {
  const Wanted wanted{{"cover", {800, 1000}, 3, false}};
  CHECK(cut_rectangles(wanted, {{2400, 1000}, 0, 0}).sheets == 1);
  CHECK(cut_rectangles(wanted, {{2400, 1000}, 4, 0}).sheets == 2);
  CHECK(cut_rectangles(wanted, {{2408, 1000}, 4, 0}).sheets == 1);
  CHECK(cut_rectangles(wanted, {{2428, 1020}, 4, 10}).sheets == 1);
  CHECK(cut_rectangles(wanted, {{2427, 1020}, 4, 10}).sheets == 2);
}

TEST_CASE("Grain is kept where a piece may not turn") {
  const RectangleSheet sheet{{1100, 600}, 4, 0};
  const RectanglePlan kept = cut_rectangles({{"ply", {500, 1000}, 2, false}}, sheet);
  CHECK(kept.oversize == std::vector<std::size_t>{0});
  CHECK(kept.placed.empty());
  CHECK(kept.sheets == 0);
  const Wanted free{{"ply", {500, 1000}, 2, true}};
  const RectanglePlan turned = cut_rectangles(free, sheet);
  check_sound(turned, free, sheet);
  REQUIRE(turned.placed.size() == 2);
  CHECK(turned.placed[0].turned);
}

TEST_CASE("Oversize pieces are named and the others are cut") {
  const Wanted wanted{
      {"long", {2500, 100}, 2, true}, {"ply", {600, 300}, 3, false}, {"none", {9999, 1}, 0, false}};
  const RectanglePlan plan = cut_rectangles(wanted, kBoard);
  check_sound(plan, wanted, kBoard);
  CHECK(plan.oversize == std::vector<std::size_t>{0});
  CHECK(plan.placed.size() == 3);
}

TEST_CASE("Four pieces round a hole cannot be sawn and go on two sheets") {
  // Worked by hand: the pinwheel of four 300 x 200 fits 500 x 500, but no cut runs from edge to edge; a first
  // cut at 200 or 300 leaves room for two pieces and one.
  const Wanted wanted{{"piece", {300, 200}, 4, true}};
  const RectanglePlan plan = cut_rectangles(wanted, {{500, 500}, 0, 0});
  check_sound(plan, wanted, {{500, 500}, 0, 0});
  CHECK(plan.sheets == 2);
  CHECK(plan.least_sheets == 2);
}

TEST_CASE("One size takes as few sheets as trying every cut") {
  constexpr unsigned kSeed = 91;
  std::mt19937 random(kSeed);
  const auto from = [&random](int low, int high) { return low + int(random() % unsigned(high - low + 1)); };
  int seen = 0, mixed = 0;
  for (int n = 0; n < 80; ++n) {
    CAPTURE(kSeed, n);
    const int w = from(5, 16), h = from(4, 12), kerf = from(0, 2), x = from(24, 50), y = from(20, 40);
    const bool turns = from(0, 3) > 0;
    const int most = EveryCut(w, h, kerf, turns).most(x, y), count = from(1, 60);
    const Wanted wanted{{"piece", {w, h}, count, turns}};
    const RectangleSheet sheet{{x, y}, double(kerf), 0};
    const RectanglePlan plan = cut_rectangles(wanted, sheet);
    check_sound(plan, wanted, sheet);
    REQUIRE(plan.sheets == (count + most - 1) / most);
    REQUIRE(plan.least_sheets == plan.sheets);
    mixed +=
        std::any_of(plan.placed.begin(), plan.placed.end(), [](const RectangleAt& at) { return at.turned; });
    ++seen;
  }
  CHECK(seen == 80);
  CHECK(mixed > 20);
}

TEST_CASE("Plies of a few sizes are cut near the bound") {
  const Wanted wanted{{"face", {1200, 930}, 20, false}, {"core", {1150, 620}, 20, false},
                      {"cross", {900, 580}, 40, false}, {"strip", {700, 300}, 20, false},
                      {"cover", {450, 450}, 20, false}, {"trial", {380, 260}, 20, false}};
  const RectangleSheet sheet{{2500, 1250}, 4, 10};
  const RectanglePlan plan = cut_rectangles(wanted, sheet);
  check_sound(plan, wanted, sheet);
  CHECK(plan.oversize.empty());
  CHECK(plan.sheets <= plan.least_sheets + 1);
}

TEST_CASE("Random rectangles are all cut, by sawing alone, within reach of their area") {
  constexpr unsigned kSeed = 4711;
  std::mt19937 random(kSeed);
  int seen = 0;
  for (int n = 0; n < 30; ++n) {
    CAPTURE(kSeed, n);
    Wanted wanted;
    double area = 0;
    const int sizes = 1 + int(random() % 12);
    for (int i = 0; i < sizes; ++i) {
      const Vec2 size(100 + random() % 700, 80 + random() % 500);
      wanted.push_back({"piece", size, 1 + int(random() % 20), random() % 2 == 0});
      area += (size.array() + 4).prod() * wanted.back().count;
    }
    const RectangleSheet sheet{{2440, 1220}, 4, double(random() % 3 * 5)};
    const RectanglePlan plan = cut_rectangles(wanted, sheet);
    check_sound(plan, wanted, sheet);
    const double sheet_area = (sheet.size.array() - 2 * sheet.margin + 4).prod();
    CHECK(plan.sheets >= std::ceil(area / sheet_area - 1e-9));
    // Pieces of at most a third by a half of the sheet fill well over half of each.
    CHECK(plan.sheets <= std::ceil(1.5 * area / sheet_area) + 1);
    ++seen;
  }
  CHECK(seen == 30);
}

TEST_CASE("Sets that fill their sheets without waste are cut with a high yield") {
  constexpr unsigned kSeed = 2718;
  std::mt19937 random(kSeed);
  int seen = 0, without_waste = 0;
  for (int n = 0; n < 40; ++n) {
    CAPTURE(kSeed, n);
    Wanted wanted;
    for (int sheet = 0; sheet < 3; ++sheet) split({2500, 1250}, 4 + n % 10, random, wanted);
    const RectangleSheet sheet{{2500, 1250}, 0, 0};
    const RectanglePlan plan = cut_rectangles(wanted, sheet);
    check_sound(plan, wanted, sheet);
    CHECK(plan.least_sheets == 3);
    // One sheet more than a perfect plan, whose pieces were made for each other.
    CHECK(plan.sheets <= 4);
    without_waste += plan.sheets == 3;
    ++seen;
  }
  CHECK(seen == 40);
  INFO("perfect plans " << without_waste << " of 40");
  CHECK(without_waste >= 20);
}

TEST_CASE("Saw cuts stay clear of the pieces and free every one of them") {
  const Wanted wanted{
      {"face", {1200, 700}, 3, false}, {"core", {640, 410}, 7, true}, {"cover", {380, 260}, 5, true}};
  const RectangleSheet sheet{{2440, 1220}, 4, 10};
  const RectanglePlan plan = cut_rectangles(wanted, sheet);
  const std::vector<SawCut> cuts = saw_cuts(wanted, sheet, plan);
  REQUIRE_FALSE(cuts.empty());
  int checked = 0;
  for (const SawCut& cut : cuts) {
    const int along = cut.from.x() == cut.to.x() ? 1 : 0;
    CHECK(cut.to[along] > cut.from[along]);
    Box2 blade{cut.from, cut.to};
    blade.high[1 - along] += sheet.kerf;
    for (const Box2& piece : boxes_on(plan, wanted, cut.sheet)) {
      const Vec2 shared = blade.high.cwiseMin(piece.high) - blade.low.cwiseMax(piece.low);
      CHECK(shared.minCoeff() <= kPlace);
      ++checked;
    }
  }
  CHECK(checked > 50);
}

TEST_CASE("Sheets and rectangles that cannot be are refused") {
  CHECK(message_of([] {
          cut_rectangles({{"ply", {0, 5}, 1, false}}, kBoard);
        }) == "ply: its size is 0 x 5; above 0 is needed");
  CHECK(message_of([] {
          cut_rectangles({{"ply", {5, 5}, -2, false}}, kBoard);
        }) == "ply: its count is -2; 0 or more is needed");
  CHECK(message_of([] {
          cut_rectangles({}, {{100, 50}, 4, 25});
        }) == "sheet: its size is 100 x 50 and its margins are 25; something must be left inside them");
  CHECK(message_of([] { cut_rectangles({}, {{100, 50}, -4, 0}); }) == "kerf: it is -4; 0 or more is needed");
  CHECK(message_of([] {
          cut_rectangles({}, {{100, 50}, 4, -1});
        }) == "margin: it is -1; 0 or more is needed");
}

TEST_CASE("The same rectangles give the same plan") {
  const Wanted wanted{{"a", {431, 277}, 23, true}, {"b", {612, 198}, 31, false}, {"c", {305, 305}, 17, true}};
  const RectanglePlan one = cut_rectangles(wanted, kBoard), two = cut_rectangles(wanted, kBoard);
  REQUIRE(one.placed.size() == two.placed.size());
  REQUIRE(one.placed.size() == 71);
  for (std::size_t i = 0; i < one.placed.size(); ++i) {
    CHECK(one.placed[i].piece == two.placed[i].piece);
    CHECK(one.placed[i].low == two.placed[i].low);
  }
}
