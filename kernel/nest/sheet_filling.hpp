// Free fields of sheets and how pieces are sawn from their corners.
#pragma once
#include <optional>
#include <vector>

#include "kernel/nest/bar_problem.hpp"

namespace lamwright {

// A part of a sheet, with one kerf beyond it each way (pieces are counted with theirs).
struct Field {
  Whole x = 0, y = 0, width = 0, height = 0;
  double area() const { return double(width) * double(height); }
};

struct Rectangle {
  Whole width = 0, height = 0;  // with one kerf each way
  bool turns = false;
  double area() const { return double(width) * double(height); }
};

struct LaidDown {
  int item = 0;
  bool turned = false;
  Whole x = 0, y = 0;
};

struct SawnSheet {
  std::vector<LaidDown> placed;
  std::vector<Field> free;
};

struct FillingRule {
  enum class Order { area, width, height, longest_side };
  enum class Split { greatest_rest, across, along };  // which of the two cuts beside a piece goes through
  Order order = Order::area;
  Split split = Split::greatest_rest;
  bool snug = true;  // the field with the least to spare on one side; else the one with the least area
};

std::vector<FillingRule> all_filling_rules();

// Saws a piece from the low corner of a field; what is left of the field joins the free ones.
void saw_off(SawnSheet& sheet, const Field& field, const Rectangle& piece, LaidDown laid,
             FillingRule::Split split);

// Puts what fits into the free fields; `counts` is what is left over.
void fill(SawnSheet& sheet, const std::vector<Rectangle>& items, std::vector<int>& counts,
          const FillingRule& rule);

// All pieces, on as many sheets as that takes; each must fit an empty sheet.
std::vector<SawnSheet> filled_sheets(const Field& empty, const std::vector<Rectangle>& items,
                                     std::vector<int> counts, const FillingRule& rule);

double area_of(const SawnSheet& sheet, const std::vector<Rectangle>& items);

}  // namespace lamwright
