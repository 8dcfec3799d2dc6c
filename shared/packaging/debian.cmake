# Debian packages, made by `cpack -G DEB` in the build folder: `lamwright` and `liblamwright-dev`.
set(CPACK_GENERATOR DEB)
set(CPACK_COMPONENTS_ALL program development)
set(CPACK_DEB_COMPONENT_INSTALL ON)
set(CPACK_PACKAGING_INSTALL_PREFIX /usr)
set(CPACK_STRIP_FILES ON)
set(CPACK_PACKAGE_CONTACT "lamwright maintainers <maintainers@lamwright.invalid>")
set(CPACK_DEBIAN_FILE_NAME DEB-DEFAULT)
set(CPACK_DEBIAN_PACKAGE_CONTROL_STRICT_PERMISSION ON)
set(CPACK_DEBIAN_COMPRESSION_TYPE xz)

set(CPACK_DEBIAN_PROGRAM_PACKAGE_NAME lamwright)
set(CPACK_DEBIAN_PROGRAM_PACKAGE_SECTION science)
set(CPACK_DEBIAN_PROGRAM_PACKAGE_SHLIBDEPS ON)
set(CPACK_DEBIAN_PROGRAM_PACKAGE_SUGGESTS "xdg-utils")
set(CPACK_DEBIAN_PROGRAM_DESCRIPTION "designs presses for curved laminated wood panels
A joiner glues thin sheets of wood into a curved panel and holds the pack in its
curve, over formers and under slatted cauls, until the glue sets. From one short
job file lamwright says whether the shape can be pressed and how, and writes what
the workshop needs.
.
It writes solids (STEP), router geometry with nested sheets (DXF, SVG), drawings
and templates at full size (SVG, PDF), lists (CSV), a job sheet to print and to
turn in 3D (HTML), and every figure for other programs (JSON).")

set(CPACK_DEBIAN_DEVELOPMENT_PACKAGE_NAME liblamwright-dev)
set(CPACK_DEBIAN_DEVELOPMENT_PACKAGE_SECTION libdevel)
set(CPACK_DEBIAN_DEVELOPMENT_PACKAGE_DEPENDS
    "libeigen3-dev, libpolyclipping-dev, libtinyxml2-dev, libtomlplusplus-dev, nlohmann-json3-dev, pkg-config, zlib1g-dev")
# Only who asks for the components pdf and solid needs these.
set(CPACK_DEBIAN_DEVELOPMENT_PACKAGE_SUGGESTS
    "libcairo2-dev, libocct-data-exchange-dev, libocct-foundation-dev, libocct-modeling-algorithms-dev, libocct-modeling-data-dev, libocct-ocaf-dev, libocct-visualization-dev")
set(CPACK_DEBIAN_DEVELOPMENT_DESCRIPTION "presses for curved laminated wood panels, libraries
Static libraries, headers and CMake files of lamwright, for programs that read
its jobs, and for press methods and exporters of one's own, linked in or loaded
by the program.")

include(CPack)
