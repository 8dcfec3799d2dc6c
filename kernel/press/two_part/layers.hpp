// The layers between two moulds, from the lower formers up.
#pragma once
#include "kernel/press/mould/caul.hpp"
#include "kernel/press/two_part/halves.hpp"

namespace lamwright::two_part {

std::vector<Layer> layers(const Job& job, const Panel& panel, const Halves& halves, const LaidCaul& bed);

}  // namespace lamwright::two_part
