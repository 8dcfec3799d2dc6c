#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>
#include <map>

#include "exporters/drawing/caul_view.hpp"
#include "tests/exporters/drawing/demo_jobs.hpp"
#include "tests/exporters/drawing/legible.hpp"
#include "tests/exporters/drawing/two_mould_jobs.hpp"

using namespace lamwright;
using namespace lamwright::drawing;
using namespace lamwright::test;

namespace {

struct Sheets {
  std::string name;
  PressPlan plan;
  std::vector<Drawing> cauls;  // by index of plan.cauls
};

Sheets drawn(const std::string& name, const PressPlan& plan, const std::string& paper = "a3") {
  Sheets out{name, plan, {}};
  for (std::size_t i = 0; i < plan.cauls.size(); ++i)
    out.cauls.push_back(caul_sheet({out.plan, paper, {}, 2}, 1, i));
  return out;
}

// An arc whose slats come from a rack that the job names.
PressPlan rack(const std::string& width, const std::string& slats) {
  return planned(job_text(
      "width = " + width + "\nprofile = [{bend = 60, radius = 500}]", birch(6),
      "[press]\nspringback = \"none\"\n[caul]\nslats = " + slats + "\n[formers]\nspacing = {count = 5}\n"));
}

const std::vector<Sheets>& suite() {
  static const std::vector<Sheets> all = [] {
    std::vector<Sheets> out;
    for (const Demo& demo : demo_jobs()) {
      out.push_back(drawn(demo.name, *demo.result.plan));
      out.push_back(drawn(demo.name + " on A4", *demo.result.plan, "a4"));
    }
    out.push_back(drawn("joints", rack("1370", "[900, 600, {length = 1400, count = 8}]")));
    out.push_back(drawn("lacking", rack("570", "[{length = 600, count = 15}]")));
    out.push_back(drawn("joints on formers", rack("370", "[300, 200]")));
    out.push_back(drawn("S", planned(between_moulds(kDrawnS))));
    return out;
  }();
  return all;
}

const Sheets& sheets_called(const std::string& name) {
  return *std::find_if(suite().begin(), suite().end(), [&](const Sheets& s) { return s.name == name; });
}

int circles(const Drawing& sheet, const std::string& pen) {
  int out = 0;
  for (const Item& item : sheet.items())
    out += sheet.pens()[item.pen].name == pen && std::holds_alternative<Circle>(item.shape);
  return out;
}

int closed_paths(const Drawing& sheet, const std::string& pen) {
  int out = 0;
  for (const Item& item : sheet.items())
    if (const auto* path = std::get_if<Path>(&item.shape))
      out += sheet.pens()[item.pen].name == pen && path->closed && path->fill.empty();
  return out;
}

// Upright lines over the caul, of which those of the frame and the title block are no part.
std::vector<Segment> upright(const Drawing& sheet, const std::string& pen) {
  Box2 caul = box_of_strokes(drawn_with(sheet, pens::kCaul));
  caul.add(box_of_strokes(drawn_with(sheet, pens::kWarning)));
  std::vector<Segment> out;
  for (const Item& item : sheet.items()) {
    const auto* s = std::get_if<Segment>(&item.shape);
    if (!s || sheet.pens()[item.pen].name != pen || !s->straight()) continue;
    const Vec2 middle = s->point(0.5);
    if (std::abs(s->from.x() - s->to.x()) < 1e-9 && caul.low.x() < middle.x() && middle.x() < caul.high.x() &&
        caul.low.y() < middle.y() && middle.y() < caul.high.y())
      out.push_back(*s);
  }
  return out;
}

// How often each length has to stand on a caul's sheet. A strip under 15 wide, cut flush at the end of the
// contact edge, may be too narrow for lettering at a reduced scale.
std::map<std::string, int> lengths(const PlannedCaul& caul) {
  std::map<std::string, int> out;
  for (const ScheduledRun& run : caul.schedule.runs) {
    if (run.run.slat.width() < 15) continue;
    for (const SlatPiece& piece : run.pieces) ++out[size_text(piece.length()) + (piece.cut ? " cut" : "")];
    if (run.pieces.empty()) ++out[size_text(caul.length)];
  }
  return out;
}

std::size_t joints(const PlannedCaul& caul) {
  std::size_t out = 0;
  for (const ScheduledRun& run : caul.schedule.runs) out += run.pieces.empty() ? 0 : run.pieces.size() - 1;
  return out;
}

std::size_t slat_bores(const PressPlan& plan, const PlannedCaul& caul) {
  const Group group = caul.kind == Layer::Kind::bed_caul        ? Group::lower
                      : plan.sections.front().upper.has_value() ? Group::upper
                                                                : Group::reference;
  std::size_t out = 0;
  for (const Body& body : plan.bodies)
    if (body.group == group && plan.parts[body.part].kind() == PartKind::slat)
      out += bores_for(plan.parts[body.part], BoreUse::caul_screw).size();
  return out;
}

}  // namespace

TEST_CASE("the sheet of a caul is legible: no text over a line or another text, all inside the frame") {
  long seen = 0;
  std::size_t sheets = 0;
  for (const Sheets& one : suite())
    for (const Drawing& sheet : one.cauls) {
      const auto found = faults(sheet, seen);
      CAPTURE(one.name, found);
      CHECK(found.empty());
      ++sheets;
    }
  CHECK(sheets >= 40);
  CHECK(seen > 10000);
}

TEST_CASE("the length of every piece stands on it") {
  std::size_t pieces = 0;
  for (const Sheets& one : suite())
    for (std::size_t i = 0; i < one.cauls.size(); ++i)
      for (const auto& [length, count] : lengths(one.plan.cauls[i])) {
        CAPTURE(one.name, i, length);
        CHECK(count_of(one.cauls[i], length) >= count);
        pieces += std::size_t(count);
      }
  CHECK(pieces > 800);
}

TEST_CASE("a slat that is cut is told to be cut") {
  const Sheets& one = sheets_called("joints");
  int cut = 0;
  for (std::size_t i = 0; i < one.cauls.size(); ++i)
    for (const auto& [length, count] : lengths(one.plan.cauls[i]))
      if (length.ends_with(" cut")) cut += count_of(one.cauls[i], length);
  CHECK(cut >= 2);
}

TEST_CASE("each piece is outlined once, each joint is a strong stroke across its run") {
  std::size_t jointed = 0;
  for (const Sheets& one : suite())
    for (std::size_t i = 0; i < one.cauls.size(); ++i) {
      const PlannedCaul& caul = one.plan.cauls[i];
      int pieces = 0;
      for (const ScheduledRun& run : caul.schedule.runs) pieces += int(run.pieces.size());
      CAPTURE(one.name, i);
      CHECK(closed_paths(one.cauls[i], pens::kCaul) == pieces);
      CHECK(upright(one.cauls[i], pens::kPart).size() == joints(caul));
      jointed += joints(caul);
    }
  CHECK(jointed > 20);
}

TEST_CASE("joints of a sheet stand at their width stations, to scale with the caul's outline") {
  const Sheets& one = sheets_called("joints");
  std::size_t seen = 0;
  for (std::size_t i = 0; i < one.cauls.size(); ++i) {
    const PlannedCaul& caul = one.plan.cauls[i];
    const Box2 outline = box_of_strokes(drawn_with(one.cauls[i], pens::kCaul));
    const double scale = outline.size().x() / caul.length;
    std::vector<double> wanted, found;
    for (const ScheduledRun& run : caul.schedule.runs)
      for (std::size_t k = 1; k < run.pieces.size(); ++k) wanted.push_back(run.pieces[k].from);
    for (const Segment& s : upright(one.cauls[i], pens::kPart)) {
      found.push_back((s.from.x() - outline.low.x()) / scale);
      ++seen;
    }
    std::sort(wanted.begin(), wanted.end());
    std::sort(found.begin(), found.end());
    REQUIRE(found.size() == wanted.size());
    for (std::size_t k = 0; k < found.size(); ++k) CHECK(found[k] == Approx(wanted[k]).margin(1e-6));
  }
  CHECK(seen > 10);
}

TEST_CASE("screws are dots where slats are bored, at every former; a loose caul has none and says so") {
  std::size_t dots = 0, loose = 0;
  for (const Sheets& one : suite())
    for (std::size_t i = 0; i < one.cauls.size(); ++i) {
      const PlannedCaul& caul = one.plan.cauls[i];
      const std::size_t bores = slat_bores(one.plan, caul);
      CAPTURE(one.name, i);
      CHECK(circles(one.cauls[i], pens::kBore) == int(bores));
      CHECK(says(one.cauls[i], "Dots: screws into the formers") == (bores > 0));
      CHECK(says(one.cauls[i], "This caul lies loose on the pack") == (bores == 0));
      dots += bores;
      loose += bores == 0;
    }
  CHECK(dots > 500);
  CHECK(loose >= 10);
}

TEST_CASE("along a fixing run without joints there is a dot at every former, in the run") {
  std::size_t runs = 0;
  for (const Sheets& one : suite())
    for (std::size_t i = 0; i < one.cauls.size(); ++i) {
      const PlannedCaul& caul = one.plan.cauls[i];
      const auto screws = caul_screws(one.plan, caul);
      for (const ScheduledRun& run : caul.schedule.runs) {
        if (!run.run.fixing || run.pieces.size() > 1) continue;
        ++runs;
        for (const Section& section : one.plan.sections) {
          CAPTURE(one.name, i, section.z);
          CHECK(std::count_if(screws.begin(), screws.end(), [&](const Vec2& at) {
                  return std::abs(at.x() - section.z) < 1e-6 && at.y() > run.run.slat.from &&
                         at.y() < run.run.slat.to;
                }) == 1);
        }
      }
    }
  CHECK(runs > 50);
}

TEST_CASE("formers are chain lines with their stations") {
  const Sheets& one = sheets_called("joints");
  for (const Drawing& sheet : one.cauls) {
    CHECK(upright(sheet, pens::kCentre).size() == 5);
    for (const Section& section : one.plan.sections) CHECK(says(sheet, size_text(section.z)));
  }
  CHECK(one.cauls.size() == 2);
}

TEST_CASE("runs that the stock lacks are outlined in the warning's pen, and a sentence says so") {
  const Sheets& one = sheets_called("lacking");
  REQUIRE(one.cauls.size() == 2);
  CHECK(closed_paths(one.cauls[0], pens::kWarning) == 0);
  int lacking = 0;
  for (const ScheduledRun& run : one.plan.cauls[1].schedule.runs) lacking += run.pieces.empty();
  REQUIRE(lacking > 0);
  CHECK(closed_paths(one.cauls[1], pens::kWarning) == lacking);
  REQUIRE(!one.plan.cauls[1].schedule.missing.empty());
  for (const std::string& sentence : one.plan.cauls[1].schedule.missing) CHECK(says(one.cauls[1], sentence));
}

TEST_CASE("runs are numbered from the left end of the curve, through and fixing slats marked") {
  const Sheets& one = sheets_called("joints");
  for (std::size_t i = 0; i < 2; ++i) {
    const auto& runs = one.plan.cauls[i].schedule.runs;
    const std::string first = "1 t" + std::string(runs.front().run.fixing ? " s" : "");
    CHECK(count_of(one.cauls[i], first) == 1);
    for (std::size_t k = 2; k + 2 < runs.size(); ++k)
      if (runs[k].run.fixing) CHECK(count_of(one.cauls[i], std::to_string(k + 1) + " s") == 1);
  }
  CHECK(says(one.cauls[0], "t: through slat"));
}

TEST_CASE("the stock table tells what is in stock and how many are taken") {
  const Sheets& one = sheets_called("joints");
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
}
