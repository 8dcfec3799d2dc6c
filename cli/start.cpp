#include "kernel/job/start.hpp"

#include "cli/command.hpp"
#include "cli/options.hpp"
#include "cli/terminal.hpp"
#include "shared/text.hpp"

namespace lamwright::cli {
namespace {

int run(const std::vector<std::string>& arguments) {
  Accepts accepts{po::options_description(), {"shape"}};
  po::variables_map values;
  if (!parse(start_command(), accepts, arguments, values)) return kDone;
  std::vector<std::string> names;
  for (const StartShape& shape : start_shapes()) names.push_back(shape.name);
  const std::string wanted = required(values, "shape", "SHAPE (" + listed(names) + ")");
  for (const StartShape& shape : start_shapes()) {
    if (shape.name != wanted) continue;
    print(start_text(wanted));
    return kDone;
  }
  throw UsageError{"start " + wanted + " is unknown: " + listed(names)};
}

}  // namespace

Command start_command() {
  return {"start", "start SHAPE", "Prints a commented job file to begin from: arch, ell, u, ess or flat.",
          run};
}

}  // namespace lamwright::cli
