#include "kernel/check/masses.hpp"

namespace lamwright {
namespace {

constexpr double kPerCubicMm = 1e-9;  // m3

bool of_board(PartKind kind) {
  return kind == PartKind::former_lower || kind == PartKind::former_upper || kind == PartKind::fixing_block;
}

// kg/m2 over the whole pack of what lies above or below it: caul, sheathing, cover.
double beside_pack(const Job& job, const Panel& panel, bool caul) {
  const double platen = caul ? job.caul.density * job.caul.thickness : 0;
  return (platen + job.layup.cover_board.density * panel.cover) / 1000;
}

}  // namespace

double density_of(const Job& job, const Part& part) {
  return of_board(part.kind()) ? job.formers.board_row.density : job.beams.timber.density;
}

Masses masses(const Job& job, const PressPlan& plan) {
  const Panel& panel = plan.panel;
  const double area = panel.pressed.girth() * panel.blank_width() * 1e-6;
  Masses out;
  for (const Body& body : plan.bodies) {
    const Part& part = plan.parts[body.part];
    if (body.group != Group::lower && body.group != Group::upper) continue;
    if (part.kind() == PartKind::slat) continue;  // counted with the cauls
    const double mass = part.volume() * kPerCubicMm * density_of(job, part);
    (body.group == Group::lower ? out.lower : out.upper) += mass;
    if (mass <= out.heaviest) continue;
    out.heaviest = mass;
    out.heaviest_part = part.name();
  }
  const bool two = plan.load != Load::belt;
  const double above = beside_pack(job, panel, two || job.caul.kind == CaulSpec::Kind::slatted) * area;
  if (two) out.upper += above;
  out.cauls = above + beside_pack(job, panel, true) * area;
  const double lines = double(panel.plies.size() - 1);
  out.panel = area * (panel.mass_per_area + lines * job.layup.glue_row.spread / 1000);
  out.press = out.lower + out.upper + out.panel + out.cauls - (two ? above : 0);
  return out;
}

}  // namespace lamwright
