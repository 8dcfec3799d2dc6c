// Which exporters a build asks for.
#pragma once
#include <algorithm>
#include <string>

#include "kernel/job/job.hpp"

namespace lamwright {

// Without a list everything is written.
inline bool wanted(const OutputSpec& outputs, const std::string& exporter) {
  const auto& only = outputs.only;
  return only.empty() || std::find(only.begin(), only.end(), exporter) != only.end();
}

}  // namespace lamwright
