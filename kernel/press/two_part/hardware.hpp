// What a press of two halves needs that is bought.
#pragma once
#include "kernel/press/two_part/rig.hpp"

namespace lamwright::two_part {

// `plan` has its closures and pins.
std::vector<Hardware> hardware(const Rig& rig, const PressPlan& plan);

}  // namespace lamwright::two_part
