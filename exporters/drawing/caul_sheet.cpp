#include <algorithm>
#include <cmath>

#include "exporters/drawing/caul_view.hpp"
#include "exporters/drawing/layout.hpp"
#include "exporters/drawing/pens.hpp"
#include "exporters/drawing/sheets.hpp"
#include "exporters/drawing/table_block.hpp"
#include "exporters/drawing/text.hpp"
#include "kernel/press/slatted.hpp"
#include "shared/number.hpp"

namespace lamwright::drawing {
namespace {

constexpr double kGap = 3.5, kRow = 4.5;

std::string caul_name(const PlannedCaul& caul) {
  return caul.kind == Layer::Kind::bed_caul ? "bed caul" : "top caul";
}

Table stock_table(const PlannedCaul& caul) {
  Table table{{{"slat", 38}, {"in stock", 22}, {"taken", 14}}, {}, 5};
  for (std::size_t i = 0; i < caul.stock.size(); ++i) {
    const SlatStock& stock = caul.stock[i];
    table.rows.push_back(
        {size_text(stock.length) + " x " + size_text(stock.width) + " x " + size_text(caul.thickness),
         stock.count ? std::to_string(*stock.count) : "as needed", std::to_string(caul.schedule.used[i])});
  }
  return table;
}

Table girth_table(const PlannedCaul& caul) {
  const auto girth = [](double value) {
    return std::isfinite(value) ? size_text(value) : std::string("no limit");
  };
  const double lies = caul_box(caul).size().y();
  return {{{"girth", 18}, {"laid", 18}, {"stock covers, close", 36}, {"stock covers, open", 36}},
          {{size_text(lies), std::to_string(caul.schedule.runs.size()) + " runs",
            girth(caul.schedule.covers_close), girth(caul.schedule.covers_open)}},
          5};
}

// Where screws sit across their slats, in words.
std::string across_text(const std::vector<Vec2>& screws, const PlannedCaul& caul) {
  constexpr double kInMiddle = 0.5;  // finer than it is marked out
  double most = 0;
  for (const Vec2& screw : screws)
    for (const ScheduledRun& run : caul.schedule.runs)
      if (screw.y() > run.run.slat.from && screw.y() < run.run.slat.to)
        most = std::max(most, std::abs(screw.y() - run.run.slat.middle()));
  if (most <= kInMiddle) return "in the middle of each slat";
  return "up to " + size_text(most) + " beside the middle of their slats: mark them from the formers' pilots";
}

std::vector<std::string> words(const PressPlan& plan, const PlannedCaul& caul) {
  std::vector<std::string> out{
      "Developed, seen from above, left end of the curve below. Chain lines: formers. t: through slat, in "
      "one length; s: fixing slat; from: girth where a run begins."};
  const std::vector<Vec2> screws = caul_screws(plan, caul);
  if (!screws.empty())
    out.push_back("Dots: screws into the formers, bored " + diameter_text(kSlatBore) + ", heads sunk " +
                  diameter_text(kSlatHead) + " x " + number(kSlatHeadDepth) + " on the pack's side, " +
                  across_text(screws, caul) + ".");
  else
    out.push_back(
        "This caul lies loose on the pack: no screws. Hold its slats together with tape or webbing.");
  if (!caul.schedule.missing.empty()) out.push_back("Red: runs that the stock does not give.");
  for (const std::string& sentence : caul.schedule.missing) out.push_back(sentence);
  return out;
}

struct CaulPlaces {
  Vec2 view{0, 0}, words{0, 0}, tables{0, 0};
  double tables_width = 0;
  bool fits = false;
};

CaulPlaces places(const PlannedCaul& caul, const TableBlock& tables, std::size_t lines, const Choice& choice,
                  std::size_t warnings) {
  const Box2 field = drawing_field(choice.paper, warnings);
  const double width = field.size().x() - kTitleWidth - 2 * kGap;
  const Vec2 listed = tables.size(width);
  const double strip = std::max(kTitleBlockHeight, listed.y() + kTableGap) + kGap;
  const double below = strip + kRow * double(lines) + kGap;
  const Vec2 room = room_of(caul_box(caul), choice.scale.factor, caul_margins());
  const Vec2 spare = field.size() - room - Vec2(2 * kGap, below);
  return {field.low + Vec2(kGap + std::max(0.0, spare.x()) / 2, below + std::max(0.0, spare.y()) / 2),
          field.low + Vec2(kGap, strip + kRow * double(lines)), field.low + Vec2(kGap, kGap / 2 + listed.y()),
          width, spare.x() >= 0 && spare.y() >= 0 && listed.x() <= width};
}

}  // namespace

Drawing caul_sheet(const SheetSet& set, int sheet, std::size_t index) {
  const PlannedCaul& caul = set.plan.cauls[index];
  const TableBlock tables{{stock_table(caul)}, {girth_table(caul)}};
  const std::vector<std::string> text = words(set.plan, caul);
  const auto at = [&](const Choice& choice) {
    return places(caul, tables, text.size(), choice, set.warnings.size());
  };
  const Choice choice = choose(papers_from(set.paper), 1, [&](const Choice& c) { return at(c).fits; });
  const CaulPlaces place = at(choice);
  TitleBlock block = title_block(set, sheet, caul_name(caul),
                                 "slats " + size_text(caul.thickness) + " thick, laid out flat");
  block.scale = choice.scale.text;
  Drawing drawing = new_sheet(choice.paper, block, set.warnings);
  add_tables(drawing, tables, place.tables_width, place.tables);
  double y = place.words.y();
  for (const std::string& row : text) {
    y -= kRow;
    drawing.add(pens::kText,
                fitted({place.words.x(), y}, row, drawing_field(choice.paper).size().x() - 2 * kGap,
                       {kSmallHeight, kLabelHeight}));
  }
  add_caul(drawing, set.plan, caul, view_in(caul_box(caul), choice.scale.factor, caul_margins(), place.view));
  return drawing;
}

}  // namespace lamwright::drawing
