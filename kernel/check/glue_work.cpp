#include "kernel/check/glue_work.hpp"

#include <algorithm>
#include <cmath>

#include "shared/tolerance.hpp"

namespace lamwright {
namespace {

// Laying pack and cauls together, and drawing one strap tight. Common practice, no source.
constexpr double kLaying = 5, kTightening = 1;
constexpr double kWorkingDay = 8 * 60;

// Sheets glued in each stage, as even as can be; the first stage glues one sheet more than lines, later ones
// glue theirs to what is there.
std::vector<int> stages_of(int plies, double line_time, double open) {
  const int lines = plies - 1;
  if (lines <= 0) return {plies};
  const int at_once = std::max(1, int(std::floor(open / line_time + kWholeNumber)));
  const int stages = (lines + at_once - 1) / at_once;
  std::vector<int> out;
  for (int i = 0; i < stages; ++i) out.push_back(lines * (i + 1) / stages - lines * i / stages);
  ++out.front();
  return out;
}

}  // namespace

// The first stage glues one sheet more than it has lines.
double GlueWork::longest_stage() const {
  if (stages.empty() || lines <= 0) return 0;
  int most = stages.front() - 1;
  for (std::size_t i = 1; i < stages.size(); ++i) most = std::max(most, stages[i]);
  return spreading * most / lines;
}

GlueWork glue_work(const Job& job, const PressPlan& plan) {
  const Panel& panel = plan.panel;
  const Glue& glue = job.layup.glue_row;
  GlueWork work;
  work.lines = int(panel.plies.size()) - 1;
  constexpr double kSquareMetre = 1e6;
  work.area = panel.pressed.girth() * panel.blank_width() / kSquareMetre;
  work.mass = work.lines * work.area * glue.spread / 1000;
  work.total_mass = work.mass * panel.count;
  const double line_time = work.area / job.layup.spread_rate;
  work.spreading = work.lines * line_time;
  work.setting = kLaying + kTightening * double(plan.closures.size() * (plan.load == Load::belt ? 1 : 2));
  work.laying = kLaying;
  work.open = glue.open;
  work.closed = glue.closed;
  work.stages = stages_of(int(panel.plies.size()), line_time, glue.open);
  work.press = glue.press;
  work.cure = glue.cure;
  work.pressings = panel.count * int(work.stages.size());
  const double each = work.spreading / double(work.stages.size()) + work.setting + work.press;
  const int a_day = std::max(1, int(std::floor(kWorkingDay / each)));
  work.days = (work.pressings + a_day - 1) / a_day;
  work.uses = job.formers.uses;
  return work;
}

}  // namespace lamwright
