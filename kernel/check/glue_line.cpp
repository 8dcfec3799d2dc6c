#include "kernel/check/glue_line.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

#include "kernel/check/structure.hpp"
#include "kernel/mechanics/best_pull.hpp"
#include "kernel/mechanics/pull.hpp"
#include "kernel/press/slat_bed.hpp"
#include "kernel/profile/offset.hpp"
#include "shared/number.hpp"
#include "shared/tolerance.hpp"
#include "shared/units.hpp"

namespace lamwright {
namespace {

// What sets the tension: of a crowned flat press the pressure asked for, where one is.
std::string tension_key(const Job& job, const PressPlan& plan) {
  const bool asked = plan.load == Load::even && job.own.number("press.crowned-flat.pressure");
  return asked ? "press.crowned-flat.pressure" : "straps.tension";
}

// How the straps reach a pressure `factor` times as high: by tension or by number, as far as they go.
void add_strap_ways(const Job& job, const PressPlan& plan, double factor, std::vector<std::string>& ways) {
  const Closure& closure = plan.closures.front();
  const double tension = closure.tension * factor;
  if (tension <= most_tension(job, plan)) {
    const auto asked = job.own.number("press.crowned-flat.pressure");
    ways.push_back(plan.load == Load::even && asked
                       ? "press.crowned-flat.pressure = " +
                             number(std::ceil(*asked * factor * 1000) / 1000, 3)
                       : up_to_ten(tension) + " N in each strap (straps.tension; now " +
                             number(closure.tension, 0) + ")");
  }
  const int count = int(std::ceil(double(plan.closures.size()) * factor - kAtLeast));
  const int formers = plan.spacing.every * (count - 1) + 1;
  const double pitch = (plan.panel.blank_width() - plan.spacing.widest) / (count - 1);
  constexpr double kClear = 5;
  const double of_formers = (plan.panel.blank_width() - plan.spacing.widest) / (formers - 1);
  const double least =
      std::max({job.formers.thickness, job.beams.width, (job.straps.width + job.beams.width) / 2});
  if (pitch >= plan.spacing.widest + kClear && of_formers >= least && plan.load == Load::belt)
    ways.push_back(std::to_string(count) + " straps (formers.spacing = {count = " + std::to_string(formers) +
                   "})");
}

std::string joined(const std::vector<std::string>& ways) {
  std::string text;
  for (const std::string& way : ways) text += (text.empty() ? "" : ", or ") + way;
  return text;
}

std::string nothing_presses(const PressPlan& plan, const PressureMap& map) {
  if (map.straps.even() > 0) return " Where it is 0 nothing presses: clamp these places down as well.";
  return std::string(" Between ") + (plan.load == Load::belt ? "straps" : "formers") +
         " nothing presses: put them closer" +
         (plan.load == Load::belt && plan.spacing.every > 1 ? " (beams.every = 1)" : "") +
         ", or use stiffer cauls.";
}

std::string under_straps(const Job& job, const PressPlan& plan, const PressureMap& map) {
  const double wanted = job.layup.glue_row.pressure_low, least = map.strapped_least;
  if (least >= wanted) return {};
  if (least <= 0) return nothing_presses(plan, map);
  std::vector<std::string> ways;
  add_strap_ways(job, plan, wanted / least, ways);
  if (!ways.empty()) return " It takes " + joined(ways) + ".";
  const double tension = plan.closures.front().tension * wanted / least;
  if (tension <= hand_tension(job))
    return " It takes " + up_to_ten(tension) + " N in each strap (" + tension_key(job, plan) +
           "), and deeper beams (beams.section) or thicker pins that stand it.";
  constexpr double kContact = 0.01;  // MPa, all that epoxy wants; from memory
  return least >= kContact ? " Straps by hand do not reach it: take a glue that wants less (layup.glue = "
                             "\"epoxy\" wants hardly any)."
                           : " Straps by hand do not reach it: the curve is too slack for them.";
}

std::string under_clamps(const Job& job, const PressureMap& map) {
  const double wanted = job.layup.glue_row.pressure_low, least = map.clamped_least;
  if (least >= wanted) return {};
  constexpr double kStrong = 5000;  // N, of a large screw clamp; common practice, no source
  const double force = least > 0 ? job.formers.clamp_force * wanted / least : INFINITY;
  if (force <= kStrong)
    return " On the flats it takes clamps of " + up_to_ten(force) + " N (formers.clamp_force; now " +
           number(job.formers.clamp_force, 0) + ").";
  return " On the flats it takes more clamps than are laid out, over wider pressing beams.";
}

// Least over mean pressure along the width between two moulds with formers where they stand now.
double two_moulds_even(const Job& job, const PressPlan& plan) {
  SpreadingSpec spec = slat_bed(job, plan.panel, Moulds::both);
  for (const Section& section : plan.sections) {
    spec.supports.push_back(section.z);
    spec.loads.push_back({section.z, load_width(job, Moulds::both), 1});
  }
  return spread(spec).even();
}

// What a two-part mould would give where it comes off and does better.
std::string method_text(const Job& job, const PressPlan& plan, const PressureMap& map) {
  constexpr double kSteep = 85 * kPi / 180;
  if (plan.load != Load::belt || greatest_angle(plan.panel.pressed, 0) > kSteep) return {};
  const PullChoice choice = pull_choice(plan.panel.pressed, 0, 0);
  const double pull = 4 * plan.closures.front().tension * double(plan.closures.size());
  const double unit = pull / (chord(plan.neutral) * plan.panel.blank_width());
  const double least = choice.least * unit * two_moulds_even(job, plan);
  constexpr double kBetter = 1.5, kAnything = 0.005;
  if (!choice.presses() || least < std::max(kAnything, kBetter * map.sound_least)) return {};
  return " Two moulds with as many strap loops (press.method = \"two-part\") would give about " +
         number(least, 2) + " MPa at the least" +
         (least < job.layup.glue_row.pressure_low ? ", still short of it." : ".");
}

std::string low_text(const Job& job, const PressPlan& plan, const PressureMap& map) {
  const Glue& glue = job.layup.glue_row;
  std::string text = glue.label + " wants " + number(glue.pressure_low, 3) + " to " +
                     number(glue.pressure_high, 3) + " MPa; this press gives " + number(map.sound_least, 3) +
                     " to " + number(map.sound_greatest, 3) + ".";
  text += under_straps(job, plan, map) + under_clamps(job, map) + method_text(job, plan, map);
  if (!job.press.pressure_required)
    text += " Thin plies, flat and well fitting, need little: press a trial piece and pull it apart.";
  return text;
}

std::string place(double girth, double width) {
  return "girth " + number(girth, 0) + ", width " + number(width, 0);
}

void add_without_straps(const Job& job, const PressPlan& plan, std::vector<Finding>& out) {
  const Glue& glue = job.layup.glue_row;
  const Profile outer = offset(plan.neutral, plan.panel.thickness - plan.panel.neutral_height);
  const double force = glue.pressure_low * outer.girth() * plan.panel.blank_width();
  const double clamps = std::ceil(force / job.formers.clamp_force - kAtLeast);
  constexpr double kManyClamps = 60;  // common practice, no source
  std::string text = "This plan has no straps. " + glue.label + " wants " + number(glue.pressure_low, 3) +
                     " MPa, which is " + number(force / 1000, 1) + " kN over the pack: " + number(clamps, 0) +
                     " clamps of " + number(job.formers.clamp_force, 0) + " N";
  text += clamps > kManyClamps
              ? ", more than anyone sets in time: use a bag, a press, or a glue that wants less."
              : ", or a bag.";
  out.push_back({"glue-force", "Force that the glue line wants", force / 1000,
                 std::numeric_limits<double>::quiet_NaN(), "kN",
                 job.press.pressure_required ? Verdict::fail : Verdict::caution, "pack", glue.source, text});
}
}  // namespace

std::vector<Finding> glue_line_findings(const Job& job, const PressPlan& plan,
                                        const std::optional<PressureMap>& map) {
  std::vector<Finding> out;
  const Glue& glue = job.layup.glue_row;
  if (!map) {
    if (plan.closures.empty()) add_without_straps(job, plan, out);
    return out;
  }
  out.push_back(
      judged({"glue-line", "Least pressure on the glue line", map->sound_least, Bound::at_least,
              glue.pressure_low, "MPa", place(map->least_girth, map->least_width), glue.source,
              job.press.pressure_required ? Verdict::fail : Verdict::caution, low_text(job, plan, *map)}));
  out.push_back(judged(
      {"glue-most", "Greatest pressure on the glue line", map->sound_greatest, Bound::at_most,
       glue.pressure_high, "MPa", place(map->greatest_girth, map->greatest_width), glue.source,
       Verdict::caution,
       "So much pressure squeezes the glue out of the joint: pull less, or spread it with stiffer cauls."}));
  return out;
}

}  // namespace lamwright
