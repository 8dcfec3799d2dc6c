#include "kernel/press/mould/timber.hpp"

#include "shared/error.hpp"
#include "shared/number.hpp"
#include "shared/tolerance.hpp"

namespace lamwright {
namespace {

BoreSpec foot_screw(const BeamSpec& beams, double x) {
  BoreSpec bore{BoreUse::foot_screw, beams.screw_diameter + 1, std::nullopt,
                std::nullopt,        {x, 0, beams.width / 2},  {0, 1, 0}};
  if (counterbore_depth(beams) > 0)
    bore.counterbore = Counterbore{beams.counterbore, counterbore_depth(beams)};
  return bore;
}

std::string stock_of(const BeamSpec& beams) {
  return beams.timber_class + " " + number(beams.width) + " x " + number(beams.depth);
}

Part bored(const Job& job, PartKind kind, const TimberSpec& in) {
  PartSpec spec{to_text(kind),
                kind,
                stock_of(job.beams),
                rectangle({in.from, 0}, {in.to, job.beams.depth}),
                job.beams.width,
                {},
                {},
                {},
                false};
  for (const double x : in.screws) spec.bores.push_back(foot_screw(job.beams, x));
  for (const double x : in.strap_holes)
    spec.bores.push_back({BoreUse::strap,
                          job.straps.hole,
                          std::nullopt,
                          std::nullopt,
                          {x, hole_height(job.beams), 0},
                          {0, 0, 1}});
  return make_part(std::move(spec));
}

// The groove runs the whole length: the cross-section is the outline, in the plane across the beam.
Part grooved_bearer(const Job& job, double from, double to) {
  const BeamSpec& beams = job.beams;
  const double cheek = (beams.width - job.formers.thickness) / 2,
               floor = beams.depth - *job.formers.groove_depth;
  if (cheek < kLeastWood - kAtLeast || floor < kLeastWood - kAtLeast)
    throw geometry_error("grooved bearer",
                         "a groove " + number(job.formers.thickness) + " wide and " +
                             number(*job.formers.groove_depth) + " deep leaves less than 5 of a bearer " +
                             number(beams.width) + " x " + number(beams.depth),
                         "use wider beams or a shallower groove");
  const double w = beams.width, d = beams.depth;
  const std::vector<Vec2> corners{{0, 0},         {w, 0},     {w, d}, {w - cheek, d}, {w - cheek, floor},
                                  {cheek, floor}, {cheek, d}, {0, d}};
  const Frame sheet{{to, 0, 0}, {0, 0, 1}, {0, 1, 0}};
  return make_part({to_text(PartKind::bearer),
                    PartKind::bearer,
                    stock_of(beams),
                    polygon(corners, "grooved bearer"),
                    to - from,
                    sheet,
                    {},
                    {},
                    false});
}

}  // namespace

double strap_drop(const BeamSpec& beams) { return beams.depth * 2 / 3; }

double hole_height(const BeamSpec& beams) { return beams.depth - strap_drop(beams); }

double counterbore_depth(const BeamSpec& beams) {
  return beams.depth + beams.screw_reach - beams.screw_length;
}

Part beam_part(const Job& job, const TimberSpec& spec) { return bored(job, PartKind::beam, spec); }

Part bearer_part(const Job& job, const TimberSpec& spec) {
  if (job.formers.groove_depth) return grooved_bearer(job, spec.from, spec.to);
  return bored(job, PartKind::bearer, {spec.from, spec.to, spec.screws, {}});
}

}  // namespace lamwright
