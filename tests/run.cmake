# run(COMMAND ...): runs it, fails if it fails, leaves what it printed in output.
function(run)
  execute_process(COMMAND ${ARGV} RESULT_VARIABLE result OUTPUT_VARIABLE output ERROR_VARIABLE output)
  if(result)
    message(FATAL_ERROR "${ARGV} failed:\n${output}")
  endif()
  set(output "${output}" PARENT_SCOPE)
endfunction()
