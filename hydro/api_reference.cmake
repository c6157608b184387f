# The target hydro_docs: the API reference of the installed headers and a page for each question a user asks (pages/), in
# hydro_docs/html of the build, where Doxygen is.
find_package(Doxygen QUIET)
if(NOT DOXYGEN_FOUND)
  message(STATUS "No API reference: it needs the package doxygen")
  return()
endif()

set(DOXYGEN_INPUT_FILTER "sed -f hydro/api_reference.sed")
set(DOXYGEN_USE_MDFILE_AS_MAINPAGE README.md)
set(DOXYGEN_OUTPUT_DIRECTORY ${CMAKE_BINARY_DIR}/hydro_docs)
set(DOXYGEN_STRIP_FROM_PATH ${PROJECT_SOURCE_DIR})
set(DOXYGEN_STRIP_FROM_INC_PATH ${PROJECT_SOURCE_DIR})
set(DOXYGEN_JAVADOC_AUTOBRIEF YES) # the first sentence of a comment is its brief description
set(DOXYGEN_SORT_MEMBER_DOCS NO)
set(DOXYGEN_MACRO_EXPANSION YES) # the literals of units.hpp
set(DOXYGEN_HAVE_DOT NO)
set(DOXYGEN_QUIET YES)
set(DOXYGEN_EXAMPLE_PATH ${PROJECT_SOURCE_DIR}/examples) # which the pages show, with what they print

# What is warned of is for tests/api_reference_test.cmake to judge. Names that say it all need no comment: undocumented
# members are shown, and a function describes only those of its parameters that need it.
set(DOXYGEN_HIDE_UNDOC_MEMBERS NO)
set(DOXYGEN_WARN_IF_INCOMPLETE_DOC NO)
set(DOXYGEN_WARN_LOGFILE ${DOXYGEN_OUTPUT_DIRECTORY}/warnings.txt)
file(MAKE_DIRECTORY ${DOXYGEN_OUTPUT_DIRECTORY})

get_target_property(headers hydro HEADER_SET)
get_target_property(made_headers hydro HEADER_SET_made_headers)
file(GLOB pages CONFIGURE_DEPENDS ${PROJECT_SOURCE_DIR}/hydro/pages/*.md)
doxygen_add_docs(hydro_docs ${headers} ${made_headers} README.md DEVELOPERS.md ${pages} WORKING_DIRECTORY
                 ${PROJECT_SOURCE_DIR})
