#include "kernel/press/mould/assemble.hpp"

#include <algorithm>

#include "shared/number.hpp"
#include "shared/tolerance.hpp"

namespace lamwright {
namespace {

Group group_of(const MouldPieces& in) { return in.upper ? Group::upper : Group::lower; }

bool is_grooved(const MouldPieces& in, bool strapped) {
  return !strapped && in.job.formers.groove_depth.has_value();
}

Part former_of(const MouldPieces& in, bool grooved) {
  const PartKind kind = in.upper ? PartKind::former_upper : PartKind::former_lower;
  const Part bare =
      former_part({in.job, in.mould, in.caul.pilots, in.screws, in.clamps, grooved, kind}, in.place);
  return bare.marked(former_marks(in.job, in.edge, bare, in.stations.mid_planes.size()));
}

Part support_of(const MouldPieces& in, bool strapped) {
  const Part plain = strapped ? beam_part(in.job, in.beam) : bearer_part(in.job, in.bearer);
  // The sheet of a grooved bearer is its end; there is no side to mark.
  if (is_grooved(in, strapped)) return plain;
  return plain.marked(beam_marks(in.job, in.ticks, plain, in.stations.mid_planes.size()));
}

// An upper beam is the lower one turned over: its far side comes near.
Frame under_foot(const MouldPieces& in, double z) {
  const double depth = in.job.beams.depth, half = in.job.beams.width / 2;
  const Frame own = in.upper ? Frame{{0, -depth, z + half}, {-1, 0, 0}, {0, 1, 0}}
                             : Frame{{0, -depth, z - half}, {1, 0, 0}, {0, 1, 0}};
  return composed(in.place, own);
}

std::string between(const MouldPieces& in) {
  return in.half.empty() ? "" : " between the " + in.half + " formers";
}
std::string beside(const MouldPieces& in) {
  return in.half.empty() ? "" : " beside the " + in.half + " formers";
}

void note_once(std::vector<std::string>& notes, const std::string& note) {
  if (std::find(notes.begin(), notes.end(), note) == notes.end()) notes.push_back(note);
}

// Formers alike share a part: those on strapped beams, those let into bearers, those between.
void add_formers(const MouldPieces& in, AssemblyBuilder& assembly) {
  const Stations& where = in.stations;
  for (const bool strapped : {true, false})
    for (const bool borne : {true, false}) {
      std::vector<double> planes;
      for (std::size_t i = 0; i < where.mid_planes.size(); ++i)
        if (where.strapped[i] == strapped && where.borne[i] == borne) planes.push_back(where.mid_planes[i]);
      if (planes.empty()) continue;
      const Part former = former_of(in, borne && is_grooved(in, strapped));
      for (const double z : planes)
        assembly.add(former, {{0, 0, z - in.job.formers.thickness / 2}}, group_of(in));
      if (!borne) continue;
      const Part support = support_of(in, strapped);
      for (const double z : planes) assembly.add(support, under_foot(in, z), group_of(in));
    }
}

void add_spacers(const MouldPieces& in, AssemblyBuilder& assembly, std::vector<std::string>& notes) {
  if (in.stations.spacing.clear < 1) return;  // boards stand face to face
  const Part former = former_part({in.job, in.mould, in.caul.pilots, in.screws, in.clamps});
  const SpacerRows rows = spacer_rows(in.job, in.mould, former, in.fixing.blocks);
  if (rows.missing > 0)
    notes.push_back(counted(rows.missing, "row") + " of spacer blocks" + between(in) +
                    " left out: no room for a section " + number(in.job.formers.block_width) + " x " +
                    number(in.job.formers.block_depth) + " beside the contact edge.");
  for (std::size_t i = 0; i + 1 < in.stations.mid_planes.size(); ++i)
    for (const SpacerRow& row : rows.rows) {
      const PlacedBlock block = spacer_block(in.job, row, in.stations.spacing.clear,
                                             in.stations.mid_planes[i] + in.job.formers.thickness / 2);
      assembly.add(block.part, composed(in.place, block.placed), group_of(in));
    }
}

void add_fixing_blocks(const MouldPieces& in, AssemblyBuilder& assembly, std::vector<std::string>& notes) {
  const FixingBlocks& fixing = in.fixing;
  if (fixing.blocks.empty()) return;
  if (fixing.missing > 0)
    notes.push_back("No room for " + counted(fixing.missing, "fixing block") + beside(in) +
                    " in a tight bend: predrill those caul screws with care.");
  const double t = in.job.formers.thickness, clear = in.stations.spacing.clear;
  const std::size_t count = in.stations.mid_planes.size();
  const bool both = clear >= 2 * t - kAtLeast, one = clear >= t - kAtLeast;
  if (!both)
    note_once(notes, "Formers stand " + number(clear, 1) + " apart: " +
                         (one ? "fixing blocks go on one side of each former only."
                              : "no room for fixing blocks between them; predrill caul screws with care."));

  for (std::size_t i = 0; i < count; ++i)
    for (const int side : {-1, 1}) {
      const bool outside = (side < 0 && i == 0) || (side > 0 && i + 1 == count);
      if (!outside && !both && !(one && side > 0)) continue;
      const double z = in.stations.mid_planes[i] + (side < 0 ? -1.5 * t : 0.5 * t);
      for (const FixingBlock& block : fixing.blocks) {
        Frame placed = composed(in.place, block.placed);
        placed.origin.z() = z;
        assembly.add(block.part, placed, group_of(in));
      }
    }
}

}  // namespace

FixingBlocks fixing_of(const Job& job, const Mould& mould, const LaidCaul& caul) {
  if (!needs_fixing_blocks(job, caul.pilots)) return {};
  return fixing_blocks(job, mould, caul.pilots);
}

void add_mould(const MouldPieces& in, AssemblyBuilder& assembly, std::vector<std::string>& notes) {
  add_formers(in, assembly);
  add_spacers(in, assembly, notes);
  add_fixing_blocks(in, assembly, notes);
}

Part panel_part(const Panel& panel, const PressCurves& curves) {
  std::vector<Segment> loop = segments(curves.inner);
  std::vector<Segment> outer = segments(curves.outer);
  const Vec2 right_inner = loop.back().to, left_inner = loop.front().from;
  loop.push_back(line(right_inner, outer.back().to));
  for (auto s = outer.rbegin(); s != outer.rend(); ++s) loop.push_back(s->reversed());
  loop.push_back(line(outer.front().from, left_inner));
  return make_part({to_text(PartKind::panel),
                    PartKind::panel,
                    counted(long(panel.plies.size()), "sheet"),
                    Outline(std::move(loop), "panel"),
                    panel.blank_width(),
                    {},
                    {},
                    {},
                    false});
}

}  // namespace lamwright
