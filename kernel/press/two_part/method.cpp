#include "kernel/press/two_part/method.hpp"

#include <algorithm>
#include <cmath>

#include "kernel/press/two_part/axis.hpp"
#include "kernel/press/two_part/rig.hpp"
#include "kernel/press/two_part/undercut.hpp"
#include "kernel/profile/offset.hpp"
#include "shared/number.hpp"
#include "shared/units.hpp"

namespace lamwright {
namespace {

using namespace two_part;

Seated seated(const Job& job, const PressPlan& plan) {
  double pull = 0;
  for (const Closure& closure : plan.closures) pull += closure.pull();
  const double width = plan.panel.blank_width();
  const SeatingSpec spec{plan.neutral, job.press.pull.at, pull / width,
                         pack_stiffness(job, plan.panel, Moulds::both)};
  Seated out{
      pull, width, seat(spec), full_contact(spec), side_thrust(spec), pull / (chord(plan.neutral) * width)};
  if (out.side_thrust) *out.side_thrust *= width;
  return out;
}

std::optional<LoopTensions> tensions_for(const Job& job, double reach, const Pull& pull) {
  if (!pull.best_position) return std::nullopt;
  const double shift = (pull.best_position->at - job.press.pull.at) / reach;
  if (std::abs(shift) >= 1) return std::nullopt;
  const double half = std::min(job.straps.tension, job.straps.rating / (1 + std::abs(shift)));
  return LoopTensions{half * (1 - shift), half * (1 + shift)};
}

std::string reason_of(const Suits& suits, const Panel& panel, const Pull& pull) {
  std::string reason = suits.rank >= 10 ? suits.reason : "As the job asks. " + suits.reason;
  const auto along = [&](double axis) -> const PullChoice* {
    for (const NamedPull& p : pull.compared)
      if (std::abs(p.choice.axis - axis) < 1e-9 && p.choice.at == 0) return &p.choice;
    return nullptr;
  };
  const auto pressures = [](const PullChoice& choice) {
    return number(choice.least, 2) + " to " + number(choice.greatest, 2);
  };
  const double middle = bisector(panel.pressed);
  const PullChoice *square = along(0), *leaning = along(middle);
  if (square && leaning && std::abs(middle) > 1e-6 && square->mean > 0)
    reason += " Pulled square to the chord the pressure is " + pressures(*square) +
              " of an even one, along the bisector of its normals (" + number(degrees(middle), 1) +
              " degrees off) " + (leaning->mean > 0 ? pressures(*leaning) : "no pressure balances it") + ".";
  return reason;
}

}  // namespace

std::string TwoPartPress::summary() const {
  return "a lower and an upper mould drawn together by strap loops; for hollows, L shapes and flats";
}

Suits TwoPartPress::suits(const Panel& panel) const {
  const Headings range = headings(panel.pressed);
  if (!axes_coming_off(panel, 0))
    return {0, "its normals turn through " + number(degrees(range.greatest - range.least), 3) +
                   " degrees, and an upper mould comes off at most 180"};
  if (panel.pressed.hollow())
    return {10, "A hollow bend: a strap over one mould would lift off it, an upper mould presses it."};
  if (!panel.pressed.straight()) return {5, "No hollow bend, so straps over one mould would do."};
  return {1, "A flat panel: a crowned flat press needs less."};
}

PressPlan TwoPartPress::plan(const Job& job, const Panel& panel) const {
  const double axis = pull_axis(job.press.pull, panel);
  refuse_undercut(panel, axis, job.press.draft);
  const PressCurves curves = press_curves(job, panel, pull_upright(panel.pressed, axis), Moulds::both);
  const Rig press =
      rig(job, panel, {job.formers, curves, curves.contact, *curves.upper, job.press.beam_tilt});
  PressPlan plan = plan_of(press, name());
  plan.pull = pull_of(job, panel, plan.neutral);
  plan.pull->tensions = tensions_for(job, press.loops.reach, *plan.pull);
  plan.seated = seated(job, plan);
  if (job.press.beam_tilt != 0)
    plan.leaning =
        press.halves.area() / halves({job.formers, curves, curves.contact, *curves.upper, 0}).area();
  plan.reason = reason_of(suits(panel), panel, *plan.pull);
  return plan;
}

}  // namespace lamwright
