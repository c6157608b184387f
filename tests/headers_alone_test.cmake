# Every header, public or not, compiles as the only line of a file.
file(GLOB_RECURSE headers RELATIVE ${SOURCE} ${SOURCE}/hydro/*.hpp)
foreach(header ${headers})
  set(alone ${CMAKE_CURRENT_BINARY_DIR}/header_alone.cpp)
  file(WRITE ${alone} "#include \"${header}\"\n")
  execute_process(COMMAND ${COMPILER} -std=c++20 -Wall -Wextra -Werror -fsyntax-only -I ${SOURCE} ${alone}
                  RESULT_VARIABLE result ERROR_VARIABLE errors)
  file(REMOVE ${alone})
  if(result)
    message(SEND_ERROR "${header} does not compile alone:\n${errors}")
  endif()
endforeach()
