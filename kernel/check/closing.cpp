#include "kernel/check/closing.hpp"

#include <algorithm>
#include <cctype>
#include <cmath>
#include <limits>

#include "kernel/check/structure.hpp"
#include "kernel/mechanics/belt.hpp"
#include "kernel/mechanics/best_pull.hpp"
#include "kernel/mechanics/closing.hpp"
#include "kernel/mechanics/pull.hpp"
#include "kernel/press/mould/curves.hpp"
#include "kernel/profile/offset.hpp"
#include "shared/number.hpp"
#include "shared/tolerance.hpp"
#include "shared/units.hpp"

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

// The bend nearest to an end of the pack and what leads up to it.
struct EndBend {
  double curvature = 0;  // of the neutral line; 0: none
  double start = 0;      // girth station at its outer end
  double straight = 0;   // length of a straight before it, trim merged in
};

EndBend end_bend(const Profile& neutral, bool left) {
  const auto& runs = neutral.runs();
  const std::size_t last = left ? 0 : runs.size() - 1;
  const double straight = runs[last].straight() ? runs[last].length : 0;
  if (straight > 0 && runs.size() == 1) return {};
  const std::size_t bend = straight == 0 ? last : left ? 1 : last - 1;
  return {runs[bend].curvature, left ? neutral.station(bend) : neutral.station(bend + 1), straight};
}

// What closes the strip at one end: pressure and end slat, and the clamps of a pressing beam on an end flat.
struct EndHold {
  EndBend bend;
  double pressure = 0, force = 0, moment = 0;
  std::vector<std::pair<double, double>> clamps;  // distance from the pack's end, N per mm of width

  bool flat() const { return bend.straight >= kLeastFlat - kAtLeast; }
  // Moment about a point l from the end. On an end flat the straps press from where the bend begins.
  double held(double l) const {
    if (!flat()) return closing_moment(pressure, force, l);
    double sum = force * l + pressure * std::pow(std::max(0.0, l - bend.straight), 2) / 2;
    for (const auto& [at, clamp] : clamps) sum += clamp * std::max(0.0, l - at);
    return sum;
  }
  // The strip that stays open; a strip that ends within an end flat leaves nothing open.
  double strip() const {
    if (!flat()) return open_strip(pressure, force, moment);
    if (held(bend.straight) >= moment) return 0;
    double low = bend.straight, high = 1e5;
    if (held(high) < moment) return INFINITY;
    for (int step = 0; step < 80; ++step) {
      const double middle = (low + high) / 2;
      (held(middle) < moment ? low : high) = middle;
    }
    return high;
  }
  EndHold scaled(double by) const {
    EndHold out = *this;
    out.pressure *= by;
    out.force *= by;
    return out;
  }
};

EndHold end_hold(const PressPlan& plan, const StrapPull& pull, bool left) {
  EndHold hold{end_bend(plan.neutral, left), 0, pull.end_force(left), 0, {}};
  if (hold.bend.curvature <= 0) return hold;
  const double over = plan.panel.thickness - plan.panel.neutral_height;
  const double outer = hold.bend.curvature / (1 + hold.bend.curvature * over);
  hold.pressure = strap_pressure(pull.tension(on_strap(plan, pull, hold.bend.start)), outer, pull.pitch);
  hold.moment = hold.bend.curvature * plan.panel.loose;
  for (const FlatPressed& flat : plan.flats) {
    const bool here = left ? flat.from <= kSamePoint : flat.to >= plan.neutral.girth() - kSamePoint;
    if (!here) continue;
    const double count = double(flat.clamps.size()), length = flat.to - flat.from;
    for (double i = 0; i < count; ++i)
      hold.clamps.push_back(
          {(i + 0.5) * length / count, flat.force * double(flat.planes.size()) / plan.panel.blank_width()});
  }
  return hold;
}

// What hands with a longer lever get into a strap, as long as the strap, the beams and the pins stand it.
double most_tension(const Job& job, const PressPlan& plan) {
  constexpr double kLever = 2;  // common practice, no source
  return std::min({job.straps.rating, kLever * job.straps.hand,
                   plan.closures.front().tension * spare_strength(job, plan)});
}

// A trim that the strip stays within; a wider pack has its straps a little further apart.
double trim_for(const PressPlan& plan, const StrapPull& pull, const EndHold& hold) {
  const double gaps = (plan.panel.blank_width() - plan.spacing.widest) / pull.pitch;
  double trim = plan.panel.trim;
  for (int turn = 0; turn < 50; ++turn) {
    const double pitch = pull.pitch + 2 * (trim - plan.panel.trim) / gaps;
    const double strip = hold.scaled(pull.pitch / pitch).strip();
    if (strip <= trim) break;
    trim = std::ceil(strip);
  }
  return trim;
}

std::string closing_advice(const Job& job, const PressPlan& plan, const StrapPull& pull,
                           const EndHold& hold) {
  constexpr double kMostTrim = 300, kThinnest = 0.1;
  std::vector<std::string> ways;
  if (const double closes = hold.held(std::max(plan.panel.trim, hold.bend.straight)); closes > 0) {
    double thickest = 0;
    for (const Ply& ply : plan.panel.plies) thickest = std::max(thickest, ply.thickness);
    const double thin = rounded_down(thickest * std::sqrt(closes / hold.moment), 1);
    if (thin >= kThinnest) ways.push_back("use plies at most " + number(thin, 1) + " thick");
    const double tension = std::max(pull.left, pull.right) * hold.moment / closes;
    if (tension <= most_tension(job, plan))
      ways.push_back("pull with " + up_to_ten(tension) + " N (straps.tension)");
  }
  if (const double trim = trim_for(plan, pull, hold); !hold.flat() && trim < kMostTrim)
    ways.push_back("give a trim of " + number(trim, 0) + " and cut it off");
  if (ways.empty()) ways.push_back("clamp the ends down, or press in a two-part mould");
  std::string text;
  for (std::size_t i = 0; i < ways.size(); ++i)
    text += (i == 0 ? "" : i + 1 == ways.size() ? ", or " : ", ") + ways[i];
  return char(std::toupper(text[0])) + text.substr(1) + ".";
}

void add_closing(const Job& job, const PressPlan& plan, const StrapPull& pull, bool left,
                 std::vector<Finding>& out) {
  const EndHold hold = end_hold(plan, pull, left);
  if (hold.bend.curvature < 0) return;  // the straps span it
  const double strip = hold.strip(), limit = std::max(plan.panel.trim, hold.bend.straight);
  const std::string end = left ? "left" : "right";
  out.push_back(judged({"closing-" + end, "Strip at the pack's end that stays short of the curve", strip,
                        Bound::at_most, limit, "mm", end + " end", kFreeEnd, Verdict::fail,
                        strip > limit ? closing_advice(job, plan, pull, hold) : ""}));
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
  const double pitch = (plan.panel.blank_width() - plan.spacing.widest) / (count - 1);
  constexpr double kClear = 5;
  if (pitch >= plan.spacing.widest + kClear && plan.load == Load::belt)
    ways.push_back(std::to_string(count) + " straps (formers.spacing = {count = " + std::to_string(count) +
                   "})");
}

std::string joined(const std::vector<std::string>& ways) {
  std::string text;
  for (const std::string& way : ways) text += (text.empty() ? "" : ", or ") + way;
  return text;
}

std::string under_straps(const Job& job, const PressPlan& plan, const PressureMap& map) {
  const double wanted = job.layup.glue_row.pressure_low, least = map.strapped_least;
  if (least >= wanted) return {};
  if (least <= 0)
    return plan.load == Load::belt
               ? " Where it is 0 nothing presses: clamp these places down as well."
               : " Between formers nothing presses: put them closer, or use stiffer cauls.";
  std::vector<std::string> ways;
  add_strap_ways(job, plan, wanted / least, ways);
  if (ways.empty() &&
      plan.closures.front().tension * wanted / least <= std::min(job.straps.rating, 2 * job.straps.hand))
    return " It takes " + up_to_ten(plan.closures.front().tension * wanted / least) +
           " N in each strap (straps.tension), and deeper beams (beams.section) or thicker pins that stand "
           "it.";
  if (ways.empty())
    return " Straps by hand do not reach it: take a glue that wants less (layup.glue = \"epoxy\" wants "
           "hardly any).";
  return " It takes " + joined(ways) + ".";
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

// What a two-part mould would give where it comes off and does better.
std::string method_text(const Job& job, const PressPlan& plan, const PressureMap& map) {
  constexpr double kSteep = 85 * kPi / 180;
  if (plan.load != Load::belt || greatest_angle(plan.panel.pressed, 0) > kSteep) return {};
  const PullChoice choice = pull_choice(plan.panel.pressed, 0, 0);
  const double pull = 4 * plan.closures.front().tension * double(plan.closures.size());
  const double unit = pull / (chord(plan.neutral) * plan.panel.blank_width());
  const double least = choice.least * unit * map.straps.even();
  constexpr double kBetter = 1.5;
  if (!choice.presses() || least < kBetter * map.sound_least) return {};
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

std::vector<Finding> closing_findings(const Job& job, const PressPlan& plan) {
  std::vector<Finding> out;
  const auto pull = strap_pull(job, plan);
  if (!pull) return out;
  if (plan.neutral.hollow()) add_lift(*pull, out);
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
