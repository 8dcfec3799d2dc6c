#include "exporters/drawing/caul_kinds.hpp"

#include <catch2/catch.hpp>

#include "exporters/drawing/text.hpp"

using namespace lamwright;
using namespace lamwright::drawing;

namespace {

ScheduledRun run(double width, double stock, std::vector<SlatPiece> pieces, bool fixing = false) {
  return {{Slat{0, width}, stock, false, fixing}, std::move(pieces)};
}

// Whole slats of 600, the rest cut of one of the stock of that index.
ScheduledRun jointed(std::size_t rest = 0) {
  return run(45, 45,
             {{0, 600, 0, false, false}, {600, 1200, 0, false, false}, {1200, 1370, rest, true, false}});
}

PlannedCaul caul(std::vector<ScheduledRun> runs) {
  PlannedCaul out;
  out.length = 1370;
  out.stock = {{600, 45, std::nullopt}, {1400, 45, std::nullopt}};
  out.schedule.runs = std::move(runs);
  return out;
}

}  // namespace

TEST_CASE("runs are of one kind when their pieces from edge to edge and their width are the same") {
  const auto whole = run(45, 45, {{0, 1370, 1, true, false}});
  const auto kinds = run_kinds(caul({run(30, 45, {{0, 1370, 1, true, true}}), whole, jointed(), whole,
                                     run(45, 45, {}), run(30, 30, {{0, 1370, 1, true, false}})}));
  REQUIRE(kinds.size() == 5);
  CHECK(kinds[0].pieces == "1370 of 1400");
  CHECK(kinds[0].width == "45 ripped to 30");
  CHECK(kinds[1].letter == "B");
  CHECK(kinds[1].width == "45");
  CHECK(kinds[1].runs == std::vector<int>{2, 4});
  CHECK(kinds[2].pieces == "2 x 600 + 170 of 600");
  CHECK(kinds[3].pieces == "1370, not in stock");
  CHECK(kinds[4].width == "30");
}

TEST_CASE("runs of the same pieces are of two kinds when only one of them is screwed to the formers") {
  const std::vector<SlatPiece> whole{{0, 1370, 1, true, false}};
  const PlannedCaul laid = caul({run(45, 45, whole), run(45, 45, whole, true), run(45, 45, whole)});
  const auto kinds = run_kinds(laid);
  REQUIRE(kinds.size() == 2);
  CHECK_FALSE(kinds[0].screwed);
  CHECK(kinds[0].runs == std::vector<int>{1, 3});
  CHECK(kinds[1].screwed);
  CHECK(kinds[1].runs == std::vector<int>{2});
  CHECK(runs_screwed(laid, true) == std::vector<int>{2});
  CHECK(runs_screwed(laid, false) == std::vector<int>{1, 3});
  const Table table = kind_table(kinds);
  CHECK(table.columns[3].head == "held by");
  CHECK(table.rows[0][3] == "tape");
  CHECK(table.rows[1][3] == "screws");
}

TEST_CASE("a cut piece is told with the length of its slat: of another slat, another kind") {
  const auto kinds = run_kinds(caul({jointed(0), jointed(1)}));
  REQUIRE(kinds.size() == 2);
  CHECK(kinds[0].pieces == "2 x 600 + 170 of 600");
  CHECK(kinds[1].pieces == "2 x 600 + 170 of 1400");
}

TEST_CASE("where a run has joints the table says from which edge its pieces are listed") {
  CHECK(kind_table(run_kinds(caul({jointed()}))).columns[1].head == "pieces, near to far edge");
  const auto whole = run(45, 45, {{0, 1370, 1, true, false}});
  CHECK(kind_table(run_kinds(caul({whole}))).columns[1].head == "pieces");
}

TEST_CASE("pieces told apart only by being cut are not counted together") {
  const auto kinds = run_kinds(caul(
      {run(45, 45, {{0, 600, 0, false, false}, {600, 1200, 1, true, false}, {1200, 1370, 0, true, false}})}));
  CHECK(kinds.front().pieces == "600 + 600 of 1400 + 170 of 600");
}

TEST_CASE("letters leave out I and O, after Z come AA, AB") {
  std::vector<ScheduledRun> runs;
  for (int i = 0; i < 26; ++i) runs.push_back(run(20 + i, 20 + i, {{0, 1370, 0, false, false}}));
  const auto letters = run_letters(caul(runs));
  REQUIRE(letters.size() == 26);
  CHECK(letters[7] == "H");
  CHECK(letters[8] == "J");
  CHECK(letters[12] == "N");
  CHECK(letters[13] == "P");
  CHECK(letters[23] == "Z");
  CHECK(letters[24] == "AA");
  CHECK(letters[25] == "AB");
}

TEST_CASE("a list of numbers joins those that follow one another and every other one") {
  CHECK(number_list({7}) == "7");
  CHECK(number_list({1, 2, 3, 7}) == "1-3, 7");
  CHECK(number_list({3, 5, 7}) == "3, 5, 7");
  CHECK(number_list({3, 5, 7, 9}) == "3, 5, 7, 9");
  CHECK(number_list({3, 5, 7, 9, 11, 14}) == "3 to 11 (every second), 14");
  CHECK(number_list({2, 4, 6, 7, 8, 9}) == "2, 4, 6-9");
  CHECK(number_list({1, 2, 4, 6, 8, 10, 12}) == "1-2, 4 to 12 (every second)");
}

TEST_CASE("the table of kinds has one row for each, as wide as its texts, all runs listed in their cell") {
  const RunKind few{"A", "900 + 772 of 900", "45", false, {1, 2}};
  RunKind many{"B", "1672", "45", true, {}};
  for (int i = 1; i < 32; i += 3) many.runs.push_back(i);
  const Table table = kind_table({few, many});
  REQUIRE(table.rows.size() == 2);
  CHECK(table.rows[1][4] == "11");
  CHECK(table.rows[1][5] == "1, 4, 7, 10, 13, 16, 19, 22, 25, 28, 31");
  std::size_t cells = 0;
  for (std::size_t c = 0; c < table.columns.size(); ++c)
    for (const auto& row : table.rows) {
      CHECK_FALSE(row[c].empty());
      CHECK(text_width(row[c], kSmallHeight) < table.columns[c].width);
      ++cells;
    }
  CHECK(cells == 12);
}

TEST_CASE("runs too scattered for a row are told by the first and the last, their letters stand on the map") {
  RunKind scattered{"A", "1672", "45", false, {}};
  for (int i = 1; i < 90; i += 3) scattered.runs.push_back(i);
  const Table table = kind_table({scattered});
  REQUIRE(table.rows.size() == 1);
  CHECK(table.rows[0][4] == "30");
  CHECK(table.rows[0][5] == "from 1 to 88, see the map");
  CHECK(table.columns[5].width < 80);
}
