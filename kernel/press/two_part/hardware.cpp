#include "kernel/press/two_part/hardware.hpp"

#include <algorithm>
#include <cmath>

#include "shared/number.hpp"

namespace lamwright::two_part {

std::vector<Hardware> hardware(const Rig& rig, const PressPlan& plan) {
  const Job& job = rig.job;
  const int formers = int(rig.stations.mid_planes.size()), stations = int(plan.closures.size());
  const int borne = int(std::count(rig.stations.borne.begin(), rig.stations.borne.end(), true));
  std::vector<Hardware> out;
  const auto add = [&](const std::string& name, const std::string& use, int count) {
    if (count > 0) out.push_back({name, use, count});
  };
  const Loop& loop = rig.loops.loop;
  add(job.straps.kind,
      std::string(loop.pinned ? "strap from pin to pin" : "strap loop round both beams") + ", " +
          number(std::ceil(loop.open_length), 0) + " round with the press open, ratchet and tail besides",
      2 * stations);
  add("ratchet for " + job.straps.kind, "tightening, one to a loop", 2 * stations);
  if (loop.pinned)
    add("strap fitting that straddles a beam " + number(job.beams.width) + " wide, with a pin of " +
            number(job.straps.hole),
        "hooking straps to beams; the strap swivels on the pin", 4 * stations);
  const int screwed = job.formers.groove_depth ? stations : borne;
  add("screw " + number(job.beams.screw_diameter) + " x " + number(job.beams.screw_length),
      "beams to formers", 2 * screwed * int(rig.screws.size()));
  add(caul_screw(job.caul), "cauls to formers", formers * int(rig.bed.pilots.size() + rig.top.pilots.size()));
  add("steel pin of " + number(kPin), "locating pins", int(plan.pins.size()));
  const int stops = rig.halves.tilt != 0 && !loop.pinned ? 4 * stations : 0;
  add("stop " + number(kStopLength) + " x " + number(kStopHeight),
      "keeps a loop from sliding on its leaning beam", stops);
  add("screw " + number(kStopScrew) + " x " + number(kStopScrewLength), "stops to beams",
      stops * int(stop_screws(job.beams).size()));
  return out;
}

}  // namespace lamwright::two_part
