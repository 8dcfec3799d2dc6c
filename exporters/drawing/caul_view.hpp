// A slatted caul laid out flat: its runs of slats, their pieces, joints and screws.
#pragma once
#include "exporters/drawing/drawing.hpp"
#include "exporters/drawing/section_dimensions.hpp"
#include "exporters/drawing/view.hpp"
#include "kernel/press/plan.hpp"

namespace lamwright::drawing {

// Model: X along the width from the near edge, Y round the curve from the left end, mm.
Box2 caul_box(const PlannedCaul& caul);

// What stands beside its runs: number and kind at the left, girth at the right.
struct CaulTexts {
  std::vector<std::string> names, girths;
  double longest_name = 0, longest_girth = 0;  // mm on paper
};
CaulTexts caul_texts(const PlannedCaul& caul);

// What its map takes at a scale: room for the names of the runs at the left, their girths at the right and
// the stations of the formers below.
struct CaulMap {
  Margins margins;
  bool legible = false;  // every run has its name and girth beside it, every former its station
};
CaulMap caul_map(const PressPlan& plan, const PlannedCaul& caul, const CaulTexts& texts, double scale);

// Bores of the slats for screws into the formers: width and girth station of each.
std::vector<Vec2> caul_screws(const PressPlan& plan, const PlannedCaul& caul);

// With the letter of its kind (see run_kinds) in each run's name.
void add_caul(Drawing& drawing, const PressPlan& plan, const PlannedCaul& caul, const CaulTexts& texts,
              const View& view);

}  // namespace lamwright::drawing
