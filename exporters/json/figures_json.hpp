// Figures of the checks as JSON: pressure, glue, lay-up, masses.
#pragma once
#include "exporters/json/numbers.hpp"
#include "kernel/check/figures.hpp"

namespace lamwright {

// MPa; nulls where nothing is known to press.
Json pressure_json(const Job& job, const std::optional<PressureMap>& map);
Json glue_json(const Job& job, const Panel& panel, const std::optional<GlueWork>& work);
Json masses_json(const std::optional<Masses>& masses);
// A in N/mm, B in N, D in N mm about mid-thickness, x round the curve and y along the width; stiffnesses
// per mm of width.
Json layup_json(const Panel& panel);

}  // namespace lamwright
