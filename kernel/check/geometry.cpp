#include "kernel/check/geometry.hpp"

#include <algorithm>
#include <cmath>
#include <tuple>

#include "kernel/press/mould/narrow.hpp"
#include "kernel/profile/offset.hpp"
#include "shared/number.hpp"
#include "shared/tolerance.hpp"
#include "shared/units.hpp"

namespace lamwright {
namespace {

// Slats may meet by this much: wood gives, strings stretch. Common practice, no source.
constexpr double kSlatPlay = 0.1;

// By common practice.
Finding bounded(Bound bound, std::string id, std::string title, double value, double limit, std::string unit,
                std::string where, Verdict otherwise, std::string advice) {
  return judged({std::move(id), std::move(title), value, bound, limit, std::move(unit), std::move(where),
                 kPractice, otherwise, std::move(advice)});
}

void add_strap_findings(const PressPlan& plan, std::vector<Finding>& out) {
  if (plan.closures.empty()) return;
  const Closure& strap = plan.closures.front();
  for (const auto& [name, end] :
       {std::pair<std::string, const StrapEnd&>{"left", strap.left}, {"right", strap.right}}) {
    out.push_back(bounded(Bound::at_least, "strap-run-" + name, "Free run of the strap for the ratchet",
                          end.run, plan.strap_free, "mm", name + " end", Verdict::fail,
                          "Choose a strap with a shorter ratchet."));
    if (strap.loop) continue;  // runs straight along the pull
    Finding exit{"strap-exit-" + name,
                 "Angle at which the strap leaves the caul",
                 degrees(end.exit),
                 20,
                 "deg",
                 Verdict::pass,
                 name + " end",
                 kPractice,
                 ""};
    exit.limit = exit.value > 25 ? 30 : 20;
    exit.bound = exit.value > 25 ? Bound::at_most : Bound::at_least;
    if (exit.value < 20 - kAtLeast || exit.value > 30 + kAtLeast) {
      exit.verdict = Verdict::fail;
      exit.advice = "Bring straps.exit between 20 and 30 degrees.";
    }
    out.push_back(exit);
  }
  const std::string advice =
      plan.fitting_pitch
          ? "A caul with a pitch of " + number(*plan.fitting_pitch, 1) +
                " leaves no wider strip than the trim; or give more trim: the bare strip must be cut off."
          : "Use a caul with narrower slats, or more trim: the bare strip must be cut off.";
  for (const auto& [name, strip] :
       {std::pair<std::string, double>{"left", plan.uncovered_left}, {"right", plan.uncovered_right}})
    out.push_back(bounded(Bound::at_most, "top-caul-short-" + name,
                          "Strip of the pack that the top caul leaves bare", strip, plan.panel.trim, "mm",
                          name + " end", Verdict::caution, advice));
}

// How far the pack's end stays inside the strap's line at one end; the strap must not cut into it.
double pack_inside(const PressPlan& plan, const StrapEnd& strap, int side) {
  const Vec2 to = strap.roller ? strap.roller->on : strap.mark;
  const Vec2 down = (to - strap.leaves).normalized();
  double least = INFINITY;
  for (const Layer& layer : plan.layers) {
    if (layer.kind != Layer::Kind::panel && layer.kind != Layer::Kind::cover) continue;
    const Pose end = side > 0 ? layer.inner.end() : layer.inner.start();
    for (const double height : {0.0, layer.thickness})
      least = std::min(least, inside_strap(end.point + height * end.normal(), strap.leaves, down, side));
  }
  return least;
}

void add_pack_findings(const PressPlan& plan, std::vector<Finding>& out) {
  if (plan.closures.empty()) return;
  const Closure& strap = plan.closures.front();
  for (const auto& [name, end, side] :
       {std::tuple<std::string, const StrapEnd&, int>{"left", strap.left, -1}, {"right", strap.right, 1}})
    out.push_back(bounded(Bound::at_least, "strap-clears-pack-" + name,
                          "Distance of the pack's end inside the strap",
                          pack_inside(plan, end, side) - (strap.loop ? strap.width / 2 : 0), 0, "mm",
                          name + " end", Verdict::fail,
                          "The strap would cut into the pack: lower straps.exit, use a thicker caul, or "
                          "slats that reach nearer to the pack's end."));
}

void add_former_findings(const PressPlan& plan, std::vector<Finding>& out) {
  const double least = plan.foot_sloped ? std::max(150.0, plan.former_height / 3) : 150;
  out.push_back(bounded(Bound::at_least, "foot-width", "Width of the former's foot", plan.foot_width, least,
                        "mm", "former", Verdict::caution,
                        "Clamp the beams to the bench: a narrow foot tips."));
  const Profile& contact = plan.sections.front().lower;
  double tightest = INFINITY;
  for (const Run& run : contact.runs())
    if (!run.straight()) tightest = std::min(tightest, 1 / std::abs(run.curvature));
  constexpr double kNearlyCorner = 5;
  if (std::isfinite(tightest))
    out.push_back(
        bounded(Bound::at_least, "contact-radius", "Tightest radius of the contact edge", tightest,
                kNearlyCorner, "mm", "former", Verdict::caution,
                "The contact edge is nearly a corner: use a thinner cover or caul, or a larger radius."));
  out.push_back(bounded(Bound::at_least, "former-depth", "Least depth of the former under its contact edge",
                        plan.former_depth, plan.min_depth, "mm", "former", Verdict::fail,
                        "Raise formers.min_depth."));
}

// The bend of one sense that leaves a layer's slats least room beyond their least radius.
struct TightBend {
  double radius = 0, least = 0;
};
std::optional<TightBend> tight_bend(const Job& job, const Layer& layer, bool crown) {
  std::optional<TightBend> out;
  for (std::size_t i = 0; i < layer.inner.runs().size(); ++i) {
    const Run& run = layer.inner.runs()[i];
    if (run.straight() || (run.curvature > 0) != crown) continue;
    const double widest = widest_slat(layer, i);
    const LeastRadii least = least_radii(job.caul, widest > 0 ? widest : INFINITY);
    const auto& limit = crown ? least.crown : least.hollow;
    const double radius = 1 / std::abs(run.curvature);
    if (limit && (!out || radius * out->least < out->radius * *limit)) out = TightBend{radius, *limit};
  }
  return out;
}

void add_caul_findings(const Job& job, const PressPlan& plan, std::vector<Finding>& out) {
  for (const Layer& layer : plan.layers) {
    if (layer.kind != Layer::Kind::bed_caul && layer.kind != Layer::Kind::top_caul) continue;
    const bool bed = layer.kind == Layer::Kind::bed_caul;
    for (const bool crown : {true, false})
      if (const auto bend = tight_bend(job, layer, crown))
        out.push_back(bounded(
            Bound::at_least, to_text(layer.kind) + (crown ? "-crown" : "-hollow"),
            crown ? "Tightest crown that the caul goes round" : "Tightest hollow that the caul goes into",
            bend->radius, bend->least, "mm", bed ? "bed caul" : "top caul", Verdict::fail,
            "Use a caul with narrower or thinner slats, or name narrower slats in caul.slats: these "
            "do not follow the curve."));
  }
}

// Gaps that keep slats apart in a hollow.
std::string open_text(const Job& job, double gap) {
  const double own = *job.caul.pitch * (1 - job.caul.coverage);
  if (job.caul.lagging != Lagging::open && own >= gap)
    return "leave gaps between them (caul.lagging = \"open\")";
  return "use a caul with gaps of " + number(std::ceil(gap * 2) / 2, 1) + " or more, laid open";
}

// Slats that lie edge to edge on the wide side of a hollow meet on the narrow one, by their thickness times
// the turn from one to the next, less their gap.
void add_closing_up(const Job& job, const PressPlan& plan, std::vector<Finding>& out) {
  if (!plan.neutral.hollow()) return;
  for (const Layer& layer : plan.layers) {
    if (layer.slats.empty()) continue;
    double most = 0, turn = 0;
    for (std::size_t i = 0; i + 1 < layer.slats.size(); ++i) {
      const Slat &a = layer.slats[i], &b = layer.slats[i + 1];
      const double middle = std::min((a.to + b.from) / 2, layer.inner.girth());
      const double curvature = -layer.inner.curvature(middle) * (b.middle() - a.middle());
      if (const double meets = curvature * layer.thickness - (b.from - a.to); meets > most) {
        most = meets;
        turn = curvature;
      }
    }
    const bool bed = layer.kind == Layer::Kind::bed_caul;
    const std::string name = bed ? "bed caul" : "top caul";
    out.push_back(bounded(Bound::at_most, std::string(bed ? "bed" : "top") + "-slats-meet",
                          "How far slats would stand in one another in a hollow", most, kSlatPlay, "mm", name,
                          Verdict::caution,
                          "Bevel the edges of the slats there by " + number(degrees(turn) / 2, 1) +
                              " degrees on the side away from the edge they lie on (" + number(most / 2, 1) +
                              " each), or " + open_text(job, turn * layer.thickness - kSlatPlay) + "."));
  }
}

void add_pin_finding(const Job& job, const PressPlan& plan, std::vector<Finding>& out) {
  if (!job.caul.pitch) return;
  out.push_back(bounded(Bound::at_least, "locating-pins", "Locating pins in the trim",
                        double(plan.pins.size()), 2, "", "pack", Verdict::caution,
                        plan.panel.trim < kPinTrim - kAtLeast
                            ? "Give a trim of at least " + number(kPinTrim) +
                                  " (panel.trim) so that pins can hold pack and cauls in place."
                            : std::string("No gap between the slats takes a pin: use open lagging or a caul "
                                          "with gaps, or hold pack and cauls by hand.")));
}

double apart(const std::vector<Closure>& closures) {
  double least = INFINITY;
  for (std::size_t i = 1; i < closures.size(); ++i)
    least = std::min(least, closures[i].z - closures[i - 1].z);
  return least;
}

void add_spacing_finding(const PressPlan& plan, std::vector<Finding>& out) {
  out.push_back(bounded(Bound::at_most, "former-pitch", "Distance from former to former", plan.spacing.pitch,
                        300, "mm", "formers", Verdict::caution,
                        "Space the formers closer: slats sag between them and the waves show."));
  if (plan.closures.size() > 1)
    out.push_back(bounded(Bound::at_least, "strap-pitch", "Distance from strap to strap",
                          apart(plan.closures), plan.spacing.widest + 5, "mm", "straps", Verdict::fail,
                          "Use fewer formers, or straps on every n-th (beams.every)."));
}

void add_rating_finding(const Job& job, const PressPlan& plan, std::vector<Finding>& out) {
  if (plan.closures.empty()) return;
  Finding finding = bounded(Bound::at_most, "strap-rating", "Strap tension against its rating",
                            plan.closures.front().tension, job.straps.rating, "N", "straps", Verdict::fail,
                            "Pull less or use a stronger strap.");
  finding.basis = "EN 12195-2: lashing capacity on the strap's label";
  out.push_back(finding);
}

}  // namespace

std::vector<Finding> geometry_findings(const Job& job, const PressPlan& plan) {
  std::vector<Finding> out;
  add_strap_findings(plan, out);
  add_pack_findings(plan, out);
  add_former_findings(plan, out);
  add_caul_findings(job, plan, out);
  add_closing_up(job, plan, out);
  add_spacing_finding(plan, out);
  add_rating_finding(job, plan, out);
  add_pin_finding(job, plan, out);
  return out;
}

}  // namespace lamwright
