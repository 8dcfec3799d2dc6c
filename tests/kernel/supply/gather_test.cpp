#include "kernel/supply/gather.hpp"

#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>
#include <map>

#include "kernel/plugin/exporter.hpp"
#include "tests/support/expect.hpp"
#include "tests/support/jobs.hpp"

using namespace lamwright;
using namespace lamwright::test;

namespace {

struct Gathered {
  Evaluation result;
  Supply supply;
};

Gathered gathered(const std::string& panel, const std::string& layup, const std::string& more = "") {
  Gathered out{evaluated(test::job_text(panel, layup, "[press]\nspringback = \"none\"\n" + more)), {}};
  if (!out.result.plan) throw std::runtime_error("no plan: " + only_error(out.result));
  out.supply = gather(*out.result.job, *out.result.plan, out.result.figures);
  return out;
}

const std::string kPanel = "width = 400\ncount = 5\nprofile = [{bend = 70, radius = 300}]";
const std::string kFive = "[formers]\nspacing = {count = 5}\n";

const Gathered& five() {
  static const Gathered one = gathered(kPanel, birch(5), kFive);
  return one;
}

std::vector<SupplyItem> named(const std::vector<SupplyItem>& items, const std::string& name) {
  std::vector<SupplyItem> out;
  for (const SupplyItem& item : items)
    if (item.name == name) out.push_back(item);
  return out;
}

}  // namespace

TEST_CASE("sheets of board are bought for the press, whatever the number of panels") {
  const auto sheets = named(five().supply.material, "plywood-18");
  REQUIRE(sheets.size() == 1);
  CHECK(sheets[0].one == double(five().supply.sheets.size()));
  CHECK(sheets[0].all == sheets[0].one);
  CHECK(sheets[0].unit == "sheet");
  CHECK(sheets[0].use == "sheets 2440 x 1220 for formers, blocks and templates");
}

TEST_CASE("timber is bought in lengths, a line for each, the longest first") {
  std::size_t lines = 0;
  for (const TimberCut& cut : five().supply.timber) {
    const auto items = named(five().supply.material, cut.stock);
    std::map<double, int, std::greater<>> bars;
    for (const CutBar& bar : cut.plan.bars) ++bars[bar.stock];
    REQUIRE(items.size() == bars.size());
    std::size_t i = 0;
    for (const auto& [length, count] : bars) {
      CHECK(items[i].one == within(length * count / 1000, 1e-12));
      CHECK(items[i].all == items[i].one);
      CHECK(items[i].unit == "m");
      CHECK(items[i].use == std::to_string(count) + " of " + std::to_string(int(length)));
      ++i, ++lines;
    }
  }
  CHECK(lines >= 2);
}

TEST_CASE("veneer is counted by its area as cut, five plies for one panel and for five") {
  const auto veneer = named(five().supply.material, "birch-yellow");
  REQUIRE(veneer.size() == 1);
  const PackSheet& ply = five().supply.pack.front();
  CHECK(veneer[0].one == within(5 * ply.cut * 430 / 1e6, 1e-12));
  CHECK(veneer[0].all == within(25 * ply.cut * 430 / 1e6, 1e-12));
  CHECK(veneer[0].unit == "m2");
}

TEST_CASE("veneers of one timber in two thicknesses are two things to buy") {
  const Gathered one = gathered(kPanel,
                                "plies = [{timber = \"birch-yellow\", thickness = 1.5, count = 3}, {timber = "
                                "\"birch-yellow\", thickness = 0.9}]",
                                kFive);
  const auto veneer = named(one.supply.material, "birch-yellow");
  REQUIRE(veneer.size() == 2);
  CHECK(veneer[0].use == "veneer 1.5, as cut; add for joints and flaws");
  CHECK(veneer[1].use == "veneer 0.9, as cut; add for joints and flaws");
  CHECK(veneer[0].one == within(3 * veneer[1].one, 1e-12));
}

TEST_CASE("plies of board are bought for one panel and for all, covers once") {
  const Gathered one = gathered(kPanel,
                                "cover = 3\nplies = [{board = \"bending-plywood-5\", grain = \"across\", "
                                "count = 3}]",
                                kFive);
  const auto boards = named(one.supply.material, "bending-plywood-5");
  REQUIRE(boards.size() == 1);
  REQUIRE(one.supply.blanks.size() == 2);
  CHECK(boards[0].all == one.supply.blanks.at(0).plan.sheets);
  CHECK(boards[0].one >= 1);
  CHECK(boards[0].one < boards[0].all);
  CHECK(boards[0].unit == "sheet");
  const auto covers = named(one.supply.material, one.supply.blanks.at(1).board);
  REQUIRE(covers.size() == 1);
  CHECK(covers[0].one == 1);
  CHECK(covers[0].all == 1);
}

TEST_CASE("glue is counted by its mass, five panels take five times as much") {
  const auto glue = named(five().supply.material, "pvac-d3");
  REQUIRE(glue.size() == 1);
  REQUIRE(five().result.figures.glue);
  CHECK(glue[0].one == five().result.figures.glue->mass);
  CHECK(glue[0].one > 0);
  CHECK(glue[0].all == within(5 * glue[0].one, 1e-9));
  CHECK(glue[0].unit == "kg");
}

TEST_CASE("the plan's hardware is listed piece by piece with its count") {
  std::size_t pieces = 0;
  for (std::size_t i = 0; i < five().result.plan->hardware.size(); ++i) {
    const Hardware& wanted = five().result.plan->hardware[i];
    const SupplyItem& item = five().supply.hardware.at(i);
    CHECK(item.name == wanted.name);
    CHECK(item.use == wanted.use);
    CHECK(item.one == wanted.count);
    CHECK(item.all == wanted.count);
    CHECK(item.unit == "piece");
    ++pieces;
  }
  CHECK(pieces >= 5);
}

TEST_CASE("a slatted caul under straps is held by four clamps meanwhile, a sheathed mould by none") {
  const auto clamps = named(five().supply.hardware, "one-handed clamp");
  REQUIRE(clamps.size() == 1);
  CHECK(clamps[0].one == 4);
  const Gathered bare = gathered(kPanel, birch(5), kFive + "[caul]\nkind = \"bare\"\n");
  CHECK(named(bare.supply.hardware, "one-handed clamp").empty());
}

TEST_CASE("glue that does not wash off wants tape over the faces of the cauls, in whole metres of 50") {
  CHECK(named(five().supply.hardware, "tape 50").empty());
  const Gathered one = gathered(kPanel, "glue = \"polyurethane\"\n" + birch(5), kFive);
  double area = 0;
  for (const Layer& layer : one.result.plan->layers)
    if (layer.kind == Layer::Kind::bed_caul || layer.kind == Layer::Kind::top_caul)
      area += layer.inner.girth() * 430;
  REQUIRE(area > 0);
  const auto tape = named(one.supply.hardware, "tape 50");
  REQUIRE(one.result.job->layup.glue_row.waterproof);
  REQUIRE(tape.size() == 1);
  CHECK(tape[0].one == std::ceil(area / 50 / 1000));
  CHECK(tape[0].unit == "m");
}

TEST_CASE("what does not fit is told once for each part, board and timber alike") {
  const Gathered one =
      gathered(kPanel, birch(5), kFive + "[outputs]\nsheet = \"300x250\"\nlengths = [250]\n");
  std::size_t former = 0, beam = 0;
  for (const std::string& note : one.supply.notes) {
    former += note.starts_with("former-lower (");
    beam += note.starts_with("beam is ");
  }
  CHECK(former == 1);
  CHECK(beam == 1);
  CHECK(five().supply.notes.empty());
}

TEST_CASE("a job can be stopped while its parts are nested") {
  CHECK_THROWS_AS(
      gather(*five().result.job, *five().result.plan, five().result.figures, [] { throw Cancelled(); }),
      Cancelled);
}

TEST_CASE("without nested sheets the rest is still cut and counted") {
  const Gathered one = gathered(kPanel, birch(5), kFive + "[outputs]\nsheets = false\n");
  CHECK(one.supply.sheets.empty());
  CHECK(named(one.supply.material, "plywood-18").empty());
  CHECK(one.supply.timber.size() == five().supply.timber.size());
  CHECK(one.supply.pack.size() == five().supply.pack.size());
  CHECK(one.supply.hardware.size() == five().supply.hardware.size());
}
