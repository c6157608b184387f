# Runs PROGRAM FILE and compares what it prints with EXPECTED, byte for byte. To write the expected output anew
# after a wanted change:  check_line FILE > EXPECTED, and read the difference.
execute_process(COMMAND ${PROGRAM} ${FILE} OUTPUT_VARIABLE output ERROR_VARIABLE errors)
file(READ ${EXPECTED} expected)
string(REGEX REPLACE "Solved in [^.]*\\." "Solved." output "${output}") # residuals differ between compilers
string(REGEX REPLACE "Solved in [^.]*\\." "Solved." expected "${expected}")
if(NOT output STREQUAL expected)
  file(WRITE ${CMAKE_CURRENT_BINARY_DIR}/printed.txt "${output}${errors}")
  execute_process(COMMAND diff -u ${EXPECTED} ${CMAKE_CURRENT_BINARY_DIR}/printed.txt)
  message(FATAL_ERROR "${PROGRAM} ${FILE} printed something else")
endif()
