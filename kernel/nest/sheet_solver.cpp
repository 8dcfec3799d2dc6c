#include "kernel/nest/sheet_solver.hpp"

#include <algorithm>
#include <cmath>
#include <map>

#include "kernel/nest/covering.hpp"

namespace lamwright {
namespace {

constexpr int kAnyNumber = 1000000;
constexpr int kMostRounds = 120;
// Bounds come from sums of some hundred terms.
constexpr double kRoundedUp = 1e-7;
// Above 1 large pieces come first, so that the last sheets are not left with them alone.
constexpr double kFavours[] = {1.0, 1.05, 1.2};
constexpr int kMostGivenBack = 2;
// With more items there are few whole patterns to repeat, and the fillings do as well in a fraction of the
// time.
constexpr std::size_t kManyItems = 40;
// Tables for shortened sheets are made only where they cost next to nothing.
constexpr std::size_t kFewPlaces = 60;

bool none_left(const std::vector<int>& counts) {
  return std::all_of(counts.begin(), counts.end(), [](int n) { return n == 0; });
}

class SheetSolver {
 public:
  explicit SheetSolver(const SheetTask& task) : task_(task), table_(task.empty, task.items) {}

  SheetCutting run() {
    fill_by_rules();
    const CoveringResult relaxed = relax();
    best_.least = std::max(by_area(), table_.exact() ? int(std::ceil(relaxed.bound - kRoundedUp)) : 1);
    for (const double favour : kFavours)
      if (!many_items() || favour == kFavours[1]) offer(sheet_by_sheet(by_size(favour), task_.counts, {}));
    if (!relaxed.prices.item.empty()) {
      offer(sheet_by_sheet(relaxed.prices.item, task_.counts, {}));
      for (const double favour : kFavours)
        for (int back = 0; back <= kMostGivenBack; ++back)
          offer(after_whole_patterns(relaxed, by_size(favour), back));
    }
    squeeze_last();
    return best_;
  }

 private:
  bool many_items() const { return task_.items.size() > kManyItems; }

  int by_area() const {
    double area = 0;
    for (std::size_t i = 0; i < task_.items.size(); ++i) area += task_.items[i].area() * task_.counts[i];
    return int(std::ceil(area / task_.empty.area() - kRoundedUp));
  }

  std::vector<double> by_size(double favour) const {
    std::vector<double> values;
    for (const Rectangle& item : task_.items)
      values.push_back(std::pow(item.area() / task_.empty.area(), favour));
    return values;
  }

  double emptiest(const std::vector<SawnSheet>& sheets) const { return area_of(sheets.back(), task_.items); }

  void offer(std::vector<SawnSheet> sheets) {
    if (sheets.empty()) return;
    std::stable_sort(sheets.begin(), sheets.end(), [this](const SawnSheet& a, const SawnSheet& b) {
      return area_of(a, task_.items) > area_of(b, task_.items);
    });
    const bool fewer = best_.sheets.empty() || sheets.size() < best_.sheets.size();
    if (fewer || (sheets.size() == best_.sheets.size() && emptiest(sheets) < emptiest(best_.sheets)))
      best_.sheets = std::move(sheets);
  }

  void fill_by_rules() {
    for (const FillingRule& rule : all_filling_rules())
      offer(filled_sheets(task_.empty, task_.items, task_.counts, rule));
  }

  // Patterns seen are kept by what they take, so that they can be laid out again.
  CoveringResult relax() {
    if (many_items()) return {};
    CoveringSpec spec{
        task_.counts, std::vector<double>(task_.items.size(), 10.0), {{1, std::nullopt}}, kMostRounds};
    return relaxed_cover(spec, [this](const std::vector<double>& prices) {
      WorthMost most{{}, table_.solve(prices)};
      const std::vector<int> any(task_.items.size(), kAnyNumber);
      std::vector<int> left = any;
      SawnSheet sheet = table_.pattern(left);
      if (!table_.exact()) {
        sheet = best_filled(sheet, left, any, prices);
        most.value = worth(sheet, prices);
      }
      most.take = taken(sheet);
      seen_[taken_key(most.take)] = std::move(sheet);
      return std::optional(std::vector<WorthMost>{std::move(most)});
    });
  }

  std::vector<Taken> taken(const SawnSheet& sheet) const {
    std::vector<int> counts(task_.items.size(), 0);
    for (const LaidDown& laid : sheet.placed) ++counts[laid.item];
    std::vector<Taken> take;
    for (int i = 0; i < int(counts.size()); ++i)
      if (counts[i] > 0) take.push_back({i, counts[i]});
    return take;
  }

  static std::vector<int> taken_key(const std::vector<Taken>& take) {
    std::vector<int> key;
    for (const Taken& t : take) key.insert(key.end(), {t.item, t.count});
    return key;
  }

  // The relaxed cover's patterns as often as they are whole, less `back` of each, then sheet by sheet.
  std::vector<SawnSheet> after_whole_patterns(const CoveringResult& relaxed,
                                              const std::vector<double>& values, int back) {
    std::vector<int> counts = task_.counts;
    std::vector<SawnSheet> sheets;
    for (const UsedPattern& used : relaxed.used)
      for (int n = int(used.times + kRoundedUp) - back; n > 0 && covered(used.pattern.take, counts); --n) {
        for (const Taken& t : used.pattern.take) counts[t.item] -= t.count;
        sheets.push_back(seen_.at(taken_key(used.pattern.take)));
      }
    return sheet_by_sheet(values, std::move(counts), std::move(sheets));
  }

  static bool covered(const std::vector<Taken>& take, const std::vector<int>& counts) {
    return std::all_of(take.begin(), take.end(), [&](const Taken& t) { return counts[t.item] >= t.count; });
  }

  double worth(const SawnSheet& sheet, const std::vector<double>& values) const {
    double sum = 0;
    for (const LaidDown& laid : sheet.placed) sum += values[laid.item];
    return sum;
  }

  std::vector<SawnSheet> sheet_by_sheet(const std::vector<double>& values, std::vector<int> counts,
                                        std::vector<SawnSheet> sheets) {
    std::vector<double> solved;
    while (!none_left(counts)) {
      std::vector<double> wanted = values;
      for (std::size_t i = 0; i < wanted.size(); ++i)
        if (counts[i] == 0) wanted[i] = 0;
      if (wanted != solved) table_.solve(wanted);
      solved = wanted;
      std::vector<int> left = counts;
      const SawnSheet pattern = table_.pattern(left);
      SawnSheet sheet = best_filled(pattern, left, counts, values);
      for (const LaidDown& laid : sheet.placed) --counts[laid.item];
      sheets.push_back(std::move(sheet));
    }
    return sheets;
  }

  // The pattern with its free fields filled, or a sheet filled from the start, whichever is worth more.
  SawnSheet best_filled(const SawnSheet& pattern, const std::vector<int>& left,
                        const std::vector<int>& counts, const std::vector<double>& values) const {
    SawnSheet best;
    double most = -1;
    const auto consider = [&](SawnSheet sheet, std::vector<int> pieces, const FillingRule& rule) {
      fill(sheet, task_.items, pieces, rule);
      // A pattern and a filling that differ by rounding only are equal: the first stays.
      if (const double w = worth(sheet, values); w > most * (1 + kRoundedUp))
        most = w, best = std::move(sheet);
    };
    for (const FillingRule& rule : all_filling_rules()) consider(pattern, left, rule);
    for (const FillingRule& rule : all_filling_rules()) consider({{}, {task_.empty}}, counts, rule);
    return best;
  }

  // What a saw leaves of a free field: the cut on its near sides belongs to the pieces there.
  double usable(const Field& field) const {
    return double(std::max<Whole>(0, field.width - task_.kerf)) *
           double(std::max<Whole>(0, field.height - task_.kerf));
  }

  void offer_rest(const SawnSheet& sheet) {
    for (const Field& field : sheet.free)
      if (usable(field) > usable(best_.rest)) {
        best_.rest = field;
        best_.sheets.back() = sheet;
      }
  }

  // The last sheet's pieces on as short, or as narrow, a part of it as will take them.
  void squeeze_last() {
    const SawnSheet last = best_.sheets.back();
    std::vector<int> counts(task_.items.size(), 0);
    for (const LaidDown& laid : last.placed) ++counts[laid.item];
    offer_rest(last);
    for (const Whole width : table_.places_across()) {
      Field part = task_.empty, rest = task_.empty;
      part.width = width;
      rest.x += width;
      rest.width -= width;
      if (offer_part(part, rest, counts)) break;
    }
    for (const Whole height : table_.places_along()) {
      Field part = task_.empty, rest = task_.empty;
      part.height = height;
      rest.y += height;
      rest.height -= height;
      if (offer_part(part, rest, counts)) break;
    }
  }

  bool offer_part(const Field& part, const Field& rest, const std::vector<int>& counts) {
    double area = 0;
    for (std::size_t i = 0; i < counts.size(); ++i) area += task_.items[i].area() * counts[i];
    if (area > part.area() || usable(rest) <= usable(best_.rest)) return usable(rest) <= usable(best_.rest);
    std::optional<SawnSheet> sheet = on_one(part, counts);
    if (!sheet) return false;
    sheet->free.push_back(rest);
    offer_rest(*sheet);
    return true;
  }

  std::optional<SawnSheet> on_one(const Field& part, const std::vector<int>& counts) const {
    for (const FillingRule& rule : all_filling_rules())
      if (auto sheets = filled_sheets(part, task_.items, counts, rule); sheets.size() == 1) return sheets[0];
    return by_table(part, counts);
  }

  std::optional<SawnSheet> by_table(const Field& part, const std::vector<int>& counts) const {
    if (table_.places_across().size() > kFewPlaces || table_.places_along().size() > kFewPlaces)
      return std::nullopt;
    GuillotineTable table(part, task_.items);
    std::vector<double> values = by_size(1);
    for (std::size_t i = 0; i < values.size(); ++i)
      if (counts[i] == 0) values[i] = 0;
    table.solve(values);
    for (const FillingRule& rule : all_filling_rules()) {
      std::vector<int> left = counts;
      SawnSheet sheet = table.pattern(left);
      fill(sheet, task_.items, left, rule);
      if (none_left(left)) return sheet;
    }
    return std::nullopt;
  }

  const SheetTask& task_;
  GuillotineTable table_;
  std::map<std::vector<int>, SawnSheet> seen_;
  SheetCutting best_;
};

}  // namespace

SheetCutting fewest_sheets(const SheetTask& task) {
  if (task.items.empty()) return {};
  return SheetSolver(task).run();
}

}  // namespace lamwright
