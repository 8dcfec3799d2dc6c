// Sheets that every press has besides its section: stations, unique parts, blanks, shop aids.
#include <catch2/catch.hpp>
#include <set>

#include "exporters/drawing/contact_edge.hpp"
#include "exporters/drawing/former_foot.hpp"
#include "shared/number.hpp"
#include "tests/exporters/drawing/demo_jobs.hpp"
#include "tests/exporters/drawing/legible.hpp"
#include "tests/exporters/drawing/two_mould_jobs.hpp"

using namespace lamwright;
using namespace lamwright::drawing;
using namespace lamwright::test;

namespace {

// Others are looked at beside their own tests.
bool looked_at(const std::string& name) {
  return name.find("caul") == std::string::npos && name != "press" && name != "seating" &&
         name != "pressure" && name != "springback";
}

long check_legible(const std::string& job, const std::vector<NamedDrawing>& set) {
  long sheets = 0, seen = 0;
  for (const NamedDrawing& sheet : set) {
    if (!looked_at(sheet.name)) continue;
    ++sheets;
    for (const std::string& fault : faults(sheet.drawing, seen))
      FAIL_CHECK(job << ", " << sheet.name << ": " << fault);
    for (const Text& text : texts(sheet.drawing)) {
      CAPTURE(job, sheet.name, text.text);
      CHECK(text.height >= kLabelHeight);
    }
  }
  CHECK(seen > sheets * 100);
  return sheets;
}

bool drawn(PartKind kind) { return kind != PartKind::panel && kind != PartKind::slat; }

}  // namespace

TEST_CASE("on A3 and A4 no text of a part's sheet lies over another, under a line or outside the frame") {
  for (const char* paper : {"a3", "a4"}) {
    long sheets = 0;
    for (const Demo& demo : demo_jobs(paper))
      sheets += check_legible(demo.name + " on " + paper, demo.sheets);
    CHECK(sheets > 100);
  }
}

TEST_CASE("nor does one of a press of two moulds") {
  long sheets = 0;
  for (const DrawnJob& job : drawn_jobs()) sheets += check_legible(job.name, sheets_of(job.text));
  CHECK(sheets > 100);
}

TEST_CASE("every unique part but the panel has a sheet of its own name, and so have stations and blanks") {
  std::size_t jobs = 0, parts = 0;
  for (const Demo& demo : demo_jobs()) {
    ++jobs;
    CAPTURE(demo.name);
    for (const Part& part : demo.result.plan->parts)
      if (drawn(part.kind())) {
        ++parts;
        CAPTURE(part.name());
        CHECK(find_sheet(demo.sheets, part.name()));
      }
    for (const ShopAid& aid : demo.result.plan->aids) CHECK(find_sheet(demo.sheets, aid.part.name()));
    REQUIRE(demo.sheets.size() > 4);
    CHECK(demo.sheets[0].name == "press");
    CHECK(demo.sheets[1].name == "stations");
    CHECK(find_sheet(demo.sheets, "blanks"));
    CHECK_FALSE(find_sheet(demo.sheets, "panel"));
  }
  CHECK(jobs >= kDemoJobs);
  CHECK(parts > 40);
}

TEST_CASE("names of sheets are unique, and each says how many there are") {
  std::size_t sheets = 0;
  for (const Demo& demo : demo_jobs()) {
    std::set<std::string> names;
    for (std::size_t i = 0; i < demo.sheets.size(); ++i, ++sheets) {
      CAPTURE(demo.name, demo.sheets[i].name);
      CHECK(names.insert(demo.sheets[i].name).second);
      CHECK(count_of(demo.sheets[i].drawing,
                     std::to_string(i + 1) + " / " + std::to_string(demo.sheets.size())) == 1);
    }
  }
  CHECK(sheets > 100);
}

TEST_CASE("the contact edge of every former can be plotted from its sheet or the one beside it") {
  std::size_t formers = 0, points = 0;
  for (const Demo& demo : demo_jobs()) {
    const PressPlan& plan = *demo.result.plan;
    for (std::size_t i = 0; i < plan.parts.size(); ++i) {
      const std::vector<Table> tables = contact_tables(plan, i);
      const Profile* contact = tables.empty() ? nullptr : contact_of(plan, i);
      if (!contact) continue;
      ++formers;
      const std::string& name = plan.parts[i].name();
      const Drawing* apart = find_sheet(demo.sheets, name + "-edge");
      const Drawing* sheet = apart ? apart : find_sheet(demo.sheets, name);
      REQUIRE(sheet);
      CAPTURE(demo.name, name);
      const auto edge = segments(*contact);
      for (const Vec2& p : edge_points(edge, point_step(edge))) {
        ++points;
        CAPTURE(p.x(), p.y());
        CHECK(count_of(*sheet, size_text(p.y())) > 0);
      }
      for (const Segment& s : edge)
        if (!s.straight()) CHECK(says(*sheet, number(s.radius, 2)));
    }
  }
  CHECK(formers >= kDemoJobs);
  CHECK(points > 200);
}
