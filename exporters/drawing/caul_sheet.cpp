#include <algorithm>
#include <cmath>

#include "exporters/drawing/caul_kinds.hpp"
#include "exporters/drawing/caul_layout.hpp"
#include "exporters/drawing/pens.hpp"
#include "exporters/drawing/text.hpp"
#include "kernel/press/slatted.hpp"
#include "shared/number.hpp"
#include "shared/tolerance.hpp"

namespace lamwright::drawing {
namespace {

bool is_bed(const PlannedCaul& caul) { return caul.kind == Layer::Kind::bed_caul; }

std::string caul_name(const PlannedCaul& caul) { return is_bed(caul) ? "bed caul" : "top caul"; }

// The top caul is made of what the bed caul leaves.
std::string stock_head(const PlannedCaul& caul) {
  const bool counted = std::any_of(caul.stock.begin(), caul.stock.end(),
                                   [](const SlatStock& stock) { return stock.count.has_value(); });
  return counted && !is_bed(caul) ? "left" : "in stock";
}

Table stock_table(const PlannedCaul& caul) {
  Table table{{{"slat", 38}, {stock_head(caul), 22}, {"taken", 14}}, {}, 5};
  for (std::size_t i = 0; i < caul.stock.size(); ++i) {
    const SlatStock& stock = caul.stock[i];
    table.rows.push_back(
        {size_text(stock.length) + " x " + size_text(stock.width) + " x " + size_text(caul.thickness),
         stock.count ? std::to_string(*stock.count) : "as needed", std::to_string(caul.schedule.used[i])});
  }
  return table;
}

Table girth_table(const PlannedCaul& caul) {
  Table table{{{"girth", 44, Anchor::left}, {"mm", 22}}, {}, 5};
  table.rows.push_back(
      {"laid, " + std::to_string(caul.schedule.runs.size()) + " runs", size_text(caul_box(caul).size().y())});
  const auto add_covered = [&](const std::string& lagging, double girth) {
    if (std::isfinite(girth)) table.rows.push_back({"stock covers, " + lagging, size_text(girth)});
  };
  add_covered("close", caul.schedule.covers_close);
  add_covered("open", caul.schedule.covers_open);
  return table;
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

std::string runs_text(const std::vector<int>& runs) {
  return (runs.size() == 1 ? "Run " : "Runs ") + number_list(runs);
}

std::string laid_text(const PlannedCaul& caul) {
  return "Laid flat, seen from above: left end of the curve below, near edge left, far edge right. Chain "
         "lines: formers. From: where a run begins, round the curve from the left end of the " +
         std::string(is_bed(caul) ? "contact edge." : "pack.");
}

std::string screws_text(const PressPlan& plan, const PlannedCaul& caul) {
  return "Tinted: runs screwed to the formers. Dots: screws, bored " + diameter_text(kSlatBore) +
         ", heads sunk " + diameter_text(kSlatHead) + " x " + number(kSlatHeadDepth) +
         " on the pack's side, " + across_text(caul_screws(plan, caul), caul) + ".";
}

// Common practice, no source.
std::string tape_text(const PlannedCaul& caul, const std::vector<int>& loose) {
  if (loose.size() == caul.schedule.runs.size())
    return "This caul lies loose on the pack: no run has screws, tape or webbing along the ends of all runs "
           "holds them together.";
  return runs_text(loose) + (loose.size() == 1 ? " has" : " have") +
         " no screws: held by tape or webbing along both ends, over the screwed runs too" +
         (is_bed(caul) ? "." : ", put on before the mould is turned over.");
}

// Runs that must not be jointed, where the stock is short enough to ask; empty where it is not.
std::vector<int> undivided(const PlannedCaul& caul) {
  std::vector<int> out;
  if (std::none_of(caul.stock.begin(), caul.stock.end(),
                   [&](const SlatStock& stock) { return stock.length < caul.length - kSamePoint; }))
    return out;
  for (std::size_t i = 0; i < caul.schedule.runs.size(); ++i)
    if (caul.schedule.runs[i].run.through) out.push_back(int(i) + 1);
  return out;
}

std::vector<std::string> sentences(const PressPlan& plan, const PlannedCaul& caul) {
  std::vector<std::string> out{laid_text(caul)};
  const std::vector<int> loose = runs_screwed(caul, false), whole = undivided(caul);
  if (loose.size() < caul.schedule.runs.size()) out.push_back(screws_text(plan, caul));
  if (!loose.empty()) out.push_back(tape_text(caul, loose));
  if (!whole.empty()) out.push_back(runs_text(whole) + ", at the ends of the curve: in one length.");
  if (!caul.schedule.missing.empty()) out.push_back("Red: runs that the stock does not give.");
  for (const std::string& sentence : caul.schedule.missing) out.push_back(sentence);
  return out;
}

}  // namespace

Drawing caul_sheet(const SheetSet& set, int sheet, std::size_t index) {
  const PlannedCaul& caul = set.plan.cauls[index];
  const CaulTexts texts = caul_texts(caul);
  const CaulPlaces at = caul_places({set.plan,
                                     caul,
                                     texts,
                                     kind_table(run_kinds(caul)),
                                     {stock_table(caul), girth_table(caul)},
                                     sentences(set.plan, caul)},
                                    set);
  TitleBlock block = title_block(set, sheet, caul_name(caul),
                                 "slats " + size_text(caul.thickness) + " thick, laid out flat");
  block.scale = at.choice.scale.text;
  Drawing drawing = new_sheet(at.choice.paper, block, set.warnings);
  add_tables(drawing, at.tables, at.tables_width, at.tables_at);
  Vec2 row = at.lines_at;
  for (const std::string& line : at.lines) {
    row.y() -= kSentenceRow;
    drawing.add(pens::kText, Text{row, line, kSmallHeight});
  }
  add_caul(drawing, set.plan, caul, texts, at.view);
  return drawing;
}

}  // namespace lamwright::drawing
