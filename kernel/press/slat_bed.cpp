#include "kernel/press/slat_bed.hpp"

#include <algorithm>
#include <cmath>

#include "kernel/mechanics/bed.hpp"
#include "kernel/mechanics/sag.hpp"
#include "kernel/profile/offset.hpp"

namespace lamwright {
namespace {

bool slats_above(const Job& job, Moulds moulds) {
  return moulds == Moulds::both || job.caul.kind == CaulSpec::Kind::slatted;
}

// Of a cover sheet with its face grain round the curve; without one a sheet of the pack has to do.
double cover_stiffness(const Job& job, const Panel& panel) {
  if (panel.cover > 0) return job.layup.cover_board.across * second_moment(1, panel.cover);
  const Ply& ply = panel.plies.back();
  return ply.across * second_moment(1, ply.thickness);
}

}  // namespace

double pack_stiffness(const Job& job, const Panel& panel, Moulds moulds) {
  const double caul = job.caul.modulus_across > 0 ? job.caul.modulus_across : kHardwoodAcross;
  std::vector<BedLayer> layers{{job.caul.thickness, caul}, {2 * panel.cover, kHardwoodAcross}};
  if (slats_above(job, moulds)) layers.push_back({job.caul.thickness, caul});
  for (const Ply& ply : panel.plies) layers.push_back({ply.thickness, ply.across});
  return bed_stiffness(layers, job.caul.bedding);
}

SpreadingSpec slat_bed(const Job& job, const Panel& panel, Moulds moulds) {
  const double cover = cover_stiffness(job, panel);
  SpreadingSpec spec;
  spec.width = panel.blank_width();
  spec.lower = job.caul.stiffness > 0 ? job.caul.stiffness : cover;
  spec.upper = job.caul.stiffness > 0 && slats_above(job, moulds) ? job.caul.stiffness : cover;
  spec.bed = pack_stiffness(job, panel, moulds);
  return spec;
}

double load_width(const Job& job, Moulds moulds) {
  return moulds == Moulds::lower ? job.straps.width : job.formers.thickness;
}

std::vector<Patch> loads(const std::vector<double>& planes, const std::vector<bool>& strapped, Moulds moulds,
                         double width, double force) {
  const double share = moulds == Moulds::lower ? 1
                                               : double(std::count(strapped.begin(), strapped.end(), true)) /
                                                     double(planes.size());
  std::vector<Patch> out;
  for (std::size_t i = 0; i < planes.size(); ++i)
    if (moulds == Moulds::both || strapped[i]) out.push_back({planes[i], width, force * share});
  return out;
}

double greatest_load(const Job& job, const Panel& panel, Moulds moulds) {
  if (moulds == Moulds::both) return 4 * job.straps.tension / chord(panel.pressed);
  const double over = panel.thickness - panel.neutral_height;
  double most = 0;
  for (const Run& run : panel.pressed.runs())
    if (run.curvature > 0) most = std::max(most, 1 / (1 / run.curvature + over));
  return job.straps.tension * most;
}

}  // namespace lamwright
