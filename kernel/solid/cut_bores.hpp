// Bores that meet a curved edge or a joint of edges, cut from a finished solid. Internal to kernel/solid.
#pragma once
#include <vector>

#include "kernel/part/part.hpp"

class TopoDS_Shape;
class TopoDS_Solid;

namespace lamwright {

// One Boolean call with every bore's cylinders as a list of tools (tools that overlap inside one compound
// would be cut wrongly or not at all, without an error). Throws Error (internal) when the call fails, when it
// leaves other than one solid, or when a bore's wall did not come out as one face.
TopoDS_Solid with_cut_bores(const TopoDS_Solid& solid, const std::vector<const Bore*>& bores,
                            const std::string& part);

}  // namespace lamwright
