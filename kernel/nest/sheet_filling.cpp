#include "kernel/nest/sheet_filling.hpp"

#include <algorithm>

namespace lamwright {
namespace {

using Order = FillingRule::Order;
using Split = FillingRule::Split;

double rank(const Rectangle& r, Order order) {
  switch (order) {
    case Order::width:
      return double(r.width);
    case Order::height:
      return double(r.height);
    case Order::longest_side:
      return double(std::max(r.width, r.height));
    case Order::area:
      break;
  }
  return r.area();
}

std::vector<int> ordered(const std::vector<Rectangle>& items, Order order) {
  std::vector<int> indices(items.size());
  std::iota(indices.begin(), indices.end(), 0);
  std::stable_sort(indices.begin(), indices.end(), [&](int a, int b) {
    const double ra = rank(items[a], order), rb = rank(items[b], order);
    return ra != rb ? ra > rb : items[a].area() > items[b].area();
  });
  return indices;
}

struct Fit {
  std::size_t field = 0;
  bool turned = false;
  double spare = 0;
};

double spare(const Field& field, Whole width, Whole height, bool snug) {
  if (snug) return double(std::min(field.width - width, field.height - height));
  return field.area();
}

std::optional<Fit> best_fit(const SawnSheet& sheet, const Rectangle& piece, bool snug) {
  std::optional<Fit> best;
  for (std::size_t f = 0; f < sheet.free.size(); ++f)
    for (const bool turned : {false, true}) {
      if (turned && !piece.turns) continue;
      const Whole w = turned ? piece.height : piece.width, h = turned ? piece.width : piece.height;
      if (w > sheet.free[f].width || h > sheet.free[f].height) continue;
      const double s = spare(sheet.free[f], w, h, snug);
      if (!best || s < best->spare) best = Fit{f, turned, s};
    }
  return best;
}

// False when nothing of the sheet takes the piece.
bool put(SawnSheet& sheet, const Rectangle& piece, int item, const FillingRule& rule) {
  const std::optional<Fit> fit = best_fit(sheet, piece, rule.snug);
  if (!fit) return false;
  const Field field = sheet.free[fit->field];
  sheet.free.erase(sheet.free.begin() + std::ptrdiff_t(fit->field));
  saw_off(sheet, field, piece, {item, fit->turned, 0, 0}, rule.split);
  return true;
}

}  // namespace

std::vector<FillingRule> all_filling_rules() {
  std::vector<FillingRule> rules;
  for (const Order order : {Order::area, Order::width, Order::height, Order::longest_side})
    for (const Split split : {Split::greatest_rest, Split::across, Split::along})
      for (const bool snug : {true, false}) rules.push_back({order, split, snug});
  return rules;
}

void saw_off(SawnSheet& sheet, const Field& field, const Rectangle& piece, LaidDown laid, Split split) {
  const Whole w = laid.turned ? piece.height : piece.width, h = laid.turned ? piece.width : piece.height;
  laid.x = field.x;
  laid.y = field.y;
  sheet.placed.push_back(laid);
  const Whole beside = field.width - w, above = field.height - h;
  const double greatest_across = double(beside) * double(field.height);
  const double greatest_along = double(field.width) * double(above);
  const bool across =
      split == Split::across || (split == Split::greatest_rest && greatest_across > greatest_along);
  const Field right{field.x + w, field.y, beside, across ? field.height : h};
  const Field top{field.x, field.y + h, across ? w : field.width, above};
  for (const Field& f : {right, top})
    if (f.width > 0 && f.height > 0) sheet.free.push_back(f);
}

void fill(SawnSheet& sheet, const std::vector<Rectangle>& items, std::vector<int>& counts,
          const FillingRule& rule) {
  for (const int item : ordered(items, rule.order))
    while (counts[item] > 0 && put(sheet, items[item], item, rule)) --counts[item];
}

std::vector<SawnSheet> filled_sheets(const Field& empty, const std::vector<Rectangle>& items,
                                     std::vector<int> counts, const FillingRule& rule) {
  std::vector<SawnSheet> sheets;
  for (const int item : ordered(items, rule.order)) {
    std::size_t first = 0;  // sheets before it have no room for the item, and never will again
    for (; counts[item] > 0; --counts[item]) {
      const auto takes = [&](SawnSheet& sheet) { return put(sheet, items[item], item, rule); };
      while (first < sheets.size() && !takes(sheets[first])) ++first;
      if (first < sheets.size()) continue;
      sheets.push_back({{}, {empty}});
      if (!takes(sheets.back())) return {};
    }
  }
  return sheets;
}

double area_of(const SawnSheet& sheet, const std::vector<Rectangle>& items) {
  double area = 0;
  for (const LaidDown& laid : sheet.placed) area += items[laid.item].area();
  return area;
}

}  // namespace lamwright
