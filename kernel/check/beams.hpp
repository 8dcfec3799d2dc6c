// Findings about beams.
#pragma once
#include <optional>
#include <string>
#include <vector>

#include "kernel/check/finding.hpp"
#include "kernel/job/job.hpp"
#include "kernel/press/plan.hpp"

namespace lamwright {

// Crown and bending of a crowned flat press; the screws into the formers' feet; what straps push along a
// leaning beam. Each only where the press has it.
std::vector<Finding> beam_findings(const Job& job, const PressPlan& plan);

int foot_screws(const Part& beam);

// The least depth of such beams above their own, to 10 and at most 600, at which they stand `moment` (N mm),
// which they share by stiffness with what bends beside them: `stiffness` is that of both, N mm2.
std::optional<double> deep_enough(const BeamSpec& beams, double moment, double stiffness);

// "EN 338:2016 f_m,k of D40, EN 1995-1-1 ..."
std::string strength_basis(const BeamSpec& beams, const std::string& strength);

// Above the limit by more than this a part gives way before anyone sees it coming: about from the design
// strength to the characteristic one, 1.3 / 0.9. Common practice, no source.
inline constexpr double kSudden = 1.5;

// Of a load beyond its limit.
inline Verdict overloaded(double value, double limit) {
  return value > kSudden * limit ? Verdict::fail : Verdict::caution;
}

}  // namespace lamwright
