#!/bin/sh
# Builds the exact reference from Debian's CGAL: apt-get install g++ libcgal-dev libgmp-dev libmpfr-dev nlohmann-json3-dev
# Usage: build.sh [PROGRAM]; it goes to out/oracle unless told otherwise. Nothing of the library itself needs it.
set -eu
here=$(cd "$(dirname "$0")" && pwd)
program=${1:-$here/../../../out/oracle}
mkdir -p "$(dirname "$program")"
g++ -std=c++17 -O2 -DNDEBUG -DCGAL_NDEBUG -Wno-deprecated-declarations "$here/oracle.cpp" -o "$program" -lgmpxx -lmpfr -lgmp
echo "$program"
