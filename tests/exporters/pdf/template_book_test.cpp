#include "exporters/pdf/template_book.hpp"

#include <catch2/catch.hpp>

#include "exporters/drawing/check_bars.hpp"
#include "exporters/drawing/clearance.hpp"
#include "exporters/drawing/text.hpp"
#include "exporters/pdf/pdf_exporter.hpp"
#include "exporters/pdf/template_guide.hpp"
#include "kernel/plugin/memory.hpp"
#include "tests/exporters/drawing/legible.hpp"
#include "tests/exporters/svg/sample_plan.hpp"

using namespace lamwright;
using namespace lamwright::test;

namespace {

Job job_on(const std::string& paper) {
  Job job = sample::job();
  job.outputs.paper = paper;
  return job;
}

struct Notes : Progress {
  void note(std::string_view sentence) override { said.emplace_back(sentence); }
  std::vector<std::string> said;
};

MemorySink exported(const PressPlan& plan, Progress& progress) {
  MemorySink sink;
  const Job job = job_on("a4");
  const std::vector<Finding> none;
  PdfExporter().write({job, plan, none, progress}, sink);
  return sink;
}

}  // namespace

TEST_CASE("templates begin with how to use them and list part, size, pieces and pages") {
  // The former is 652 x 326: on lying A3 sheets of 390 x 258 of their own 2 x 2, upright, 267 x 381, 1 x 3.
  const auto book = template_book(job_on("a3"), sample::plan()).pages;
  REQUIRE(book.size() == 4);
  CHECK(book[0].title() == "how to use the templates");
  CHECK(book[1].title() == "former-lower A1");
  CHECK(book[3].title() == "former-lower A3");
  for (const std::string cell : {"former-lower", "652 x 326", "1 x 3", "2-4"})
    CHECK(count_of(book[0], cell) == 1);
  CHECK(says(book[0], "Print all pages at 100 %"));
}

TEST_CASE("shop aids follow the formers") {
  PressPlan plan = sample::plan();
  plan.aids.push_back({ShopAid::Use::check_inner, sample::former().renamed("check-inner"), 2});
  const auto book = template_book(job_on("a3"), plan).pages;
  REQUIRE(book.size() == 7);
  CHECK(book[4].title() == "check-inner A1");
  CHECK(count_of(book[0], "5-7") == 1);
}

TEST_CASE("a table of many parts runs over pages, whose numbers count these") {
  const std::vector<GuideRow> rows(100, {"former-lower", "600 x 300", "4", "1 x 3", 3});
  const auto guide = template_guide({"a4", "job", "2024-03-01"}, rows);
  REQUIRE(guide.size() > 1);
  int listed = 0;
  for (const auto& page : guide) {
    listed += count_of(page, "former-lower");
    CHECK(drawn_with(page, drawing::kCheckPen).size() == 6);
    const Box2 frame{{10, 10}, page.size() - Vec2(10, 10)};
    for (const auto& text : texts(page))
      CHECK(drawing::within(drawing::text_box(text), drawing::grown(frame, 1e-6)));
  }
  CHECK(listed == 100);
  const int first = static_cast<int>(guide.size()) + 1;
  CHECK(count_of(guide[0], std::to_string(first) + "-" + std::to_string(first + 2)) == 1);
}

TEST_CASE("a plan gives drawings and templates") {
  Progress quiet;
  CHECK(exported(sample::plan(), quiet).written() ==
        std::vector<std::string>{"drawings.pdf", "templates.pdf"});
}

TEST_CASE("letters that the drawing font lacks are noted by file") {
  Notes notes;
  exported(sample::plan("板"), notes);
  CHECK(notes.said == std::vector<std::string>{
                          "drawings.pdf: letters that the drawing font lacks are drawn as boxes: U+677F",
                          "templates.pdf: letters that the drawing font lacks are drawn as boxes: U+677F"});
  Notes plain;
  exported(sample::plan(), plain);
  CHECK(plain.said.empty());
}
