// Pieces cut from lengths of timber: one-dimensional cutting stock with saw kerf.
#pragma once
#include <optional>
#include <string>
#include <vector>

namespace lamwright {

// Pieces alike that are wanted.
struct WantedLength {
  std::string name;   // for messages
  double length = 0;  // mm
  int count = 1;      // 0 or more
};

// Stock of one length.
struct StockLength {
  double length = 0;         // mm, usable
  std::optional<int> count;  // not given: as many as are bought
};

// One piece of stock: the wanted lengths cut from it, longest first.
struct CutBar {
  double stock = 0;                 // length of the stock it is cut from, mm
  std::vector<std::size_t> pieces;  // indices of WantedLength
  double rest = 0;                  // what is left after the last cut, never negative
};

// What is cut from what.
struct LengthPlan {
  std::vector<CutBar> bars;  // longest stock first, equal bars together
  std::vector<int> missing;  // of each wanted length, pieces that the stock cannot give
  bool proven = true;  // least total stock; false: the search was cut off, `bound` says how far it may be
  double bought = 0;   // sum of the bars' stock, mm
  double bound = 0;    // no plan for the same pieces needs less than this, mm
};

// The plan with the least total length of stock, then the fewest bars, then the longest single rest. A kerf
// is lost between two pieces and before a rest; a piece exactly as long as what remains needs no cut. Where
// the stock does not suffice, the pieces left out have the least total length, and the plan is that of the
// others. Deterministic; exact for workshop sizes (some dozens of pieces of a few lengths, from a few stock
// lengths), near it for hundreds. Throws Error (geometry) for a length of 0 or less, a negative kerf or
// count.
LengthPlan cut_lengths(const std::vector<WantedLength>& wanted, const std::vector<StockLength>& stock,
                       double kerf);

}  // namespace lamwright
