// Puts the pieces of one mould at their stations.
#pragma once
#include "kernel/press/assembly.hpp"
#include "kernel/press/mould/blocks.hpp"
#include "kernel/press/mould/caul.hpp"
#include "kernel/press/mould/former.hpp"
#include "kernel/press/mould/marks.hpp"
#include "kernel/press/mould/timber.hpp"
#include "kernel/press/stations.hpp"

namespace lamwright {

struct MouldPieces {
  const Job& job;
  const Stations& stations;
  Mould mould;
  LaidCaul caul;
  std::vector<double> screws;  // on the mould's foot
  std::vector<Vec2> clamps;
  TimberSpec beam, bearer;
  BeamTicks ticks;
  MarkedEdge edge;      // in the axes of the press
  Frame place;          // from the mould's own frame to the press, at Z = 0
  FixingBlocks fixing;  // as fixing_of gives them
  bool upper = false;
  std::string half;  // "lower", "upper": which one a note speaks of; empty where there is one mould only
};

// Formers, beams and bearers, spacer and fixing blocks. What had to be left out is told in `notes`.
void add_mould(const MouldPieces& pieces, AssemblyBuilder& assembly, std::vector<std::string>& notes);

// Fixing blocks that lie beside each former; none where the board is thick enough for caul screws.
FixingBlocks fixing_of(const Job& job, const Mould& mould, const LaidCaul& caul);

// The blank as pressed.
Part panel_part(const Panel& panel, const PressCurves& curves);

}  // namespace lamwright
