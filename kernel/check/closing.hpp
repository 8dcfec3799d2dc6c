// Whether the pack lies down everywhere.
#pragma once
#include <vector>

#include "kernel/check/finding.hpp"
#include "kernel/check/pressure.hpp"

namespace lamwright {

// Straps over the pack: hollows that they bridge, strips at the ends that stay open.
std::vector<Finding> closing_findings(const Job& job, const PressPlan& plan);

}  // namespace lamwright
