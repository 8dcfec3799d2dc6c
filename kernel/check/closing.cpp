#include "kernel/check/closing.hpp"

#include <algorithm>
#include <cctype>
#include <cmath>

#include "kernel/check/structure.hpp"
#include "kernel/mechanics/belt.hpp"
#include "kernel/mechanics/closing.hpp"
#include "kernel/press/mould/curves.hpp"
#include "kernel/profile/offset.hpp"
#include "shared/number.hpp"
#include "shared/tolerance.hpp"

namespace lamwright {
namespace {

constexpr const char* kFreeEnd = "statics of the pack's free end; belt friction (Euler-Eytelwein)";

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
  double held(double l) const { return by_straps(l) + by_clamps(l); }
  double by_straps(double l) const {
    if (!flat()) return closing_moment(pressure, force, l);
    return force * l + pressure * std::pow(std::max(0.0, l - bend.straight), 2) / 2;
  }
  double by_clamps(double l) const {
    double sum = 0;
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
  const double within = std::max(plan.panel.trim, hold.bend.straight);
  if (const double closes = hold.held(within); closes > 0) {
    double thickest = 0;
    for (const Ply& ply : plan.panel.plies) thickest = std::max(thickest, ply.thickness);
    const double thin = rounded_down(thickest * std::sqrt(closes / hold.moment), 1);
    if (thin >= kThinnest) ways.push_back("use plies at most " + number(thin, 1) + " thick");
    const double tension =
        std::max(pull.left, pull.right) * (hold.moment - hold.by_clamps(within)) / hold.by_straps(within);
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

}  // namespace

std::vector<Finding> closing_findings(const Job& job, const PressPlan& plan) {
  std::vector<Finding> out;
  const auto pull = strap_pull(job, plan);
  if (!pull) return out;
  if (plan.neutral.hollow()) add_lift(*pull, out);
  for (const bool left : {true, false}) add_closing(job, plan, *pull, left, out);
  return out;
}

}  // namespace lamwright
