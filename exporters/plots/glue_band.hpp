// What pressure a glue wants, as a band in a plot whose upright axis is pressure.
#pragma once
#include "exporters/plots/axes.hpp"
#include "kernel/panel/materials.hpp"

namespace lamwright::plots {

// How far up the axis has to go, MPa: to `greatest`, and to the glue's bounds as long as the curves keep a
// fair share of the height.
double shown_pressure(double greatest, const Glue& glue);
// "glue wants 0.2 to 1 MPa", "glue wants 29 to 145 psi"; and that this is more than is shown, where it is.
std::string glue_text(const Glue& glue, double shown, const Reported& reported);

// The tint and the bounds that lie in the field.
void add_glue_band(drawing::Drawing& drawing, const Field& field, const Glue& glue);
// Names of the bounds, where nothing drawn so far is covered.
void add_glue_names(drawing::Drawing& drawing, const Field& field, const Glue& glue,
                    const Reported& reported);

}  // namespace lamwright::plots
