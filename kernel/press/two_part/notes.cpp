#include "kernel/press/two_part/notes.hpp"

#include "shared/number.hpp"
#include "shared/units.hpp"

namespace lamwright::two_part {

std::vector<std::string> notes(const Rig& rig) {
  std::vector<std::string> out;
  if (!rig.stations.spacing.note.empty()) out.push_back(rig.stations.spacing.note);
  for (const std::string& land : rig.halves.lands) out.push_back(land);
  if (rig.halves.tilt != 0)
    out.push_back("Beams lean by " + number(degrees(rig.halves.tilt), 1) +
                  " degrees; straps stay along the pull" +
                  (rig.loops.loop.pinned ? " and swivel on their pins." : ", held by a stop at each beam."));
  if (rig.job.press.guide_rollers)
    out.push_back("press.guide_rollers has no meaning here: the straps run straight from beam to beam.");
  out.push_back("Hold the upper half by chocks or hoist before the last strap comes off.");
  return out;
}

}  // namespace lamwright::two_part
