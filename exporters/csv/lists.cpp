#include "exporters/csv/lists.hpp"

#include <algorithm>
#include <cmath>
#include <map>

#include "kernel/supply/timber.hpp"
#include "shared/number.hpp"
#include "shared/tolerance.hpp"
#include "shared/units.hpp"

namespace lamwright {
namespace {

// "2 beam, 3 spacer-block-1"
std::string counted_names(const std::vector<std::string>& names) {
  std::map<std::string, int> counts;
  for (const std::string& name : names) ++counts[name];
  std::string text;
  for (const auto& [name, count] : counts)
    text += (text.empty() ? "" : ", ") + std::to_string(count) + " " + name;
  return text;
}

// "3 x 1317.5 + 2 x 108.1", in the order in which they are cut.
std::string lengths_text(const TimberCut& cut, const CutBar& bar) {
  std::string text;
  for (std::size_t i = 0; i < bar.pieces.size();) {
    const std::string length = csv_length(cut.wanted[bar.pieces[i]].length);
    std::size_t to = i;
    while (to < bar.pieces.size() && csv_length(cut.wanted[bar.pieces[to]].length) == length) ++to;
    text += (text.empty() ? "" : " + ") + std::to_string(to - i) + " x " + length;
    i = to;
  }
  return text;
}

std::vector<std::string> part_row(const Job& job, const Part& part, std::size_t count) {
  std::vector<double> size;
  if (part.board()) {
    const Vec2 box = part.outline().box().size();
    size = {box.x(), box.y(), part.thickness()};
  } else if (part.kind() == PartKind::slat) {
    const Vec3 box = part.box().size();
    size = {box.x(), box.y(), box.z()};
  } else {
    const Vec3 box = part.box().size();
    const double length = cut_length(job, part);
    size = {box.x(), box.y(), box.z()};
    const auto along = std::min_element(size.begin(), size.end(), [&](double a, double b) {
      return std::abs(a - length) < std::abs(b - length);
    });
    std::rotate(size.begin(), along, along + 1);
    std::sort(size.begin() + 1, size.end(), std::greater<>());
  }
  return {
      part.name(),         to_text(part.kind()), std::to_string(count), part.stock(),
      csv_length(size[0]), csv_length(size[1]),  csv_length(size[2]),   std::to_string(part.bores().size())};
}

std::string grain_text(const PackSheet& sheet) {
  if (!sheet.grain) return "-";
  const double grain = *sheet.grain;
  if (std::abs(grain) < kTangent) return "along the girth";
  if (std::abs(std::abs(grain) - kPi / 2) < kTangent) return "along the width";
  return number(degrees(grain), 1) + " degrees from the girth";
}

std::string pieces_text(const PlannedCaul& caul, const ScheduledRun& run) {
  if (run.pieces.empty()) return "not in stock: one of " + csv_length(caul.length);
  std::string text;
  for (const SlatPiece& piece : run.pieces)
    text += (text.empty() ? "" : " + ") + csv_length(piece.length()) +
            (piece.cut ? " of " + csv_length(caul.stock[piece.stock].length) : std::string());
  return text;
}

std::string joints_text(const ScheduledRun& run) {
  std::string text;
  for (std::size_t i = 1; i < run.pieces.size(); ++i)
    text += (text.empty() ? "" : ", ") + csv_length(run.pieces[i].from);
  return text;
}

std::string use_text(const SlatRun& run) {
  std::string text = run.through ? "through" : "";
  if (run.fixing) text += text.empty() ? "fixing" : ", fixing";
  return text;
}

}  // namespace

std::string csv_length(double value) { return number(value, 1); }
std::string csv_quantity(double value) { return number(value, 3); }

CsvTable cut_list(const ExportInput& input) {
  CsvTable table{{"part", "kind", "count", "stock", "length_mm", "width_mm", "thickness_mm", "bores"}};
  for (std::size_t i = 0; i < input.plan.parts.size(); ++i)
    if (input.plan.parts[i].kind() != PartKind::panel)
      table.push_back(part_row(input.job, input.plan.parts[i], instances(input.plan, i)));
  for (const ShopAid& aid : input.plan.aids)
    table.push_back(part_row(input.job, aid.part, std::size_t(aid.count)));
  return table;
}

CsvTable blanks_list(const Supply& supply) {
  CsvTable table{{"sheet", "stock", "thickness_mm", "face_grain", "exact_girth_mm", "cut_girth_mm",
                  "cut_width_mm", "one_panel", "all_panels"}};
  for (const PackSheet& sheet : supply.pack)
    table.push_back({sheet.use, sheet.stock, number(sheet.thickness, 2), grain_text(sheet),
                     number(sheet.girth, 2), csv_length(sheet.cut), csv_length(sheet.width),
                     std::to_string(sheet.count), std::to_string(sheet.total)});
  return table;
}

CsvTable timber_list(const Supply& supply) {
  CsvTable table{{"stock", "length_bought_mm", "pieces", "cut_to_mm", "rest_mm"}};
  for (const TimberCut& cut : supply.timber)
    for (const CutBar& bar : cut.plan.bars) {
      std::vector<std::string> names;
      for (const std::size_t i : bar.pieces) names.push_back(cut.wanted[i].name);
      table.push_back({cut.stock, csv_length(bar.stock), counted_names(names), lengths_text(cut, bar),
                       csv_length(bar.rest)});
    }
  return table;
}

CsvTable sheets_list(const Supply& supply) {
  CsvTable table{{"sheet", "board", "length_mm", "width_mm", "thickness_mm", "parts", "used_length_mm",
                  "yield_percent"}};
  for (std::size_t i = 0; i < supply.sheets.size(); ++i) {
    const CutSheet& sheet = supply.sheets[i];
    std::vector<std::string> names;
    for (const SheetPiece& piece : sheet.pieces) names.push_back(piece.part.name());
    table.push_back({std::to_string(i + 1), sheet.board, csv_length(sheet.size.x()),
                     csv_length(sheet.size.y()), number(sheet.thickness, 2), counted_names(names),
                     csv_length(sheet.used), number(100 * sheet.yield, 1)});
  }
  return table;
}

CsvTable slats_list(const PressPlan& plan) {
  CsvTable table{
      {"caul", "run", "girth_from_mm", "girth_to_mm", "width_mm", "use", "pieces_mm", "joints_at_mm"}};
  for (const PlannedCaul& caul : plan.cauls)
    for (std::size_t i = 0; i < caul.schedule.runs.size(); ++i) {
      const ScheduledRun& run = caul.schedule.runs[i];
      table.push_back({to_text(caul.kind), std::to_string(i + 1), csv_length(run.run.slat.from),
                       csv_length(run.run.slat.to), csv_length(run.run.slat.width()), use_text(run.run),
                       pieces_text(caul, run), joints_text(run)});
    }
  return table;
}

CsvTable items_list(const std::vector<SupplyItem>& items) {
  CsvTable table{{"item", "use", "one_panel", "all_panels", "unit"}};
  for (const SupplyItem& item : items)
    table.push_back({item.name, item.use, csv_quantity(item.one), csv_quantity(item.all), item.unit});
  return table;
}

}  // namespace lamwright
