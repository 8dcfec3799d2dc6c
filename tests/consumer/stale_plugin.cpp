// A library made for an earlier interface than the program's: it refuses to register.
#include "kernel/plugin/registry.hpp"

extern "C" bool lamwright_register(int interface_number, lamwright::Registry*) {
  return interface_number == lamwright::kPluginInterface - 1;
}
