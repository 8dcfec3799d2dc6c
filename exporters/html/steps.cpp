#include "exporters/html/steps.hpp"

#include "exporters/html/steps/rooms.hpp"

namespace lamwright::html {

std::vector<Step> steps(const ExportInput& input, const Told& told) {
  const bench::Facts facts(input, told);
  using Room = Step (*)(const bench::Facts&);
  constexpr Room kInOrder[] = {bench::check_parts, bench::rig_lower,   bench::rig_upper, bench::put_on_cauls,
                               bench::cut_sheets,  bench::run_dry,     bench::get_ready, bench::lay_up,
                               bench::close_press, bench::tighten,     bench::wait,      bench::release,
                               bench::trim,        bench::check_shape, bench::store};
  std::vector<Step> out;
  for (const Room room : kInOrder)
    if (Step step = room(facts); !step.actions.empty()) out.push_back(std::move(step));
  return out;
}

}  // namespace lamwright::html
