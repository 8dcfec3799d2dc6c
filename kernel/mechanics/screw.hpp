// Screws drawn out of wood and boards, and wood split by what pulls across its grain. N, mm, MPa.
#pragma once

namespace lamwright {

// Ultimate withdrawal of a wood screw from side grain: 108.25 G^2 D L, Wood Handbook FPL-GTR-282 eq. 8-10a; G
// specific gravity at 12 % moisture, D shank diameter, L threaded length in the wood. From end grain about
// three quarters of it (same page).
double withdrawal_wood(double gravity, double diameter, double length);
inline constexpr double kEndGrain = 0.75;  // share of the side grain's

// Ultimate withdrawal from boards: K D^(1/2) (L - D/3)^(5/4) G^2, Wood Handbook FPL-GTR-282 eq. 8-12. Throws
// Error (internal) when no length is left behind the tip, L <= D / 3.
double withdrawal_board(double gravity, double diameter, double length, double factor);
// `factor` of particleboard, screwed into its face and into its edge.
inline constexpr double kParticleboardFace = 41.1, kParticleboardEdge = 31.8;
// The same of fibreboard.
inline constexpr double kFibreboardFace = 57.3, kFibreboardEdge = 44.3;

// Characteristic withdrawal of one screw square to the grain, EN 1995-1-1 8.7.2 (8.38)-(8.40a) with k_d =
// min(d / 8, 1). Domain of the standard: 6 <= d <= 12, length >= 6 d; not checked. `density` is
// characteristic, kg/m3.
double withdrawal_en1995(double diameter, double length, double density);

// Characteristic strength of a beam drawn across its grain at a bore: 14 b w sqrt(h_e / (1 - h_e / h)), w = 1
// for pins and screws, EN 1995-1-1 8.1.4, a formula for softwood (from memory). b width, h depth, h_e
// distance of the bore from the edge towards which it is drawn. Throws Error (internal) unless 0 < h_e < h.
double splitting_en1995(double width, double depth, double edge);

// Characteristic embedment strength, MPa, under a pin or screw in a bore: of timber along its grain 0.082 (1
// - 0.01 d) rho_k, EN 1995-1-1 (8.32) (from memory); of plywood 0.11 (1 - 0.01 d) rho_k (8.36); of
// particleboard and OSB of thickness t 50 d^-0.6 t^0.2 (8.37). d up to 30, not checked.
double embedment_timber(double diameter, double density);
double embedment_plywood(double diameter, double density);  // density characteristic, kg/m3
double embedment_board(double diameter, double thickness);  // thickness above 0

}  // namespace lamwright
