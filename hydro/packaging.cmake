# Debian packages, by  cpack  in a build with BUILD_SHARED_LIBS=ON and CMAKE_INSTALL_PREFIX=/usr:
#
#   libhydro0.1      the shared library, under the name that its SONAME asks for (Debian Policy 8.1)
#   libhydro-dev     headers, hydro.pc and the CMake package
#   hydro-laterals   the program check_line, apart, so that two versions of the library may lie side by side (8.2)
#
# Whoever builds them for others gives his name:  cpack -D "CPACK_PACKAGE_CONTACT=NAME <ADDRESS>"
set(CPACK_GENERATOR DEB)
set(CPACK_PACKAGE_NAME hydro-laterals)
set(CPACK_PACKAGE_CONTACT "The hydro authors <hydro@example.org>")
set(CPACK_COMPONENTS_ALL runtime development)
if(TARGET check_line)
  list(APPEND CPACK_COMPONENTS_ALL program)
endif()
set(CPACK_STRIP_FILES ON)
set(CPACK_INSTALL_DEFAULT_DIRECTORY_PERMISSIONS # whatever the umask
    OWNER_READ OWNER_WRITE OWNER_EXECUTE GROUP_READ GROUP_EXECUTE WORLD_READ WORLD_EXECUTE)

set(CPACK_DEB_COMPONENT_INSTALL ON)
set(CPACK_DEBIAN_FILE_NAME DEB-DEFAULT)
set(CPACK_DEBIAN_ENABLE_COMPONENT_DEPENDS ON) # on exactly this version
set(CPACK_DEBIAN_PACKAGE_GENERATE_SHLIBS ON)
set(CPACK_DEBIAN_PACKAGE_GENERATE_SHLIBS_POLICY ">=")
set(CPACK_DEBIAN_PACKAGE_SHLIBDEPS_PRIVATE_DIRS ${CMAKE_BINARY_DIR}/hydro)

get_target_property(soversion hydro SOVERSION)
set(CPACK_DEBIAN_RUNTIME_PACKAGE_NAME libhydro${soversion})
set(CPACK_DEBIAN_RUNTIME_PACKAGE_SECTION libs)
set(CPACK_DEBIAN_RUNTIME_PACKAGE_SHLIBDEPS ON)
set(CPACK_COMPONENT_RUNTIME_DESCRIPTION "The shared library.")

set(CPACK_DEBIAN_DEVELOPMENT_PACKAGE_NAME libhydro-dev)
set(CPACK_DEBIAN_DEVELOPMENT_PACKAGE_SECTION libdevel)
set(CPACK_DEBIAN_DEVELOPMENT_PACKAGE_DEPENDS "libboost-dev (>= 1.74)")
set(CPACK_COMPONENT_DEVELOPMENT_DEPENDS runtime)
set(CPACK_COMPONENT_DEVELOPMENT_DESCRIPTION "Headers, for C++20; for CMake and for pkg-config.")

set(CPACK_DEBIAN_PROGRAM_PACKAGE_NAME hydro-laterals)
set(CPACK_DEBIAN_PROGRAM_PACKAGE_SECTION science)
set(CPACK_DEBIAN_PROGRAM_PACKAGE_SHLIBDEPS ON)
set(CPACK_COMPONENT_PROGRAM_DEPENDS runtime)
set(CPACK_COMPONENT_PROGRAM_DESCRIPTION "check_line: reads a description of the lines, tells which outlets fall short.")

foreach(component RUNTIME DEVELOPMENT PROGRAM)
  string(TOLOWER ${component} name)
  install(
    FILES ${PROJECT_SOURCE_DIR}/LICENSE
    DESTINATION ${CMAKE_INSTALL_DATAROOTDIR}/doc/${CPACK_DEBIAN_${component}_PACKAGE_NAME}
    RENAME copyright
    COMPONENT ${name})
endforeach()
include(CPack)
