#include "kernel/check/closing.hpp"

#include <algorithm>
#include <cmath>

#include "kernel/mechanics/belt.hpp"
#include "kernel/mechanics/closing.hpp"
#include "kernel/press/mould/curves.hpp"
#include "kernel/profile/offset.hpp"
#include "shared/number.hpp"
#include "shared/tolerance.hpp"

namespace lamwright {
namespace {

constexpr const char* kFreeEnd = "statics of the pack's free end; belt friction (Euler-Eytelwein)";

std::string up_to_ten(double force) { return number(std::ceil(force / 10 - kAtLeast) * 10, 0); }

void add_lift(const StrapPull& pull, std::vector<Finding>& out) {
  const Bridge* most = nullptr;
  for (const Bridge& bridge : pull.line.bridges())
    if (!most || bridge.lift > most->lift) most = &bridge;
  Bounded lift{"strap-over-hollow",
               "Greatest height of the straps over a hollow",
               most ? most->lift : 0,
               Bound::at_most,
               0,
               "mm",
               "pack",
               "convex hull of the top caul's outer line",
               Verdict::fail,
               ""};
  if (most) {
    lift.where = "top caul " + number(most->from, 0) + " to " + number(most->to, 0);
    lift.advice = std::string("The straps span the hollow and press nothing there: press this shape in a ") +
                  "two-part mould (press.method = \"two-part\" or \"auto\").";
  }
  out.push_back(judged(std::move(lift)));
}

// The bend that the pack's end has to follow: the end run, or the one beside it when that is a straight too
// short to count as a flat.
struct EndBend {
  double curvature = 0;  // of the neutral line; 0: an end flat
  double start = 0;      // girth station at its outer end
};

EndBend end_bend(const Profile& neutral, bool left) {
  const auto& runs = neutral.runs();
  const std::size_t last = left ? 0 : runs.size() - 1;
  const auto at = [&](std::size_t i) -> EndBend {
    return {runs[i].curvature, left ? neutral.station(i) : neutral.station(i + 1)};
  };
  const bool short_straight = runs[last].straight() && runs[last].length < kLeastFlat - kAtLeast;
  if (!short_straight || runs.size() == 1) return at(last);
  return at(left ? 1 : last - 1);
}

std::string closing_advice(const Job& job, const PressPlan& plan, const StrapPull& pull, double pressure,
                           double force, double moment, double strip) {
  const double trim = plan.panel.trim, closes = closing_moment(pressure, force, trim);
  std::string text;
  if (closes > 0) {
    double thickest = 0;
    for (const Ply& ply : plan.panel.plies) thickest = std::max(thickest, ply.thickness);
    const double thin = rounded_down(thickest * std::sqrt(closes / moment), 1);
    const double tension = std::max(pull.left, pull.right) * moment / closes;
    if (thin >= 0.1) text += "Use plies at most " + number(thin, 1) + " thick, ";
    if (tension <= job.straps.rating)
      text += std::string(text.empty() ? "Pull" : "pull") + " with " + up_to_ten(tension) +
              " N (straps.tension), ";
  }
  const std::string more = std::isfinite(strip) && strip < 300
                               ? "give a trim of " + number(std::ceil(strip), 0) + " and cut it off"
                               : std::string("clamp the ends down");
  if (!text.empty()) return text + "or " + more + ".";
  return "C" + more.substr(1) + ", or press in a two-part mould.";
}

void add_closing(const Job& job, const PressPlan& plan, const StrapPull& pull, bool left,
                 std::vector<Finding>& out) {
  const EndBend bend = end_bend(plan.neutral, left);
  if (bend.curvature < 0) return;  // the straps span it
  const double over = plan.panel.thickness - plan.panel.neutral_height;
  const double outer = bend.curvature / (1 + bend.curvature * over);
  const double pressure = strap_pressure(pull.tension(on_strap(plan, pull, bend.start)), outer, pull.pitch);
  const double force = pull.end_force(left), moment = bend.curvature * plan.panel.loose;
  const double strip = open_strip(pressure, force, moment);
  const std::string end = left ? "left" : "right";
  out.push_back(judged(
      {"closing-" + end, "Strip at the pack's end that stays short of the curve", strip, Bound::at_most,
       plan.panel.trim, "mm", end + " end", kFreeEnd, Verdict::fail,
       strip > plan.panel.trim ? closing_advice(job, plan, pull, pressure, force, moment, strip) : ""}));
}

// What would bring the least pressure up to what the glue wants.
std::string reaching(const Job& job, const PressPlan& plan, double factor) {
  const Closure& closure = plan.closures.front();
  const int count = int(std::ceil(double(plan.closures.size()) * factor - kAtLeast));
  const double pitch = (plan.panel.blank_width() - plan.spacing.widest) / (count - 1);
  std::vector<std::string> ways;
  const double tension = closure.tension * factor;
  constexpr double kStretch = 2;  // beyond that no longer lever helps; common practice, no source
  if (tension <= std::min(job.straps.rating, kStretch * closure.tension))
    ways.push_back(up_to_ten(tension) + " N in each strap (straps.tension; now " +
                   number(closure.tension, 0) + ")");
  constexpr double kClear = 5;
  if (pitch >= plan.spacing.widest + kClear && !closure.loop)
    ways.push_back(std::to_string(count) + " straps (formers.spacing = {count = " + std::to_string(count) +
                   "})");
  std::string text;
  for (const std::string& way : ways) text += (text.empty() ? "" : ", or ") + way;
  return text;
}

std::string method_text(const PressPlan& plan, double least) {
  if (plan.load != Load::belt) return {};
  double pull = 0;
  for (const Closure& closure : plan.closures) pull += 4 * closure.tension;
  const double even = pull / (chord(plan.neutral) * plan.panel.blank_width());
  if (even <= least) return {};
  return " A two-part mould with as many strap loops would give about " + number(even, 3) + " MPa.";
}

std::string low_text(const Job& job, const PressPlan& plan, const PressureMap& map) {
  const Glue& glue = job.layup.glue_row;
  std::string text = glue.label + " wants " + number(glue.pressure_low, 3) + " to " +
                     number(glue.pressure_high, 3) + " MPa; this press gives " + number(map.sound_least, 3) +
                     " to " + number(map.sound_greatest, 3) + ".";
  if (map.sound_least <= 0) {
    text += " Where it is 0 nothing presses: clamp these places down as well.";
  } else if (const std::string ways = reaching(job, plan, glue.pressure_low / map.sound_least);
             !ways.empty()) {
    text += " It takes " + ways + ".";
  } else {
    text += " Straps of this kind do not reach it.";
  }
  text += method_text(plan, map.sound_least);
  if (!job.press.pressure_required)
    text += " Thin plies, flat and well fitting, need little: press a trial piece and pull it apart.";
  return text;
}

std::string place(const PressureMap& map) {
  return "girth " + number(map.least_girth, 0) + ", width " + number(map.least_width, 0);
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
  out.push_back({"glue-line", "Force that the glue line wants", force / 1000, 0, "kN",
                 job.press.pressure_required ? Verdict::fail : Verdict::caution, "pack", glue.source, text});
}

}  // namespace

std::vector<Finding> closing_findings(const Job& job, const PressPlan& plan) {
  std::vector<Finding> out;
  const auto pull = strap_pull(job, plan);
  if (!pull) return out;
  add_lift(*pull, out);
  for (const bool left : {true, false}) add_closing(job, plan, *pull, left, out);
  return out;
}

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
              glue.pressure_low, "MPa", place(*map), glue.source,
              job.press.pressure_required ? Verdict::fail : Verdict::caution, low_text(job, plan, *map)}));
  out.push_back(
      judged({"glue-most", "Greatest pressure on the glue line", map->sound_greatest, Bound::at_most,
              glue.pressure_high, "MPa", "pack", glue.source, Verdict::caution,
              "So much pressure squeezes the glue out of the joint: pull less, or use more slats."}));
  return out;
}

}  // namespace lamwright
