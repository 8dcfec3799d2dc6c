// The two cauls of a press with the pack between, as beams along the width on an elastic bed.
#pragma once
#include "kernel/job/job.hpp"
#include "kernel/mechanics/spreading.hpp"
#include "kernel/panel/panel.hpp"

namespace lamwright {

// One mould that straps are drawn over, or two that close on the pack.
enum class Moulds { lower, both };

// Blank, covers, cauls and sheathing in series, each across the grain, N/mm3. Liners give way by
// `caul.bedding` only.
double pack_stiffness(const Job& job, const Panel& panel, Moulds moulds);

// Beams and bed without formers and loads. Where there are no slats above (below), the cover sheet spans from
// strap to strap (former to former).
SpreadingSpec slat_bed(const Job& job, const Panel& panel, Moulds moulds);

// Width along the press over which one strap's pull meets the upper slats: the strap's own on one mould, the
// upper former's board between two.
double load_width(const Job& job, Moulds moulds);

// What straps at those formers put on the upper slats, each `force` N per mm of girth. Between two moulds all
// formers of the upper half, which blocks tie together, share the pull of all straps.
std::vector<Patch> loads(const std::vector<double>& planes, const std::vector<bool>& strapped, Moulds moulds,
                         double width, double force);

// The greatest load of one strap, N per mm of girth on the blank's outer face: tension times the tightest
// crown's curvature on one mould; 4 tensions over the chord between two.
double greatest_load(const Job& job, const Panel& panel, Moulds moulds);

}  // namespace lamwright
