// Plain sentences about how a press of two halves came out.
#pragma once
#include "kernel/press/two_part/rig.hpp"

namespace lamwright::two_part {

std::vector<std::string> notes(const Rig& rig);

}  // namespace lamwright::two_part
