#include "kernel/check/slats.hpp"

#include <algorithm>
#include <cmath>

#include "kernel/mechanics/bed.hpp"
#include "kernel/mechanics/sag.hpp"
#include "kernel/mechanics/timber.hpp"
#include "kernel/press/mould/narrow.hpp"
#include "kernel/press/slat_bed.hpp"
#include "shared/number.hpp"
#include "shared/tolerance.hpp"

namespace lamwright {
namespace {

constexpr const char* kFoundation = "beams on an elastic foundation (Hetenyi), finite elements";

// What spreads the pull, as people call it.
std::string platen(const Job& job) {
  switch (job.caul.kind) {
    case CaulSpec::Kind::slatted:
      return "slats";
    case CaulSpec::Kind::sheathed:
      return "sheathing";
    case CaulSpec::Kind::bare:
      break;
  }
  return "cover sheets";
}

std::string closer(const Job& job, const PressPlan& plan) {
  if (plan.load == Load::belt && job.beams.every > 1)
    return "Put a strap on every former (beams.every = 1), use ";
  if (job.formers.spacing.kind == SpacingSpec::Kind::automatic) return "Use ";
  return "Put formers and straps closer (formers.spacing, \"auto\" finds the widest that will do), use ";
}

void add_width(const Job& job, const PressPlan& plan, const PressureMap& map, std::vector<Finding>& out) {
  const std::string thicker = "thicker " + platen(job);
  out.push_back(
      judged({"width-even", "Least over mean pressure along the width", map.straps.even(), Bound::at_least,
              job.formers.spacing.even, "", "pack", kFoundation, Verdict::caution,
              closer(job, plan) + thicker + ", or a softer layer beside the pack (caul.bedding)."}));
  const double scale = hardest_strapped(plan, map) / map.straps.mean;
  if (scale <= 0) return;
  out.push_back(
      judged({"slat-sag", "Sag of the " + platen(job) + " between formers", map.straps.greatest_sag * scale,
              Bound::at_most, job.formers.spacing.sag, "mm", "formers", kFoundation, Verdict::caution,
              "Put formers closer or use " + thicker + ": the waves show."}));
  if (job.caul.bending <= 0) return;
  const double inside =
      hardest_inside(plan, map, plan.panel.thickness + plan.panel.cover + job.caul.thickness / 2) /
      map.straps.mean;
  const double moment = std::max(map.straps.lower_moment * inside, map.straps.upper_moment * scale);
  const double stress = 6 * moment / (job.caul.thickness * job.caul.thickness * job.caul.coverage);
  out.push_back(judged({"slat-bending", "Bending stress of the slats", stress, Bound::at_most,
                        design_strength(job.caul.bending), "MPa", "cauls",
                        "EN 338 f_m,k of the slats, EN 1995-1-1 k_mod 0.9 (short-term), gamma_M 1.3",
                        Verdict::fail, "Put formers closer or use thicker slats."}));
}

// A mould without straps is pressed by a bag or by clamps, evenly at best: what it lies on sags between
// formers.
void add_even_sag(const Job& job, const PressPlan& plan, std::vector<Finding>& out) {
  if (plan.spacing.clear < kAtLeast) return;
  SpreadingSpec spec = slat_bed(job, plan.panel, Moulds::lower);
  for (const Section& section : plan.sections) spec.supports.push_back(section.z);
  spec.even = job.layup.glue_row.pressure_low;
  out.push_back(
      judged({"slat-sag", "Sag of the " + platen(job) + " between formers under what the glue wants",
              spread(spec).greatest_sag, Bound::at_most, job.formers.spacing.sag, "mm", "formers",
              "continuous beam under an even load, finite elements", Verdict::caution,
              "Put formers closer (formers.spacing) or use thicker " + platen(job) + ": the waves show."}));
}

// EI per mm of width of what lies between slats and glue lines: cover sheet and outermost ply, loose.
double face_stiffness(const Job& job, const Panel& panel) {
  double stiffness = 0;
  if (panel.cover > 0) stiffness += job.layup.cover_board.along * second_moment(1, panel.cover);
  const Ply& face = panel.plies.back();
  return stiffness + face.modulus * second_moment(1, face.thickness);
}

// Least over mean pressure under a gap that a face puts up with: a gap is narrow, and the plies below even it
// out. Common practice, no source.
constexpr double kUnderGap = 0.5;

void add_lagging(const Job& job, const PressPlan& plan, const std::optional<PressureMap>& map,
                 std::vector<Finding>& out) {
  if (!job.caul.pitch || job.caul.lagging == Lagging::close) return;
  const double pitch = *job.caul.pitch, width = pitch * job.caul.coverage, gap = pitch - width;
  if (gap <= kAtLeast) return;
  out.push_back(judged(
      {"lagging-even", "Least over mean pressure under the gaps of open lagging",
       lagging_evenness(job, plan.panel, pitch, width), Bound::at_least, kUnderGap, "", "cauls", kFoundation,
       Verdict::caution,
       "Gaps of " + number(gap, 1) +
           " print through: lay the slats closer (caul.lagging = \"close\") or use a stiffer cover sheet "
           "(layup.cover), above all under thin face veneers."}));
  if (!map) return;
  constexpr double kMostSag = 0.05;  // common practice, no source
  const double pressure = *std::max_element(map->along.begin(), map->along.end());
  const double sag = pressure * std::pow(gap, 4) / (384 * face_stiffness(job, plan.panel));
  out.push_back(
      judged({"lagging-sag", "Sag of cover sheet and outer ply over a gap between slats", sag, Bound::at_most,
              kMostSag, "mm", "cauls", "beam clamped at both ends, p g^4 / (384 E I)", Verdict::caution,
              "Lay the slats closer (caul.lagging = \"close\") or use a stiffer cover sheet."}));
}

// Flat slats on a bend touch it with their middles (a crown) or edges (a hollow).
struct Facet {
  double radius = INFINITY;  // of the side of the slats that meets the pack
  double width = 0;          // of the widest slat there
  bool bed = false;
  std::string where = "cauls";

  double height() const { return std::isfinite(radius) ? facet(width, radius) : 0; }
};

Facet highest_facet(const PressPlan& plan) {
  Facet out;
  for (const Layer& layer : plan.layers) {
    const bool bed = layer.kind == Layer::Kind::bed_caul;
    if (!bed && layer.kind != Layer::Kind::top_caul) continue;
    for (std::size_t i = 0; i < layer.inner.runs().size(); ++i) {
      const Run& run = layer.inner.runs()[i];
      if (run.straight()) continue;
      const double radius = std::abs(1 / run.curvature + (bed ? layer.thickness : 0));
      const Facet here{radius, widest_slat(layer, i), bed,
                       std::string(bed ? "bed caul, " : "top caul, ") + run_name(layer.inner, i)};
      if (here.height() > out.height()) out = here;
    }
  }
  return out;
}

// The thinnest cover sheet, to 0.5, that evens the facets out and stands the bend. A thicker one lies on a
// tighter bed caul.
std::optional<double> bridging_cover(const Job& job, const PressPlan& plan, const Facet& highest) {
  constexpr double kStep = 0.5, kThickest = 15;
  for (double cover = plan.panel.cover + kStep; cover <= kThickest; cover += kStep) {
    const double radius = highest.radius - (highest.bed ? cover - plan.panel.cover : 0);
    if (radius <= 0 || job.layup.cover_bend.thickness_for(radius).value_or(kThickest) < cover)
      return std::nullopt;
    if (facet(highest.width, radius) <= kBridged * cover) return cover;
  }
  return std::nullopt;
}

std::string facet_advice(const Job& job, const PressPlan& plan, const Facet& highest) {
  constexpr double kNarrowest = 5;
  const double narrow = rounded_down(std::sqrt(8 * highest.radius * kBridged * plan.panel.cover), 0);
  const auto cover = plan.panel.cover > 0 ? bridging_cover(job, plan, highest) : std::nullopt;
  std::string text;
  if (narrow >= kNarrowest)
    text = "Use slats at most " + number(narrow) + " wide there (caul.slats with a width)";
  if (cover)
    text += std::string(text.empty() ? "Use" : ", or") + " a cover sheet " + number(*cover, 1) + " thick";
  return text.empty() ? "Hollow the slats' faces to the curve." : text + ", or hollow the slats' faces.";
}

void add_facets(const Job& job, const PressPlan& plan, std::vector<Finding>& out) {
  if (!job.caul.pitch) return;
  const Facet highest = highest_facet(plan);
  out.push_back(
      judged({"facets", "Height of the facets that flat slats make on a bend", highest.height(),
              Bound::at_most, kBridged * plan.panel.cover, "mm", highest.where,
              "sagitta w^2 / (8 R); a cover sheet evens out a fifth of its thickness: common practice, no "
              "source",
              Verdict::caution, facet_advice(job, plan, highest)}));
}

// What the rack can give. Slats that are not there can be bought, so nothing fails.
void add_stock(const PressPlan& plan, std::vector<Finding>& out) {
  for (const PlannedCaul& caul : plan.cauls) {
    const CaulSchedule& schedule = caul.schedule;
    const auto lacking = std::count_if(schedule.runs.begin(), schedule.runs.end(),
                                       [](const ScheduledRun& run) { return run.pieces.empty(); });
    std::string advice;
    for (const std::string& sentence : schedule.missing) advice += sentence + " ";
    if (std::isfinite(schedule.covers_close))
      advice += "The stock would cover " + number(schedule.covers_close, 0) + " of girth edge to edge, " +
                number(schedule.covers_open, 0) + " with open lagging.";
    while (!advice.empty() && advice.back() == ' ') advice.pop_back();
    out.push_back(judged({to_text(caul.kind) + "-stock", "Runs of slats that the stock cannot give",
                          double(lacking), Bound::at_most, 0, "", to_text(caul.kind),
                          "least pieces, joints of neighbours staggered: common practice, no source",
                          Verdict::caution, advice}));
  }
}

}  // namespace

double lagging_evenness(const Job& job, const Panel& panel, double pitch, double width) {
  if (pitch - width <= kAtLeast) return 1;
  constexpr int kSlats = 5;  // the middle one is far enough from the ends
  std::vector<BedLayer> rest;
  for (std::size_t i = 0; i + 1 < panel.plies.size(); ++i)
    rest.push_back({panel.plies[i].thickness, panel.plies[i].across});
  if (rest.empty()) rest.push_back({panel.plies.front().thickness, panel.plies.front().across});
  SpreadingSpec spec;
  spec.width = kSlats * pitch;
  spec.upper = face_stiffness(job, panel);
  spec.bed = bed_stiffness(rest, 0);
  // What lies below is not asked here: it is held so often that it does not give.
  constexpr int kHeld = 8;
  const double apart = pitch / kHeld;
  spec.lower = rigid_base(spec.bed, apart);
  for (int i = 0; i <= kSlats * kHeld; ++i) spec.supports.push_back(std::min(i * apart, spec.width));
  for (int i = 0; i < kSlats; ++i) spec.loads.push_back({(i + 0.5) * pitch, width, 1});
  const Spreading found = spread(spec);
  double least = INFINITY;
  for (std::size_t i = 0; i < found.z.size(); ++i)
    if (found.z[i] >= 1.5 * pitch && found.z[i] <= 3.5 * pitch) least = std::min(least, found.pressure[i]);
  return least / found.mean;
}

std::vector<Finding> slat_findings(const Job& job, const PressPlan& plan,
                                   const std::optional<PressureMap>& map) {
  std::vector<Finding> out;
  if (map) add_width(job, plan, *map, out);
  if (plan.closures.empty()) add_even_sag(job, plan, out);
  add_lagging(job, plan, map, out);
  add_facets(job, plan, out);
  add_stock(plan, out);
  return out;
}

}  // namespace lamwright
