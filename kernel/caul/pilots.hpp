// Where caul screws go into a former: pilots at stations of the contact edge.
#pragma once
#include <functional>
#include <vector>

#include "kernel/caul/slats.hpp"

namespace lamwright {

struct PilotSpec {
  double pack_from = 0, pack_to = 0;  // stations of the contact edge between which the pack lies
  double datum = 0;
  std::vector<double> changes;  // where the shape changes
  std::vector<Slat> slats;      // of the bed caul; empty: a continuous caul
  double least_apart = 8;       // stations nearer than this would leave less than 5 of wood between pilots
  // Whether the wood under a station holds a pilot; not given: everywhere. Near a steep end it may not.
  std::function<bool(double)> holds = {};
};

// Under the datum slat, under the slat middle nearest to every change of shape, and under the last slats that
// are wide enough for a screw. A continuous caul: at the datum, at the changes, and 15 inside each end of the
// pack. Where the wood holds no pilot it goes to the next slat that does, a continuous caul's end pilot
// further in by steps of 5. Sorted; coincident pilots are one, and of two nearer than least_apart the later
// is left out.
std::vector<double> pilot_stations(const PilotSpec& spec);

}  // namespace lamwright
