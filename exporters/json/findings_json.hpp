// Findings as JSON.
#pragma once
#include "exporters/json/numbers.hpp"
#include "kernel/check/finding.hpp"

namespace lamwright {

Json json_findings(const std::vector<Finding>& findings);

}  // namespace lamwright
