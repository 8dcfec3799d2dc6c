// The guillotine pattern that is worth most, by dynamic programming over the places where a cut can be of
// use.
#pragma once
#include <vector>

#include "kernel/nest/sheet_filling.hpp"

namespace lamwright {

class GuillotineTable {
 public:
  GuillotineTable(const Field& empty, std::vector<Rectangle> items);

  // All useful places were kept, so no guillotine pattern is worth more.
  bool exact() const { return exact_; }

  // Where cuts can be of use, from the low corner, ascending.
  const std::vector<Whole>& places_across() const { return xs_; }
  const std::vector<Whole>& places_along() const { return ys_; }

  // The most that a field can give, each item as often as it likes. Items of value 0 are not used.
  double solve(const std::vector<double>& values);
  // The pattern of the last `solve`; of no item more than `counts`, which is what is left over.
  SawnSheet pattern(std::vector<int>& counts) const;

 private:
  struct Choice {
    enum class Kind { nothing, piece, across, along } kind = Kind::nothing;
    int index = 0;  // of the item, or of the place of the cut
    bool turned = false;
  };

  std::size_t cell(std::size_t i, std::size_t j) const { return i * ys_.size() + j; }
  void best_piece(std::size_t i, std::size_t j, const std::vector<double>& values);
  void best_cut(std::size_t i, std::size_t j);
  void lay(const Field& field, SawnSheet& sheet, std::vector<int>& counts) const;

  Field empty_;
  std::vector<Rectangle> items_;
  bool exact_ = true;
  std::vector<Whole> xs_, ys_;                     // from 0, ascending
  std::vector<std::vector<int>> rest_x_, rest_y_;  // [i][k]: the greatest place within place i less place k
  std::vector<double> worth_;
  std::vector<Choice> choice_;
};

}  // namespace lamwright
