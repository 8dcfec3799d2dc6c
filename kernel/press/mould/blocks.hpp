// Blocks between and beside the formers.
#pragma once
#include "kernel/job/job.hpp"
#include "kernel/press/mould/mould.hpp"

namespace lamwright {

// A fixing block as it lies against a former, its near face at Z = 0 of the frame.
struct FixingBlock {
  Part part;
  Frame placed;
};
// Section of a spacer block as it lies in the plane of a former.
struct SpacerRow {
  Vec2 low{0, 0};
  Vec2 size{0, 0};
};

// Rows of spacer blocks at most `brace_rows` apart round the curve, clear of bores, edges and fixing blocks.
// Rows for which there is no room are left out and counted in `missing`.
struct SpacerRows {
  std::vector<SpacerRow> rows;
  int missing = 0;
};
SpacerRows spacer_rows(const Job& job, const Mould& mould, const Part& former,
                       const std::vector<FixingBlock>& fixing);

// A block from one former to the next, and where it lies between planes z and z + clear.
struct PlacedBlock {
  Part part;
  Frame placed;
};
PlacedBlock spacer_block(const Job& job, const SpacerRow& row, double clear, double z);

// One for each pilot, shorter where the next is near; pilots too near for two blocks share one. In a tight
// bend a block that would stand in its neighbour is left out and counted in `missing`.
struct FixingBlocks {
  std::vector<FixingBlock> blocks;
  int missing = 0;
};
FixingBlocks fixing_blocks(const Job& job, const Mould& mould, const std::vector<double>& pilots);

// A caul screw's axis must keep 4 diameters from the board's face (EN 1995-1-1 table 8.6, a2,CG).
bool needs_fixing_blocks(const Job& job, const std::vector<double>& pilots);

inline constexpr double kFixingLength = 60, kFixingHeight = 40;

}  // namespace lamwright
