// Running dimensions from one datum (ISO 129-1): numbers stand upright on their lines and are moved apart
// where features lie closer together than numbers can.
#pragma once
#include <string>
#include <vector>

#include "exporters/drawing/drawing.hpp"

namespace lamwright::drawing {

// Positions at least `apart` from one another, in the order of the wanted ones (ascending), with the least
// sum of squared moves.
std::vector<double> spread(const std::vector<double>& wanted, double apart);

struct Ordinate {
  Vec2 feature{0, 0};  // on paper: its line starts here
  std::string text;
  bool datum = false;
};

struct OrdinateRow {
  std::vector<Ordinate> ordinates;  // any order
  double knee = 0;                  // y on paper where lines begin to move apart
  double level = 0;  // y where numbers begin; above the knee they are written upward, below downward
  double left = 0;   // lines stay between left and right where there is room
  double right = 0;
};
// y that the longest number reaches.
double ordinate_end(const OrdinateRow& row);
void ordinates(Drawing& drawing, const OrdinateRow& row);

}  // namespace lamwright::drawing
