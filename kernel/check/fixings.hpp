// What is held, dented, set side by side and lifted: end slats, screws, ratchets, masses.
#pragma once
#include <vector>

#include "kernel/check/finding.hpp"
#include "kernel/check/masses.hpp"

namespace lamwright {

std::vector<Finding> fixing_findings(const Job& job, const PressPlan& plan, const Masses& masses);

}  // namespace lamwright
