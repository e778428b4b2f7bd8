#!/bin/sh
# Usage: embed_data.sh TOP data/PATH...
# Prints a C source that holds the files TOP/data/PATH byte for byte, named PATH, in the order of their paths.
set -eu
export LC_ALL=C

top=$1
shift
paths=$(for path; do echo "$path"; done | sort)

echo '/* Written at build time from the files of data/. */'
echo '#include "project/data_embedded.h"'

number=0
for path in $paths; do
    printf '\nstatic const unsigned char document_%d[] = {\n' "$number"
    # Read first: a failure inside a pipe would go unseen.
    bytes=$(od -An -v -tx1 "$top/$path")
    printf '%s\n' "$bytes" | sed 's/ *\([0-9a-f][0-9a-f]\)/0x\1,/g'
    echo '};'
    number=$((number + 1))
done

printf '\nconst struct embedded_document embedded_documents[] = {\n'
number=0
for path in $paths; do
    printf '    {"%s", document_%d, sizeof document_%d},\n' "${path#data/}" "$number" "$number"
    number=$((number + 1))
done
echo '};'
printf 'const size_t embedded_document_count = %d;\n' "$number"
