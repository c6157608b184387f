# Runs PROGRAM FILE, or PROGRAM alone, with OPTIONS, and compares what it prints with EXPECTED, byte for byte; WRITES is a file that it
# must write. To write the expected output anew after a wanted change:  PROGRAM FILE > EXPECTED, and read the difference.
if(WRITES)
  file(REMOVE ${WRITES})
endif()
execute_process(COMMAND ${PROGRAM} ${FILE} ${OPTIONS} OUTPUT_VARIABLE output ERROR_VARIABLE errors)
file(READ ${EXPECTED} expected)
string(REGEX REPLACE "Solved in [^.]*\\." "Solved." output "${output}") # residuals differ between compilers
string(REGEX REPLACE "Solved in [^.]*\\." "Solved." expected "${expected}")
if(NOT output STREQUAL expected)
  get_filename_component(name ${EXPECTED} NAME)
  file(WRITE ${CMAKE_CURRENT_BINARY_DIR}/printed_${name} "${output}${errors}")
  execute_process(COMMAND diff -u ${EXPECTED} ${CMAKE_CURRENT_BINARY_DIR}/printed_${name})
  message(FATAL_ERROR "${PROGRAM} ${FILE} printed something else")
endif()
if(WRITES AND NOT EXISTS ${CMAKE_CURRENT_BINARY_DIR}/${WRITES})
  message(FATAL_ERROR "${PROGRAM} ${FILE} did not write ${WRITES}")
endif()
