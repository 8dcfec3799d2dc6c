// The solids in a STEP file. The one place that runs OpenCASCADE's STEP writer.
#pragma once
#include <string>
#include <vector>

#include "exporters/step/part21.hpp"
#include "exporters/step/product_model.hpp"

namespace lamwright {

struct StepOptions {
  StepSchema schema = StepSchema::ap214;
  bool pcurves = false;  // parameter curves double the file and no reader needs them for planes and cylinders
};

// The text between "DATA;" and "ENDSEC;" as the writer makes it, each product on its own; mm. Its strings may
// hold UTF-8: see tidied_data. `file` is named in errors. The writer keeps its settings in static variables
// and crashes when two threads use it, so calls take turns and put the settings back. Nothing is printed, no
// file is written. Throws Error (internal) when the writer does not report full success.
std::string raw_step_data(const std::string& file, const std::vector<Product>& products,
                          const StepOptions& options);

}  // namespace lamwright
