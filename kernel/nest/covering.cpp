#include "kernel/nest/covering.hpp"

#include <Eigen/Core>
#include <algorithm>
#include <cmath>

namespace lamwright {
namespace {

// Gains smaller than this share of the dearest column are rounding.
constexpr double kNoGain = 1e-10;
constexpr double kNoStep = 1e-9;

struct Column {
  Eigen::VectorXd entries;
  double cost = 0;
  BarPattern pattern;  // empty for surplus, spare and left-out columns
};

// Revised simplex with an explicit inverse. Rows: the demands (at least), then the counted kinds (at most).
class Relaxation {
 public:
  Relaxation(const CoveringSpec& spec, const Pricing& pricing) : spec_(spec), pricing_(pricing) {
    items_ = int(spec.demand.size());
    rows_ = items_;
    for (const CoveringKind& kind : spec.kinds) row_of_kind_.push_back(kind.count ? rows_++ : kNoRow);
    inverse_ = Eigen::MatrixXd::Identity(rows_, rows_);
    amounts_ = Eigen::VectorXd::Zero(rows_);
    for (int i = 0; i < items_; ++i) amounts_[i] = spec.demand[i];
    for (std::size_t k = 0; k < spec.kinds.size(); ++k)
      if (spec.kinds[k].count) amounts_[row_of_kind_[k]] = *spec.kinds[k].count;
    for (int row = 0; row < rows_; ++row) basis_.push_back(unit(row, 1));
    for (const double cost : spec.left_out) dearest_ = std::max(dearest_, cost);
  }

  CoveringResult run() {
    for (int round = 0; round < spec_.most_rounds; ++round) {
      const std::optional<Column> column = entering();
      if (!column || !exchange(*column)) break;
    }
    keep_used();
    return result_;
  }

 private:
  static constexpr int kNoRow = -1;

  // sign 1: an item left out, or a counted kind's spare bar; -1: an item cut too often.
  Column unit(int row, double sign) const {
    Column column{Eigen::VectorXd::Zero(rows_), 0, {}};
    column.entries[row] = sign;
    if (row < items_ && sign > 0) column.cost = spec_.left_out[row];
    return column;
  }

  Eigen::VectorXd row_prices() const {
    Eigen::VectorXd costs(rows_);
    for (int row = 0; row < rows_; ++row) costs[row] = basis_[row].cost;
    return inverse_.transpose() * costs;
  }

  double no_gain() const { return kNoGain * dearest_; }

  // The unit column that gains most, so that prices get the signs they must have.
  std::optional<Column> entering_unit(const Eigen::VectorXd& y) const {
    std::optional<Column> best;
    double gain = no_gain();
    const auto offer = [&](double g, int row, double sign) {
      if (g > gain) gain = g, best = unit(row, sign);
    };
    for (int i = 0; i < items_; ++i) {
      offer(-y[i], i, -1);
      offer(y[i] - spec_.left_out[i], i, 1);
    }
    for (int row = items_; row < rows_; ++row) offer(y[row], row, 1);
    return best;
  }

  BarPrices prices(const Eigen::VectorXd& y) const {
    BarPrices p;
    for (int i = 0; i < items_; ++i) p.item.push_back(std::clamp(y[i], 0.0, spec_.left_out[i]));
    for (const int row : row_of_kind_) p.bar.push_back(row == kNoRow ? 0 : std::max(0.0, -y[row]));
    return p;
  }

  std::optional<Column> entering() {
    const Eigen::VectorXd y = row_prices();
    if (auto column = entering_unit(y)) return column;
    const BarPrices p = prices(y);
    const auto most = pricing_(p.item);
    if (!most) return std::nullopt;
    keep_bound(p, *most);
    return entering_pattern(p, *most);
  }

  std::optional<Column> entering_pattern(const BarPrices& p, const std::vector<WorthMost>& most) const {
    std::optional<Column> best;
    double gain = no_gain();
    for (std::size_t k = 0; k < most.size(); ++k) {
      const double g = most[k].value - spec_.kinds[k].cost - p.bar[k];
      if (g <= gain) continue;
      gain = g;
      best = Column{Eigen::VectorXd::Zero(rows_), spec_.kinds[k].cost, {int(k), most[k].take}};
      for (const Taken& t : most[k].take) best->entries[t.item] = t.count;
      if (row_of_kind_[k] != kNoRow) best->entries[row_of_kind_[k]] = 1;
    }
    return best;
  }

  // Prices scaled until no pattern is worth more than it costs are a valid bound at any round (Farley's
  // bound).
  void keep_bound(BarPrices p, const std::vector<WorthMost>& most) {
    double scale = 1;
    for (std::size_t k = 0; k < most.size(); ++k)
      if (most[k].value > 0) scale = std::min(scale, (spec_.kinds[k].cost + p.bar[k]) / most[k].value);
    for (double& price : p.item) price *= scale;
    BarState whole{spec_.demand, {}};
    for (const CoveringKind& kind : spec_.kinds) whole.bars.push_back(kind.count.value_or(0));
    const double bound = p.least(whole);
    if (bound <= result_.bound && !result_.prices.item.empty()) return;
    result_.bound = std::max(0.0, bound);
    result_.prices = p;
  }

  bool exchange(const Column& column) {
    const Eigen::VectorXd change = inverse_ * column.entries;
    int leaves = kNoRow;
    for (int row = 0; row < rows_; ++row)
      if (change[row] > kNoStep &&
          (leaves == kNoRow || amounts_[row] * change[leaves] < amounts_[leaves] * change[row]))
        leaves = row;
    if (leaves == kNoRow) return false;
    const double step = amounts_[leaves] / change[leaves];
    amounts_ -= step * change;
    amounts_[leaves] = step;
    amounts_ = amounts_.cwiseMax(0);
    const Eigen::RowVectorXd pivot = inverse_.row(leaves) / change[leaves];
    Eigen::VectorXd rest = change;
    rest[leaves] = 0;
    inverse_.noalias() -= rest * pivot;
    inverse_.row(leaves) = pivot;
    basis_[leaves] = column;
    return true;
  }

  void keep_used() {
    for (int row = 0; row < rows_; ++row)
      if (!basis_[row].pattern.take.empty() && amounts_[row] > kNoStep)
        result_.used.push_back({basis_[row].pattern, amounts_[row]});
  }

  const CoveringSpec& spec_;
  const Pricing& pricing_;
  int items_ = 0, rows_ = 0;
  std::vector<int> row_of_kind_;
  std::vector<Column> basis_;
  Eigen::MatrixXd inverse_;
  Eigen::VectorXd amounts_;
  double dearest_ = 0;
  CoveringResult result_;
};

}  // namespace

CoveringResult relaxed_cover(const CoveringSpec& spec, const Pricing& pricing) {
  return Relaxation(spec, pricing).run();
}

}  // namespace lamwright
