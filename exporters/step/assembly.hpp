// The assembly of a STEP file as text: products that are written once, placed as often as they are used. A
// placement is seven short statements, which need no modelling kernel. No OpenCASCADE.
#pragma once
#include <string>
#include <string_view>

#include "exporters/step/product_model.hpp"

namespace lamwright {

// What follows after `data`, tidied, which holds each of the model's products once: the root and its
// sub-assemblies as products of their own, and every instance under its name, by ISO 10303-44 and -43.
// Occurrence ids count from 1, in the order of the model: sub-assemblies, then what lies at the root. Lengths
// to 1e-9 mm, directions to 1e-12. Nothing for a single part. Throws Error (internal) as written_products
// does.
std::string assembly_data(const ProductModel& model, std::string_view data);

}  // namespace lamwright
