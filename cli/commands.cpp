#include "cli/command.hpp"

namespace lamwright::cli {

std::vector<Command> commands() {
  return {build_command(), check_command(), measure_command(),      fit_command(),
          list_command(),  start_command(), notebook_add_command(), notebook_show_command()};
}

}  // namespace lamwright::cli
