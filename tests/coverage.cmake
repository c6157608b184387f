# coverage.cmake: counts what of the library is come to. Only the library is compiled for it, and it calls its own
# copy of what its headers hold, not that of the tests, which counts nothing.
cmake_language(DEFER CALL target_compile_options hydro PRIVATE -O0 -g --coverage)
cmake_language(DEFER CALL target_link_options hydro PRIVATE --coverage -Wl,-Bsymbolic)
