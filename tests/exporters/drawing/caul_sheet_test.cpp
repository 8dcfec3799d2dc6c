#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>
#include <map>
#include <regex>

#include "exporters/drawing/caul_view.hpp"
#include "exporters/drawing/sheet.hpp"
#include "tests/exporters/drawing/caul_suite.hpp"
#include "tests/exporters/drawing/touched_labels.hpp"

using namespace lamwright;
using namespace lamwright::drawing;
using namespace lamwright::test;

namespace {

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

// Texts that stand on one line with another one, from left to right.
std::vector<std::string> row_of(const Drawing& sheet, const Text& first) {
  std::vector<Text> found;
  for (const Text& text : texts(sheet))
    if (std::abs(text.at.y() - first.at.y()) < 1e-6 && text_box(text).low.x() >= text_box(first).low.x())
      found.push_back(text);
  std::sort(found.begin(), found.end(), [](const Text& a, const Text& b) { return a.at.x() < b.at.x(); });
  std::vector<std::string> out;
  for (const Text& text : found) out.push_back(text.text);
  return out;
}

// The row of the table of kinds that begins with a letter: letter, pieces, width, what holds the runs, how
// many and which.
std::vector<std::string> kind_row(const Drawing& sheet, const std::string& letter) {
  for (const Text& text : texts(sheet))
    if (text.text == letter) return row_of(sheet, text);
  return {};
}

// "900 + 2 x 300 + 172 of 300" as "900", "300", "300", "172 of 300".
std::vector<std::string> told_pieces(std::string text) {
  std::vector<std::string> out;
  for (std::size_t end = 0; end != std::string::npos; text = text.substr(std::min(text.size(), end + 3))) {
    end = text.find(" + ");
    std::string piece = text.substr(0, end);
    const std::size_t times = piece.find(" x ");
    const int count = times == std::string::npos ? 1 : std::stoi(piece.substr(0, times));
    if (times != std::string::npos) piece = piece.substr(times + 3);
    out.insert(out.end(), std::size_t(count), piece);
    if (end == std::string::npos) break;
  }
  return out;
}

std::vector<std::string> wanted_pieces(const PlannedCaul& caul, const ScheduledRun& run) {
  if (run.pieces.empty()) return {size_text(caul.length) + ", not in stock"};
  std::vector<std::string> out;
  for (const SlatPiece& piece : run.pieces)
    out.push_back(size_text(piece.length()) +
                  (piece.cut ? " of " + size_text(caul.stock[piece.stock].length) : ""));
  return out;
}

std::string wanted_width(const SlatRun& run) {
  const std::string stock = size_text(run.width);
  return run.width - run.slat.width() < 1e-6 ? stock : stock + " ripped to " + size_text(run.slat.width());
}

// What stands beside each run: number, letter.
std::map<int, std::string> run_names(const Drawing& sheet) {
  static const std::regex kName("([0-9]+) ([A-Z]+)");
  std::map<int, std::string> out;
  std::smatch match;
  for (const Text& text : texts(sheet))
    if (std::regex_match(text.text, match, kName)) out[std::stoi(match[1])] = text.text;
  return out;
}

std::string letter_in(const std::string& name) { return name.substr(name.find(' ') + 1); }

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
  for (const CaulSheets& one : caul_suite())
    for (const Drawing& sheet : one.cauls) {
      const auto found = faults(sheet, seen);
      CAPTURE(one.name, found);
      CHECK(found.empty());
      ++sheets;
    }
  CHECK(sheets >= 40);
  CHECK(seen > 10000);
}

TEST_CASE(
    "beside every run stands its kind, whose row tells the length of every piece, what is cut, the width and "
    "what holds it") {
  std::size_t pieces = 0, cut = 0, ripped = 0;
  for (const CaulSheets& one : caul_suite())
    for (std::size_t i = 0; i < one.cauls.size(); ++i) {
      const PlannedCaul& caul = one.plan.cauls[i];
      const auto names = run_names(one.cauls[i]);
      REQUIRE(names.size() == caul.schedule.runs.size());
      for (std::size_t k = 0; k < caul.schedule.runs.size(); ++k) {
        const ScheduledRun& run = caul.schedule.runs[k];
        const auto row = kind_row(one.cauls[i], letter_in(names.at(int(k) + 1)));
        CAPTURE(one.name, i, names.at(int(k) + 1), row);
        REQUIRE(row.size() >= 6);
        CHECK(told_pieces(row[1]) == wanted_pieces(caul, run));
        CHECK(row[2] == wanted_width(run.run));
        CHECK(row[3] == (run.run.fixing ? "screws" : "tape"));
        pieces += run.pieces.size();
        for (const SlatPiece& piece : run.pieces) cut += piece.cut;
        ripped += row[2].find("ripped") != std::string::npos;
      }
    }
  CHECK(pieces > 1500);
  CHECK(cut > 300);
  CHECK(ripped > 20);
}

TEST_CASE("on the other side of every run stands the girth at which it begins, at the height of its name") {
  std::size_t runs = 0;
  for (const CaulSheets& one : caul_suite())
    for (std::size_t i = 0; i < one.cauls.size(); ++i) {
      const PlannedCaul& caul = one.plan.cauls[i];
      const auto names = run_names(one.cauls[i]);
      for (const Text& text : texts(one.cauls[i])) {
        const auto name = std::find_if(names.begin(), names.end(),
                                       [&](const auto& known) { return known.second == text.text; });
        if (name == names.end()) continue;
        const auto row = row_of(one.cauls[i], text);
        CAPTURE(one.name, i, row);
        CHECK(std::count(row.begin(), row.end(),
                         size_text(caul.schedule.runs[std::size_t(name->first) - 1].run.slat.from)) >= 1);
        ++runs;
      }
    }
  CHECK(runs > 1000);
}

TEST_CASE("lines to the names and girths of runs keep clear of the others, on A3 and A4") {
  std::size_t seen = 0;
  for (const CaulSheets& one : caul_suite())
    for (const Drawing& sheet : one.cauls) {
      CAPTURE(one.name, sheet.title());
      CHECK(touched_labels(sheet, seen).empty());
    }
  CHECK(seen > 100000);
}

TEST_CASE("no cell of a map's table of kinds is empty: every kind has one row") {
  std::size_t rows = 0;
  for (const CaulSheets& one : caul_suite())
    for (std::size_t i = 0; i < one.cauls.size(); ++i) {
      const auto names = run_names(one.cauls[i]);
      std::map<std::string, int> runs;
      for (const auto& name : names) ++runs[letter_in(name.second)];
      for (const auto& [letter, count] : runs) {
        CAPTURE(one.name, i, letter);
        CHECK(count_of(one.cauls[i], letter) == 1);
        const auto row = kind_row(one.cauls[i], letter);
        REQUIRE(row.size() >= 6);
        CHECK(row[4] == std::to_string(count));
        CHECK_FALSE(row[5].empty());
        ++rows;
      }
    }
  CHECK(rows > 100);
}

TEST_CASE("maps take the paper asked for or the next, at 1:20 or larger; one of 2.4 m by 3 m goes on A3") {
  std::size_t maps = 0, larger = 0;
  for (const CaulSheets& one : caul_suite())
    for (const Drawing& sheet : one.cauls) {
      CAPTURE(one.name, sheet.title());
      const double asked = one.name.ends_with("on A4") ? 297 : 420;
      CHECK((sheet.size().x() == asked || (asked == 297 && sheet.size().x() == 420)));
      larger += sheet.size().x() > asked;
      CHECK(says(sheet, "1:50") + says(sheet, "1:100") == 0);
      ++maps;
    }
  CHECK(maps >= 45);
  CHECK(larger <= 4);  // those of many runs beside a long rack
}

TEST_CASE("no lettering of a map is lower than 2.5") {
  std::size_t seen = 0;
  for (const CaulSheets& one : caul_suite())
    for (const Drawing& sheet : one.cauls) {
      const Vec2 corner = sheet.size() - Vec2(10 + kTitleWidth, 0);
      for (const Text& text : texts(sheet)) {
        if (text.at.x() > corner.x() && text.at.y() < 10 + kTitleBlockHeight) continue;
        CAPTURE(one.name, text.text);
        CHECK(text.height >= kSmallHeight);
        CHECK(text.text.find("...") == std::string::npos);  // none is shortened
        ++seen;
      }
    }
  CHECK(seen > 4000);
}

TEST_CASE("a caul too large to be told run by run is drawn on the largest paper, nothing outside the frame") {
  const PressPlan plan =
      planned(job_text("width = 9000\nprofile = [{line = 4000}, {bend = 60, radius = 3000}, {line = 4000}]",
                       birch(6), "[press]\nspringback = \"none\"\n"));
  const CaulSheets one = cauls_drawn("giant", plan);
  REQUIRE(one.cauls.size() == 2);
  for (const Drawing& sheet : one.cauls) {
    long seen = 0;
    const auto found = faults(sheet, seen);
    CAPTURE(found);
    CHECK(found.empty());
    CHECK(sheet.size().x() == 594);
  }
}

TEST_CASE("each piece is outlined once, each joint is a strong stroke across its run") {
  std::size_t jointed = 0;
  for (const CaulSheets& one : caul_suite())
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
  const CaulSheets& one = cauls_called("joints");
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
  for (const CaulSheets& one : caul_suite())
    for (std::size_t i = 0; i < one.cauls.size(); ++i) {
      const PlannedCaul& caul = one.plan.cauls[i];
      const std::size_t bores = slat_bores(one.plan, caul);
      CAPTURE(one.name, i);
      CHECK(circles(one.cauls[i], pens::kBore) == int(bores));
      CHECK(says(one.cauls[i], "Dots: screws") == (bores > 0));
      CHECK(says(one.cauls[i], "This caul lies loose on the pack") == (bores == 0));
      dots += bores;
      loose += bores == 0;
    }
  CHECK(dots > 500);
  CHECK(loose >= 10);
}

TEST_CASE("along a fixing run without joints there is a dot at every former, in the run") {
  std::size_t runs = 0;
  for (const CaulSheets& one : caul_suite())
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
  const CaulSheets& one = cauls_called("joints");
  for (const Drawing& sheet : one.cauls) {
    CHECK(upright(sheet, pens::kCentre).size() == 5);
    for (const Section& section : one.plan.sections) CHECK(says(sheet, size_text(section.z)));
  }
  CHECK(one.cauls.size() == 2);
}

TEST_CASE("runs that the stock lacks are outlined in the warning's pen, and a sentence says so") {
  const CaulSheets& one = cauls_called("lacking");
  REQUIRE(one.cauls.size() == 2);
  CHECK(closed_paths(one.cauls[0], pens::kWarning) == 0);
  int lacking = 0;
  for (const ScheduledRun& run : one.plan.cauls[1].schedule.runs) lacking += run.pieces.empty();
  REQUIRE(lacking > 0);
  CHECK(closed_paths(one.cauls[1], pens::kWarning) == lacking);
  REQUIRE(!one.plan.cauls[1].schedule.missing.empty());
  for (const std::string& sentence : one.plan.cauls[1].schedule.missing) CHECK(says(one.cauls[1], sentence));
}

TEST_CASE("runs are numbered from the left end of the curve") {
  const CaulSheets& one = cauls_called("joints");
  for (std::size_t i = 0; i < 2; ++i) {
    const auto& runs = one.plan.cauls[i].schedule.runs;
    const auto names = run_names(one.cauls[i]);
    REQUIRE(names.size() == runs.size());
    double below = -1;
    for (const auto& [number, name] : names) {
      CAPTURE(number, name);
      const auto all = texts(one.cauls[i]);
      const auto text = std::find_if(all.begin(), all.end(), [&](const Text& t) { return t.text == name; });
      CHECK(text->at.y() > below);
      below = text->at.y();
    }
  }
}
