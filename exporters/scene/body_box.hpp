// How much room pieces take up in the press.
#pragma once
#include "kernel/press/plan.hpp"

namespace lamwright::scene {

Part::Box box_of(const PressPlan& plan, const Body& body);  // press frame
Part::Box box_of_bodies(const PressPlan& plan);             // of a plan with bodies

}  // namespace lamwright::scene
