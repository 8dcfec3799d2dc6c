// Texts in columns beside a view, each at the end of a line from what it names: moved apart, and by turns in
// two columns, where things lie closer together than texts can.
#pragma once
#include <string>
#include <vector>

#include "exporters/drawing/drawing.hpp"

namespace lamwright::drawing {

// Where texts 2.5 high stand, for things at ascending heights on paper.
struct LabelColumns {
  std::size_t every = 1;  // only every so many-th thing has a text: more than 1 where there are far too many
  std::size_t columns = 1;
  std::vector<double> at;  // height of the middle of each text, of the first, the (1 + every)-th ...
};
LabelColumns label_columns(const std::vector<double>& wanted);

// How far outward texts reach that are no longer than `longest`.
double labels_reach(const LabelColumns& labels, double longest);
double longest_text(const std::vector<std::string>& texts);

struct SideLabels {
  std::vector<double> wanted;      // heights, ascending
  std::vector<std::string> texts;  // as many
  double edge = 0;                 // x where the lines begin
  bool left = false;               // of the view, else at its right
};
void add_labels(Drawing& drawing, const SideLabels& labels);

}  // namespace lamwright::drawing
