# coverage.cmake: counts what of the library is come to. Only the library is compiled for it, and it calls its own
# copy of what its headers hold, not that of the tests, which counts nothing. Threads count together: without atomic
# counters some come out below 0, and gcovr gives up.
cmake_language(DEFER CALL target_compile_options hydro PRIVATE -O0 -g --coverage -fprofile-update=atomic)
cmake_language(DEFER CALL target_link_options hydro PRIVATE --coverage -Wl,-Bsymbolic)
