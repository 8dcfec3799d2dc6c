#include "kernel/supply/gather.hpp"

#include <algorithm>
#include <cmath>
#include <map>

#include "kernel/supply/flat_parts.hpp"
#include "kernel/supply/pack_sheets.hpp"
#include "kernel/supply/timber.hpp"
#include "shared/number.hpp"

namespace lamwright {
namespace {

using Items = std::vector<SupplyItem>;

constexpr int kHandClamps = 4;     // two at each end of the top caul. Common practice, no source
constexpr double kTapeWidth = 50;  // of a roll

void add_sheets(const Supply& supply, Items& items) {
  if (supply.sheets.empty()) return;
  const CutSheet& first = supply.sheets.front();
  const double count = double(supply.sheets.size());
  items.push_back({first.board,
                   "sheets " + number(first.size.x()) + " x " + number(first.size.y()) +
                       " for formers, blocks and templates",
                   count, count, "sheet"});
}

void add_timber(const Supply& supply, Items& items) {
  for (const TimberCut& cut : supply.timber) {
    std::map<double, int, std::greater<>> bars;
    for (const CutBar& bar : cut.plan.bars) ++bars[bar.stock];
    for (const auto& [length, count] : bars) {
      const double metres = length * count / 1000;
      items.push_back({cut.stock, std::to_string(count) + " of " + number(length), metres, metres, "m"});
    }
  }
}

// Plies of one panel; covers and sheathing belong to the press.
std::vector<PackSheet> of_one_panel(std::vector<PackSheet> pack) {
  for (PackSheet& sheet : pack) sheet.total = sheet.count;
  return pack;
}

void add_boards(const Job& job, const Supply& supply, Items& items) {
  std::vector<std::string> told;
  const std::vector<BlankSheets> one = blank_sheets(job, of_one_panel(supply.pack), told);
  for (std::size_t i = 0; i < supply.blanks.size(); ++i) {
    const BlankSheets& all = supply.blanks[i];
    items.push_back({all.board,
                     "plies, covers or sheathing " + number(all.thickness, 2) + " thick, boards " +
                         number(all.sheet.size.x()) + " x " + number(all.sheet.size.y()),
                     double(one[i].plan.sheets), double(all.plan.sheets), "sheet"});
  }
}

bool on_boards(const Supply& supply, const PackSheet& sheet) {
  return std::any_of(supply.blanks.begin(), supply.blanks.end(),
                     [&](const BlankSheets& blanks) { return blanks.board == sheet.stock; });
}

void add_veneers(const Supply& supply, Items& items) {
  for (const PackSheet& sheet : supply.pack) {
    if (on_boards(supply, sheet)) continue;
    const double area = sheet.cut * sheet.width / 1e6;
    const bool ply = sheet.kind == PackSheet::Kind::ply;
    const std::string use =
        ply ? "veneer " + number(sheet.thickness, 2) + ", as cut; add for joints and flaws"
            : sheet.use + ", as cut";
    const auto known = std::find_if(items.begin(), items.end(), [&](const SupplyItem& item) {
      return item.name == sheet.stock && item.use == use;
    });
    SupplyItem& item =
        known != items.end() ? *known : (items.push_back({sheet.stock, use, 0, 0, "m2"}), items.back());
    item.one += area * sheet.count;
    item.all += area * sheet.total;
  }
}

void add_slats(const std::string& name, const std::string& use, int count, Items& items) {
  if (count <= 0) return;
  const auto known = std::find_if(items.begin(), items.end(), [&](const SupplyItem& item) {
    return item.name == name && item.use == use;
  });
  SupplyItem& item =
      known != items.end() ? *known : (items.push_back({name, use, 0, 0, "piece"}), items.back());
  item.one += count;
  item.all += count;
}

// Slats taken from the rack, and those that it does not have.
void add_slats(const PressPlan& plan, Items& items) {
  for (const PlannedCaul& caul : plan.cauls) {
    const auto name = [&](double width) {
      return "slat " + number(width, 2) + " x " + number(caul.thickness, 2);
    };
    for (std::size_t i = 0; i < caul.stock.size(); ++i)
      add_slats(name(caul.stock[i].width), "slats of the cauls, " + number(caul.stock[i].length) + " long",
                caul.schedule.used[i], items);
    for (const ScheduledRun& run : caul.schedule.runs)
      if (run.pieces.empty())
        add_slats(name(run.run.width),
                  "slats of the cauls, " + number(caul.length) + " long, not in the rack", 1, items);
  }
}

Items material(const Job& job, const PressPlan& plan, const Figures& figures, const Supply& supply) {
  Items items;
  add_sheets(supply, items);
  add_timber(supply, items);
  add_slats(plan, items);
  add_boards(job, supply, items);
  add_veneers(supply, items);
  if (figures.glue && figures.glue->mass > 0)
    items.push_back({job.layup.glue, "glue", figures.glue->mass, figures.glue->total_mass, "kg"});
  return items;
}

// Glues that do not wash off want the faces of the cauls that look at the pack taped.
double tape(const Job& job, const PressPlan& plan) {
  if (!job.layup.glue_row.waterproof) return 0;
  double area = 0;
  for (const Layer& layer : plan.layers)
    if (layer.kind == Layer::Kind::bed_caul || layer.kind == Layer::Kind::top_caul)
      area += layer.inner.girth() * plan.panel.blank_width();
  return std::ceil(area / kTapeWidth / 1000);
}

Items hardware(const Job& job, const PressPlan& plan) {
  Items items;
  for (const Hardware& piece : plan.hardware)
    items.push_back({piece.name, piece.use, double(piece.count), double(piece.count), "piece"});
  if (job.caul.pitch && !plan.closures.empty())
    items.push_back({"one-handed clamp",
                     plan.seated ? "holding the halves together while the straps are drawn"
                                 : "holding the top caul in place while the straps are drawn",
                     double(kHandClamps), double(kHandClamps), "piece"});
  if (const double metres = tape(job, plan); metres > 0)
    items.push_back({"tape " + number(kTapeWidth), "faces of the cauls, against glue", metres, metres, "m"});
  return items;
}

}  // namespace

Supply gather(const Job& job, const PressPlan& plan, const Figures& figures,
              const std::function<void()>& step) {
  Supply supply;
  if (job.outputs.sheets) supply.sheets = flat_parts(job, plan, step, supply.notes);
  supply.timber = timber(job, plan, supply.notes);
  supply.pack = pack_sheets(job, plan);
  supply.blanks = blank_sheets(job, supply.pack, supply.notes);
  supply.material = material(job, plan, figures, supply);
  supply.hardware = hardware(job, plan);
  return supply;
}

}  // namespace lamwright
