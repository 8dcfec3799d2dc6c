#include "kernel/supply/timber.hpp"

#include <algorithm>
#include <catch2/catch.hpp>
#include <map>

#include "shared/number.hpp"
#include "tests/exporters/drawing/demo_jobs.hpp"
#include "tests/exporters/drawing/two_mould_jobs.hpp"
#include "tests/support/expect.hpp"

using namespace lamwright;
using namespace lamwright::test;

namespace {

struct Cut {
  Job job;
  PressPlan plan;
  std::vector<TimberCut> cuts;
  std::vector<std::string> notes;
};

Cut cut_of(const Evaluation& result) {
  if (!result.plan) throw std::runtime_error("no plan: " + only_error(result));
  Cut out{*result.job, *result.plan, {}, {}};
  out.cuts = timber(out.job, out.plan, out.notes);
  return out;
}

Cut arc(const std::string& more) {
  return cut_of(evaluated(test::job_text("width = 400\nprofile = [{bend = 70, radius = 300}]", birch(5),
                                         "[press]\nspringback = \"none\"\n" + more)));
}

const std::string kFive = "[formers]\nspacing = {count = 5}\n";

bool timber_part(const Part& part) {
  return part.kind() == PartKind::beam || part.kind() == PartKind::bearer ||
         part.kind() == PartKind::spacer_block || part.kind() == PartKind::pressing_beam ||
         part.kind() == PartKind::stop || (part.kind() == PartKind::fixing_block && !part.board());
}

const TimberCut& section(const Cut& cut, const std::string& stock) {
  for (const TimberCut& one : cut.cuts)
    if (one.stock == stock) return one;
  throw std::runtime_error("no section " + stock);
}

const WantedLength& wanted(const TimberCut& cut, const std::string& name) {
  for (const WantedLength& one : cut.wanted)
    if (one.name == name) return one;
  throw std::runtime_error("no piece " + name);
}

}  // namespace

TEST_CASE("every timber part is cut as often as the press has it, from lengths of its own section") {
  std::size_t parts = 0;
  for (const Demo& demo : demo_jobs()) {
    const Cut cut = cut_of(demo.result);
    std::map<std::string, int> cut_from_bars;
    for (const TimberCut& one : cut.cuts)
      for (const CutBar& bar : one.plan.bars)
        for (const std::size_t i : bar.pieces) ++cut_from_bars[one.stock + "/" + one.wanted[i].name];
    for (std::size_t i = 0; i < cut.plan.parts.size(); ++i) {
      const Part& part = cut.plan.parts[i];
      CAPTURE(demo.name, part.name());
      const std::string key = part.stock() + "/" + part.name();
      CHECK(cut_from_bars.count(key) == (timber_part(part) ? 1 : 0));
      if (!timber_part(part)) continue;
      CHECK(cut_from_bars[key] == int(instances(cut.plan, i)));
      ++parts;
    }
    CHECK(cut.notes.empty());
  }
  CHECK(parts > 20);
}

TEST_CASE("what is cut from a length, the saw's kerfs and the rest add up to it") {
  std::size_t bars = 0;
  for (const Demo& demo : demo_jobs()) {
    const Cut cut = cut_of(demo.result);
    for (const TimberCut& one : cut.cuts)
      for (const CutBar& bar : one.plan.bars) {
        double taken = 4 * double(bar.pieces.size() - 1);
        for (const std::size_t i : bar.pieces) taken += one.wanted[i].length;
        CAPTURE(demo.name, one.stock, taken, bar.stock, bar.rest);
        // The last cut's kerf goes only where something is left behind it.
        if (bar.rest > 0)
          CHECK(taken + 4 + bar.rest == within(bar.stock, 1e-6));
        else
          CHECK((taken <= bar.stock + 1e-6 && taken >= bar.stock - 4 - 1e-6));
        CHECK(std::count(cut.job.outputs.lengths.begin(), cut.job.outputs.lengths.end(), bar.stock) == 1);
        ++bars;
      }
  }
  CHECK(bars > 20);
}

TEST_CASE("a beam is as long as its box, a spacer block as long as the clear between formers") {
  const Cut cut = arc(kFive);
  const Part& beam = part_named(cut.plan, "beam");
  CHECK(cut_length(cut.job, beam) == beam.box().size().x());
  CHECK(wanted(section(cut, "D40 46 x 90"), "beam").length == beam.box().size().x());
  CHECK(wanted(section(cut, "D40 46 x 90"), "beam").count == 5);
  // Width 430, straps of 50 flush with its edges: pitch (430 - 50) / 4 = 95, clear 95 - 18 = 77.
  const Part& block = part_named(cut.plan, "spacer-block");
  CHECK(cut_length(cut.job, block) == within(77, 1e-9));
  CHECK(wanted(section(cut, "D40 45 x 70"), "spacer-block").length == within(77, 1e-9));
}

TEST_CASE("a spacer block shorter than its section is wide is still cut along the fibres") {
  // Eight formers: pitch 380 / 7 = 54.29, clear 36.29: less than both sides of its section.
  const Cut cut = arc("[formers]\nspacing = {count = 7}\n");
  const double clear = (430 - 50) / 6.0 - 18;
  REQUIRE(clear < 45.4);
  CHECK(cut_length(cut.job, part_named(cut.plan, "spacer-block")) == within(clear, 1e-9));
}

TEST_CASE("a stop is cut along the width") {
  const Cut cut = cut_of(evaluated(between_moulds(kDrawnUnequalL, "beam_tilt = 20")));
  std::size_t stops = 0;
  for (const Part& part : cut.plan.parts) {
    if (part.kind() != PartKind::stop) continue;
    CHECK(cut_length(cut.job, part) == part.box().size().z());
    ++stops;
  }
  CHECK(stops >= 1);
}

TEST_CASE("a job's own lengths and kerf are cut from") {
  const Cut cut = arc(kFive + "[outputs]\nlengths = [2000]\nkerf = 0\n");
  for (const TimberCut& one : cut.cuts)
    for (const CutBar& bar : one.plan.bars) {
      CHECK(bar.stock == 2000);
      double taken = bar.rest;
      for (const std::size_t i : bar.pieces) taken += one.wanted[i].length;
      CHECK(taken == within(2000, 1e-6));
    }
  CHECK(cut.cuts.size() == 2);
}

TEST_CASE("a beam longer than any length that is bought is told, and what can be cut is cut") {
  const Cut cut = arc(kFive + "[outputs]\nlengths = [250, 300]\n");
  const double length = part_named(cut.plan, "beam").box().size().x();
  REQUIRE(length > 300);
  REQUIRE(cut.notes.size() == 1);
  CHECK(cut.notes[0] == "beam is " + number(length, 1) +
                            " long, the longest D40 46 x 90 that is bought 300: name the length to buy in "
                            "outputs.lengths.");
  CHECK(section(cut, "D40 46 x 90").plan.bars.empty());
  CHECK(section(cut, "D40 45 x 70").plan.bars.size() >= 1);
}

TEST_CASE("sections come in the order in which the plan's parts name them, none twice") {
  std::size_t sections = 0;
  for (const Demo& demo : demo_jobs()) {
    const Cut cut = cut_of(demo.result);
    std::vector<std::string> first;
    for (const Part& part : cut.plan.parts)
      if (timber_part(part) && std::find(first.begin(), first.end(), part.stock()) == first.end())
        first.push_back(part.stock());
    std::vector<std::string> found;
    for (const TimberCut& one : cut.cuts) found.push_back(one.stock);
    CAPTURE(demo.name);
    CHECK(found == first);
    sections += found.size();
  }
  CHECK(sections >= 15);
}

TEST_CASE("a press that stands on boards alone wants no timber but its beams") {
  const Cut cut =
      cut_of(evaluated(between_moulds(kDrawnS, "", "kind = \"bare\"", "[formers]\nspacing = 18")));
  for (const TimberCut& one : cut.cuts)
    for (const WantedLength& piece : one.wanted) CHECK(holds(piece.name, "beam"));
  CHECK(cut.cuts.size() == 1);
}
