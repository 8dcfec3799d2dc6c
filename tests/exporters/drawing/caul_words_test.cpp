#include <algorithm>
#include <catch2/catch.hpp>

#include "exporters/drawing/caul_kinds.hpp"
#include "exporters/drawing/caul_view.hpp"
#include "tests/exporters/drawing/caul_suite.hpp"

using namespace lamwright;
using namespace lamwright::drawing;
using namespace lamwright::test;

TEST_CASE("every run is either screwed or said to be held by tape or webbing") {
  std::size_t held = 0, hung = 0;
  for (const CaulSheets& one : caul_suite())
    for (std::size_t i = 0; i < one.cauls.size(); ++i) {
      const PlannedCaul& caul = one.plan.cauls[i];
      std::vector<int> loose;
      const auto screws = caul_screws(one.plan, caul);
      for (std::size_t k = 0; k < caul.schedule.runs.size(); ++k) {
        const Slat& slat = caul.schedule.runs[k].run.slat;
        if (std::none_of(screws.begin(), screws.end(),
                         [&](const Vec2& at) { return at.y() > slat.from && at.y() < slat.to; }))
          loose.push_back(int(k) + 1);
      }
      const std::string words = sentences_of(one.cauls[i]);
      CAPTURE(one.name, i, words);
      const bool all = loose.size() == caul.schedule.runs.size();
      const bool tied = words.find("held by tape or webbing along both ends") != std::string::npos;
      CHECK(tied == (!loose.empty() && !all));
      if (!tied) continue;
      CHECK(words.find((loose.size() > 1 ? "Runs " : "Run ") + number_list(loose) +
                       (loose.size() > 1 ? " have" : " has") + " no screws") != std::string::npos);
      const bool top = caul.kind == Layer::Kind::top_caul;
      CHECK((words.find("before the mould is turned over") != std::string::npos) == top);
      ++held;
      hung += top;
    }
  CHECK(held >= 20);
  CHECK(hung >= 2);
}

TEST_CASE("runs that must be in one length are named where the stock is shorter than they are") {
  const auto words = [](const std::string& name) { return sentences_of(cauls_called(name).cauls[0]); };
  const std::size_t last = cauls_called("joints").plan.cauls[0].schedule.runs.size();
  CHECK(words("joints").find("Runs " + number_list({1, 2, int(last) - 1, int(last)}) +
                             ", at the ends of the curve: in one length.") != std::string::npos);
  CHECK(words("S").find("in one length") == std::string::npos);
}

TEST_CASE("what a run's place is measured from is said: the contact edge's end, of a top caul the pack's") {
  std::size_t beds = 0, tops = 0;
  for (const CaulSheets& one : caul_suite())
    for (std::size_t i = 0; i < one.cauls.size(); ++i) {
      const bool bed = one.plan.cauls[i].kind == Layer::Kind::bed_caul;
      const std::string words = sentences_of(one.cauls[i]);
      CAPTURE(one.name, i);
      CHECK(words.find(std::string("from the left end of the ") + (bed ? "contact edge." : "pack.")) !=
            std::string::npos);
      CHECK(words.find("near edge left, far edge right") != std::string::npos);
      beds += bed;
      tops += !bed;
    }
  CHECK(beds >= 20);
  CHECK(tops >= 20);
}

TEST_CASE("the stock table tells what is in stock and how many are taken") {
  const CaulSheets& one = cauls_called("joints");
  for (std::size_t i = 0; i < 2; ++i) {
    const PlannedCaul& caul = one.plan.cauls[i];
    CHECK(count_of(one.cauls[i], "900 x 45 x 28") == 1);
    CHECK(count_of(one.cauls[i], "600 x 45 x 28") == 1);
    CHECK(count_of(one.cauls[i], "1400 x 45 x 28") == 1);
    CHECK(count_of(one.cauls[i], "as needed") == 2);
    for (std::size_t k = 0; k < caul.stock.size(); ++k)
      CHECK(count_of(one.cauls[i], std::to_string(caul.schedule.used[k])) >= 1);
  }
  CHECK(count_of(one.cauls[0], "8") >= 1);
  CHECK(count_of(one.cauls[0], "in stock") == 1);
  CHECK(count_of(one.cauls[1], "in stock") == 0);
  CHECK(count_of(one.cauls[1], "left") == 1);
}

TEST_CASE("the girth that the stock covers is told where the stock ends") {
  CHECK_FALSE(says(cauls_called("joints").cauls[0], "no limit"));
  CHECK_FALSE(says(cauls_called("joints").cauls[0], "stock covers"));
  CHECK(count_of(cauls_called("lacking").cauls[0], "stock covers, close") == 1);
  CHECK(count_of(cauls_called("lacking").cauls[0], "stock covers, open") == 1);
}
