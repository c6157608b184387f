include(CMakeFindDependencyMacro)
find_dependency(Boost 1.74 CONFIG)
include(${CMAKE_CURRENT_LIST_DIR}/hydroTargets.cmake)

# Whoever links the static library links what it needs.
get_target_property(hydro_type hydro::hydro TYPE)
if(hydro_type STREQUAL STATIC_LIBRARY)
  find_dependency(Threads)
  find_dependency(hwy 1.0)
endif()
unset(hydro_type)
