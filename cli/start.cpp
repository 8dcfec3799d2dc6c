#include "kernel/job/start.hpp"

#include <algorithm>

#include "cli/command.hpp"
#include "cli/options.hpp"
#include "cli/terminal.hpp"
#include "shared/text.hpp"

namespace lamwright::cli {
namespace {

std::vector<std::string> shape_names() {
  std::vector<std::string> names;
  for (const StartShape& shape : start_shapes()) names.push_back(shape.name);
  return names;
}

int run(const po::variables_map& values) {
  const std::vector<std::string> names = shape_names();
  const std::string wanted = required(values, "shape", "SHAPE (" + listed(names) + ")");
  if (std::find(names.begin(), names.end(), wanted) == names.end())
    throw UsageError{"start " + wanted + " is unknown: " + listed(names)};
  print(start_text(wanted));
  return kDone;
}

}  // namespace

Command start_command() {
  return {"start",
          "Prints a commented job file to begin from: arch, ell, u, ess or flat.",
          {{"shape", "SHAPE", Completes::words, shape_names}},
          {},
          run};
}

}  // namespace lamwright::cli
