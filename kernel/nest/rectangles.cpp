#include "kernel/nest/rectangles.hpp"

#include <algorithm>
#include <cmath>

#include "kernel/nest/sheet_solver.hpp"
#include "shared/error.hpp"
#include "shared/number.hpp"
#include "shared/tolerance.hpp"

namespace lamwright {
namespace {

// A hundred pieces side by side then round by half the tolerance of a fit.
constexpr double kUnit = kSamePoint / 100;

Whole units(double length) { return std::llround(length / kUnit); }

std::string size_text(const Vec2& size) { return number(size.x()) + " x " + number(size.y()); }

void check_input(const std::vector<WantedRectangle>& wanted, const RectangleSheet& sheet) {
  if (!(sheet.kerf >= 0)) throw geometry_error("kerf", "it is " + number(sheet.kerf), "0 or more is needed");
  if (!(sheet.margin >= 0))
    throw geometry_error("margin", "it is " + number(sheet.margin), "0 or more is needed");
  if (!((sheet.size.array() - 2 * sheet.margin).minCoeff() > 0))
    throw geometry_error(
        "sheet", "its size is " + size_text(sheet.size) + " and its margins are " + number(sheet.margin),
        "something must be left inside them");
  for (const WantedRectangle& w : wanted) {
    if (!(w.size.minCoeff() > 0))
      throw geometry_error(w.name, "its size is " + size_text(w.size), "above 0 is needed");
    if (w.count < 0)
      throw geometry_error(w.name, "its count is " + std::to_string(w.count), "0 or more is needed");
  }
}

// Wanted rectangles that are one and the same to a saw.
struct Same {
  Vec2 size{0, 0};
  bool turns = false;
  std::vector<std::size_t> wanted;
  int count = 0;
};

class Planner {
 public:
  Planner(const std::vector<WantedRectangle>& wanted, const RectangleSheet& sheet)
      : wanted_(wanted), sheet_(sheet) {
    task_.kerf = units(sheet.kerf + kSamePoint);
    task_.empty = {0, 0, room(sheet.size.x()), room(sheet.size.y())};
    for (std::size_t w = 0; w < wanted.size(); ++w) {
      left_.push_back(wanted[w].count);
      if (wanted[w].count == 0) continue;
      if (fits(wanted[w]))
        add(w);
      else
        plan_.oversize.push_back(w);
    }
    for (const Same& same : items_) {
      task_.items.push_back(
          {units(same.size.x() + sheet.kerf), units(same.size.y() + sheet.kerf), same.turns});
      task_.counts.push_back(same.count);
    }
  }

  RectanglePlan run() {
    if (items_.empty()) return plan_;
    const SheetCutting cutting = fewest_sheets(task_);
    for (const SawnSheet& sheet : cutting.sheets) keep(sheet);
    plan_.least_sheets = cutting.least;
    plan_.yield = area() / (sheet_.size.prod() * plan_.sheets);
    keep_rest(cutting.rest);
    return plan_;
  }

 private:
  Whole room(double size) const { return units(size - 2 * sheet_.margin + sheet_.kerf + kSamePoint); }

  bool fits(const WantedRectangle& w) const {
    const auto goes = [this](double width, double height) {
      return units(width + sheet_.kerf) <= task_.empty.width &&
             units(height + sheet_.kerf) <= task_.empty.height;
    };
    return goes(w.size.x(), w.size.y()) || (w.turns && goes(w.size.y(), w.size.x()));
  }

  void add(std::size_t w) {
    const auto alike = [&](const Same& same) {
      return same.turns == wanted_[w].turns &&
             (same.size - wanted_[w].size).cwiseAbs().maxCoeff() <= kSamePoint / 2;
    };
    auto same = std::find_if(items_.begin(), items_.end(), alike);
    if (same == items_.end()) same = items_.insert(same, {wanted_[w].size, wanted_[w].turns, {}, 0});
    same->wanted.push_back(w);
    same->count += wanted_[w].count;
  }

  Vec2 corner(Whole x, Whole y) const {
    return Vec2(double(x) * kUnit, double(y) * kUnit) + Vec2::Constant(sheet_.margin);
  }

  void keep(const SawnSheet& sheet) {
    std::vector<LaidDown> placed = sheet.placed;
    std::stable_sort(placed.begin(), placed.end(),
                     [](const LaidDown& a, const LaidDown& b) { return a.x != b.x ? a.x < b.x : a.y < b.y; });
    for (const LaidDown& laid : placed)
      plan_.placed.push_back({next_of(items_[laid.item]), plan_.sheets, corner(laid.x, laid.y), laid.turned});
    ++plan_.sheets;
  }

  std::size_t next_of(const Same& same) {
    const auto w =
        std::find_if(same.wanted.begin(), same.wanted.end(), [this](auto i) { return left_[i] > 0; });
    ensure(w != same.wanted.end(), "no more rectangles are cut than are wanted");
    --left_[*w];
    return *w;
  }

  double area() const {
    double sum = 0;
    for (const RectangleAt& at : plan_.placed) sum += wanted_[at.piece].size.prod();
    return sum;
  }

  void keep_rest(const Field& rest) {
    const Whole width = rest.width - task_.kerf, height = rest.height - task_.kerf;
    if (width <= 0 || height <= 0) return;
    plan_.rest_low = corner(rest.x, rest.y);
    plan_.rest_size = Vec2(double(width) * kUnit, double(height) * kUnit);
  }

  const std::vector<WantedRectangle>& wanted_;
  const RectangleSheet& sheet_;
  SheetTask task_;
  std::vector<Same> items_;
  std::vector<int> left_;  // of each wanted rectangle, still to be placed
  RectanglePlan plan_;
};

}  // namespace

RectanglePlan cut_rectangles(const std::vector<WantedRectangle>& wanted, const RectangleSheet& sheet) {
  check_input(wanted, sheet);
  return Planner(wanted, sheet).run();
}

}  // namespace lamwright
