// The caul schedule: which pieces of the slats in stock each run of a caul is made of, and where their joints
// lie.
#pragma once
#include <optional>
#include <string>
#include <vector>

#include "kernel/caul/slats.hpp"

namespace lamwright {

// Slats of one length and width in stock, all of the caul's thickness; mm, above 0, the count 0 or more.
struct SlatStock {
  double length = 0;         // mm
  double width = 0;          // mm
  std::optional<int> count;  // not given: as many as are needed
};

// One run of slats from edge to edge of the caul.
struct SlatRun {
  Slat slat;  // stations round the curve
  double width =
      0;  // of the stock slat that it is made of; slat.width() is less where the last one is cut flush
  bool through = false;  // in one length: the edge pairs
  bool fixing = false;   // bored for screws at the formers
};

// The runs of a caul and the slats in stock. Lengths in mm.
struct ScheduleSpec {
  double length = 0;             // of every run: the caul's measure along the width; above 0
  std::vector<SlatRun> runs;     // left to right
  std::vector<SlatStock> stock;  // slats of the same length and width may stand in several entries
  std::vector<double> formers;   // width stations of the formers' mid-planes, from the caul's near end
  double board = 0;   // thickness of a former: for those who draw its joints, no rule here asks for it
  double bridge = 0;  // least distance between joints of neighbouring runs; joints keep it from the ends too,
                      // and no piece of a run with joints is shorter; above 0
};

// A piece of a run between two width stations; `stock` indexes ScheduleSpec::stock.
struct SlatPiece {
  double from = 0, to = 0;                     // from the caul's near end
  std::size_t stock = 0;                       // index of what it is made of
  bool cut = false;                            // across: shorter than the slat it is made of
  bool ripped = false;                         // lengthwise: narrower than it, the last run, cut flush
  double length() const { return to - from; }  // mm
};

// What a run is made of.
struct ScheduledRun {
  SlatRun run;                    // as it was asked for
  std::vector<SlatPiece> pieces;  // near to far; empty where the stock has none for it
};

// A way to lay the caul, with what it takes from the stock.
struct CaulSchedule {
  std::vector<ScheduledRun> runs;  // in the order of ScheduleSpec::runs
  std::vector<int> used;           // of each stock, slats taken
  int cuts = 0;                    // saw cuts across
  bool proven = true;  // nothing better by the order below, down to the cuts; false: best found, work ran out
  std::vector<std::string> missing;  // plain sentences; empty when the stock does it
  // Girth in mm that the stock covers with runs of this length, edge to edge and with the gaps of open
  // lagging. Counted are rows, neighbours and edge pairs set aside: the most that are found to be filled at
  // once (up to 400 of a width) with handfuls of slats, each of which makes a run in one length or in two
  // ways that stagger. n rows of width w cover n w, or n (w + gap) - gap; widths add up. Only widths that the
  // runs ask for count. Infinite when uncounted slats fill rows.
  double covers_close = 0;
  double covers_open = 0;  // the same with open lagging
};

// The least by this order: runs that cannot be made; through and fixing runs among them; fixing runs with
// joints; pieces; saw cuts across; waste, the length of the slats taken less that of the runs. A slat gives
// one piece, its offcut goes back to the rack. Joints of neighbouring runs lie at least `bridge` apart. A
// through run is in one length. A fixing run is, or has its joints on formers' mid-planes. Other joints lie
// where a whole slat ends, laid from either end or from another joint, or one or two bridges beside such a
// station or a former's mid-plane; "least" ranges over these, on the whole mm where it costs nothing. A run
// that cannot be made counts as one without joints for its neighbours. Exact where `proven` says so; work is
// bounded, not time, so that an answer never depends on the machine. `gap`, 0 or more, is that of open
// lagging.
CaulSchedule schedule_caul(const ScheduleSpec& spec, double gap);

}  // namespace lamwright
