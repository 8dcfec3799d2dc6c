// Classical lamination theory: a plate of bonded layers, each orthotropic.
// Source: Jones, Mechanics of Composite Materials, 2nd ed. section 4.2; Kaw, 2nd ed. ch. 4 (from memory).
#pragma once
#include <Eigen/Core>
#include <vector>

namespace lamwright {

// MPa; `poisson` is nu_LT, the strain across from a stress along the fibres.
struct Orthotropic {
  double along = 0, across = 0, shear = 0, poisson = 0;  // E_L, E_T, G_LT and nu_LT
};

// `angle` in radians from the girth direction to the fibres; heights in mm, from < to.
struct PlateLayer {
  Orthotropic material;     // moduli above 0
  double angle = 0;         // any
  double from = 0, to = 0;  // of its two faces
};

// x round the curve, y along the width. A in N/mm, B in N, D in N mm, each per mm of width.
struct Laminate {
  Eigen::Matrix3d A, B, D;  // forces and moments from strains and curvatures
};

// About the height `about`. Throws Error (internal) for no layers, layers without thickness, moduli that are
// not positive, or Poisson's ratios that no material has (nu12 nu21 >= 1). Gaps between layers carry nothing.
Laminate laminate(const std::vector<PlateLayer>& layers, double about);

// Bending stiffness per mm of width when everything else is free to follow, 1 / d11 and 1 / d22 of the
// inverse of the 6 x 6 matrix, N mm.
struct Axes {
  double girth = 0, width = 0;  // bent round the curve; bent along the width
};
Axes free_bending(const Laminate& laminate);  // of one made by laminate()

// Modulus at an angle to the fibres: Hankinson-type rule with n = 2, Wood Handbook FPL-GTR-282, eq. 5-2.
double modulus_at_angle(double along, double across, double angle);

}  // namespace lamwright
