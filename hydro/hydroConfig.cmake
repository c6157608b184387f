include(CMakeFindDependencyMacro)
find_dependency(Boost 1.74 CONFIG)
include(${CMAKE_CURRENT_LIST_DIR}/hydroTargets.cmake)
