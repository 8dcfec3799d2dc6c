#include "exporters/plots/outer_runs.hpp"

#include "exporters/drawing/pressure_map_view.hpp"
#include "exporters/plots/plot_pens.hpp"
#include "shared/tolerance.hpp"

namespace lamwright::plots {

void add_outer_runs(drawing::Drawing& drawing, const Field& field, const PressPlan& plan) {
  RunStrip runs{drawing::outer_joints(plan), {}};
  const double trim = plan.panel.trim, end = runs.joints.back() - trim;
  for (std::size_t i = 0; i + 1 < runs.joints.size(); ++i) {
    const bool all_trim = runs.joints[i + 1] < trim + kSamePoint || runs.joints[i] > end - kSamePoint;
    runs.names.push_back(all_trim ? "" : run_name(plan.neutral, i));
  }
  add_runs(drawing, field, runs);
  if (trim <= 0) return;
  add_upright(drawing, pens::kTrim, field, trim);
  add_upright(drawing, pens::kTrim, field, end);
}

}  // namespace lamwright::plots
