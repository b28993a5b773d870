#!/usr/bin/env bash
# Mutation testing: changes one operator, condition, sign, statement or call at a time and looks whether a test fails.
#
#   benchmarks/mutation.sh Simfeel.Physics                          all mutants that have no results yet
#   benchmarks/mutation.sh Simfeel.Physics --sample 20 Kernel/      20 of each file under a folder, drawn by the file's name;
#                                                                   a larger number later goes on where this one ended
#   benchmarks/mutation.sh Simfeel.Physics --price 800 Air/         with the cheapest tests up to 0.8 s for each mutant (else 4 s)
#   benchmarks/mutation.sh Simfeel.Physics --again --price 20000    the survivors once more, with dearer or new tests
#   benchmarks/mutation.sh Simfeel.Physics table                    only the page benchmarks/results/mutation-physics.md
#
# Each file is compiled with all its mutants in it, each behind a switch; tests are chosen by the members they run. What
# came out is kept in benchmarks/mutation/results (why a survivor may live: in the -reasons file), so a run that was broken
# off goes on where it was; take lines out to run them afresh. Which test runs what stands in artifacts/mutation; delete
# that folder after changing a test class that was there before. Tests that listen to the compiler, count what is
# allocated or start processes are left out.
set -eu
export MSBUILDDISABLENODEREUSE=1

root=$(CDPATH='' cd -P "$(dirname "$0")/.." && pwd)
project=$1
shift
if [ "${1:-}" != table ]; then
    dotnet build -c Release -v q --nologo "$root/tests/$project.Tests"
fi
dotnet build -c Release -v q --nologo "$root/benchmarks/mutation"
run="$root/benchmarks/mutation/bin/Release/net10.0/Simfeel.Mutation.dll"
if [ "${1:-}" != table ]; then
    dotnet "$run" run "$root" "$project" "$@"
fi
dotnet "$run" table "$root" "$project"
