# embed_page(FOLDER SOURCE): writes SOURCE, a table of all files in FOLDER with their bytes and, where it is smaller, their
# twin by gzip. The bytes come in by .incbin: quick to build, and only the files that changed are read again.
function(embed_page folder source)
  file(GLOB_RECURSE files RELATIVE "${folder}" CONFIGURE_DEPENDS "${folder}/*")
  list(FILTER files EXCLUDE REGEX "\\.(gz|map)$")
  list(SORT files)
  set(zipped "${CMAKE_CURRENT_BINARY_DIR}/page_gz")
  set(parts "")
  set(rows "")
  set(depends "")
  set(index 0)
  foreach(file IN LISTS files)
    set(twin "${zipped}/${file}.gz")
    get_filename_component(into "${twin}" DIRECTORY)
    add_custom_command(OUTPUT "${twin}"
      COMMAND ${CMAKE_COMMAND} -E make_directory "${into}"
      COMMAND gzip -9 -n -c "${folder}/${file}" > "${twin}"
      DEPENDS "${folder}/${file}" VERBATIM)
    string(APPEND parts "PAGE_FILE(page_${index}, \"${folder}/${file}\")\nPAGE_FILE(page_gz_${index}, \"${twin}\")\n")
    string(APPEND rows "    {\"/${file}\", between(page_${index}, page_${index}_end), smaller(page_${index}, page_${index}_end, page_gz_${index}, page_gz_${index}_end)},\n")
    list(APPEND depends "${folder}/${file}" "${twin}")
    math(EXPR index "${index} + 1")
  endforeach()
  set(page_parts "${parts}")
  set(page_rows "${rows}")
  configure_file("${CMAKE_CURRENT_SOURCE_DIR}/page_files.cc.in" "${source}" @ONLY)
  set_source_files_properties("${source}" PROPERTIES OBJECT_DEPENDS "${depends}")
endfunction()
