#include "exporters/plots/glue_band.hpp"

#include <algorithm>

#include "exporters/plots/plot_pens.hpp"

namespace lamwright::plots {
namespace {

using drawing::Anchor;
using drawing::Drawing;
using drawing::Text;

bool in_field(const Field& field, double pressure) { return pressure < field.top; }

// Along a level line: right, left, then in between; over it, then under it.
void name_bound(Drawing& drawing, const Field& field, double pressure, bool over, const std::string& words,
                const std::string& value) {
  constexpr double kFrom = 1.2, kInset = 2;
  constexpr int kPlaces = 24;
  const double left = field.box.low.x() + kInset, right = field.box.high.x() - kInset;
  const double above = field.y(pressure) + kFrom, below = field.y(pressure) - kFrom - kPlotText;
  std::vector<Text> tries;
  for (const std::string& name : {words + value, value})
    for (const double y : {over ? above : below, over ? below : above}) {
      tries.push_back({{right, y}, name, kPlotText, Anchor::right});
      tries.push_back({{left, y}, name, kPlotText, Anchor::left});
      for (int i = 1; i < kPlaces; ++i)
        tries.push_back({{right + (left - right) * i / kPlaces, y}, name, kPlotText, Anchor::middle});
    }
  add_first_free(drawing, field.box, tries);
}

}  // namespace

double shown_pressure(double greatest, const Glue& glue) {
  constexpr double kFarthestLow = 3, kFarthestHigh = 1.5, kOver = 1.05;
  if (greatest <= 0) return kOver * glue.pressure_high;
  const double low = kOver * glue.pressure_low, high = kOver * glue.pressure_high;
  const double with_low = low <= kFarthestLow * greatest ? std::max(greatest, low) : greatest;
  return high <= kFarthestHigh * with_low ? std::max(with_low, high) : with_low;
}

std::string glue_text(const Glue& glue, double shown, const Reported& reported) {
  const std::string low = reported.pressure(glue.pressure_low);
  return "glue wants " + low.substr(0, low.find(' ')) + " to " + reported.pressure(glue.pressure_high) +
         (glue.pressure_low < shown ? "" : ", more than is reached here");
}

void add_glue_band(Drawing& drawing, const Field& field, const Glue& glue) {
  if (!in_field(field, glue.pressure_low)) return;
  const double low = field.y(glue.pressure_low), high = field.y(std::min(glue.pressure_high, field.top));
  const double left = field.box.low.x(), right = field.box.high.x();
  drawing.add(pens::kFill, drawing::rectangle({{left, low}, {right, high}}, tints::kGlue));
  for (const double bound : {glue.pressure_low, glue.pressure_high})
    if (in_field(field, bound))
      drawing.add(pens::kBound, line({left, field.y(bound)}, {right, field.y(bound)}));
}

void add_glue_names(Drawing& drawing, const Field& field, const Glue& glue, const Reported& reported) {
  const bool low = in_field(field, glue.pressure_low), high = in_field(field, glue.pressure_high);
  if (high)
    name_bound(drawing, field, glue.pressure_high, false, "glue: at most ",
               reported.pressure(glue.pressure_high));
  if (low)
    name_bound(drawing, field, glue.pressure_low, true, "glue: at least ",
               reported.pressure(glue.pressure_low));
}

}  // namespace lamwright::plots
